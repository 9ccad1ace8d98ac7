namespace SpecLint.Vocabulary;

/// <summary>A band of a fact.</summary>
/// <param name="Low">Low end, in the unit of the fact.</param>
/// <param name="High">High end.</param>
public readonly record struct Band(double Low, double High);

/// <summary>Egg in a drink.</summary>
public enum EggPart
{
    /// <summary>No egg.</summary>
    None,

    /// <summary>White of egg.</summary>
    White,

    /// <summary>Whole egg or yolk.</summary>
    Whole,
}

/// <summary>
/// A style of drink: how it is built, and where its facts usually lie. A new style is a row of <c>styles.json</c>. A drink
/// that is given another word for a style is compared with the bands of that style, and a note says which id is meant.
/// </summary>
public sealed class Style : Word
{
    private readonly Traits traits;

    private Style(string word, Style? meant)
        : base(word, isKnown: false) => Meant = meant;

    internal Style(string id, Traits traits)
        : base(id, isKnown: true) => this.traits = traits;

    /// <summary>All styles, in the order of the table.</summary>
    public static IReadOnlyCollection<Style> All => StyleTable.All;

    /// <summary>The style of an id; a style without traits and bands where the table does not have it.</summary>
    public static Style Of(string id) => StyleTable.Find(id) ?? new Style(id, StyleTable.FindByAlias(id));

    /// <summary>Of a word that is not an id: the style that it is another word for; <see langword="null"/> if none.</summary>
    public Style? Meant { get; }

    /// <summary>Its name.</summary>
    public string Name { get; internal init; } = "";

    /// <summary>Other words for it.</summary>
    public FixedList<string> Aliases { get; internal init; } = [];

    /// <summary>Verbs that make it: <c>shake</c>, <c>stir</c>, <c>build</c> …</summary>
    public FixedList<Verb> Techniques { get; internal init; } = [];

    /// <summary>How it is chilled where a recipe gives no method.</summary>
    public TechniqueKind ImpliedTechnique { get; internal init; }

    /// <summary>Whether it is topped after the technique.</summary>
    public bool IsTopped { get; internal init; }

    /// <summary>The egg in it.</summary>
    public EggPart Egg { get; internal init; }

    /// <summary>Whether it holds cream or milk.</summary>
    public bool HasDairy { get; internal init; }

    /// <summary>Whether it may hold cream or milk, and need not.</summary>
    public bool MayHaveDairy { get; internal init; }

    /// <summary>The ice that it stands on; <see langword="null"/> where any will do.</summary>
    public Ice? Ice { get; internal init; }

    /// <summary>Ids of the glasses that it is served in; empty where the table names none.</summary>
    public FixedList<string> Glasses { get; internal init; } = [];

    /// <summary>Whether it is served hot.</summary>
    public bool IsHot { get; internal init; }

    /// <summary>Whether it cannot do without acid.</summary>
    public bool WantsAcid { get; internal init; }

    /// <summary>Whether it cannot do without sugar.</summary>
    public bool WantsSugar { get; internal init; }

    /// <summary>Whether it is chilled with ice.</summary>
    public bool NeedsIce => Has(StyleTrait.NeedsIce);

    /// <summary>Whether it is a sour.</summary>
    public bool IsSour => Has(StyleTrait.Sour);

    /// <summary>Whether it is another drink without its sparkling top.</summary>
    public bool MustSparkle => Has(StyleTrait.MustSparkle);

    /// <summary>Whether it is another drink with a sparkling top.</summary>
    public bool NeverSparkles => Has(StyleTrait.NeverSparkles);

    /// <summary>Source of the band in which most lie.</summary>
    public string UsualSource => UsualText;

    /// <summary>The same, not yet read.</summary>
    internal TableText UsualText { private get; init; } = TableText.Empty;

    /// <summary>Source of the wider band in which accepted drinks are seen.</summary>
    public string SeenSource => SeenText;

    /// <summary>The same, not yet read.</summary>
    internal TableText SeenText { private get; init; } = TableText.Empty;

    /// <summary>Whether the wider band was worked out from read figures; else it is recalled.</summary>
    public bool SeenIsComputed { get; internal init; }

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

    private bool Has(StyleTrait trait) => traits.Has((int)trait);
}

/// <summary>The yes-or-no traits of a style; each has its property in <see cref="Style"/>.</summary>
internal enum StyleTrait
{
    NeedsIce,
    Sour,
    MustSparkle,
    NeverSparkles,
}
