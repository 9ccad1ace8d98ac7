using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4004", "strength-target-missed", "A preparation that misses its target of strength", Level.Warning,
    Needs = [Fact.Abv, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance-strength", "Off")]
internal sealed partial class StrengthTargetMissed : TargetRule
{
    protected override string Property => "abv";

    protected override string Noun => "strength";

    protected override Given<Quantity> TargetOf(Target target) => target.Abv;

    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.Abv) is { IsKnown: true } abv ? new Came(abv, Solving.Strength, "% vol", "%{vol}") : null;

    protected override bool IsMoved(Part part) => Substances.IsWater(part.Material);

    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);
}
