using SpecLint.Profile;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.Amounts;

[Rule("SL2039", "strong-infusion", "Far more of a spice, tea or chilli than infusions take", Level.Warning)]
internal sealed partial class StrongInfusion : TenfoldRule
{
    protected override string Group => "plant";

    protected override Level Highest => Level.Warning;

    protected override bool TellsTooLittle => false;

    /// <summary>An oil that is steeped is used by the drop.</summary>
    protected override bool Concerns(RecipeProfile profile, double whole) =>
        Builds.Grams(profile, static m => m is { Kind.IsFat: true }) < Builds.Grams(profile, static m => m is { Kind.IsFat: false });
}
