using System.Globalization;
using System.Text;
using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>
/// Findings as service messages of TeamCity: a type of inspection a rule, then an inspection a finding (TeamCity Docs, Service Messages,
/// "Reporting Inspections").
/// </summary>
internal static class TeamCityReport
{
    /// <summary>Characters of a value at most, escapes not counted; ids and names of rules are far below their own 255.</summary>
    private const int LongestText = 4000;

    /// <summary>Writes the messages.</summary>
    /// <param name="to">Where to: standard output of the step.</param>
    /// <param name="content">What.</param>
    /// <param name="pathPrefix">The way from the root of the repository to the root of the book, with <c>/</c> at its end.</param>
    public static void Write(TextWriter to, ReportContent content, string pathPrefix)
    {
        var all = content.Findings.Flat().ToList();
        foreach (var rule in all.Select(f => f.Rule).Distinct().OrderBy(r => r.Id, StringComparer.Ordinal))
            to.Write($"##teamcity[inspectionType id='{Value(rule.Id)}' name='{Value(rule.Name)}' "
                + $"category='{Value("SpecLint: " + ReportWords.Of(rule.Family))}' description='{Value(rule.Title)}']\n");
        foreach (var finding in all)
        {
            string text = finding.Advice.Length == 0 ? finding.Message : finding.Message + " To put it right: " + finding.Advice;
            to.Write($"##teamcity[inspection typeId='{Value(finding.Rule.Id)}' message='{Value(text)}' "
                + $"file='{Value(pathPrefix + finding.Place.File.Path)}' line='{finding.Place.Start.Line}' "
                + $"SEVERITY='{Severity(finding.Level)}']\n");
        }
    }

    /// <summary>A value of a message: the signs that end it are escaped with a bar, other characters than ASCII by their number.</summary>
    public static string Value(string text)
    {
        text = DisplayText.Escape(text);
        if (text.Length > LongestText) text = text.Substring(0, LongestText - 1) + "…";
        var escaped = new StringBuilder(text.Length + 8);
        foreach (char c in text)
        {
            switch (c)
            {
                case '\'' or '|' or '[' or ']': escaped.Append('|').Append(c); break;
                case '\n': escaped.Append("|n"); break;
                case '\r': escaped.Append("|r"); break;
                case > '~': escaped.Append("|0x").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture)); break;
                default: escaped.Append(c); break;
            }
        }

        return escaped.ToString();
    }

    private static string Severity(Level level) => level switch { Level.Error => "ERROR", Level.Warning => "WARNING", _ => "INFO" };
}
