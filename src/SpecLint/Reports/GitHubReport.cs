using System.Text;
using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>
/// Findings as workflow commands of GitHub Actions, which the runner turns into annotations: errors first, at most ten of
/// each level, since it shows no more of a step; and all of them as Markdown for the summary of the step.
/// </summary>
internal static class GitHubReport
{
    /// <summary>Annotations of a level that the runner takes of a step (GitHub Docs, usage limits of checks).</summary>
    public const int MostOfALevel = 10;

    /// <summary>A step's summary holds 1 MiB; the list stops before.</summary>
    private const int LongestSummary = 900_000;

    private const int LongestMessage = 4_000;

    /// <summary>Writes the workflow commands, and a last line with the counts.</summary>
    /// <param name="to">Where to: standard output of the step.</param>
    /// <param name="content">What.</param>
    /// <param name="pathPrefix">The way from the root of the repository to the root of the book, with <c>/</c> at its end.</param>
    public static void WriteCommands(TextWriter to, ReportContent content, string pathPrefix)
    {
        var all = content.Findings.Flat().ToList();
        foreach (var level in new[] { Level.Error, Level.Warning, Level.Note })
        {
            var ofLevel = all.FindAll(f => f.Level == level);
            int shown = ofLevel.Count > MostOfALevel ? MostOfALevel - 1 : ofLevel.Count;
            for (int i = 0; i < shown; i++) to.Write(Command(ofLevel[i], pathPrefix));
            int left = ofLevel.Count - shown;
            if (left == 0) continue;
            string noun = ReportWords.Count(left, $"more {ReportWords.Of(level)}", $"more {ReportWords.Of(level)}s");
            to.Write($"::{Name(level)} title={Property("SpecLint")}::{Data($"{noun}; the full list is in the summary of the step.")}\n");
        }

        if (content.Aside.Count > 0) to.Write($"::warning title={Property("SpecLint")}::{Data(content.Aside.Sentence)}\n");
        to.Write(Counts(content) + " " + ReportWords.Closing + "\n");
    }

    /// <summary>Writes the full list as GitHub Flavored Markdown; text of recipes is escaped.</summary>
    public static void WriteSummary(TextWriter to, ReportContent content, string pathPrefix)
    {
        to.Write($"### SpecLint\n\n{MarkdownText.Escape(Counts(content))}"
            + $"{string.Concat(content.Remarks.Select(r => " " + MarkdownText.Escape(r)))}\n");
        var all = content.Findings.Flat().OrderByDescending(f => f.Level).ToList();
        if (all.Count == 0)
        {
            End();
            return;
        }

        to.Write("\n| level | rule | where | what |\n| --- | --- | --- | --- |\n");
        int written = 0, shown = 0;
        foreach (var finding in all)
        {
            string row = $"| {ReportWords.Of(finding.Level)} | {finding.Rule.Id} {finding.Rule.Name} | "
                + $"{MarkdownText.Escape(pathPrefix + finding.Place.File.Path)}:{finding.Place.Start.Line} | "
                + $"{MarkdownText.Escape(MessageOf(finding, LongestMessage))} |\n";
            written += Encoding.UTF8.GetByteCount(row);
            if (written > LongestSummary) break;
            to.Write(row);
            shown++;
        }

        if (shown < all.Count) to.Write($"\n{all.Count - shown} more are left out: a summary holds no more.\n");
        End();

        void End() => to.Write($"\n{MarkdownText.Escape(ReportWords.Closing)}\n");
    }

    /// <summary>A value of a command: what the runner would read as its end, a line end or the start of the next is escaped.</summary>
    public static string Data(string text) => text.Replace("%", "%25").Replace("\r", "%0D").Replace("\n", "%0A");

    /// <summary>A property of a command: the signs that part properties are escaped as well.</summary>
    public static string Property(string text) => Data(text).Replace(":", "%3A").Replace(",", "%2C");

    private static string Command(Finding finding, string pathPrefix)
    {
        var start = finding.Place.Start;
        var end = finding.Place.End;
        var line = new StringBuilder();
        line.Append("::").Append(Name(finding.Level)).Append(" file=").Append(Property(DisplayText.Escape(pathPrefix + finding.Place.File.Path)));
        line.Append(",line=").Append(start.Line).Append(",endLine=").Append(end.Line);

        // Columns mean something to the runner only within one line.
        if (start.Line == end.Line) line.Append(",col=").Append(start.Column).Append(",endColumn=").Append(end.Column);
        line.Append(",title=").Append(Property($"{finding.Rule.Id} {finding.Rule.Name}"));
        line.Append("::").Append(Data(MessageOf(finding, LongestMessage))).Append('\n');
        return line.ToString();
    }

    private static string MessageOf(Finding finding, int longest)
    {
        string text = finding.Message;
        if (finding.Advice.Length > 0) text += " To put it right: " + finding.Advice;
        if (finding.Caution is not null) text += " Caution: " + finding.Caution;
        text = DisplayText.Escape(text);
        return text.Length <= longest ? text : text.Substring(0, longest) + "…";
    }

    private static string Name(Level level) => level switch { Level.Error => "error", Level.Warning => "warning", _ => "notice" };

    private static string Counts(ReportContent content)
    {
        int other = content.Accepted.Count - content.AcceptedSafety;
        string accepted = (other == 0 ? "" : $" {other} accepted.") + (content.Aside.Sentence.Length > 0 ? " " + content.Aside.Sentence : "");
        return $"{ReportWords.Count(content.Errors, "error", "errors")}, {ReportWords.Count(content.Warnings, "warning", "warnings")}, "
            + $"{ReportWords.Count(content.Notes, "note", "notes")} in {ReportWords.Count(content.Files, "file", "files")}.{accepted}";
    }
}
