using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1007: a property that belongs to another place.</summary>
internal sealed class MisplacedProperty : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1007", "misplaced-property", "A property that belongs to another place", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.MisplacedProperty;
}
