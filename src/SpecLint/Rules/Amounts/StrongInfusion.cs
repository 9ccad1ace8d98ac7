using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.Amounts;

[Rule("SL2039", "strong-infusion", "Far more of what flavours, washes or ferments a preparation than it takes", Level.Warning)]
internal sealed partial class StrongInfusion : TenfoldRule
{
    protected override string Group => "plant";

    protected override Level Highest => Level.Warning;

    protected override bool TellsTooLittle => false;

    protected override bool CountsPieces => true;

    /// <summary>An oil that is steeped is used by the drop.</summary>
    protected override bool Concerns(RecipeProfile profile, double whole) =>
        profile.Recipe is Prep { Family: { IsGiven: true, Value.IsFatWash: true } }
        || Builds.Grams(profile, static m => m is { Kind.IsFat: true }) < Builds.Grams(profile, static m => m is { Kind.IsFat: false });
}
