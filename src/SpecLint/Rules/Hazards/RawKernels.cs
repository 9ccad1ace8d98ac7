using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6008", "raw-kernels", "Raw kernels, stones or leaves release hydrocyanic acid", Level.Error, Safety = true)]
[Limit("apricot-kernel-serve", "Serve")]
[Limit("hydrocyanic-eu", "Drink")]
[Limit("hydrocyanic-us")]
internal sealed partial class RawKernels : DirectLoadRule
{
    private static readonly FixedList<string> Freed =
    [
        "free of prussic acid", "free from prussic acid", "freed of prussic acid", "freed from prussic acid", "prussic acid removed",
        "prussic-acid-free", "FFPA",
    ];

    protected override void Check(RecipeContext context, HazardLoad load)
    {
        var line = load.Part.Line;
        bool berry = load.Hazard.Id == "elder-leaf-stem-raw-berry";
        if (!(berry || IsStone(load.Hazard.Id))
            || (berry && load.Part.Material is { Kind.IsFreshPlant: false })
            || (berry && CookedThrough.Is(context, line))
            || (line.Note.IsGiven && Phrases.Affirms(line.Note.Value, Freed)))
            return;
        string source = load.Hazard.Rules.Count > 0 ? load.Hazard.Rules[0].Source : Drink.Source;
        string amount = $" ({source})";
        double kilograms = context.Profile.Mass / 1000;
        if (load.Hazard.Contents is [var content, ..] && !double.IsNaN(load.Grams) && kilograms > 0)
            amount = $": {Say.With(load.Grams, "g")} may bring {Say.Number(load.Grams * content.Low / kilograms, 0)} to "
                + $"{Say.Number(load.Grams * content.High / kilograms, 0)} mg/kg. The limits are {Say.Number(Drink.Value)} mg/kg in an "
                + $"alcoholic drink ({Drink.Source}) and {Say.Number(Serve.Value)} g of kernel for an adult ({Serve.Source})";
        context.Report(new(Rule)
        {
            AskedLevel = berry || load.Hazard.Id == "peach-leaf" ? Level.Warning : null,
            At = context.ItemOf(line),
            Message = $"`{load.Id}` releases hydrocyanic acid when it is {(berry ? "used raw" : "crushed or steeped")}{amount}.",
            Advice = berry
                ? "Strip the ripe berries off their stems and boil them before any other step."
                : "Take it out. Use a bought noyau liqueur, or almond extract free from prussic acid, and say so in the note.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load), Proof.Of(Serve), Proof.Of(Drink)],
        });
    }

    private static bool IsStone(string id) =>
        id is "apricot-kernels-raw" or "bitter-almond" or "cherry-pits" or "cherry-laurel" or "peach-leaf" or "hydrocyanic-acid";
}
