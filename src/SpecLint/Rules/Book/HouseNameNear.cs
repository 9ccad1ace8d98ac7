using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;

namespace SpecLint.Rules.Book;

[Rule("SL9026", "house-name-near", "An item of the catalogue where the house makes one of nearly the same name", Level.Note)]
internal sealed partial class HouseNameNear : BookRule
{
    public override void Check(BookContext context)
    {
        if (context.Book.Preps.Count == 0) return;
        var heads = HeadsOfBought(context.Book);
        if (heads.Count == 0) return;
        var houses = new Dictionary<string, List<(Prep Prep, HashSet<string> Words)>>(StringComparer.Ordinal);
        foreach (var prep in context.Book.Preps)
        {
            Know(houses, heads, prep, prep.Id);
            if (prep.Name.IsGiven && BuiltInCatalogue.Slug(prep.Name.Value) is var slug && slug != prep.Id) Know(houses, heads, prep, slug);
        }

        // Each name once, and the recipes again only where one of them is near.
        var near = new Dictionary<string, Prep>(StringComparer.Ordinal);
        foreach (string written in context.Book.UsedIds)
        {
            if (NearTo(context.Book, houses, written) is { } prep) near.Add(written, prep);
        }

        if (near.Count == 0) return;
        foreach (var recipe in context.Book.Recipes)
        {
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (line.Item.IsGiven && near.TryGetValue(line.Item.Value, out var prep) && prep != recipe && !Uses(recipe, prep.Id))
                    context.Report(Find(context, recipe, line, prep));
            }
        }
    }

    /// <summary>The heads of the names that lead to the catalogue: preparations with other heads are near to none of them.</summary>
    private static HashSet<string> HeadsOfBought(LinkedBook book)
    {
        var heads = new HashSet<string>(StringComparer.Ordinal);
        foreach (string written in book.UsedIds)
        {
            if (book.Resolve(written) is { IsBuiltIn: true } && WordsOf(written).Count >= 2) heads.Add(HeadOf(written));
        }

        return heads;
    }

    private static void Know(
        Dictionary<string, List<(Prep Prep, HashSet<string> Words)>> houses, HashSet<string> heads, Prep prep, string slug)
    {
        string head = HeadOf(slug);
        if (!heads.Contains(head)) return;
        var words = WordsOf(slug);
        if (words.Count == 0) return;
        if (!houses.TryGetValue(head, out var list)) houses.Add(head, list = []);
        list.Add((prep, words));
    }

    /// <summary>
    /// The preparation whose name is that of an item of the catalogue but for words that any house puts before its own; where the
    /// item is named by a synonym, which hides what it resolves to, but for two more words. One that is made of the item is not.
    /// </summary>
    private static Prep? NearTo(LinkedBook book, Dictionary<string, List<(Prep Prep, HashSet<string> Words)>> houses, string written)
    {
        if (book.Resolve(written) is not { IsBuiltIn: true } item) return null;
        var words = WordsOf(written);
        if (words.Count < 2 || !houses.TryGetValue(HeadOf(written), out var list)) return null;
        foreach (var (prep, its) in list)
        {
            int more = its.Count - words.Count;
            if (more >= 0 && more <= (item.Id == written ? 0 : 2) && words.IsSubsetOf(its) && !IsMadeOf(book, prep, item.Id)) return prep;
        }

        return null;
    }

    private static bool IsMadeOf(LinkedBook book, Prep prep, string id) =>
        prep.Ingredients.Any(l => l.Item.IsGiven && book.Resolve(l.Item.Value)?.Id == id);

    private static bool Uses(Recipe recipe, string id)
    {
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Item.IsGiven && line.Item.Value == id) return true;
        }

        return false;
    }

    private static HashSet<string> WordsOf(string slug) =>
        new(slug.Split('-').Where(w => !NameWords.IsNeutral(w)).Select(NameWords.Canonical), StringComparer.Ordinal);

    private static string HeadOf(string slug) =>
        NameWords.Canonical(slug.Split('-').LastOrDefault(w => w.Length > 1 && !char.IsDigit(w[0]) && !NameWords.IsNeutral(w)) ?? "");

    private static Finding Find(BookContext context, Recipe recipe, Line line, Prep prep)
    {
        var item = context.Book.Resolve(line.Item.Value)!;
        return new(Rule)
        {
            At = new(recipe.At(line.Item.Span), RecipeContext.PathOf(line, "item")),
            Message = $"`{line.Item.Value}` is the catalogue's {item.File.Name.Or(item.Id)}. The house makes `{prep.Id}`, which has nearly "
                + "the same name.",
            Advice = $"Write `{prep.Id}` if the house's own is meant.",
            Evidence = [Proof.Of("house preparation", prep.Id, prep.Head)],
            Related = [new RelatedPlace(prep.Head, "the house's own")],
        };
    }
}
