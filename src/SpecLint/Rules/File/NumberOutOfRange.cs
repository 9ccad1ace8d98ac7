using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1011: a number out of range.</summary>
internal sealed class NumberOutOfRange : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1011", "number-out-of-range", "A number out of range", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.NumberOutOfRange;
}
