using System.Globalization;
using System.Text.RegularExpressions;

namespace SpecLint.Fuzz;

/// <summary>Applies a unified difference as POSIX describes it: the other half of what is tested.</summary>
internal static partial class Patch
{
    private const string NoLineEnd = "\\ No newline at end of file";

    /// <summary>The new text; <see langword="null"/> where the difference does not fit.</summary>
    public static string? Apply(string old, string difference)
    {
        if (difference.Length == 0) return old;
        var lines = Lines(old);
        var made = new List<string>();
        int at = 0;
        string[] rows = difference.Split('\n');
        for (int i = 2; i < rows.Length; i++)
        {
            string row = rows[i];
            if (row.Length == 0 && i == rows.Length - 1) break;
            if (Head().Match(row) is { Success: true } head)
            {
                int from = int.Parse(head.Groups[1].Value, CultureInfo.InvariantCulture), count = head.Groups[2].Success
                    ? int.Parse(head.Groups[2].Value, CultureInfo.InvariantCulture)
                    : 1;
                int start = count == 0 ? from : from - 1;
                if (start < at || start > lines.Count) return null;
                while (at < start) made.Add(lines[at++]);
                continue;
            }

            if (row == NoLineEnd) continue;
            bool ends = i + 1 >= rows.Length || rows[i + 1] != NoLineEnd;
            string text = row[1..] + (ends ? "\n" : "");
            switch (row[0])
            {
                case '+': made.Add(text); break;
                case '-' or ' ':
                    if (at >= lines.Count || lines[at] != text) return null;
                    if (row[0] == ' ') made.Add(text);
                    at++;
                    break;
                default: return null;
            }
        }

        while (at < lines.Count) made.Add(lines[at++]);
        return string.Concat(made);
    }

    /// <summary>The lines of a text, each with its end.</summary>
    private static List<string> Lines(string text)
    {
        var lines = new List<string>();
        for (int from = 0; from < text.Length;)
        {
            int end = text.IndexOf('\n', from);
            int to = end < 0 ? text.Length : end + 1;
            lines.Add(text[from..to]);
            from = to;
        }

        return lines;
    }

    [GeneratedRegex(@"^@@ -(\d+)(?:,(\d+))? \+(\d+)(?:,(\d+))? @@")]
    private static partial Regex Head();
}
