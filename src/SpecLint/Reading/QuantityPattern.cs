using System.Text;

namespace SpecLint.Reading;

/// <summary>Writes what <see cref="QuantityReader"/> reads as a pattern (ECMA-262 with Unicode), for the published schemas.</summary>
/// <remarks>
/// A pattern cannot compare numbers: a range that runs downwards and a number beyond the limits of its property pass it. A
/// decimal comma does not pass, since it is a finding. Words that a bar adds under <c>measures</c> are not known to it.
/// </remarks>
internal static class QuantityPattern
{
    private const string Blank = "[ \\u00A0\\u2009\\u202F]";
    private const string Vulgar = "[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]";
    private const string Fraction = "[0-9]{1,3}[/\\u2044][1-9][0-9]{0,2}";
    private const string Number =
        $"(?:(?:[0-9]{{1,3}}(?:{Blank}+|-))?{Fraction}"
        + $"|(?:[0-9]{{1,3}}(?:{Blank}*|-))?{Vulgar}"
        + "|[0-9]{1,7}(?:\\.[0-9]{1,8})?|\\.[0-9]{1,8})";
    private static readonly string[] Endings = ["s", "es", ".", "s."];

    private const string Sign = "[-\\u2212]?";
    private const string To = $"(?:{Blank}*[-\\u2010\\u2011\\u2012\\u2013\\u2014]{Blank}*|{Blank}+[tT][oO]{Blank}+)";

    /// <summary>The pattern of quantities that measure one of some dimensions.</summary>
    /// <param name="dimensions">The dimensions; none means bare numbers only.</param>
    /// <param name="bare">Whether the unit may be left out.</param>
    public static string Of(IReadOnlyList<Dimension> dimensions, bool bare)
    {
        var pattern = new StringBuilder("^").Append(Blank).Append("*(?:");
        int start = pattern.Length;
        if (bare) Join(pattern, start, Range(signed: false));
        string units = Units(word => dimensions.Contains(word.Unit.Dimension) && word.Unit.Dimension != Dimension.Temperature);
        if (units.Length > 0) Join(pattern, start, $"{Range(signed: false)}{Blank}*(?:{units})");
        if (dimensions.Contains(Dimension.Temperature))
            Join(pattern, start, $"{Range(signed: true)}{Blank}*(?:{Units(word => word.Unit.Dimension == Dimension.Temperature)})");
        string alone = Units(word => word.StandsAlone && dimensions.Contains(word.Unit.Dimension));
        if (alone.Length > 0) Join(pattern, start, $"(?:[aA][nN]?{Blank}+)?(?:{alone})(?:{Blank}+[oO][fF])?");
        return pattern.Append(')').Append(Blank).Append("*$").ToString();
    }

    /// <summary>The pattern of words whose size is fixed.</summary>
    public static string FixedWords() =>
        "^(?:" + Units(word => Measures.IsFixed(word.Unit)) + ")$";

    private static void Join(StringBuilder pattern, int start, string alternative)
    {
        if (pattern.Length > start) pattern.Append('|');
        pattern.Append(alternative);
    }

    private static string Range(bool signed)
    {
        string sign = signed ? Sign : "";
        return $"{sign}{Number}(?:{To}{sign}{Number})?";
    }

    private static string Units(Func<UnitWord, bool> fits)
    {
        var texts = new List<string>();
        foreach (var word in Measures.Default.Words)
        {
            if (fits(word)) texts.Add(word.Text);
        }

        var units = new StringBuilder();
        foreach (string text in texts)
        {
            // Plurals and points at the end share the alternative of their word.
            if (Endings.Any(ending => text.EndsWith(ending, StringComparison.Ordinal)
                && texts.Contains(text.Substring(0, text.Length - ending.Length))))
                continue;
            if (units.Length > 0) units.Append('|');
            AppendWord(units, text);
            var endings = Endings.Where(ending => texts.Contains(text + ending)).ToList();
            if (endings.Count == 0) continue;
            units.Append("(?:");
            for (int i = 0; i < endings.Count; i++)
            {
                if (i > 0) units.Append('|');
                AppendWord(units, endings[i]);
            }

            units.Append(")?");
        }

        return units.ToString();
    }

    private static void AppendWord(StringBuilder pattern, string word)
    {
        foreach (char c in word)
        {
            switch (c)
            {
                case >= 'a' and <= 'z':
                    pattern.Append('[').Append(c).Append(char.ToUpperInvariant(c)).Append(']');
                    break;
                case ' ':
                    pattern.Append(" ?");
                    break;
                case 'µ':
                    pattern.Append("[\\u00B5\\u03BC]");
                    break;
                case '°':
                    pattern.Append("[°º˚]");
                    break;
                case '.' or '(' or ')' or '[' or ']':
                    pattern.Append('\\').Append(c);
                    break;
                default:
                    pattern.Append(c);
                    break;
            }
        }
    }
}
