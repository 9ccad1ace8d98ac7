
namespace SpecLint.Catalogue;

/// <summary>A type of vessel, and what it holds out.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Aliases">Other names.</param>
/// <param name="IsForPressure">Whether it is made for pressure.</param>
/// <param name="RatingBar">Rated gauge pressure, bar; NaN where none is given.</param>
/// <param name="Source">Source.</param>
/// <param name="Mark">How far to trust it.</param>
public sealed record VesselType(string Id, string Name, FixedList<string> Aliases, bool IsForPressure, double RatingBar, string Source, Mark Mark);

/// <summary>The table of vessels.</summary>
public static class VesselTable
{
    private static readonly List<VesselType> Rows = Load();
    private static readonly Dictionary<string, VesselType> BySlug = Index();

    /// <summary>All types, in the order of the table.</summary>
    public static IReadOnlyList<VesselType> All => Rows;

    /// <summary>The type that words name ("canning jar", "keg, chilled"); <see langword="null"/> if none does.</summary>
    public static VesselType? Find(string words)
    {
        if (BySlug.TryGetValue(BuiltInCatalogue.Slug(words), out var exact)) return exact;
        int comma = words.IndexOf(',');
        return comma > 0 && BySlug.TryGetValue(BuiltInCatalogue.Slug(words.Substring(0, comma)), out var before) ? before : null;
    }

    private static List<VesselType> Load()
    {
        var vessels = new List<VesselType>();
        using var document = Tables.Open("vessels");
        foreach (var row in document.RootElement.GetProperty("vessels").EnumerateArray())
        {
            vessels.Add(new VesselType(
                row.Text("id"), row.Text("name"), row.Texts("aliases"),
                row.TryGetProperty("forPressure", out var made) && made.GetBoolean(), row.Number("ratingBar"), row.Text("source"), row.Mark()));
        }

        return vessels;
    }

    private static Dictionary<string, VesselType> Index()
    {
        var index = new Dictionary<string, VesselType>(StringComparer.Ordinal);
        foreach (var vessel in Rows)
        {
            Add(vessel.Id, vessel);
            Add(vessel.Name, vessel);
            foreach (string alias in vessel.Aliases) Add(alias, vessel);
        }

        return index;

        void Add(string word, VesselType vessel)
        {
            string slug = BuiltInCatalogue.Slug(word);
            if (!index.TryGetValue(slug, out _)) index.Add(slug, vessel);
        }
    }
}
