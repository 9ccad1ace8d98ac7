using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2001", "decimal-comma", "A comma is used as the decimal point", Level.Warning)]
internal sealed partial class DecimalComma : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.DecimalComma;
}
