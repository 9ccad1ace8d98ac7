using System.Collections.Concurrent;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Catalogue;

/// <summary>
/// The built-in ingredients. Each is the very JSON file that stands in the sources, embedded among the others in one
/// resource, and read by the reader of a bar's own files when it is first asked for.
/// </summary>
public static class BuiltInCatalogue
{
    private const string EntriesResource = "catalogue/ingredients";
    private const string Ending = ".ingredient";
    private const string AliasResource = "catalogue/aliases";

    private static readonly Resource Text = Resource.Find(EntriesResource);
    private static readonly Dictionary<string, TextSpan> Entries = IndexEntries();
    private static readonly ConcurrentDictionary<string, Item> Loaded = new(StringComparer.Ordinal);
    private static readonly Lazy<Dictionary<string, string>> IdByAlias = new(ReadAliases);
    private static readonly Lazy<FixedList<string>> SortedIds = new(static () => [.. Entries.Keys.OrderBy(k => k, StringComparer.Ordinal)]);

    /// <summary>All ids, sorted.</summary>
    public static FixedList<string> Ids => SortedIds.Value;

    /// <summary>Whether an entry has an id; a synonym is none.</summary>
    internal static bool Has(string id) => Entries.ContainsKey(id);

    /// <summary>Names and synonyms as ids, each of which resolves to an entry.</summary>
    internal static IEnumerable<string> Synonyms => IdByAlias.Value.Keys;

    /// <summary>The entry of an id or of a synonym written as an id, inheritance resolved; <see langword="null"/> if none.</summary>
    public static Ingredient? Find(string id) => (Ingredient?)FindItem(id)?.File;

    /// <summary>The same as what a reference resolves to.</summary>
    internal static Item? FindItem(string id)
    {
        if (Loaded.TryGetValue(id, out var known)) return known;
        if (Entries.ContainsKey(id)) return Load(id);
        return IdByAlias.Value.TryGetValue(id, out string? real) ? FindItem(real) : null;
    }

    /// <summary>A synonym as an id: lower case, runs of other characters become one hyphen.</summary>
    public static string Slug(string name) => Slugs.Of(name);

    /// <summary>The text of an entry, as it stands in the sources.</summary>
    internal static SourceFile? SourceOf(string id) =>
        Entries.TryGetValue(id, out var place)
            ? new SourceFile($"catalogue/{id}.ingredient.json", Text.Bytes.Slice(place.Start, place.Length).ToArray())
            : null;

    private static Item Load(string id)
    {
        var file = SourceOf(id)!;
        var entry = (Ingredient)BookReader.Read(file, FileKind.Ingredient, Measures.Default);
        return Loaded.GetOrAdd(id, new Item(id, Inheritance.Flatten(entry, Find), null, IsBuiltIn: true));
    }

    /// <summary>Where each entry stands in the resource: from behind its heading, a line of "=" and its name, to the next one.</summary>
    private static Dictionary<string, TextSpan> IndexEntries()
    {
        var entries = new Dictionary<string, TextSpan>(2048, StringComparer.Ordinal);
        var text = Text.Bytes;
        int at = text.IndexOf((byte)'=');
        while (at >= 0)
        {
            int lineEnd = at + text.Slice(at).IndexOf((byte)'\n');
            string id = Utf8Text.Decode(text.Slice(at + 1, lineEnd - at - 1)).TrimEnd();
            if (id.EndsWith(Ending, StringComparison.Ordinal)) id = id.Substring(0, id.Length - Ending.Length);

            // No line of JSON starts with the sign: text cannot hold a line end.
            int from = lineEnd + 1, next = text.Slice(from).IndexOf("\n="u8);
            int end = next < 0 ? text.Length : from + next + 1;
            entries[id] = new TextSpan(from, end - from);
            at = next < 0 ? -1 : end;
        }

        return entries;
    }

    /// <summary>Reads the index of synonyms. It is made from the entries beforehand, so that one synonym does not cost reading them all.</summary>
    private static Dictionary<string, string> ReadAliases()
    {
        var index = new Dictionary<string, string>(StringComparer.Ordinal);
        var reader = new System.Text.Json.Utf8JsonReader(Resources.Read(AliasResource));
        string slug = "";
        while (reader.Read())
        {
            if (reader.TokenType == System.Text.Json.JsonTokenType.PropertyName) slug = reader.GetString()!;
            else if (reader.TokenType == System.Text.Json.JsonTokenType.String) index[slug] = reader.GetString()!;
        }

        return index;
    }

    /// <summary>Names and synonyms as ids, with the id of their entry: what the index must hold. Reads every entry.</summary>
    internal static SortedDictionary<string, string> CollectAliases()
    {
        var index = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string id in Ids)
        {
            var entry = (Ingredient)Load(id).File;
            Add(entry.Name.IsGiven ? entry.Name.Value : id, id);
            foreach (var alias in entry.Aliases) Add(alias.Value, id);
        }

        return index;

        void Add(string name, string id)
        {
            string slug = Slug(name);
            if (slug != id && !Entries.ContainsKey(slug) && !index.ContainsKey(slug)) index.Add(slug, id);
        }
    }
}
