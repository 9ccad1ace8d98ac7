using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4003", "brix-target-missed", "A preparation that misses its target of °Brix", Level.Warning,
    Needs = [Fact.Brix, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance-brix", "Off")]
internal sealed partial class BrixTargetMissed : TargetRule
{
    protected override string Property => "brix";

    protected override string Noun => "°Brix";

    protected override Given<Quantity> TargetOf(Target target) => target.Brix;

    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.Brix) is { IsKnown: true } brix ? new Came(brix, Solving.Brix, "°Bx", "%") : null;

    protected override bool IsMoved(Part part) => part.Material is { Kind.Sweetens: true };

    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);
}
