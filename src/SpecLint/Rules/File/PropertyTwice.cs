using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1005: a property stands twice in one object.</summary>
internal sealed class PropertyTwice : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1005", "property-twice", "A property appears twice in one object", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.DuplicateProperty;
}
