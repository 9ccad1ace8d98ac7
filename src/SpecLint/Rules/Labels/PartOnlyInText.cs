using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Amounts;
using SpecLint.Science;

namespace SpecLint.Rules.Labels;

[Rule("SL7034", "part-only-in-text", "A note adds something with an allergen or a hazard that no line lists", Level.Warning, Safety = true)]
internal sealed partial class PartOnlyInText : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (step.Note.IsGiven) Read(context, step.Note, context.PathOf(step) + ".note");
            if (step.Until.IsGiven) Read(context, step.Until, context.PathOf(step) + ".until");
        }

        var notes = context.Recipe.Notes;
        for (int i = 0; i < notes.Count; i++)
        {
            if (notes[i].IsGiven) Read(context, notes[i], notes.Count == 1 ? "notes" : $"notes[{i + 1}]");
        }

        foreach (var (text, path) in UnreadTexts.OfMethod(context.Recipe)) Read(context, text, path);
        foreach (var line in LinkedBook.LinesOf(context.Recipe))
        {
            if (line.Note.IsGiven) Read(context, line.Note, RecipeContext.PathOf(line, "note"));
        }
    }

    private static void Read(RecipeContext context, Given<string> text, string path)
    {
        List<string>? told = null, brought = null, had = null;
        var clause = default(TextClause);
        foreach (var (from, to, at, spoken) in AddedPlaces.Of(text.Value))
        {
            clause = clause.Holds(from) ? clause : TextClause.At(text.Value, from);
            if (Phrases.IsDenied(text.Value, from, to) || clause.RulesOut(from)) continue;
            string id, said;
            List<string> brings;
            if (AmountsInText.ItemNamed(context.Book, text.Value, at) is { } item)
            {
                if (item.File == context.Recipe
                    || context.Profile.Parts.Any(p => p.Item?.Id == item.Id)
                    || NamedFoods.IsNoFood(text.Value, at))
                    continue;
                id = item.Id;
                said = Said(text.Value, at, id);
                brings = BringsNew(context, item, spoken, had ??= Had(context));
            }
            else
            {
                // What is no item may be a poison all the same.
                clause = clause.Holds(at) ? clause : TextClause.At(text.Value, at);
                if (clause.NamedIn(text.Value, at, IsToldOf) is not { } named
                    || context.Profile.HazardLoads.Any(l => l.Hazard.Id == named.Hazard.Id))
                    continue;
                id = named.Hazard.Id;
                said = $"`{id}`";
                brings = [named.Hazard.Name];
            }

            if (brings.Count == 0 || told?.Contains(id) == true) continue;
            (told ??= []).Add(id);
            (brought ??= []).AddRange(brings);
            Report(context, text, path, id, said, brings);
        }

        foreach (var (id, tokens) in NamedFoods.In(text.Value, context.Book, context.Profiles))
        {
            if (told?.Contains(id) == true || IsSpiritOf(context, id, tokens)) continue;
            had ??= Had(context);
            var brings = tokens.Where(t => IsListed(context.Settings, t) && !had.Contains(t) && brought?.Contains(t) != true).ToList();
            if (brings.Count == 0) continue;
            (brought ??= []).AddRange(brings);
            (told ??= []).Add(id);
            Report(context, text, path, id, $"`{id}`", brings);
        }
    }

    /// <summary>The id of an item that a text names, behind the word that it is named by where that is another ("leche").</summary>
    private static string Said(string text, int at, string id)
    {
        int end = at;
        while (end < text.Length && char.IsLetter(text[end])) end++;
        string word = text.Substring(at, end - at);
        return id.Contains(Vocabulary.Slugs.Of(word)) ? $"`{id}`" : $"\"{word}\" (`{id}`)";
    }

    private static bool IsToldOf(Hazard hazard) =>
        hazard.IsPoison || hazard.IsDeadly || hazard.IsNotFood || hazard.IsNamedInProse || hazard.Kind is "process" or "botanical";

    private static void Report(
        RecipeContext context, Given<string> text, string path, string id, string said, List<string> brings) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(text.Span, path),
            Key = id,
            Message = $"The text names {said}, which is not among the ingredients. It brings {Say.List(brings, "and")}, and nothing here "
                + "counts it: not the allergens, the strength, the keeping or the hazards.",
            Advice = $"List `{id}` under `ingredients` or `garnish` with its amount, or take it out of the text.",
            Caution = AllergenWords.Caution,
            Evidence = [Proof.Of("text", text.Value, context.At(text.Span))],
        });

    /// <summary>The grains that a spirit is distilled from and called after.</summary>
    private static readonly HashSet<string> Grains = [.. AllergenTable.TokensOf("gluten")];

    /// <summary>
    /// Whether a grain is the first word of a spirit in the recipe: "the rye" of a drink with rye whiskey is no grain. A nut is one,
    /// whatever the spirit is called.
    /// </summary>
    private static bool IsSpiritOf(RecipeContext context, string food, IReadOnlyList<string> tokens) =>
        tokens.All(Grains.Contains)
        && context.Profile.Parts.Any(p => p is { Material.Kind.IsSpirit: true, Item: { } item }
            && item.Id.StartsWith(food + "-", StringComparison.Ordinal));

    /// <summary>Whether a law in force lists an allergen in whatever amount.</summary>
    private static bool IsListed(Settings settings, string token) =>
        settings.Jurisdictions.Any(j => AllergenTable.Of(j, token) is { } law && double.IsNaN(law.Threshold));

    /// <summary>The allergens that the recipe has, or may have, without the text.</summary>
    private static List<string> Had(RecipeContext context)
    {
        var allergens = context.Profile.Allergens;
        return [.. allergens.Contained(context.Settings), .. allergens.Possible(context.Settings)];
    }

    /// <summary>Allergens and hazards of an item that the recipe does not have without it; by an amount, a hazard is more of it.</summary>
    private static List<string> BringsNew(RecipeContext context, Item item, bool spoken, List<string> had)
    {
        var brings = new List<string>();
        var profile = context.Profile;
        var settings = context.Settings;
        IEnumerable<string> tokens = [];
        IEnumerable<Hazard> hazards = [];
        if (item.File is Recipe inner)
        {
            var other = context.Profiles.Of(inner);
            tokens = other.Allergens.Contained(settings).Concat(other.Allergens.Possible(settings));
            hazards = other.HazardTotals.Select(static l => l.Hazard);
        }
        else if (context.Profiles.MaterialOf(item.Id) is { Ingredient: { } ingredient } material)
        {
            tokens = ingredient.Allergens is { } statement ? AllergenProfile.TokensOf(statement, settings) : [];
            hazards = HazardLoad.HazardOf(item, material, context.Profiles) is { } hazard ? [hazard] : [];
        }

        foreach (string token in tokens)
        {
            if (!had.Contains(token) && !brings.Contains(token)) brings.Add(token);
        }

        foreach (var hazard in hazards)
        {
            if ((spoken || !profile.HazardLoads.Any(l => l.Hazard.Id == hazard.Id)) && !brings.Contains(hazard.Id)) brings.Add(hazard.Id);
        }

        // What is dissolved in it: a spirit in a note is in no figure of strength, nor coffee in one of caffeine.
        if (context.Profiles.MaterialOf(item.Id) is { } of)
        {
            if (of.Of(Component.Ethanol) > Guards.TextEthanol && (spoken || !(profile.Grams[(int)Component.Ethanol] > 0)))
                brings.Add("alcohol");
            if (of.MayHoldCaffeine && (spoken || !profile.Parts.Any(static p => p.Material is { MayHoldCaffeine: true })))
                brings.Add("caffeine");
            if (of.Traces.Quinine.High > 0 && !profile.Parts.Any(static p => p.Material is { Traces.Quinine.High: > 0 }))
                brings.Add("quinine");
            if (of.Of(Component.Benzoic) + of.Of(Component.Sorbic) > 0
                && !(profile.Grams[(int)Component.Benzoic] + profile.Grams[(int)Component.Sorbic] > 0))
                brings.Add("a preservative");
            if (spoken && !of.Kind.IsFood && of.Of(Component.Acetic) + of.Of(Component.Malic) + of.Of(Component.Phosphoric) > 0)
                brings.Add("acid");
        }

        return brings;
    }
}
