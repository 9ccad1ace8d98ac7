using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7028", "statement-missing", "It holds a substance that guests must be told about by name", Level.Warning,
    Needs = [Fact.Caffeine, Fact.ServedVolume, Fact.Abv, Fact.Density], Safety = true)]
[Limit("caffeine-statement", "CaffeineLimit")]
[Limit("liquorice-statement", "Liquorice")]
[Limit("liquorice-warning", "LiquoriceWarning")]
[Limit("liquorice-warning-alcohol", "LiquoriceWarningAlcohol")]
[Limit("tolerance-extraction-low", "Extraction")]
[Limit("claims-strength", "AlcoholParts")]
internal sealed partial class StatementMissing : RecipeRule
{
    private static readonly LabelRule Caffeine = LabellingTable.Of("caffeine-high");
    private static readonly LabelRule LiquoriceLaw = LabellingTable.Of("liquorice");
    private static readonly LabelRule Hypertension = LabellingTable.Of("liquorice-hypertension");

    /// <summary>A statement that any amount asks for.</summary>
    private static readonly (string Id, string What, string[] Words, LabelRule Law)[] Statements =
    [
        ("cinchona-bark", "quinine", ["quinine", "cinchona"], LabellingTable.Of("quinine-name")),
        ("cinchona-bark", "quinine", ["quinine", "cinchona"], LabellingTable.Of("quinine-name-us")),
        ("cinchona-bark", "quinine", ["quinine", "cinchona"], LabellingTable.Of("quinine-name-anz")),
        ("guarana", "caffeine", ["caffeine"], LabellingTable.Of("caffeine-name-anz")),
        ("kola-nut", "caffeine", ["caffeine"], LabellingTable.Of("caffeine-name-anz")),
        ("royal-jelly", "royal jelly", ["royal jelly"], LabellingTable.Of("royal-jelly")),
        ("bee-pollen", "pollen", ["pollen"], LabellingTable.Of("bee-pollen")),
        ("raw-milk", "unpasteurised milk", ["unpasteurised", "unpasteurized", "raw milk"], LabellingTable.Of("raw-milk-anz")),
    ];

    /// <summary>
    /// Bought drinks with an added substance of which Australia and New Zealand have guests told, unless the drink's own name does.
    /// </summary>
    private static readonly (string Id, string What, string[] Words, LabelRule Law)[] Bought =
    [
        ("tonic-water", "quinine", ["quinine", "tonic"], LabellingTable.Of("quinine-name-anz")),
        ("tonic-water-light", "quinine", ["quinine", "tonic"], LabellingTable.Of("quinine-name-anz")),
        ("tonic-water-sugar-free", "quinine", ["quinine", "tonic"], LabellingTable.Of("quinine-name-anz")),
        ("bitter-lemon", "quinine", ["quinine", "bitter lemon"], LabellingTable.Of("quinine-name-anz")),
        ("cola", "caffeine", ["caffeine", "cola", "coke"], LabellingTable.Of("caffeine-name-anz")),
        ("diet-cola", "caffeine", ["caffeine", "cola", "coke"], LabellingTable.Of("caffeine-name-anz")),
    ];

    /// <summary>What either list is about: hardly any part is.</summary>
    private static readonly HashSet<string> Ids = new(Statements.Concat(Bought).Select(s => s.Id), StringComparer.Ordinal);

    private static readonly string[] TellsOfCaffeine = ["coffee", "espresso", "café", "caffè", "kaffee", "tea", "thé", "chai", "matcha"];
    private static readonly string[] TellsOfLiquorice = ["liquorice", "licorice", "lakritz", "réglisse"];

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            // It is found where it goes in, not in every recipe above.
            if (part.Item?.File is not Ingredient || !Additives.IsOrLikeAny(context, part.Item, Ids)) continue;
            string told = "";
            foreach (var (id, what, words, law) in Statements)
            {
                if (told == what || !law.AppliesIn(context.Settings) || !Additives.IsOrLike(context, part.Item, id)) continue;
                told = what;
                if (!Additives.IsSaid(context.Recipe, words))
                    Report(context, part, (what, law.Text), law, $"`{part.Item.Id}` contains {what}");
            }

            foreach (var (id, what, words, law) in Bought)
            {
                if (told == what
                    || !law.AppliesIn(context.Settings)
                    || !Additives.IsOrLike(context, part.Item, id)
                    || NameTells(context.Recipe, words)
                    || Additives.IsSaid(context.Recipe, words))
                    continue;
                told = what;
                Report(context, part, (what, law.Text), law, $"`{part.Item.Id}` contains {what}", level: Level.Note);
            }
        }

        CheckLiquorice(context);
        CheckCaffeine(context);
    }

    /// <summary>
    /// From 10 mg/L of glycyrrhizic acid the guest is told of liquorice, unless the name tells; from 50 mg/L (300 over 1.2 % vol) of
    /// blood pressure too. How much of what is strained out stays behind is not known.
    /// </summary>
    private static void CheckLiquorice(RecipeContext context)
    {
        if (!LiquoriceLaw.AppliesIn(context.Settings)) return;
        double low = 0, high = 0;
        HazardLoad? first = null;
        bool itself = false;
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Hazard.Id != "liquorice-root" || load.Hazard.Contents.Count == 0 || double.IsNaN(load.Grams)) continue;
            first ??= load;
            itself |= load.Direct;
            low += load.Grams * load.Hazard.Contents[0].Low * (load.Strained ? Extraction.Value / 100 : 1);
            high += load.Grams * load.Hazard.Contents[0].High;
        }

        if (first is null) return;
        double litres = Litres(context);
        if ((!itself && context.Recipe is not Drink)
            || !(litres > 0)
            || Additives.IsSaid(context.Recipe, ["hypertension", "blood pressure"]))
            return;
        low /= litres;
        high /= litres;
        var abv = context.Fact(Fact.Abv);
        var warning = abv.IsKnown && abv.Value > AlcoholParts.Value ? LiquoriceWarningAlcohol : LiquoriceWarning;
        bool hypertension = high >= warning.Value;
        if (!hypertension
            && (high < Liquorice.Value
                || !itself
                || NameTells(context.Recipe, TellsOfLiquorice)
                || Additives.IsSaid(context.Recipe, TellsOfLiquorice)))
            return;
        var limit = hypertension ? warning : Liquorice;
        var law = hypertension ? Hypertension : LiquoriceLaw;
        Report(
            context, first.Part, ("liquorice", law.Text), law,
            $"It may hold {Say.Range((low + high) / 2, low, high, "mg/L")} of glycyrrhizic acid from `{first.Id}`, against the "
                + $"{Say.Number(limit.Value)} mg/L from which the words are required ({first.Hazard.Contents[0].Source})",
            low >= limit.Value ? Answer.Broken : Answer.NotShown);
    }

    private static void CheckCaffeine(RecipeContext context)
    {
        if (!CaffeineLimit.AppliesIn(context.Settings)) return;
        var caffeine = context.Fact(Fact.Caffeine);
        if (!caffeine.IsKnown || caffeine.Low <= 0 || context.Recipe is not Drink) return;
        var volume = context.Fact(Fact.ServedVolume);
        if (!volume.IsKnown || volume.High <= 0) return;
        double low = 1000 * caffeine.Low / volume.High, high = 1000 * caffeine.High / volume.Low;
        double typical = 1000 * caffeine.Value / volume.Value;
        if (low <= CaffeineLimit.Value || Additives.IsSaid(context.Recipe, ["caffeine"])) return;

        // The law spares a drink based on coffee or tea whose name says so: who reads it expects caffeine.
        bool brewed = IsBrewed(context);
        if (brewed && NameTells(context.Recipe, TellsOfCaffeine)) return;
        if (context.Profile.Parts.FirstOrDefault(static p => p.Material is { Traces.Caffeine.Typical: > 0 }) is not { } part) return;
        Report(
            context, part, ("caffeine", $"{Caffeine.Text} ({Say.Number(typical / 10, 0)} mg/100 ml)"), Caffeine,
            $"It holds {Say.Range(typical, low, high, "mg/L")} of caffeine, above {Say.Number(CaffeineLimit.Value)} mg/L",
            level: brewed ? Level.Note : null);
    }

    /// <summary>Whether coffee or tea brings the most of the caffeine.</summary>
    private static bool IsBrewed(RecipeContext context)
    {
        var leaves = RecipeTree.Of(context.Profile);
        double brewed = 0, other = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { Traces.Caffeine.Typical: > 0 } material) continue;
            double brings = part.Grams.Typical * material.Traces.Caffeine.Typical;
            bool isBrew = false;
            foreach (var leaf in leaves) isBrew |= leaf.Part == part && leaf.Ingredient.IngredientKind.OrNone().IsBrew;
            if (isBrew) brewed += brings;
            else other += brings;
        }

        return brewed > other;
    }

    private static bool NameTells(Recipe recipe, string[] words) =>
        recipe.Name.IsGiven && WordSearch.First(recipe.Name.Value, words) is not null;

    private static double Litres(RecipeContext context)
    {
        if (context.Recipe is Drink && context.Fact(Fact.ServedVolume) is { IsKnown: true } volume) return volume.Value / 1000;
        var density = context.Fact(Fact.Density);
        return density.IsKnown ? context.Profile.Mass / density.Value / 1000 : context.Profile.InputVolume / 1000;
    }

    /// <summary>Reports that nothing says what a law asks for.</summary>
    /// <param name="context">The recipe.</param>
    /// <param name="part">The part that brings it.</param>
    /// <param name="statement">What guests are told of, and in which words.</param>
    /// <param name="law">The law.</param>
    /// <param name="because">What is in it, as the beginning of a sentence.</param>
    /// <param name="answer">Whether that much is certain.</param>
    /// <param name="level">A level lower than the law bears.</param>
    private static void Report(
        RecipeContext context, Part part, (string What, string Text) statement, LabelRule law, string because,
        Answer answer = Answer.Broken, Level? level = null)
    {
        var (what, text) = statement;
        context.Report(new(Rule)
        {
            AskedLevel = level ?? law.LevelCap,
            Answer = answer,
            At = context.ItemOf(part.Line),
            Key = what,
            Message = $"{because}, and guests are not told ({law.Source}{Additives.Scope(context.Recipe)}).",
            Advice = $"Write it under `declares.advisory`, and on the menu of every drink made with it: \"{text}\".",
            Caution = $"Some people must not have {what}. Follow local law, and ask if you are not sure.",
            Evidence = [Proof.Of("text", text), Proof.Of("law", law.Source)],
            Corrections = Correction.Propose($"Say \"{text}\".", Additives.Say(context.Recipe, text)),
        });
    }
}
