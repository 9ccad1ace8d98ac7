using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4007", "water-activity-target-missed", "A preparation that misses its target of water activity", Level.Warning,
    Needs = [Fact.WaterActivity, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance-water-activity", "Off")]
internal sealed partial class WaterActivityTargetMissed : TargetRule
{
    protected override string Property => "waterActivity";

    protected override string Noun => "water activity";

    protected override Given<Quantity> TargetOf(Target target) => target.WaterActivity;

    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.WaterActivity) is { IsKnown: true } aw && aw.Value > target.Base ? new Came(aw, null, "", "1") : null;

    protected override bool IsMoved(Part part) => false;

    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);

    protected override string Otherwise(bool over) =>
        "Sweeten, salt or dry it further and measure it, or write the water activity that it reaches.";
}
