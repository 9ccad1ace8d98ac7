using System.Globalization;
using System.Text;

namespace SpecLint.Reports;

/// <summary>Text made fit for a terminal: hostile characters shown as escapes, lines broken at a width.</summary>
public static class DisplayText
{
    /// <summary>Columns of a report's line.</summary>
    public const int Columns = 80;

    /// <summary>What stands before it takes one column each: combining marks begin here.</summary>
    private const char FirstOfOtherWidth = '\u0300';

    /// <summary>
    /// Shows control characters, terminal escapes, marks that turn the direction of writing, invisible characters and lone
    /// surrogates as <c>\n</c>, <c>\t</c> or <c>\uXXXX</c>, so that a file's text can neither steer a terminal nor pose as
    /// another. Joiners (U+200C, U+200D) stay: scripts and emoji need them.
    /// </summary>
    public static string Escape(string text)
    {
        int first = 0;
        while (first < text.Length && (text[first] is >= ' ' and < '\u007F' || IsPlain(text, first))) first++;
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
    public static int Width(string text) => Width(text, 0, text.Length);

    private static int Width(string text, int start, int end)
    {
        int width = 0;
        for (int i = start; i < end; i++)
        {
            if (text[i] < FirstOfOtherWidth)
            {
                width++;
                continue;
            }

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
        var lines = new Lines(text, first, rest, columns);
        string indent = first;
        while (lines.Next())
        {
            yield return indent + lines.Text.Substring(lines.Start, lines.End - lines.Start);
            indent = rest;
        }
    }

    /// <summary>Writes the lines of <see cref="Wrap(string, string, string, int)"/>, each with LF at its end, and makes no text of them.</summary>
    internal static void WriteWrapped(TextWriter to, string text, string first, string rest, int columns)
    {
        var lines = new Lines(text, first, rest, columns);
        string indent = first;
        while (lines.Next())
        {
            to.Write(indent);
#if NET
            to.Write(lines.Text.AsSpan(lines.Start, lines.End - lines.Start));
#else
            to.Write(lines.Text.Substring(lines.Start, lines.End - lines.Start));
#endif
            to.Write('\n');
            indent = rest;
        }
    }

    /// <summary>The lines of a text, one after another, as places in it. A number stays with the unit behind it.</summary>
    private struct Lines
    {
        private readonly int columns, restIndent;
        private int indent, next;

        public Lines(string text, string first, string rest, int columns)
        {
            // What stands between two words is one space, so that a line is one piece of the text.
            bool isEven = text.Length == 0 || (text[0] != ' ' && text[text.Length - 1] != ' ' && text.IndexOf("  ", StringComparison.Ordinal) < 0);
            Text = isEven ? text : string.Join(" ", text.Split([' '], StringSplitOptions.RemoveEmptyEntries));
            this.columns = columns;
            indent = first.Length;
            restIndent = rest.Length;
        }

        public string Text { get; }

        public int Start { get; private set; }

        public int End { get; private set; }

        public bool Next()
        {
            if (next >= Text.Length) return false;
            Start = End = next;
            int width = indent, widest = columns - restIndent;
            indent = restIndent;
            while (next < Text.Length)
            {
                int end = EndOfWord(Text, next, withUnit: true), wide = Width(Text, next, end);
                if (wide > widest)
                {
                    end = EndOfWord(Text, next, withUnit: false);
                    wide = Width(Text, next, end);
                }

                if (wide > widest)
                {
                    // What is too wide for any line begins on one of its own.
                    if (End > Start) break;
                    End = next = Cut(Text, next, widest);
                    break;
                }

                if (End > Start && width + 1 + wide > columns) break;
                width += End > Start ? 1 + wide : wide;
                End = end;
                next = end + 1;
            }

            return true;
        }
    }

    /// <summary>Where a word ends; a number, with the unit behind it.</summary>
    private static int EndOfWord(string text, int start, bool withUnit)
    {
        const int longestNumber = 12;
        int end = text.IndexOf(' ', start);
        if (end < 0) return text.Length;
        if (!withUnit || end - start > longestNumber || text[end - 1] is < '0' or > '9') return end;
        int behind = text.IndexOf(' ', end + 1);
        if (behind < 0) behind = text.Length;
        return IsUnit(text, end + 1, behind) ? behind : end;
    }

    private static bool IsUnit(string text, int start, int end)
    {
        while (end > start && text[end - 1] is '.' or ',' or ';' or ':' or ')') end--;
        foreach (string unit in Units)
        {
            if (unit.Length == end - start && string.CompareOrdinal(text, start, unit, 0, unit.Length) == 0) return true;
        }

        return string.CompareOrdinal(text, start, "g/", 0, 2) == 0 || string.CompareOrdinal(text, start, "mg/", 0, 3) == 0;
    }

    private static readonly string[] Units =
        ["ml", "mL", "l", "L", "cl", "oz", "g", "kg", "mg", "%", "°C", "°Bx", "s", "min", "h", "d", "bar", "kcal"];

    /// <summary>How far into a word a line reaches; at least one character.</summary>
    private static int Cut(string text, int start, int widest)
    {
        int width = 0, i = start;
        while (i < text.Length)
        {
            width += WidthAt(text, i);
            if (width > widest && i > start) break;
            i += char.IsSurrogatePair(text, i) ? 2 : 1;
        }

        return i;
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
        if (c < FirstOfOtherWidth) return 1;
        if (char.IsSurrogatePair(text, index))
        {
            int scalar = char.ConvertToUtf32(text, index);
            if (CharUnicodeInfo.GetUnicodeCategory(text, index) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Format) return 0;
            return scalar is (>= 0x1F000 and <= 0x1FAFF) or (>= 0x20000 and <= 0x3FFFD) ? 2 : 1;
        }

        if (CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark
            || c is '\u200C' or '\u200D') return 0;

        // Unicode Standard Annex 11, the blocks that are wide throughout.
        return c is (>= '\u1100' and <= '\u115F') or (>= '\u2E80' and <= '\u303E') or (>= '\u3041' and <= '\uA4CF')
            or (>= '\uAC00' and <= '\uD7A3') or (>= '\uF900' and <= '\uFAFF') or (>= '\uFE30' and <= '\uFE6F')
            or (>= '\uFF00' and <= '\uFF60') or (>= '\uFFE0' and <= '\uFFE6') ? 2 : 1;
    }
}
