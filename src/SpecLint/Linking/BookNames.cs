using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Linking;

/// <summary>The names of a book, each index made once, when something first looks for what a name may stand for.</summary>
internal sealed class BookNames(LinkedBook book)
{
    private readonly Lazy<string[]> sorted = new(() => Sorted(book));
    private readonly Lazy<Dictionary<string, List<string>>> byName = new(() => IndexNames(book));
    private readonly Lazy<NameIndex> items = new(() => new NameIndex(Candidates(book).Concat(BuiltInCatalogue.Synonyms)));
    private readonly Lazy<NameIndex> drinks = new(() => new NameIndex(book.Drinks.Select(d => d.Id)));
    private readonly Lazy<NameIndex> ids = new(() => new NameIndex(book.Ids.Concat(BuiltInCatalogue.Ids)));

    /// <summary>What a line may name: ids of the book but drinks, ids and synonyms of the catalogue.</summary>
    public NameIndex Items => items.Value;

    /// <summary>Ids of the drinks.</summary>
    public NameIndex Drinks => drinks.Value;

    /// <summary>Ids of the book and of the catalogue.</summary>
    public NameIndex Ids => ids.Value;

    /// <summary>Whether an id names something that a line may use.</summary>
    public bool IsUsable(string id) => IsUsable(book, id);

    /// <summary>Ids of the files of the book with a name or synonym, as an id.</summary>
    public IReadOnlyList<string> Named(string slug) => byName.Value.TryGetValue(slug, out var ids) ? ids : [];

    /// <summary>Ids that begin with some words, at most so many.</summary>
    public List<string> Beginning(string start, int most)
    {
        string[] all = sorted.Value;
        int at = Array.BinarySearch(all, start, StringComparer.Ordinal);
        var found = new List<string>();
        for (int i = at < 0 ? ~at : at; i < all.Length && found.Count < most && all[i].StartsWith(start, StringComparison.Ordinal); i++)
            found.Add(all[i]);
        return found;
    }

    private static bool IsUsable(LinkedBook book, string id) => book.Resolve(id) is { } item && item.File is not Drink;

    private static IEnumerable<string> Candidates(LinkedBook book) => book.Ids.Where(id => IsUsable(book, id)).Concat(BuiltInCatalogue.Ids);

    private static string[] Sorted(LinkedBook book)
    {
        string[] all = [.. Candidates(book).Distinct(StringComparer.Ordinal)];
        Array.Sort(all, StringComparer.Ordinal);
        return all;
    }

    private static Dictionary<string, List<string>> IndexNames(LinkedBook book)
    {
        var index = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var file in book.Preps.Concat<BookFile>(book.Ingredients))
        {
            if (file.Name.IsGiven) Know(index, BuiltInCatalogue.Slug(file.Name.Value), file.Id);
            if (file is not Ingredient ingredient) continue;
            foreach (var alias in ingredient.Aliases) Know(index, BuiltInCatalogue.Slug(alias.Value), file.Id);
        }

        return index;
    }

    private static void Know(Dictionary<string, List<string>> index, string slug, string id)
    {
        if (!index.TryGetValue(slug, out var ids)) index.Add(slug, ids = []);
        if (ids.Count == 0 || ids[ids.Count - 1] != id) ids.Add(id);
    }
}
