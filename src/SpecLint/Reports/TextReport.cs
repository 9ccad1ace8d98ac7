using System.Globalization;
using System.Text;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>How a text report is written.</summary>
public sealed record TextReportOptions
{
    /// <summary>
    /// What stands before each path, so that a terminal can open it: the way from
    /// where one is to the book, with <c>/</c> at its end.
    /// </summary>
    public string PathPrefix { get; init; } = "";

    /// <summary>Whether to colour (ECMA-48, select graphic rendition).</summary>
    public bool Colour { get; init; }

    /// <summary>Whether to end with a summary.</summary>
    public bool Summary { get; init; } = true;

    /// <summary>Units in which sentences show volumes and temperatures.</summary>
    public DisplayUnits Units { get; init; } = DisplayUnits.Metric;

    /// <summary>Columns of a line, 60 to 120 for people to read.</summary>
    public int Columns { get; init; } = DisplayText.Columns;

    /// <summary>Threads that write a long report; 0 takes one a processor. Their number changes nothing in it.</summary>
    public int Threads { get; init; } = 1;
}

/// <summary>
/// Findings for people: what could hurt somebody first, then errors, warnings and notes, each by file: where, what is wrong and
/// by how much, what to do. Advice that several findings of a file share stands once beneath them, a caution once beneath its
/// group. A summary ends it: what to do first, and the findings by rule. Lines keep to the columns of the options; only an
/// address longer than that stands on a line of its own, whole, so that a terminal can open it.
/// </summary>
public sealed class TextReport
{
    private const int MostEditsShown = 6;
    private const int LongestEditShown = 200;
    private const int LongestNameShown = 120;
    private const int LongestTextShown = 2000;

    private readonly TextWriter to;
    private readonly ReportContent content;
    private readonly TextReportOptions options;

    private TextReport(TextWriter to, ReportContent content, TextReportOptions options)
    {
        this.to = to;
        this.content = content;
        this.options = options;
    }

    /// <summary>Writes the report; lines end with LF on every system.</summary>
    public static void Write(TextWriter to, ReportContent content, TextReportOptions options) =>
        new TextReport(to, content, options).Write();

    private void Write()
    {
        Group("Somebody could be hurt: see to these first", IsHarm);
        foreach (var (heading, level) in new[] { ("Errors", Level.Error), ("Warnings", Level.Warning), ("Notes", Level.Note) })
            Group(heading, f => f.Level == level && !IsHarm(f));
        if (options.Summary) Summary();
        else if (content.Aside.Sentence.Length > 0) Paragraph(content.Aside.Sentence, "", "");
        if (options.Summary || content.Findings.Count > 0 || content.Aside.Count > 0) Paragraph(ReportWords.Closing, "", "");
    }

    /// <summary>Whether a finding belongs at the top: an error of a rule that guards against harm, or one that explains such an error.</summary>
    private static bool IsHarm(Finding finding) => (finding.Rule.Safety && finding.Level == Level.Error) || finding.Folded.Any(IsHarm);

    /// <summary>The findings of a group, by file in their total order.</summary>
    private void Group(string heading, Func<Finding, bool> belongs)
    {
        var findings = content.Findings.Where(belongs).ToList();
        if (findings.Count == 0) return;
        Line(Paint($"{heading} ({findings.Count})", Bold));
        Line("");
        WriteFiles(ByFile(findings));

        var cautions = findings.SelectMany(f => f.Folded.Prepend(f))
            .Where(f => f.Caution is not null)
            .GroupBy(f => f.Caution!, StringComparer.Ordinal)
            .ToList();
        foreach (var caution in cautions)
        {
            string of = cautions.Count == 1
                ? ""
                : $" ({string.Join(", ", caution.Select(f => f.Rule.Id).Distinct().OrderBy(id => id, StringComparer.Ordinal))})";
            Paragraph($"Caution{of}: " + options.Units.Sentence(caution.Key), "", "  ");
        }

        if (cautions.Count > 0) Line("");
    }

    /// <summary>Findings in their total order, parted where the file changes.</summary>
    private static List<ArraySegment<Finding>> ByFile(List<Finding> findings)
    {
        var files = new List<ArraySegment<Finding>>();
        Finding[] all = [.. findings];
        int start = 0;
        for (int i = 1; i <= all.Length; i++)
        {
            if (i < all.Length && all[i].Place.File.Path == all[start].Place.File.Path) continue;
            files.Add(new ArraySegment<Finding>(all, start, i - start));
            start = i;
        }

        return files;
    }

    /// <summary>The findings of files; of many files the threads write a share each, which are put together in their order.</summary>
    private void WriteFiles(List<ArraySegment<Finding>> files)
    {
        const int filesOfShare = 64, sharesAtOnce = 16;
        if (options.Threads == 1 || files.Count <= filesOfShare)
        {
            foreach (var file in files) WriteFile(file);
            return;
        }

        var shares = new StringBuilder[sharesAtOnce];
        for (int first = 0; first < files.Count; first += filesOfShare * sharesAtOnce)
        {
            int from = first, count = Math.Min(sharesAtOnce, (files.Count - from + filesOfShare - 1) / filesOfShare);
            Workers.For(count, options.Threads, n =>
            {
                var share = (shares[n] ??= new StringBuilder()).Clear();
                var report = new TextReport(new StringWriter(share, CultureInfo.InvariantCulture), content, options);
                for (int i = from + (n * filesOfShare); i < Math.Min(files.Count, from + ((n + 1) * filesOfShare)); i++) report.WriteFile(files[i]);
            });
            for (int n = 0; n < count; n++) Put(shares[n]);
        }
    }

    private void Put(StringBuilder share)
    {
#if NET
        foreach (var chunk in share.GetChunks()) to.Write(chunk.Span);
#else
        to.Write(share.ToString());
#endif
    }

    private void WriteFile(ArraySegment<Finding> findings)
    {
        Heading(findings.Array![findings.Offset].Place.File.Path);
        foreach (var alike in findings.GroupBy(LikenessOf))
        {
            WriteAlike([.. alike]);
            Line("");
        }
    }

    /// <summary>
    /// What findings of one file share where they are shown together: a rule, its level and its advice. What brings an edit or explains
    /// others stands by itself.
    /// </summary>
    private static (string Rule, Level Level, string Advice, string Alone) LikenessOf(Finding finding) => (
        finding.Rule.Id,
        finding.Level,
        finding.Advice,
        finding.Corrections.Count > 0 || finding.Folded.Count > 0 ? finding.Fingerprint : "");

    private void Heading(string path)
    {
        var file = content.FileAt(path);
        if (file is null) return;
        string name = Clip(file.Name.IsGiven ? file.Name.Value : file.Id, LongestNameShown);
        foreach (string line in DisplayText.Wrap(DisplayText.Escape($"{name} ({ReportWords.Of(file.Kind)})"), "", "  ", options.Columns))
            Line(Paint(line, Bold));
    }

    /// <summary>Findings that share their advice: each with its place and its message, the advice beneath the last.</summary>
    private void WriteAlike(IReadOnlyList<Finding> findings)
    {
        for (int i = 0; i < findings.Count; i++)
        {
            var finding = findings[i];
            Where(finding.Place, $"{ReportWords.Of(finding.Level)} {finding.Rule.Id}", ColourOf(finding.Level));
            Paragraph(options.Units.Sentence(finding.Message), "  ", "  ");
            bool isLast = i == findings.Count - 1;
            if (isLast && finding.Advice.Length > 0)
                Paragraph(
                    (findings.Count == 1 ? "To put it right: " : "To put these right: ") + options.Units.Sentence(finding.Advice),
                    "  ",
                    "  ");
            WriteRest(finding);
        }
    }

    private void WriteRest(Finding finding)
    {
        foreach (var correction in finding.Corrections) WriteCorrection(correction, finding.Advice);
        foreach (var related in finding.Related)
        {
            if (content.IsInBook(related.Place)) Where(related.Place, options.Units.Sentence(related.Message), null, "  See ", "    ");
            else Paragraph($"See the catalogue, {related.Place.File.Path}: {related.Message}", "  ", "    ");
        }

        if (finding.Folded.Count == 0) return;
        Line(finding.Folded.Count == 1 ? "  From this follows:" : "  From this follow:");
        foreach (var folded in finding.Folded)
            Paragraph(
                $"{ReportWords.Of(folded.Level)} {folded.Rule.Id}, line {folded.Place.Start.Line}: "
                    + $"{options.Units.Sentence(folded.Message)}",
                "  - ",
                "    ");
    }

    private void WriteCorrection(Correction correction, string advice)
    {
        // What the advice has said already is not said again.
        string grade = correction.Grade == CorrectionGrade.Assured ? "Assured correction: " : "Proposed correction: ";
        Paragraph(grade + (correction.Description == advice ? "" : options.Units.Sentence(correction.Description)), "  ", "  ");
        int shown = 0;
        foreach (var edit in correction.Edits)
        {
            if (shown++ == MostEditsShown)
            {
                Line($"    and {correction.Edits.Count - MostEditsShown} more edits");
                break;
            }

            Paragraph(WordsOf(edit), "    ", "      ");
        }
    }

    /// <summary>An address that a terminal can open, and what stands behind it, on the same line where it fits.</summary>
    private void Where(Place place, string text, string? colour, string first = "", string rest = "  ")
    {
        var start = place.Start;
        string address = DisplayText.Escape($"{options.PathPrefix}{place.File.Path}:{start.Line}:{start.Column}");
        string shown = DisplayText.Escape(Clip(text, LongestTextShown));
        if (DisplayText.Width(first + address) + 2 + DisplayText.Width(shown) <= options.Columns)
        {
            Line(first + address + ": " + (colour is null ? shown : Paint(shown, colour)));
            return;
        }

        Line(first + address + ":");
        foreach (string line in DisplayText.Wrap(shown, rest, rest, options.Columns)) Line(colour is null ? line : Paint(line, colour));
    }

    private void Summary()
    {
        string scope = content.Recipes == 0
            ? ReportWords.Count(content.Files, "file", "files")
            : ReportWords.Count(content.Recipes, "recipe", "recipes");
        string found = content.Highest == Level.None
            ? content.NothingFound
            : string.Join(", ", new[]
            {
                content.Errors > 0 ? ReportWords.Count(content.Errors, "error", "errors") : null,
                content.Warnings > 0 ? ReportWords.Count(content.Warnings, "warning", "warnings") : null,
                content.Notes > 0 ? ReportWords.Count(content.Notes, "note", "notes") : null,
            }.OfType<string>());
        int other = content.Accepted.Count - content.AcceptedSafety;
        string accepted = other == 0 ? "" : $" {ReportWords.Count(other, "other finding is", "other findings are")} accepted.";
        foreach (string line in DisplayText.Wrap(
            DisplayText.Escape(string.Concat(
                $"In {scope}: {found}.{accepted}", content.Aside.Sentence.Length > 0 ? " " + content.Aside.Sentence : "",
                string.Concat(content.Remarks.Select(r => " " + r)))),
            "",
            "",
            options.Columns))
            Line(Paint(line, Bold));
        FirstThings();
    }

    /// <summary>What to do first, and how many findings each rule has: a book with a handful of findings needs neither.</summary>
    private void FirstThings()
    {
        const int fewFindings = 3, mostFirst = 5, mostNames = 4, mostRules = 24;
        var rows = RuleTally.Of(content);
        if (content.Errors + content.Warnings + content.Notes <= fewFindings) return;
        var urgent = rows.Where(r => r.Level == Level.Error).Take(mostFirst).ToList();
        if (urgent.Count > 0) Line("To do first:");
        for (int i = 0; i < urgent.Count; i++)
        {
            var row = urgent[i];
            string names = string.Join(", ", row.Files.Take(mostNames).Select(NameOf)) + (row.Files.Count > mostNames
                ? $" and {row.Files.Count - mostNames} more"
                : "");
            Paragraph(
                $"{row.Rule.Title}{(row.Rule.Safety ? " (guards against harm)" : "")}: {names}. {row.Rule.Id}, "
                    + $"{ReportWords.Count(row.Count, "finding", "findings")}.",
                $"  {i + 1}. ",
                "     ");
        }

        string more = rows.Count > mostRules
            ? $" and {ReportWords.Count(rows.Count - mostRules, "more rule", "more rules")} (--statistics counts all)"
            : "";
        Paragraph(
            $"By rule: {string.Join(", ", rows.Take(mostRules).Select(r => r.Count == 1 ? r.Rule.Id : $"{r.Count}×{r.Rule.Id}"))}{more}.",
            "", "  ");
    }

    private string NameOf(string path) => content.FileAt(path) is { } file ? Clip(file.Name.Or(file.Id), LongestNameShown) : path;

    private void Paragraph(string text, string first, string rest) =>
        DisplayText.WriteWrapped(to, DisplayText.Escape(Clip(text, LongestTextShown)), first, rest, options.Columns);

    private void Line(string text)
    {
        to.Write(text);
        to.Write('\n');
    }

    /// <summary>An edit in words.</summary>
    internal static string WordsOf(TextEdit edit)
    {
        string line = $"line {edit.Place.Start.Line}: ", old = Shorten(edit.Place.File.TextOf(edit.Place.Span)), now = Shorten(edit.NewText);
        return old.Length == 0 ? $"{line}insert {now}" : now.Length == 0 ? $"{line}remove {old}" : $"{line}{old} becomes {now}";
    }

    private static string Shorten(string text)
    {
        text = string.Join(" ", text.Split([' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
        return Clip(text, LongestEditShown);
    }

    private static string Clip(string text, int longest) => text.Length <= longest ? text : text.Substring(0, longest) + "…";

    private const string Bold = "1", Red = "31", Yellow = "33", Cyan = "36";

    private static string ColourOf(Level level) => level switch { Level.Error => Red, Level.Warning => Yellow, _ => Cyan };

    private string Paint(string text, string colour) => options.Colour ? $"\u001b[{colour}m{text}\u001b[0m" : text;
}
