using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1008: a property that every such file needs is missing.</summary>
internal sealed class MissingProperty : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1008", "missing-property", "A property that every such file needs is missing", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.MissingProperty;
}
