using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>An amount that words name, with the words behind it.</summary>
/// <param name="Amount">The amount.</param>
/// <param name="Start">Where its number starts.</param>
/// <param name="End">Where its unit ends.</param>
internal readonly record struct SpokenAmount(Quantity Amount, int Start, int End);

/// <summary>Finds amounts in running text: <c>20 ml</c>, <c>1/2 oz</c>, <c>2 dashes</c>.</summary>
internal static class AmountsInText
{
    /// <summary>The next amount of substance at or behind a place; false where there is none.</summary>
    public static bool Next(string text, int from, out SpokenAmount found)
    {
        for (int i = from; i < text.Length; i++)
        {
            if (text[i] is < '0' or > '9') continue;
            if (i > 0 && (char.IsLetterOrDigit(text[i - 1]) || text[i - 1] is '.' or ',' or '/')) continue;
            int end = i;
            while (end < text.Length && text[end] is (>= '0' and <= '9') or '.' or ',' or '/' or '–' or '-') end++;
            while (end > i && text[end - 1] is '.' or ',' or '-' or '–') end--;
            int number = end;
            while (end < text.Length && text[end] == ' ') end++;
            int word = end;
            while (end < text.Length && char.IsLetter(text[end])) end++;
            if (end > word && QuantityReader.TryRead(text.AsSpan(i, end - i), Measures.Default, out var quantity, out _)
                && quantity.Dimension is Dimension.Volume or Dimension.Mass)
            {
                found = new SpokenAmount(quantity, i, end);
                return true;
            }

            i = number - 1 > i ? number - 1 : i;
        }

        found = default;
        return false;
    }

    /// <summary>Whether the words behind an amount name an item (<c>lime juice</c>, <c>of the lime-juice</c>).</summary>
    public static bool Names(string text, int at, string id)
    {
        at = Skip(text, Skip(text, at, "of "), "the ");
        int i = 0;
        while (i < id.Length)
        {
            if (at >= text.Length) return false;
            char c = text[at];
            char lower = c is >= 'A' and <= 'Z' ? (char)(c | 0x20) : c is ' ' ? '-' : c;
            if (lower != id[i]) return false;
            at++;
            i++;
        }

        return at == text.Length || !char.IsLetterOrDigit(text[at]) && text[at] != '-';
    }

    /// <summary>The part of a recipe that the words behind an amount name; <see langword="null"/> where they name none.</summary>
    public static Part? PartNamed(RecipeProfile profile, string text, int at)
    {
        foreach (var part in profile.Parts)
        {
            if (part.Line.Item.IsGiven && Names(text, at, part.Line.Item.Value)) return part;
        }

        // "20 ml lime" is the lime juice where only one line begins so and the words end there.
        Part? begun = null;
        foreach (var part in profile.Parts)
        {
            if (!part.Line.Item.IsGiven) continue;
            string id = part.Line.Item.Value;
            int cut = id.IndexOf('-');
            if (cut < 4 || !Names(text, at, id.Substring(0, cut)) || !EndsBehind(text, at, cut)) continue;
            if (begun is not null) return null;
            begun = part;
        }

        return begun;
    }

    /// <summary>Whether the clause ends behind a word of some length.</summary>
    private static bool EndsBehind(string text, int at, int length)
    {
        at = Skip(text, Skip(text, at, "of "), "the ") + length;
        return at >= text.Length || text[at] is '.' or ',' or ';' or ')' or ':' or '!';
    }

    /// <summary>Letters behind an amount in which the name of an item is looked for.</summary>
    private const int LongestName = 200;

    /// <summary>An item of the book or the catalogue that the words behind an amount name, trying the longest name first.</summary>
    public static Item? ItemNamed(LinkedBook book, string text, int at)
    {
        at = Skip(text, Skip(text, at, "of "), "the ");
        int end = at, most = Math.Min(text.Length, at + LongestName);
        while (end < most && (char.IsLetterOrDigit(text[end]) || text[end] is ' ' or '-')) end++;
        string id = text.Substring(at, end - at).Trim().ToLowerInvariant().Replace(' ', '-');
        while (id.Length > 2)
        {
            if (book.Resolve(id) is { } item) return item;
            int cut = id.LastIndexOf('-');
            if (cut < 0) return null;
            id = id.Substring(0, cut);
        }

        return null;
    }

    /// <summary>Whether two amounts of one item differ by more than a share; amounts of other dimensions cannot be compared.</summary>
    public static bool Differ(Quantity spoken, Quantity line, double percent)
    {
        if (spoken.Dimension != line.Dimension) return false;
        bool same = spoken.Unit.Name == line.Unit.Name;
        double a = same ? spoken.Value : spoken.Base, b = same ? line.Value : line.Base;
        if (a >= (same ? line.Low : line.BaseLow) && a <= (same ? line.High : line.BaseHigh)) return false;
        return Math.Abs(a - b) > Math.Max(a, b) * percent / 100;
    }

    private static int Skip(string text, int at, string word)
    {
        while (at < text.Length && text[at] == ' ') at++;
        return string.CompareOrdinal(text, at, word, 0, word.Length) == 0 ? at + word.Length : at;
    }
}
