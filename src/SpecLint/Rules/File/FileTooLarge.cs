using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1003: the file is larger than is read.</summary>
internal sealed class FileTooLarge : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1003", "file-too-large", "The file is too large to be read", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.TooLarge;
}
