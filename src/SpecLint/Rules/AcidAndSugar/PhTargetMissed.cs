using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4006", "ph-target-missed", "A preparation that misses its target of pH", Level.Warning,
    Needs = [Fact.Ph, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance-ph", "Off")]
internal sealed partial class PhTargetMissed : TargetRule
{
    protected override string Property => "ph";

    protected override string Noun => "pH";

    protected override Given<Quantity> TargetOf(Target target) => target.Ph;

    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.Ph) is { IsKnown: true } ph ? new Came(ph, null, "", "[pH]") : null;

    protected override bool IsMoved(Part part) => false;

    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);

    /// <summary>A ferment is done once it is as sour as its target; that it went on is no miss.</summary>
    protected override bool IsSaidElsewhere(RecipeContext context, Prep prep, Quantity target, FactValue value) =>
        value.High < target.Base && Keeping.SpecialCases.IsFerment(prep, context.Profile);

    protected override string Otherwise(bool over) =>
        over
            ? "Measure it again; then raise the acid a little, or write the pH that it reaches."
            : "Measure it again; then lower the acid a little, or write the pH that it reaches.";
}
