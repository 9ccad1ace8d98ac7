using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

/// <summary>SL1009: a value of the wrong type.</summary>
internal sealed class WrongType : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL1009", "wrong-type", "A value of the wrong type", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.WrongType;
}
