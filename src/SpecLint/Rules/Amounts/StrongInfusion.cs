using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2039", "strong-infusion", "Far more of a spice, tea or chilli than infusions take", Level.Warning)]
internal sealed partial class StrongInfusion : TenfoldRule
{
    protected override string Group => "plant";

    protected override Level Highest => Level.Warning;

    protected override bool TellsTooLittle => false;
}
