using System.Buffers.Text;
using System.Collections.Concurrent;
using SpecLint.Binding;
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
    private const string SizesResource = "catalogue/sizes";
    private const string AliasResource = "catalogue/aliases";

    private static readonly Resource Text = Resource.Find(EntriesResource);
    private static readonly Resource Aliases = Resource.Find(AliasResource);
    private static readonly Dictionary<string, TextSpan> Entries = PlaceEntries();
    private static readonly ConcurrentDictionary<string, Item> Loaded = new(StringComparer.Ordinal);
    private static readonly Lazy<List<string>> AllSynonyms = new(ReadSynonyms);
    private static readonly Lazy<FixedList<string>> SortedIds = new(static () => [.. Entries.Keys.OrderBy(k => k, StringComparer.Ordinal)]);

    private static ReadOnlySpan<byte> Ending => ".ingredient"u8;

    /// <summary>All ids, sorted.</summary>
    public static FixedList<string> Ids => SortedIds.Value;

    /// <summary>Whether an entry has an id; a synonym is none.</summary>
    internal static bool Has(string id) => Entries.ContainsKey(id);

    /// <summary>Names and synonyms as ids, each of which resolves to an entry.</summary>
    internal static IEnumerable<string> Synonyms => AllSynonyms.Value;

    /// <summary>The entry of an id or of a synonym written as an id, inheritance resolved; <see langword="null"/> if none.</summary>
    public static Ingredient? Find(string id) => (Ingredient?)FindItem(id)?.File;

    /// <summary>The same as what a reference resolves to.</summary>
    internal static Item? FindItem(string id)
    {
        if (Loaded.TryGetValue(id, out var known)) return known;
        if (Entries.ContainsKey(id)) return Load(id);
        return IdOfSynonym(id) is { } real ? FindItem(real) : null;
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

    /// <summary>Where each entry stands in the resource, reckoned from the lengths of all: their text is not looked through.</summary>
    private static Dictionary<string, TextSpan> PlaceEntries()
    {
        var entries = new Dictionary<string, TextSpan>(2048, StringComparer.Ordinal);
        var sizes = Resource.Find(SizesResource).Bytes;
        int place = 0;
        while (sizes.IndexOf((byte)' ') is > 0 and var blank)
        {
            // An entry stands behind its heading, "=" and its name on a line, and is followed by a line end.
            // Of base 64, four letters are three bytes.
            var name = sizes.Slice(0, blank);
            if (!Utf8Parser.TryParse(sizes.Slice(blank + 1), out int letters, out int digits))
                throw new InvalidOperationException("A length of a built-in ingredient is no number: a fault of the build.");
            int length = letters * 3 / 4, from = place + 1 + blank + 1;
            string id = Utf8Text.Decode(name.EndsWith(Ending) ? name.Slice(0, blank - Ending.Length) : name);
            entries[id] = new TextSpan(from, length);
            place = from + length + 1;
            sizes = sizes.Slice(blank + 1 + digits + 1);
        }

        if (place > Text.Bytes.Length)
            throw new InvalidOperationException("The text of the built-in ingredients does not fit their lengths: a fault of the build.");
        return entries;
    }

    /// <summary>The entry that a synonym means, found in the sorted lines of the index by halving; <see langword="null"/> where it is none.</summary>
    private static string? IdOfSynonym(string slug)
    {
        var text = Aliases.Bytes;
        int low = 0, high = text.Length;
        while (low < high)
        {
            int start = text.Slice(0, (low + high) / 2).LastIndexOf((byte)'\n') + 1, length = text.Slice(start).IndexOf((byte)'\n') + 1;
            var line = text.Slice(start, length);
            int order = Compare(slug, line);
            if (order == 0) return Utf8Text.Decode(Between(line.Slice(line.IndexOf((byte)':'))));
            if (order < 0) high = start;
            else low = start + length;
        }

        return null;
    }

    /// <summary>The order of a word to the name on a line of the index; the brackets around all stand before and behind every name.</summary>
    private static int Compare(string slug, ReadOnlySpan<byte> line)
    {
        if (line[0] is (byte)'{' or (byte)'}') return line[0] == '{' ? 1 : -1;
        var name = Between(line);
        for (int i = 0; i < slug.Length && i < name.Length; i++)
        {
            if (slug[i] != name[i]) return slug[i] - name[i];
        }

        return slug.Length - name.Length;
    }

    /// <summary>What stands in the first pair of quotes.</summary>
    private static ReadOnlySpan<byte> Between(ReadOnlySpan<byte> text)
    {
        var inside = text.Slice(text.IndexOf((byte)'"') + 1);
        return inside.Slice(0, inside.IndexOf((byte)'"'));
    }

    /// <summary>All synonyms, from the index of them. It is made from the entries beforehand, so that they do not cost reading them all.</summary>
    private static List<string> ReadSynonyms()
    {
        var synonyms = new List<string>();
        var reader = new System.Text.Json.Utf8JsonReader(Aliases.Bytes);
        while (reader.Read())
        {
            if (reader.TokenType == System.Text.Json.JsonTokenType.PropertyName) synonyms.Add(reader.GetString()!);
        }

        return synonyms;
    }

    /// <summary>Names and synonyms as ids, with the id of their entry: what the index must hold. Reads every entry.</summary>
    internal static SortedDictionary<string, string> CollectAliases()
    {
        var index = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string id in Ids)
        {
            var entry = (Ingredient)Load(id).File;
            Add(entry.Name.IsGiven ? entry.Name.Value : id, id);
            foreach (var alias in entry.Aliases)
            {
                Add(alias.Value, id);
                Add(Slugs.WithoutUmlauts(alias.Value), id);
            }
        }

        return index;

        void Add(string name, string id)
        {
            string slug = Slug(name);
            if (slug != id && !Entries.ContainsKey(slug) && !index.ContainsKey(slug)) index.Add(slug, id);
        }
    }
}
