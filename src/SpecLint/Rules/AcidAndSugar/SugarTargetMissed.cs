using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4002", "sugar-target-missed", "A preparation that misses its target of sugar", Level.Warning,
    Needs = [Fact.Sugar, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
internal sealed partial class SugarTargetMissed : TargetRule
{
    protected override string Property => "sugar";

    protected override string Noun => "sugar";

    protected override Given<Quantity> TargetOf(Target target) => target.Sugar;

    protected override Came? Comes(RecipeContext context, Quantity target) =>
        Content(context, target, Fact.Sugar, Solving.SugarByMass, Solving.SugarPerVolume);

    protected override bool IsMoved(Part part) => part.Material is { Kind.Sweetens: true };

    protected override (double Off, Limit Limit) Tolerance(double target) => (target * Off.Value / 100, Off);

    protected override bool IsSaidElsewhere(RecipeContext context, Prep prep, Quantity target, FactValue value) =>
        BrixTakenForWeight.Applies(prep);
}
