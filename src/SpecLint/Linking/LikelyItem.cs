using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Linking;

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
        var names = book.Names;
        if (slug != written && names.IsUsable(slug)) return [slug];
        if (names.Named(slug) is { Count: > 0 } named) return OfOneKind(book, named);

        // An id stands twice at the most: in the book and in the catalogue.
        var begun = names.Beginning(slug + "-", (2 * MostNamed) + 1);
        return begun.Count > 0 ? OfOneKind(book, begun) : OfOneKind(book, names.Items.Slips(slug));
    }

    private static IReadOnlyList<string> OfOneKind(LinkedBook book, IReadOnlyList<string> ids)
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
        { File: Ingredient ingredient } =>
            ingredient.IngredientKind.IsGiven
                ? ingredient.IngredientKind.Value
                : BuiltInCatalogue.Find(ingredient.Like.Or(""))?.IngredientKind.OrNone() ?? ItemKind.None,
        _ => ItemKind.None,
    };
}
