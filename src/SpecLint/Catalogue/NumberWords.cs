using System.Globalization;

namespace SpecLint.Catalogue;

/// <summary>Numbers in figures and in words (<c>number-words.json</c>).</summary>
internal static class NumberWords
{
    private static readonly Lazy<Dictionary<string, double>> ByWord = new(Load);

    /// <summary>Whether words, as an id, are a number.</summary>
    public static bool IsWord(string slug) => ByWord.Value.ContainsKey(slug);

    /// <summary>The number that words say, as an id; NaN where they say none.</summary>
    public static double OfWord(string slug) => ByWord.Value.TryGetValue(slug, out double number) ? number : double.NaN;

    /// <summary>The number that figures say (<c>6</c>, <c>1.5</c>, <c>1,5</c>, <c>½</c>, <c>1½</c>); NaN where they are none.</summary>
    public static double OfFigures(string written)
    {
        bool half = written.EndsWith("½", StringComparison.Ordinal);
        string figures = half ? written.Substring(0, written.Length - 1) : written;
        if (figures.Length == 0) return half ? 0.5 : double.NaN;
        return double.TryParse(figures.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number)
            ? number + (half ? 0.5 : 0)
            : double.NaN;
    }

    private static Dictionary<string, double> Load()
    {
        var words = new Dictionary<string, double>(StringComparer.Ordinal);
        using var document = Tables.Open("number-words");
        foreach (var row in Tables.Rows(document))
        {
            foreach (string word in row.Texts("words")) words[Slugs.Of(word)] = row.Number("number");
        }

        return words;
    }
}
