namespace SpecLint.Catalogue;

/// <summary>The words by which amounts and ratios are said in a text (<c>text-words.json</c>).</summary>
internal static class AmountWords
{
    private static readonly HashSet<string> Sugar, Water, Parts, To, Thans, Others;
    private static readonly Dictionary<string, double> Multiples = new(StringComparer.Ordinal);

    static AmountWords()
    {
        using var document = Tables.Open("text-words");
        var words = new Dictionary<string, FixedList<string>>(StringComparer.Ordinal);
        foreach (var row in Tables.Rows(document)) words.Add(row.Text("role"), row.Texts("words"));
        (EqualAmounts, Otherwise, PartOfIt) = (words["equalAmounts"], words["otherwise"], words["partOfIt"]);
        Sugar = new HashSet<string>(words["sugarNamed"], StringComparer.OrdinalIgnoreCase);
        Water = new HashSet<string>(words["waterNamed"], StringComparer.OrdinalIgnoreCase);
        (Parts, To, Thans) = (SlugsOf(words["part"]), SlugsOf(words["ratioTo"]), SlugsOf(words["than"]));
        Others = SlugsOf(words["ofAnother"]);
        Others.UnionWith(SlugsOf(words["otherwise"]));
        foreach (var (role, factor) in ((string, double)[])[("twice", 2), ("thrice", 3), ("halfAsMuch", 0.5)])
        {
            foreach (string word in SlugsOf(words[role])) Multiples[word] = factor;
        }
    }

    /// <summary>What calls the amounts of all parts equal.</summary>
    public static FixedList<string> EqualAmounts { get; }

    /// <summary>What makes a text be of something else than the amounts as they are.</summary>
    public static FixedList<string> Otherwise { get; }

    /// <summary>What makes an amount be of a part of a line, or of another size; a blank behind a word belongs to it.</summary>
    public static FixedList<string> PartOfIt { get; }

    /// <summary>Whether a word names the sweetener of a syrup.</summary>
    public static bool IsSugar(string word) => Sugar.Contains(word);

    /// <summary>Whether a word names its water.</summary>
    public static bool IsWater(string word) => Water.Contains(word);

    /// <summary>Whether words, as an id, count parts.</summary>
    public static bool IsPart(string slug) => Parts.Contains(slug);

    /// <summary>Whether words, as an id, stand between the two sides of a ratio.</summary>
    public static bool IsTo(string slug) => To.Contains(slug);

    /// <summary>Whether words, as an id, stand before what is compared with.</summary>
    public static bool IsThan(string slug) => Thans.Contains(slug);

    /// <summary>Whether words, as an id, speak of another recipe than this one.</summary>
    public static bool IsOfAnother(string slug) => Others.Contains(slug);

    /// <summary>How often as much some words say, as an id; NaN where they say no multiple.</summary>
    public static double MultipleOf(string slug) => Multiples.TryGetValue(slug, out double factor) ? factor : double.NaN;

    private static HashSet<string> SlugsOf(FixedList<string> words) => new(words.Select(Slugs.Of), StringComparer.Ordinal);
}
