using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2001: a comma stands for the decimal point.</summary>
internal sealed class DecimalComma : ReadingRule
{
    private static readonly RuleInfo Rule = new("SL2001", "decimal-comma", "A comma is used as the decimal point", Level.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override ReadingProblemKind Kind => ReadingProblemKind.DecimalComma;
}
