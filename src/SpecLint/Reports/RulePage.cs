namespace SpecLint.Reports;

/// <summary>Reads the page of a rule.</summary>
internal static class RulePage
{
    private const string Checks = "## What it checks";

    /// <summary>What the rule checks, as its page says, on one line; <see langword="null"/> where the page does not.</summary>
    public static string? WhatItChecks(string markdown)
    {
        int at = markdown.IndexOf(Checks, StringComparison.Ordinal);
        return at < 0 ? null : FirstParagraph(markdown.Substring(at + Checks.Length));
    }

    private static string? FirstParagraph(string markdown)
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
