using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1010: a value that cannot be read.</summary>
internal sealed class UnreadableValue : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1010", "unreadable-value", "A value that cannot be read", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.UnreadableValue;
}
