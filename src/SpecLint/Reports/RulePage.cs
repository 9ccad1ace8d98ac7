namespace SpecLint.Reports;

/// <summary>Reads the page of a rule.</summary>
public static class RulePage
{
    /// <summary>The first paragraph that is no heading, on one line; <see langword="null"/> where there is none.</summary>
    public static string? FirstParagraph(string markdown)
    {
        var words = new List<string>();
        bool comment = false;
        foreach (string raw in markdown.Split('\n'))
        {
            string line = raw.Trim();
            if (line.StartsWith("<!--", StringComparison.Ordinal)) comment = true;
            bool text = !comment && line.Length > 0 && line[0] is not ('#' or '|' or '-' or '*' or '>' or '`');
            if (comment && line.EndsWith("-->", StringComparison.Ordinal)) comment = false;
            if (text) words.Add(line);
            else if (words.Count > 0) break;
        }

        return words.Count == 0 ? null : string.Join(" ", words).Replace("`", "");
    }
}
