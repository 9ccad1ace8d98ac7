using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6004", "plant-substance-over-limit", "A drink holds more of a plant's active substance than the law allows", Level.Error,
    Safety = true, Needs = [Fact.Abv])]
[Limit("declare-strength-from", "Strength")]
[Limit("thujone-eu")]
[Limit("thujone-artemisia-eu")]
[Limit("thujone-us")]
[Limit("tolerance-extraction-low", "Extraction")]
internal sealed partial class PlantSubstanceOverLimit : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double kilograms = context.Profile.Mass / 1000;
        if (!(kilograms > 0)) return;
        foreach (var load in HazardLoad.Together(
            FixedList.Of(context.Profile.HazardLoads.Where(static l => !l.IsLeftBeside).ToList()), byHazard: true))
        {
            if (load.Hazard.Contents is not [{ Substance: "thujone" or "glycyrrhizic acid" } content, ..]
                || RuleOf(context, load.Hazard, content.Substance) is not { } rule)
                continue;
            if (double.IsNaN(load.Grams))
            {
                // A leaf or a sprig on a line is little; what share of a steep is poured, nobody can tell.
                if (!load.Direct) NotShown(context, load, content, rule);
                continue;
            }

            double low = load.Grams * content.Low * (load.Strained ? Extraction.Value / 100 : 1) / kilograms;
            double typical = load.Grams * content.Typical / kilograms, high = load.Grams * content.High / kilograms;
            if (typical <= rule.Limit) continue;
            bool broken = low > rule.Limit;
            context.Report(new(Rule)
            {
                Answer = broken ? Answer.Broken : Answer.NotShown,
                AskedLevel = broken ? rule.Level : Level.Warning,
                At = context.AmountOf(load.Part.Line),
                Message = $"{Say.With(load.Grams / drink.ServesOrOne, "g")} of {HazardWords.NameOf(load)} a drink adds "
                    + $"{Say.Range(typical, low, high, "mg/kg")} of {content.Substance}. The limit is {Say.Number(rule.Limit)} mg/kg "
                    + $"({rule.Source}; content: {content.Source}).",
                Advice = $"Reduce it to {Say.With(load.Grams / drink.ServesOrOne * rule.Limit / high, "g")} a drink, buy a bottled extract "
                    + "with an assay, or have yours assayed.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load), new Evidence(content.Substance, typical, low, high, "mg/kg", content.Source),
                    Proof.Of("limit", rule.Limit, "mg/kg", rule.Source)],
            });
        }
    }

    /// <summary>Of how much of the plant goes in, nobody can tell.</summary>
    private static void NotShown(RecipeContext context, HazardLoad load, HazardContent content, HazardRule rule) => context.Report(new(Rule)
    {
        Answer = Answer.NotShown,
        AskedLevel = Level.Warning,
        At = context.AmountOf(load.Part.Line),
        Key = load.Hazard.Id,
        Message = $"How much of {HazardWords.NameOf(load)} a drink holds is not known, so nothing shows that its {content.Substance} is "
            + $"within {Say.Number(rule.Limit)} mg/kg ({rule.Source}; content: {content.Source}).",
        Advice = "Write the amount of each part, here and in the preparations that bring it, or have the drink assayed.",
        Caution = HazardWords.Caution,
        Evidence = [HazardWords.Of(context, load), Proof.Of("limit", rule.Limit, "mg/kg", rule.Source)],
    });

    /// <summary>The strictest limit by mass that applies to the drink.</summary>
    internal static HazardRule? RuleOf(RecipeContext context, Hazard hazard, string substance)
    {
        HazardRule? least = null;
        var abv = context.Fact(Fact.Abv);
        bool alcoholic = !abv.IsKnown || abv.Value > Strength.Value;
        bool artemisia = hazard.Id is "wormwood" or "thujone";
        foreach (var rule in HazardTable.Find(substance) is { } own && own != hazard ? hazard.Rules.Concat(own.Rules) : hazard.Rules)
        {
            if (rule.Unit != "mg/kg"
                || double.IsNaN(rule.Limit)
                || rule.Level < Level.Warning
                || !rule.AppliesIn(context.Settings)
                || (Storage.Has(rule.AppliesTo, "alcohol") && Storage.Has(rule.AppliesTo, "non-alcoholic") == alcoholic)
                || (Storage.Has(rule.AppliesTo, "Artemisia") && Storage.Has(rule.AppliesTo, "not from") == artemisia))
                continue;
            if (least is null || rule.Limit < least.Limit) least = rule;
        }

        return least;
    }
}
