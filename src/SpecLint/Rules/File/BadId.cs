using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1012: a file name that makes no id.</summary>
internal sealed class BadId : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1012", "bad-id", "A file name that is not a valid id", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.BadId;
}
