using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>The names of a book, indexed once for all that looks for what a name may stand for.</summary>
internal sealed class BookNames
{
    private readonly LinkedBook book;
    private readonly string[] sorted;
    private readonly Dictionary<string, List<string>> byName = new(StringComparer.Ordinal);

    public BookNames(LinkedBook book)
    {
        this.book = book;
        sorted = [.. Candidates.Distinct(StringComparer.Ordinal)];
        Array.Sort(sorted, StringComparer.Ordinal);
        Items = new NameIndex(Candidates.Concat(BuiltInCatalogue.Synonyms));
        Drinks = new NameIndex(book.Drinks.Select(d => d.Id));
        Ids = new NameIndex(book.Ids.Concat(BuiltInCatalogue.Ids));
        foreach (var file in book.Preps.Concat<BookFile>(book.Ingredients))
        {
            if (file.Name.IsGiven) Know(BuiltInCatalogue.Slug(file.Name.Value), file.Id);
            if (file is not Ingredient ingredient) continue;
            foreach (var alias in ingredient.Aliases) Know(BuiltInCatalogue.Slug(alias.Value), file.Id);
        }
    }

    /// <summary>What a line may name: ids of the book but drinks, ids and synonyms of the catalogue.</summary>
    public NameIndex Items { get; }

    /// <summary>Ids of the drinks.</summary>
    public NameIndex Drinks { get; }

    /// <summary>Ids of the book and of the catalogue.</summary>
    public NameIndex Ids { get; }

    private IEnumerable<string> Candidates => book.Ids.Where(id => IsUsable(id)).Concat(BuiltInCatalogue.Ids);

    /// <summary>Whether an id names something that a line may use.</summary>
    public bool IsUsable(string id) => book.Resolve(id) is { } item && item.File is not Drink;

    /// <summary>Ids of the files of the book with a name or synonym, as an id.</summary>
    public IReadOnlyList<string> Named(string slug) => byName.TryGetValue(slug, out var ids) ? ids : [];

    /// <summary>Ids that begin with some words, at most so many.</summary>
    public List<string> Beginning(string start, int most)
    {
        int at = Array.BinarySearch(sorted, start, StringComparer.Ordinal);
        var found = new List<string>();
        for (int i = at < 0 ? ~at : at; i < sorted.Length && found.Count < most && sorted[i].StartsWith(start, StringComparison.Ordinal); i++) found.Add(sorted[i]);
        return found;
    }

    private void Know(string slug, string id)
    {
        if (!byName.TryGetValue(slug, out var ids)) byName.Add(slug, ids = []);
        if (ids.Count == 0 || ids[ids.Count - 1] != id) ids.Add(id);
    }
}
