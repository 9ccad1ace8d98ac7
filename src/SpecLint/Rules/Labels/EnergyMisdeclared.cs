using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7011", "energy-misdeclared", "The declared energy differs from the computed energy", Level.Warning,
    Needs = [Fact.Energy], IsConsequence = true)]
[Limit("energy-tolerance", "Tolerance")]
[Limit("energy-tolerance-us", "ToleranceUs")]
[Limit("energy-polyols", "Polyols")]
[Limit("energy-polyols-us-least", "PolyolsLeastUs")]
[Limit("energy-polyols-us-most", "PolyolsMostUs")]
internal sealed partial class EnergyMisdeclared : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { Energy.IsGiven: true } declares || declares.Energy.Value.Dimension != Dimension.Energy) return;
        var energy = context.Fact(Fact.Energy);
        if (!energy.IsKnown) return;
        double declared = declares.Energy.Value.Base;

        // The factors of the US differ from those of the EU in the polyols, which one figure of the profile covers together.
        bool us = context.Settings.JurisdictionIsStated && !EuropeanFactors(context.Settings) && context.Settings.AppliesIn("US");
        var tolerance = us ? ToleranceUs : Tolerance;
        var grams = context.Profile.Grams;
        double per100 = context.Profile.Mass > 0 && context.Recipe is Prep ? 100 / context.Profile.Mass : 1;
        double polyols = us ? (Components.SweetPolyols(grams) - grams[(int)Component.Erythritol]) * per100 : 0;
        double low = energy.Low + (polyols * (PolyolsLeastUs.Value - Polyols.Value));
        double high = energy.High + (polyols * (PolyolsMostUs.Value - Polyols.Value));
        double slack = declared * tolerance.Value / 100;
        if (low <= declared + slack && high >= declared - slack) return;

        // Labels are rounded: in the US to 5 kcal up to 50 and to 10 above, elsewhere to whole kilocalories.
        double step = !us ? 1 : energy.Value > 50 ? 10 : 5;
        string right = Say.Number(Math.Round(energy.Value / step, MidpointRounding.AwayFromZero) * step, 0);
        string factors = us ? "21 CFR 101.9(c)(1), as recalled"
            : EuropeanFactors(context.Settings) ? "Reg (EU) 1169/2011 Annex XIV"
            : "Reg (EU) 1169/2011 Annex XIV, instead of those of the bar's country";
        string per = context.Recipe is Drink ? "a serve" : context.Profile.IsSolid ? "100 g" : "100 mL";
        context.Report(new(Rule)
        {
            At = context.At(declares.Energy.Span, "declares.energy"),
            Message = $"Declared at {Say.Number(declared)} kcal, {per} comes to {Say.Fact(Fact.Energy, energy)} by the factors of "
                + $"{factors}, more than {Say.Number(tolerance.Value)} % off ({tolerance.Source}).",
            Advice = $"Declare {right} kcal.",
            Evidence =
            [
                Proof.Of(Fact.Energy, energy),
                Proof.Of("declared", declares.Energy.Value, context.At(declares.Energy.Span)),
                Proof.Of(tolerance),
            ],
            Corrections = context.Write(declares.Energy.Span, $"{right} kcal", $"Declare {right} kcal."),
        });
    }

    private static bool EuropeanFactors(Settings settings) =>
        settings.AppliesIn("EU") || settings.AppliesIn("GB") || settings.AppliesIn("CH");
}
