using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2002", "unit-missing", "A number without a unit", Level.Error, IsCause = true)]
internal sealed partial class UnitMissing : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.UnitMissing;
}
