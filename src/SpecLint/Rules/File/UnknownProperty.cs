using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1006: a property that this kind of file does not have.</summary>
internal sealed class UnknownProperty : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1006", "unknown-property", "A property that this kind of file does not have", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.UnknownProperty;
}
