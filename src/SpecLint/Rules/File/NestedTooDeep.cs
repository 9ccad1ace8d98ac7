using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1004: values are nested deeper than is read.</summary>
internal sealed class NestedTooDeep : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1004", "nested-too-deep", "Values are nested too deep to be read", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.TooDeep;
}
