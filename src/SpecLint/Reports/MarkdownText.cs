using System.Text;

namespace SpecLint.Reports;

/// <summary>Text of a recipe made fit for GitHub Flavored Markdown: it can neither make markup, nor name a person, nor link.</summary>
internal static class MarkdownText
{
    private const string Broken = "&#8203;";

    /// <summary>
    /// Escapes a text for a paragraph or the cell of a table: punctuation that could be markup gets a backslash or an entity
    /// (CommonMark 0.31, section 2.4 and 2.5), line ends and control characters are shown as escapes, and what would be
    /// linked by itself (names of people, numbers of issues, addresses) is broken by a space of no width.
    /// </summary>
    public static string Escape(string text)
    {
        text = DisplayText.Escape(text);
        var made = new StringBuilder(text.Length + 16);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            switch (c)
            {
                case '&': made.Append("&amp;"); break;
                case '<': made.Append("&lt;"); break;
                case '>': made.Append("&gt;"); break;
                case '@' or '#': made.Append(c == '#' ? "\\#" : "@").Append(Broken); break;
                case ':' when i + 2 < text.Length && text[i + 1] == '/' && text[i + 2] == '/': made.Append(':').Append(Broken); break;
                case '.' when i >= 3
                    && string.Compare(
                        text, i - 3, "www", 0, 3, StringComparison.OrdinalIgnoreCase) == 0:
                    made.Append(Broken).Append('.'); break;
                case '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '!' or '|' or '~' or '$': made.Append('\\').Append(c); break;
                case '-' or '+' or '=' when i == 0: made.Append('\\').Append(c); break;
                case '.' when i > 0 && IsNumber(text, i): made.Append("\\."); break;
                default: made.Append(c); break;
            }
        }

        return made.ToString();
    }

    /// <summary>Whether all before is digits: a list's number.</summary>
    private static bool IsNumber(string text, int end)
    {
        for (int i = 0; i < end; i++)
        {
            if (text[i] is < '0' or > '9') return false;
        }

        return true;
    }
}
