using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1002: the bytes are not UTF-8.</summary>
internal sealed class BadEncoding : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1002", "broken-encoding", "The bytes are not UTF-8", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.Encoding;
}
