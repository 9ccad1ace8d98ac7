namespace SpecLint.Vocabulary;

/// <summary>
/// A type of glass: the name alone leaves its size open. A drink names it by its id or another name, or names a glass of
/// bar.json. A new type is a row of <c>glasses.json</c>.
/// </summary>
public sealed class GlassType : Word
{
    private GlassType(string word)
        : base(word, isKnown: false)
    {
    }

    internal GlassType(string id, string name)
        : base(id, isKnown: true) => Name = name;

    /// <summary>All types, in the order of the table.</summary>
    public static IReadOnlyCollection<GlassType> All => GlassTable.All;

    /// <summary>The type of an id or another name; one that is not known where the table does not have it.</summary>
    public static GlassType Of(string word) => GlassTable.Find(word) ?? new GlassType(word);

    /// <summary>Its name.</summary>
    public string Name { get; } = "";

    /// <summary>Other names.</summary>
    public FixedList<string> Aliases { get; internal init; } = [];

    /// <summary>Smallest volume to the brim, mL.</summary>
    public double BrimLow { get; internal init; } = double.NaN;

    /// <summary>Typical volume to the brim, mL.</summary>
    public double BrimTypical { get; internal init; } = double.NaN;

    /// <summary>Largest volume to the brim, mL.</summary>
    public double BrimHigh { get; internal init; } = double.NaN;

    /// <summary>Whether drinks are served on ice in it.</summary>
    public bool IsIced { get; internal init; }

    /// <summary>Whether ice has no place in it.</summary>
    public bool NeverIced { get; internal init; }

    /// <summary>Whether it is filled up: a snifter or a wine glass is meant to have room.</summary>
    public bool IsFilledUp { get; internal init; }

    /// <summary>Its shape in a word: <c>up</c>, <c>short</c>, <c>long</c>, <c>wide</c>, <c>hot</c>, <c>small</c> or <c>bowl</c>.</summary>
    public string Shape { get; internal init; } = "";

    /// <summary>Source of the sizes.</summary>
    public string Source => SourceText;

    /// <summary>The same, not yet read.</summary>
    internal TableText SourceText { private get; init; } = TableText.Empty;

    /// <summary>How far to trust them.</summary>
    public Mark Mark { get; internal init; }

    /// <summary>Whether it is a stemmed glass for drinks served up.</summary>
    public bool IsUp => Shape == "up";

    /// <summary>Whether it is a tall glass for long drinks.</summary>
    internal bool IsTall => Shape == "long";
}

/// <summary>The table of glasses.</summary>
internal static class GlassTable
{
    private static readonly Dictionary<string, GlassType> ById = Load();
    private static readonly Dictionary<string, GlassType> BySlug = Slugs.Index(ById.Values, static glass => glass.Aliases.Prepend(glass.Name));

    /// <summary>All types, in the order of the table.</summary>
    public static IReadOnlyCollection<GlassType> All => ById.Values;

    /// <summary>The type of an id or another name; <see langword="null"/> if none.</summary>
    public static GlassType? Find(string name) =>
        ById.TryGetValue(name, out var glass) || BySlug.TryGetValue(Slugs.Of(name), out glass) ? glass : null;

    private static Dictionary<string, GlassType> Load()
    {
        var glasses = new Dictionary<string, GlassType>(StringComparer.Ordinal);
        using var document = Tables.Open("glasses");
        foreach (var row in document.Root.Get("glasses").Items)
        {
            var brim = row.Get("brimMl");
            string id = row.Text("id"), ice = row.Text("ice");
            glasses.Add(id, new GlassType(id, row.Text("name"))
            {
                Aliases = row.Texts("aliases"),
                BrimLow = brim.Number("low"),
                BrimTypical = brim.Number("typical"),
                BrimHigh = brim.Number("high"),
                IsIced = !ice.StartsWith("none", StringComparison.Ordinal),
                NeverIced = ice == "none",
                IsFilledUp = row.Flag("filledUp"),
                Shape = row.Text("shape"),
                SourceText = row.TextLater("source"),
                Mark = row.Mark(),
            });
        }

        return glasses;
    }
}
