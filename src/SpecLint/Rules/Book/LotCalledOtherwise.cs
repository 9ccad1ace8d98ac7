using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Keeping;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

[Rule(
    "SL9033", "lot-called-otherwise", "A vessel is labelled with the name of something else than what is in it", Level.Warning,
    Safety = true, Needs = [Fact.Abv])]
internal sealed partial class LotCalledOtherwise : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is Prep { Keep: { In.IsGiven: true } keep } prep)
            Read(context, new(keep.In.Value.Id, keep.In.Span), prep.Id, ("keep.in", ""));
        if (context.File is not Stock stock) return;
        foreach (var lot in stock.Lots)
        {
            if (!lot.Item.IsGiven) continue;
            if (lot.In.IsGiven) Read(context, new(lot.In.Value.Id, lot.In.Span), lot.Item.Value, (Lots.PathOf(lot, "in"), Lots.KeyOf(lot)));
            if (lot.Note.IsGiven) Read(context, lot.Note, lot.Item.Value, (Lots.PathOf(lot, "note"), Lots.KeyOf(lot)));
        }
    }

    private static void Read(FileContext context, Given<string> text, string id, (string Path, string Key) at)
    {
        if (context.Book.Resolve(id) is not { ByProduct: null } item) return;
        var words = SpokenWords.Of(text.Value);
        for (int i = 0; i < words.Count; i++)
        {
            int said = SpokenWords.PhraseAt(words, i, TextWords.IsLabelled);
            if (said == 0 || i + said >= words.Count || Phrases.IsDenied(text.Value, words[i].Start, words[i + said - 1].End)) continue;
            var (called, length) = SpokenWords.ItemAt(context.Book, words, i + said);
            if (length == 0) continue;
            string name = text.Value.Substring(words[i + said].Start, words[i + said + length - 1].End - words[i + said].Start);
            if (!IsSame(context, item, called, name)) Report(context, text, item, called, name, at);
            return;
        }
    }

    /// <summary>Whether a name may be that of the item: its own words, what it is like or stands in for, its kind, or an allergen in it.</summary>
    private static bool IsSame(FileContext context, Item item, FixedList<string> called, string name)
    {
        string slug = BuiltInCatalogue.Slug(name), ownName = BuiltInCatalogue.Slug(item.File.Name.Or(""));
        if (called.Contains(item.Id) || HoldsWords(item.Id, slug) || HoldsWords(ownName, slug)) return true;
        if (item.File is Prep { Target.StandsInFor: { IsGiven: true } standsIn } && called.Contains(standsIn.Value)) return true;
        var material = context.Profiles.MaterialOf(item.Id);
        if (material is not null && material.TakesAfter.Any(other => called.Contains(other.Id))) return true;
        if (called.Any(c => item.Id == c + "-juice" || material?.TakesAfter.Any(other => other.Id == c + "-juice") == true)) return true;

        // "Syrup" is the name of any syrup, unless it holds what nobody looks for in one.
        if (called.Count > 1
            && material is not null
            && called.All(c => BuiltInCatalogue.Find(c)?.IngredientKind.OrNone() == material.Kind)
            && BroughtUnsaid(context, item, called).Count == 0)
            return true;
        var told = AllergenTable.TokensOf(slug);
        return told.Count > 0 && told.Any(t => AllergensOf(context, item.Id).Contains(t));
    }

    private static bool HoldsWords(string id, string slug)
    {
        string[] words = id.Split('-');
        return slug.Split('-').All(w => words.Contains(w) || (w.EndsWith("s", StringComparison.Ordinal) && words.Contains(w.TrimEnd('s'))));
    }

    private static IReadOnlyList<string> AllergensOf(FileContext context, string id) =>
        context.Book.Resolve(id)?.File is Recipe recipe ? context.Profiles.Of(recipe).Allergens.Contained(context.Settings)
        : context.Profiles.MaterialOf(id)?.Ingredient?.Allergens is { } stated ? [.. AllergenProfile.TokensOf(stated, context.Settings)]
        : [];

    private static bool HoldsAlcohol(FileContext context, string id) =>
        context.Book.Resolve(id)?.File is Recipe recipe
            ? context.Profiles.Of(recipe).Get(Fact.Abv) is { IsKnown: true } abv && abv.Low > Guards.AlcoholFreeStandIn
            : context.Profiles.MaterialOf(id) is { Kind.GivesStrength: true };

    /// <summary>The allergens and the alcohol in an item that the name on its vessel does not tell of.</summary>
    private static List<string> BroughtUnsaid(FileContext context, Item item, FixedList<string> called)
    {
        var expected = called.SelectMany(c => AllergensOf(context, c)).ToList();
        var brings = AllergensOf(context, item.Id).Where(t => !expected.Contains(t)).ToList();
        if (HoldsAlcohol(context, item.Id) && !called.Any(c => HoldsAlcohol(context, c))) brings.Add("alcohol");
        return brings;
    }

    private static void Report(
        FileContext context, Given<string> text, Item item, FixedList<string> called, string name, (string Path, string Key) at)
    {
        var brings = BroughtUnsaid(context, item, called);
        context.Report(new(Rule)
        {
            AskedLevel = brings.Count > 0 ? Level.Error : null,
            At = context.At(text.Span, at.Path),
            Key = at.Key,
            Message = $"It holds `{item.Id}`, but its label says \"{name}\"."
                + (brings.Count > 0 ? $" Whoever pours by the label serves {Say.List(brings, "and")} without knowing it." : ""),
            Advice = $"Label it `{item.Id}` with its day before the next service. If it has been poured as \"{name}\", tell the guests and staff.",
            Caution = AllergenWords.Caution,
            Evidence = [Proof.Of("label", name, context.At(text.Span)), Proof.Of("content", item.Id)],
        });
    }
}
