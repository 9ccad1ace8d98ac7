using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6003", "coumarin-dose", "A drink holds more coumarin than a guest should take in a day", Level.Warning, Safety = true)]
[Limit("coumarin-serve", "Serve")]
[Limit("coumarin-daily")]
[Limit("tolerance-extraction-low", "Extraction")]
internal sealed partial class CoumarinDose : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double low = 0, typical = 0, high = 0;
        HazardLoad? most = null, unknown = null;
        string source = "";
        foreach (var load in context.Profile.HazardLoads)
        {
            bool isKnown = !double.IsNaN(load.Grams);
            if (isKnown ? load.IsLeftBeside : load.Part.Phase == PartPhase.Beside) continue;
            foreach (var content in load.Hazard.Contents)
            {
                if (content.Substance != "coumarin") continue;
                if (!isKnown)
                {
                    unknown ??= load;
                    break;
                }

                low += load.Grams * content.Low * (load.Strained ? Extraction.Value / 100 : 1);
                typical += load.Grams * content.Typical;
                high += load.Grams * content.High;
                source = content.Source;
                if (most is null || load.Grams > most.Grams) most = load;
            }
        }

        if (unknown is not null) Open(context, unknown);
        if (most is null) return;
        double serves = drink.ServesOrOne;
        (low, typical, high) = (low / serves, typical / serves, high / serves);
        if (typical <= Serve.Value) return;
        double grams = most.Grams / serves;
        double enough = grams * Serve.Value / high;
        context.Report(new(Rule)
        {
            Answer = low > Serve.Value ? Answer.Broken : Answer.NotShown,
            At = context.AmountOf(most.Part.Line),
            Message = $"A drink holds {Say.With(grams, "g")} of {HazardWords.NameOf(most)}, which adds "
                + $"{Say.Range(typical, low, high, "mg")} of coumarin. The tolerable daily intake of a guest of 60 kg is "
                + $"{Say.Number(Serve.Value)} mg (EFSA; content: {source}).",
            Advice = $"Reduce it to {Say.With(enough, "g")} a drink, based on the high end of its content, or use vanilla and cherry, "
                + "which hold none.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, most), new Evidence("coumarin a drink", typical, low, high, "mg", source), Proof.Of(Serve)],
        });
    }

    /// <summary>How much of it there is, nobody can tell: it is not shown to be little.</summary>
    private static void Open(RecipeContext context, HazardLoad load) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = HazardWords.OpenAmountOf(context, load.Part.Line),
            Key = "unknown",
            Message = $"How much {HazardWords.NameOf(load)} a drink holds cannot be worked out, and it brings coumarin; "
                + $"{Say.Number(Serve.Value)} mg is what a guest of 60 kg may take in a day (EFSA).",
            Advice = "Write the amounts and the yield by mass, so that its share can be worked out.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load), Proof.Of(Serve)],
        });
}
