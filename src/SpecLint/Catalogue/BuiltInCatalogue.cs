using System.Collections.Concurrent;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Catalogue;

/// <summary>
/// The built-in ingredients. Each is the very JSON file that stands in the sources, embedded, and read by the reader of
/// a bar's own files when it is first asked for; the index of ids costs nothing to load.
/// </summary>
public static class BuiltInCatalogue
{
    private const string Prefix = "ingredient/";
    private const string Ending = ".ingredient";
    private const string AliasResource = "catalogue/aliases";

    private static readonly Dictionary<string, string> ResourceById = IndexResources();
    private static readonly ConcurrentDictionary<string, Item> Loaded = new(StringComparer.Ordinal);
    private static readonly Lazy<Dictionary<string, string>> IdByAlias = new(ReadAliases);

    /// <summary>All ids, sorted.</summary>
    public static FixedList<string> Ids { get; } = [.. ResourceById.Keys.OrderBy(k => k, StringComparer.Ordinal)];

    /// <summary>The entry of an id or of a synonym written as an id, inheritance resolved; <see langword="null"/> if none.</summary>
    public static Ingredient? Find(string id) => (Ingredient?)FindItem(id)?.File;

    /// <summary>The same as what a reference resolves to.</summary>
    internal static Item? FindItem(string id)
    {
        if (Loaded.TryGetValue(id, out var known)) return known;
        if (ResourceById.ContainsKey(id)) return Load(id);
        return IdByAlias.Value.TryGetValue(id, out string? real) ? FindItem(real) : null;
    }

    /// <summary>A synonym as an id: lower case, runs of other characters become one hyphen.</summary>
    public static string Slug(string name)
    {
        var slug = new System.Text.StringBuilder(name.Length);
        foreach (char c in name.Normalize(System.Text.NormalizationForm.FormD))
        {
            if (System.Globalization.CharUnicodeInfo.GetUnicodeCategory(c) == System.Globalization.UnicodeCategory.NonSpacingMark || c == '\'' || c == '’') continue;
            char lower = char.ToLowerInvariant(c);
            if (lower is (>= 'a' and <= 'z') or (>= '0' and <= '9')) slug.Append(lower);
            else if (slug.Length > 0 && slug[slug.Length - 1] != '-') slug.Append('-');
        }

        if (slug.Length > 0 && slug[slug.Length - 1] == '-') slug.Length--;
        return slug.ToString();
    }

    /// <summary>The text of an entry, as it stands in the sources.</summary>
    internal static SourceFile? SourceOf(string id) =>
        ResourceById.TryGetValue(id, out string? resource)
            ? new SourceFile($"catalogue/{id}.ingredient.json", Resources.Read(resource))
            : null;

    private static Item Load(string id)
    {
        var file = SourceOf(id)!;
        var entry = (Ingredient)BookReader.Read(file, FileKind.Ingredient, Measures.Default);
        return Loaded.GetOrAdd(id, new Item(id, Inheritance.Flatten(entry, Find), null, IsBuiltIn: true));
    }

    private static Dictionary<string, string> IndexResources()
    {
        var index = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string name in Resources.Names)
        {
            if (!name.StartsWith(Prefix, StringComparison.Ordinal)) continue;
            string id = name.Substring(Prefix.Length);
            if (id.EndsWith(Ending, StringComparison.Ordinal)) id = id.Substring(0, id.Length - Ending.Length);
            index[id] = name;
        }

        return index;
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
            if (slug != id && !ResourceById.ContainsKey(slug) && !index.ContainsKey(slug)) index.Add(slug, id);
        }
    }
}
