using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1001: the text is not JSON.</summary>
internal sealed class Syntax : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1001", "broken-json", "The text is not JSON", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.Syntax;
}
