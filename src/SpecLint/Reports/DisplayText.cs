using System.Globalization;
using System.Text;

namespace SpecLint.Reports;

/// <summary>Text made fit for a terminal: hostile characters shown as escapes, lines broken at a width.</summary>
public static class DisplayText
{
    /// <summary>Columns of a report's line.</summary>
    public const int Columns = 80;

    /// <summary>
    /// Shows control characters, terminal escapes, marks that turn the direction of writing, invisible characters and lone
    /// surrogates as <c>\n</c>, <c>\t</c> or <c>\uXXXX</c>, so that a file's text can neither steer a terminal nor pose as
    /// another. Joiners (U+200C, U+200D) stay: scripts and emoji need them.
    /// </summary>
    public static string Escape(string text)
    {
        int first = 0;
        while (first < text.Length && IsPlain(text, first)) first++;
        if (first == text.Length) return text;
        var shown = new StringBuilder(text.Length + 16);
        shown.Append(text, 0, first);
        for (int i = first; i < text.Length; i++)
        {
            if (IsPlain(text, i))
            {
                shown.Append(text[i]);
                continue;
            }

            switch (text[i])
            {
                case '\n': shown.Append("\\n"); break;
                case '\r': shown.Append("\\r"); break;
                case '\t': shown.Append("\\t"); break;
                default: shown.Append("\\u").Append(((int)text[i]).ToString("X4", CultureInfo.InvariantCulture)); break;
            }
        }

        return shown.ToString();
    }

    /// <summary>Columns that a text takes on a terminal: wide characters of East Asia and emoji two, combining marks none.</summary>
    public static int Width(string text)
    {
        int width = 0;
        for (int i = 0; i < text.Length; i++)
        {
            width += WidthAt(text, i);
            if (char.IsSurrogatePair(text, i)) i++;
        }

        return width;
    }

    /// <summary>Breaks a text into lines at spaces; a word wider than a line is cut.</summary>
    /// <param name="text">The text, escaped.</param>
    /// <param name="first">Indent of the first line.</param>
    /// <param name="rest">Indent of the others.</param>
    /// <param name="columns">Columns of a line.</param>
    public static IEnumerable<string> Wrap(string text, string first, string rest, int columns = Columns)
    {
        var line = new StringBuilder(first);
        int width = first.Length;
        bool empty = true;
        foreach (string word in Pieces(text, columns - rest.Length))
        {
            int wide = Width(word);
            if (!empty && width + 1 + wide > columns)
            {
                yield return line.ToString();
                line.Clear().Append(rest);
                width = rest.Length;
                empty = true;
            }

            if (!empty)
            {
                line.Append(' ');
                width++;
            }

            line.Append(word);
            width += wide;
            empty = false;
        }

        if (!empty) yield return line.ToString();
    }

    /// <summary>Words, a number together with the unit behind it.</summary>
    private static IEnumerable<string> Words(string text)
    {
        string[] words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length; i++)
        {
            bool isNumber = words[i].Length is > 0 and <= 12 && words[i][words[i].Length - 1] is >= '0' and <= '9';
            if (isNumber && i + 1 < words.Length && IsUnit(words[i + 1])) yield return words[i] + " " + words[++i];
            else yield return words[i];
        }
    }

    private static bool IsUnit(string word)
    {
        string unit = word.TrimEnd('.', ',', ';', ':', ')');
        return unit is "ml" or "mL" or "l" or "L" or "cl" or "oz" or "g" or "kg" or "mg" or "%" or "°C" or "°Bx" or "s" or "min" or "h"
            or "d" or "bar" or "kcal"
            || unit.StartsWith("g/", StringComparison.Ordinal) || unit.StartsWith("mg/", StringComparison.Ordinal);
    }

    private static IEnumerable<string> Pieces(string text, int widest)
    {
        foreach (string word in Words(text))
        {
            if (Width(word) <= widest)
            {
                yield return word;
                continue;
            }

            int start = 0, width = 0;
            for (int i = 0; i < word.Length; i++)
            {
                int wide = WidthAt(word, i);
                if (width + wide > widest)
                {
                    yield return word.Substring(start, i - start);
                    start = i;
                    width = 0;
                }

                width += wide;
                if (char.IsSurrogatePair(word, i)) i++;
            }

            yield return word.Substring(start);
        }
    }

    private static bool IsPlain(string text, int index)
    {
        char c = text[index];
        if (c is >= ' ' and < '\u007F') return true;
        if (char.IsSurrogate(c))
        {
            int lead = char.IsHighSurrogate(c) ? index : index - 1;
            return lead >= 0
                && lead + 1 < text.Length
                && char.IsSurrogatePair(text[lead], text[lead + 1])
                && IsShown(CharUnicodeInfo.GetUnicodeCategory(text, lead));
        }

        return c is '\u200C' or '\u200D' || IsShown(CharUnicodeInfo.GetUnicodeCategory(c));
    }

    private static bool IsShown(UnicodeCategory category) => category is not
        (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);

    private static int WidthAt(string text, int index)
    {
        char c = text[index];
        if (c < '\u0300') return 1;
        if (char.IsSurrogatePair(text, index))
        {
            int scalar = char.ConvertToUtf32(text, index);
            if (CharUnicodeInfo.GetUnicodeCategory(text, index) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Format) return 0;
            return scalar is (>= 0x1F000 and <= 0x1FAFF) or (>= 0x20000 and <= 0x3FFFD) ? 2 : 1;
        }

        if (CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark || c is '\u200C' or '\u200D') return 0;

        // Unicode Standard Annex 11, the blocks that are wide throughout.
        return c is (>= '\u1100' and <= '\u115F') or (>= '\u2E80' and <= '\u303E') or (>= '\u3041' and <= '\uA4CF')
            or (>= '\uAC00' and <= '\uD7A3') or (>= '\uF900' and <= '\uFAFF') or (>= '\uFE30' and <= '\uFE6F')
            or (>= '\uFF00' and <= '\uFF60') or (>= '\uFFE0' and <= '\uFFE6') ? 2 : 1;
    }
}
