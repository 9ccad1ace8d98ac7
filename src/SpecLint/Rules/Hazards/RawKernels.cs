using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6008", "raw-kernels", "Raw kernels, stones or leaves release hydrocyanic acid", Level.Error, Safety = true)]
[Limit("apricot-kernel-serve", "Serve")]
[Limit("hydrocyanic-eu", "Drink")]
[Limit("hydrocyanic-us")]
internal sealed partial class RawKernels : RecipeRule
{
    private static readonly FixedList<string> Freed =
    [
        "free of prussic acid", "free from prussic acid", "freed of prussic acid", "freed from prussic acid", "prussic acid removed",
        "prussic-acid-free", "FFPA",
    ];

    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Id is not ("apricot-kernels-raw" or "bitter-almond" or "cherry-pits" or "cherry-laurel" or "peach-leaf" or "elder-leaf-stem-raw-berry" or "hydrocyanic-acid")) continue;
            bool berry = load.Hazard.Id == "elder-leaf-stem-raw-berry";
            if (berry && (Pot.Of(context.Recipe).Any(load.Part.Line, static s => s.Verb.Boils) || load.Part.Material is { Kind.IsFreshPlant: false })) continue;
            if (load.Part.Line.Note.IsGiven && Phrases.Affirms(load.Part.Line.Note.Value, Freed)) continue;
            string amount = "";
            if (load.Hazard.Contents.Count > 0 && !double.IsNaN(load.Grams))
            {
                var content = load.Hazard.Contents[0];
                double kilograms = context.Profile.Mass / 1000;
                amount = kilograms > 0
                    ? $": {Say.With(load.Grams, "g")} may bring {Say.Number(load.Grams * content.Low / kilograms, 0)} to "
                        + $"{Say.Number(load.Grams * content.High / kilograms, 0)} mg/kg. The limits are {Say.Number(Drink.Value)} mg/kg "
                        + $"in an alcoholic drink ({Drink.Source}) and {Say.Number(Serve.Value)} g of kernel for an adult ({Serve.Source})"
                    : "";
            }

            string source = load.Hazard.Rules.Count > 0 ? load.Hazard.Rules[0].Source : Drink.Source;
            context.Report(new(Rule)
            {
                AskedLevel = berry || load.Hazard.Id == "peach-leaf" ? Level.Warning : null,
                At = context.ItemOf(load.Part.Line),
                Message = $"`{load.Id}` releases hydrocyanic acid when it is "
                    + $"{(berry ? "used raw" : "crushed or steeped")}{amount}{(amount.Length == 0 ? $" ({source})" : "")}.",
                Advice = berry ? "Strip the ripe berries off their stems and boil them before any other step." : "Take it out. Use a bought noyau liqueur, or almond extract free from prussic acid, and say so in the note.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load), Proof.Of(Serve), Proof.Of(Drink)],
            });
        }
    }
}
