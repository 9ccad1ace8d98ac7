using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6026", "dose-in-preparation", "A usual serve of a preparation holds too much of a plant's substance", Level.Warning, Safety = true,
    Needs = [Fact.Abv])]
[Limit("coumarin-serve")]
[Limit("nutmeg-serve")]
[LimitsOf(typeof(PrepServe), nameof(PrepServe.LimitIds))]
[Limit("tolerance-extraction-low", "Extraction")]
internal sealed partial class DoseInPreparation : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.HazardLoads.Count == 0 || PrepServe.Of(context, prep) is not { } serve) return;
        foreach (var load in HazardLoad.Together(
            FixedList.Of(context.Profile.HazardLoads.Where(static l => !l.IsLeftBeside).ToList()), byHazard: true))
        {
            if (double.IsNaN(load.Grams)) continue;
            double extracted = load.Strained ? Extraction.Value / 100 : 1;
            double grams = load.Grams * serve.Share;
            if (load.Hazard.Id == "nutmeg")
            {
                var most = NutmegOverDose.Most;
                Hold(context, load, serve, new("nutmeg or mace", "g", grams * extracted, grams, grams, most.Value, most.Source));
                continue;
            }

            foreach (var content in load.Hazard.Contents)
            {
                if (content.Substance == "coumarin")
                {
                    HoldContent(grams, "mg", CoumarinDose.Serve.Value, "EFSA: what a guest of 60 kg may take in a day");
                }
                else if (content.Substance is "thujone" or "glycyrrhizic acid"
                    && context.Profile.Mass > 0
                    && PlantSubstanceOverLimit.RuleOf(context, load.Hazard, content.Substance) is { } law)
                {
                    HoldContent(load.Grams / (context.Profile.Mass / 1000) * serve.Dilution, "mg/kg of the drink", law.Limit, law.Source);
                }

                void HoldContent(double scale, string unit, double limit, string source)
                {
                    double low = scale * content.Low * extracted, high = scale * content.High;
                    Hold(context, load, serve, new(content.Substance, unit, low, scale * content.Typical, high, limit, source));
                }
            }
        }
    }

    private static void Hold(RecipeContext context, HazardLoad load, PrepServe serve, Dose dose)
    {
        if (!(dose.Typical > dose.Limit)) return;
        context.Report(new(Rule)
        {
            Answer = dose.Low > dose.Limit ? Answer.Broken : Answer.NotShown,
            At = context.AmountOf(load.Part.Line),
            Key = dose.Substance,
            Message = $"No drink of the book uses it yet; a usual serve of {Say.Number(serve.Millilitres)} mL brings "
                + $"{Say.Range(dose.Typical, dose.Low, dose.High, dose.Unit)} of {dose.Substance} from {HazardWords.NameOf(load)}, over "
                + $"{Say.Number(dose.Limit)} {dose.Unit} ({dose.Source}).",
            Advice = $"Come down to {Say.With(load.Grams * dose.Limit / dose.High, "g")} in the batch, counted at the high end of its "
                + "content, or write the drink that takes less of it.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load),
                new Evidence(dose.Substance, dose.Typical, dose.Low, dose.High, dose.Unit, dose.Source),
                Proof.Of("serve", serve.Millilitres, "mL"), Proof.Of("limit", dose.Limit, dose.Unit, dose.Source)],
        });
    }

    private readonly record struct Dose(
        string Substance, string Unit, double Low, double Typical, double High, double Limit, string Source);
}
