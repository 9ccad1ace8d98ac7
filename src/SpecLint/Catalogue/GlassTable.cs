
namespace SpecLint.Catalogue;

/// <summary>A type of glass: the name alone leaves its size open.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Aliases">Other names.</param>
/// <param name="BrimLow">Smallest volume to the brim, mL.</param>
/// <param name="BrimTypical">Typical volume to the brim, mL.</param>
/// <param name="BrimHigh">Largest volume to the brim, mL.</param>
/// <param name="IsIced">Whether drinks are served on ice in it.</param>
/// <param name="NeverIced">Whether ice has no place in it.</param>
/// <param name="Shape">Its shape in a word: <c>up</c>, <c>short</c>, <c>long</c>, <c>wide</c>, <c>hot</c>, <c>small</c> or <c>bowl</c>.</param>
/// <param name="Source">Source of the sizes.</param>
/// <param name="Mark">How far to trust them.</param>
public sealed record GlassType(string Id, string Name, FixedList<string> Aliases, double BrimLow, double BrimTypical, double BrimHigh, bool IsIced, bool NeverIced, string Shape, string Source, Mark Mark)
{
    /// <summary>Whether it is a stemmed glass for drinks served up.</summary>
    public bool IsUp => Shape == "up";
}

/// <summary>The table of glasses.</summary>
public static class GlassTable
{
    private static readonly Dictionary<string, GlassType> ById = Load();
    private static readonly Dictionary<string, GlassType> BySlug = IndexAliases();

    /// <summary>All types, in the order of the table.</summary>
    public static IReadOnlyCollection<GlassType> All => ById.Values;

    /// <summary>The type of an id or another name; <see langword="null"/> if none.</summary>
    public static GlassType? Find(string name) =>
        ById.TryGetValue(name, out var glass) || BySlug.TryGetValue(BuiltInCatalogue.Slug(name), out glass) ? glass : null;

    private static Dictionary<string, GlassType> Load()
    {
        var glasses = new Dictionary<string, GlassType>(StringComparer.Ordinal);
        using var document = Tables.Open("glasses");
        foreach (var row in document.RootElement.GetProperty("glasses").EnumerateArray())
        {
            var brim = row.GetProperty("brimMl");
            string id = row.Text("id");
            glasses.Add(id, new GlassType(
                id, row.Text("name"), row.Texts("aliases"), brim.Number("low"), brim.Number("typical"), brim.Number("high"),
                !row.Text("ice").StartsWith("none", StringComparison.Ordinal), row.Text("ice") == "none", row.Text("shape"), row.Text("source"), row.Mark()));
        }

        return glasses;
    }

    private static Dictionary<string, GlassType> IndexAliases()
    {
        var index = new Dictionary<string, GlassType>(StringComparer.Ordinal);
        foreach (var glass in ById.Values)
        {
            Add(glass.Name, glass);
            foreach (string alias in glass.Aliases) Add(alias, glass);
        }

        return index;

        void Add(string word, GlassType glass)
        {
            string slug = BuiltInCatalogue.Slug(word);
            if (!index.TryGetValue(slug, out _)) index.Add(slug, glass);
        }
    }
}
