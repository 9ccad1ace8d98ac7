using System.Globalization;

namespace SpecLint.Catalogue;

/// <summary>An amount of money in a text.</summary>
/// <param name="Amount">The amount.</param>
/// <param name="Codes">ISO 4217 codes that its sign may mean.</param>
/// <param name="Words">As it stands.</param>
internal sealed record SpokenMoney(decimal Amount, FixedList<string> Codes, string Words);

/// <summary>Currencies and their signs (<c>currencies.json</c>).</summary>
internal static class Currencies
{
    private static readonly Lazy<List<(string Sign, FixedList<string> Codes)>> Signs = new(Load);

    /// <summary>The amounts with a sign or code of a currency in a text.</summary>
    public static List<SpokenMoney> In(string text)
    {
        var found = new List<SpokenMoney>();
        for (int at = 0; at < text.Length; at++)
        {
            if (!char.IsDigit(text[at])) continue;
            int end = at;
            while (end < text.Length && (char.IsDigit(text[end]) || (text[end] is '.' or ',' && end + 1 < text.Length && char.IsDigit(text[end + 1])))) end++;
            if (Amount(text.Substring(at, end - at)) is { } amount && SignAt(text, at, end) is var (codes, from, to))
                found.Add(new SpokenMoney(amount, codes, text.Substring(from, to - from)));
            at = end;
        }

        return found;
    }

    /// <summary>
    /// The currency that a text names without an amount, by its code or a name of two words or more; a pound may be a weight.
    /// </summary>
    public static (FixedList<string> Codes, string Name)? NamedIn(string text)
    {
        foreach (var (sign, codes) in Signs.Value)
        {
            if (sign.IndexOf(' ') < 0 && !codes.Contains(sign)) continue;
            int at = text.IndexOf(sign, sign.Length == CodeLength ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);
            if (at >= 0 && Stands(text, at, sign)) return (codes, sign);
        }

        return null;
    }

    private const int CodeLength = 3;

    /// <summary>The sign before an amount, else behind it.</summary>
    private static (FixedList<string> Codes, int From, int To)? SignAt(string text, int start, int end)
    {
        int before = start, behind = end;
        while (before > 0 && char.IsWhiteSpace(text[before - 1])) before--;
        while (behind < text.Length && char.IsWhiteSpace(text[behind])) behind++;
        foreach (var (sign, codes) in Signs.Value)
        {
            int from = before - sign.Length;
            if (from >= 0 && Stands(text, from, sign)) return (codes, from, end);
        }

        foreach (var (sign, codes) in Signs.Value)
        {
            if (behind + sign.Length <= text.Length && Stands(text, behind, sign)) return (codes, start, behind + sign.Length);
        }

        return null;
    }

    private static bool Stands(string text, int at, string sign) =>
        string.Compare(text, at, sign, 0, sign.Length, StringComparison.OrdinalIgnoreCase) == 0
        && (at == 0 || !char.IsLetter(sign[0]) || !char.IsLetter(text[at - 1]))
        && (at + sign.Length == text.Length || !char.IsLetter(sign[sign.Length - 1]) || !char.IsLetter(text[at + sign.Length]));

    /// <summary>An amount with a point or a comma; of both the last parts the decimals off.</summary>
    private static decimal? Amount(string figures)
    {
        int last = Math.Max(figures.LastIndexOf('.'), figures.LastIndexOf(','));
        bool decimals = last >= 0 && figures.Length - last - 1 <= 2;
        string whole = (decimals ? figures.Substring(0, last) : figures).Replace(".", "").Replace(",", "");
        string number = decimals ? whole + "." + figures.Substring(last + 1) : whole;
        return decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal amount) ? amount : null;
    }

    private static List<(string Sign, FixedList<string> Codes)> Load()
    {
        var codes = new Dictionary<string, List<string>>(StringComparer.OrdinalIgnoreCase);
        using var document = Tables.Open("currencies");
        foreach (var row in Tables.Rows(document))
        {
            foreach (string sign in row.Texts("signs"))
            {
                if (!codes.TryGetValue(sign, out var list)) codes.Add(sign, list = []);
                list.Add(row.Text("code"));
            }
        }

        // The longest first: "US$" is no "$".
        return [.. codes.OrderByDescending(static c => c.Key.Length).Select(static c => (c.Key, FixedList.Of(c.Value)))];
    }
}
