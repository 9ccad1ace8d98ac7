using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2002: a number without a unit.</summary>
internal sealed class UnitMissing : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL2002", "unit-missing", "A number without a unit", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.UnitMissing;
}
