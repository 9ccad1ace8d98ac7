using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>SL7028: quinine, caffeine, liquorice, royal jelly or pollen without the words that go with it.</summary>
internal sealed class StatementMissing : RecipeRule
{
    private static readonly Limit CaffeineLimit = Limits.Of("caffeine-statement");
    private static readonly LabelRule Caffeine = LabellingTable.Of("caffeine-high");
    private static readonly (string Id, string[] Words, LabelRule[] Laws, string Text)[] Statements =
    [
        ("cinchona-bark", ["quinine", "cinchona"], [LabellingTable.Of("quinine-name"), LabellingTable.Of("quinine-name-us")], "contains quinine"),
        ("liquorice-root", ["liquorice", "licorice"], [LabellingTable.Of("liquorice")], "contains liquorice"),
        ("royal-jelly", ["royal jelly"], [LabellingTable.Of("royal-jelly")], "This product contains royal jelly which has been reported to cause severe allergic reactions and in rare cases, fatalities, especially in asthma and allergy sufferers"),
        ("bee-pollen", ["pollen"], [LabellingTable.Of("bee-pollen")], "This product contains bee pollen which can cause severe allergic reactions"),
    ];

    private static readonly RuleInfo Rule = new("SL7028", "statement-missing", "A substance is in it that the guest has to be told of by name", Level.Warning)
    {
        Needs = [Fact.Caffeine, Fact.ServedVolume],
        Limits = ["caffeine-statement"],
        Safety = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            // It is found where it goes in, not in every recipe above.
            if (part.Item?.File is not Ingredient) continue;
            foreach (var (id, words, laws, text) in Statements)
            {
                if (!Additives.IsOrLike(context, part.Item, id)) continue;
                LabelRule? law = null;
                foreach (var one in laws) law ??= one.AppliesIn(context.Settings) ? one : null;
                if (law is null || Additives.IsSaid(context.Recipe, words)) continue;
                context.Report(Missing(context, part, words[0], text, law, $"`{part.Item.Id}` brings {words[0]}"));
            }
        }

        CheckCaffeine(context);
    }

    private static void CheckCaffeine(RecipeContext context)
    {
        if (!CaffeineLimit.AppliesIn(context.Settings)) return;
        var caffeine = context.Fact(Fact.Caffeine);
        if (!caffeine.IsKnown || caffeine.Low <= 0 || context.Recipe is not Drink) return;
        var volume = context.Fact(Fact.ServedVolume);
        if (!volume.IsKnown || volume.High <= 0) return;
        double low = 1000 * caffeine.Low / volume.High, typical = 1000 * caffeine.Value / volume.Value, high = 1000 * caffeine.High / volume.Low;
        if (low <= CaffeineLimit.Value || Additives.IsSaid(context.Recipe, ["caffeine"])) return;

        // The law spares what is named coffee or tea; who reads such a name expects caffeine.
        foreach (var leaf in RecipeTree.Of(context.Profile))
        {
            if (leaf.Ingredient.IngredientKind.Or("") is "coffee" or "tea") return;
        }

        var part = context.Profile.Parts.FirstOrDefault(p => p.Material is { Traces.Caffeine.Typical: > 0 });
        if (part is null) return;
        context.Report(Missing(context, part, "caffeine", $"{Caffeine.Text} ({Say.Number(typical / 10, 0)} mg/100 ml)", Caffeine, $"it holds {Say.Range(typical, low, high, "mg/L")} of caffeine, over {Say.Number(CaffeineLimit.Value)} mg/L"));
    }

    private static Finding Missing(RecipeContext context, Part part, string what, string text, LabelRule law, string because)
    {
        string start = char.ToUpperInvariant(because[0]) + because.Substring(1);
        return new Finding(Rule)
        {
            AskedLevel = law.LevelCap,
            Place = context.At(part.Line.Item.Span),
            Subject = context.Id,
            Path = RecipeContext.PathOf(part.Line, "item"),
            Key = what,
            Message = $"{start}, and nothing tells the guest ({law.Source}).",
            Advice = $"Say it under `declares.advisory`, and on the menu of every drink made with it: \"{text}\".",
            Caution = $"Some people must not have {what}: follow the local law, and ask where you are not sure.",
            Evidence = [Proof.Of("text", text), Proof.Of("law", law.Source)],
            Corrections = Additives.Say(context.Recipe, text) is { } edit ? [new Correction(CorrectionGrade.Proposed, $"Say \"{text}\".", [edit])] : [],
        };
    }
}

/// <summary>What the rules on statements share.</summary>
internal static class Additives
{
    /// <summary>Whether an item is a catalogue entry, or a bar's own file that is like it.</summary>
    public static bool IsOrLike(BookContext context, Item item, string id)
    {
        if (item.Id == id) return true;
        var next = item.File as Ingredient;
        for (int i = 0; i < 16 && next is { Like.IsGiven: true }; i++)
        {
            if (next.Like.Value == id) return true;
            next = context.Book.Resolve(next.Like.Value)?.File as Ingredient;
        }

        return false;
    }

    /// <summary>Whether an advisory of the recipe has one of some words.</summary>
    public static bool IsSaid(Recipe recipe, string[] words)
    {
        foreach (var text in recipe.Declares?.Advisory ?? [])
        {
            if (!text.IsGiven) continue;
            foreach (string word in words)
            {
                if (text.Value.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0) return true;
            }
        }

        return false;
    }

    /// <summary>The edit that adds an advisory.</summary>
    public static TextEdit? Say(Recipe recipe, string text)
    {
        if (recipe.Declares is null) return JsonEdits.AddProperty(recipe, "", "declares", $"{{ \"advisory\": [\"{text}\"] }}");
        var advisory = recipe.Declares.Advisory;
        return advisory.Count == 0
            ? JsonEdits.AddProperty(recipe, "declares", "advisory", $"[\"{text}\"]")
            : JsonEdits.AddToList(recipe, new Reading.Given<FixedList<Reading.Given<string>>>(advisory, advisory[0].Span), text);
    }
}
