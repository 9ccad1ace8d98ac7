using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>
/// The items that a name which resolves to nothing may stand for: by the name or a synonym that a file of the book gives, by its
/// first words (<c>malic</c> for <c>malic-acid</c>), else by a slip of the hand. Things of several kinds are no answer: a wrong
/// item brings wrong allergens.
/// </summary>
internal static class LikelyItem
{
    private const int MostNamed = 3;

    /// <summary>What may be meant, the likeliest first; empty where nothing fits, or where what fits is of several kinds.</summary>
    /// <param name="book">The book.</param>
    /// <param name="written">What is written in place of an id.</param>
    public static IReadOnlyList<string> Of(LinkedBook book, string written)
    {
        string slug = BuiltInCatalogue.Slug(written);
        if (slug.Length == 0) return [];
        if (slug != written && Usable(book, slug)) return [slug];
        var named = book.Preps.Concat<BookFile>(book.Ingredients).Where(f => Names(f, slug)).Select(f => f.Id).ToList();
        if (named.Count > 0) return OfOneKind(book, named);
        var begun = Candidates(book).Where(id => id.StartsWith(slug + "-", StringComparison.Ordinal)).ToList();
        return begun.Count > 0 ? OfOneKind(book, begun) : OfOneKind(book, NearestName.Slips(slug, Candidates(book).Concat(BuiltInCatalogue.Synonyms)));
    }

    private static bool Names(BookFile file, string slug)
    {
        if (file.Name.IsGiven && BuiltInCatalogue.Slug(file.Name.Value) == slug) return true;
        if (file is not Ingredient ingredient) return false;
        foreach (var alias in ingredient.Aliases)
        {
            if (BuiltInCatalogue.Slug(alias.Value) == slug) return true;
        }

        return false;
    }

    private static IEnumerable<string> Candidates(LinkedBook book) => book.Ids.Where(id => Usable(book, id)).Concat(BuiltInCatalogue.Ids);

    private static bool Usable(LinkedBook book, string id) => book.Resolve(id) is { } item && item.File is not Drink;

    private static IReadOnlyList<string> OfOneKind(LinkedBook book, List<string> ids)
    {
        var found = new List<string>();
        ItemKind? kind = null;
        foreach (string id in ids)
        {
            if (book.Resolve(id) is not { } item || found.Contains(item.Id)) continue;
            var its = KindOf(item);
            if (kind is not null && its != kind) return [];
            kind = its;
            found.Add(item.Id);
        }

        found.Sort(static (a, b) => a.Length != b.Length ? a.Length.CompareTo(b.Length) : string.CompareOrdinal(a, b));
        return found.Count > MostNamed ? [] : found;
    }

    private static ItemKind KindOf(Item item) => item switch
    {
        { ByProduct: not null } => ItemKind.ByProduct,
        { File: Prep prep } => prep.Family.OrNone().Kind is { IsJuice: false } other ? other : ItemKind.Juice,
        { File: Ingredient ingredient } => ingredient.IngredientKind.IsGiven ? ingredient.IngredientKind.Value : BuiltInCatalogue.Find(ingredient.Like.Or(""))?.IngredientKind.OrNone() ?? ItemKind.None,
        _ => ItemKind.None,
    };
}
