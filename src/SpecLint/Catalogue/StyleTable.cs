using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Catalogue;

/// <summary>A band of a fact.</summary>
/// <param name="Low">Low end, in the unit of the fact.</param>
/// <param name="High">High end.</param>
public readonly record struct Band(double Low, double High);

/// <summary>A style of drink: how it is built, and where its facts usually lie.</summary>
public sealed class Style
{
    internal Style(string id) => Id = id;

    /// <summary>Its id.</summary>
    public string Id { get; }

    /// <summary>Its name.</summary>
    public string Name { get; internal init; } = "";

    /// <summary>Other words for it.</summary>
    public FixedList<string> Aliases { get; internal init; } = [];

    /// <summary>Verbs that make it: <c>shake</c>, <c>stir</c>, <c>build</c> …</summary>
    public FixedList<string> Techniques { get; internal init; } = [];

    /// <summary>Whether it is topped after the technique.</summary>
    public bool IsTopped { get; internal init; }

    /// <summary><c>none</c>, <c>white</c> or <c>whole</c>.</summary>
    public string Egg { get; internal init; } = "none";

    /// <summary>Whether it holds cream or milk.</summary>
    public bool HasDairy { get; internal init; }

    /// <summary>Whether it may hold cream or milk, and need not.</summary>
    public bool MayHaveDairy { get; internal init; }

    /// <summary>The ice that it stands on: <c>crushed</c>; empty where any will do.</summary>
    public string Ice { get; internal init; } = "";

    /// <summary>Ids of the glasses that it is served in; empty where the table names none.</summary>
    public FixedList<string> Glasses { get; internal init; } = [];

    /// <summary>Whether it is served hot.</summary>
    public bool IsHot { get; internal init; }

    /// <summary>What it cannot do without: <c>acid</c>, <c>sugar</c> …</summary>
    public FixedList<string> Wants { get; internal init; } = [];

    /// <summary>Source of the band in which most lie.</summary>
    public string UsualSource { get; internal init; } = "";

    /// <summary>Source of the wider band in which accepted drinks are seen.</summary>
    public string SeenSource { get; internal init; } = "";

    /// <summary>How far to trust the wider band.</summary>
    public Mark SeenMark { get; internal init; }

    /// <summary>The source of the usual band in a few words.</summary>
    public string UsualInShort => InShort(UsualSource);

    /// <summary>The source of the wider band in a few words.</summary>
    public string SeenInShort => InShort(SeenSource);

    private readonly Dictionary<Fact, Band> usual = [];
    private readonly Dictionary<Fact, Band> seen = [];

    /// <summary>The band in which most drinks of the style lie; <see langword="null"/> where none is given.</summary>
    public Band? Usual(Fact fact) => usual.TryGetValue(fact, out var band) ? band : null;

    /// <summary>The band in which accepted drinks of the style are seen; <see langword="null"/> where none is given.</summary>
    public Band? Seen(Fact fact) => seen.TryGetValue(fact, out var band) ? band : null;

    internal void Add(bool isUsual, Fact fact, Band band) => (isUsual ? usual : seen)[fact] = band;

    private static string InShort(string source) =>
        source.StartsWith("D. Arnold", StringComparison.Ordinal) ? "D. Arnold 2014, as recalled"
        : source.IndexOf("official list", StringComparison.Ordinal) >= 0 ? "official list of the trade, computed"
        : "trade practice";

    /// <summary>Whether it wants something.</summary>
    public bool Needs(string what)
    {
        foreach (string want in Wants)
        {
            if (want == what) return true;
        }

        return false;
    }
}

/// <summary>The table of styles.</summary>
public static class StyleTable
{
    private static readonly (string Name, Fact Fact)[] Facts =
    [
        ("mixVolume", Fact.MixVolume), ("servedVolume", Fact.ServedVolume), ("abv", Fact.Abv), ("sugar", Fact.Sugar), ("acid", Fact.Acid),
        ("sugarAcidRatio", Fact.SugarAcidRatio), ("dilution", Fact.Dilution),
    ];

    private static readonly Dictionary<string, Style> ById = Load();
    private static readonly Dictionary<string, Style> BySlug = IndexAliases();

    /// <summary>All styles, in the order of the table.</summary>
    public static IReadOnlyCollection<Style> All => ById.Values;

    /// <summary>The style of an id; <see langword="null"/> if none.</summary>
    public static Style? Find(string id) => ById.TryGetValue(id, out var style) ? style : null;

    /// <summary>The style that another word means; <see langword="null"/> if none.</summary>
    public static Style? FindByAlias(string word) => BySlug.TryGetValue(BuiltInCatalogue.Slug(word), out var style) ? style : null;

    private static Dictionary<string, Style> Load()
    {
        var styles = new Dictionary<string, Style>(StringComparer.Ordinal);
        using var document = Tables.Open("styles");
        foreach (var row in document.RootElement.GetProperty("styles").EnumerateArray())
        {
            var build = row.GetProperty("build");
            var style = new Style(row.Text("id"))
            {
                Name = row.Text("name"),
                Aliases = row.Texts("aliases"),
                Techniques = build.Texts("technique"),
                IsTopped = build.TryGetProperty("topped", out var topped) && topped.GetBoolean(),
                Egg = build.Text("egg"),
                HasDairy = build.TryGetProperty("dairy", out var dairy) && dairy.ValueKind == System.Text.Json.JsonValueKind.True,
                MayHaveDairy = dairy.ValueKind == System.Text.Json.JsonValueKind.String,
                Ice = build.Text("ice"),
                Glasses = row.Texts("glasses"),
                IsHot = build.TryGetProperty("hot", out var hot) && hot.GetBoolean(),
                Wants = build.Texts("wants"),
                UsualSource = row.Text("usualSource"),
                SeenSource = row.Text("seenSource"),
                SeenMark = row.Text("seenMark") == "computed" ? Mark.Computed : Mark.Memory,
            };
            foreach (var (name, fact) in Facts)
            {
                if (row.GetProperty("usual").TryGetProperty(name, out var usual)) style.Add(true, fact, new Band(usual.Number("low"), usual.Number("high")));
                if (row.GetProperty("seen").TryGetProperty(name, out var seen)) style.Add(false, fact, new Band(seen.Number("low"), seen.Number("high")));
            }

            styles.Add(style.Id, style);
        }

        return styles;
    }

    private static Dictionary<string, Style> IndexAliases()
    {
        var index = new Dictionary<string, Style>(StringComparer.Ordinal);
        foreach (var style in ById.Values)
        {
            Add(style.Name, style);
            foreach (string alias in style.Aliases) Add(alias, style);
        }

        return index;

        void Add(string word, Style style)
        {
            string slug = BuiltInCatalogue.Slug(word);
            if (!index.TryGetValue(slug, out _)) index.Add(slug, style);
        }
    }
}
