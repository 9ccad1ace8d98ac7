using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>How a text report is written.</summary>
public sealed record TextReportOptions
{
    /// <summary>What stands before each path, so that a terminal can open it: the way from where one is to the book, with <c>/</c> at its end.</summary>
    public string PathPrefix { get; init; } = "";

    /// <summary>Whether to colour (ECMA-48, select graphic rendition).</summary>
    public bool Colour { get; init; }

    /// <summary>Whether to end with a summary.</summary>
    public bool Summary { get; init; } = true;

    /// <summary>Units in which sentences show volumes and temperatures.</summary>
    public DisplayUnits Units { get; init; } = DisplayUnits.Metric;

    /// <summary>Columns of a line, 60 to 120 for people to read.</summary>
    public int Columns { get; init; } = DisplayText.Columns;
}

/// <summary>
/// Findings for people, by file: where, what is wrong and by how much, what to do, what to mind. Lines keep to the columns
/// of the options; only an address longer than that stands on a line of its own, whole, so that a terminal can open it.
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
        string? path = null;
        foreach (var finding in content.Findings)
        {
            if (finding.Place.File.Path != path)
            {
                path = finding.Place.File.Path;
                Heading(path);
            }

            WriteFinding(finding);
            Line("");
        }

        if (options.Summary) Summary();
        else if (content.Aside.Sentence.Length > 0) Paragraph(content.Aside.Sentence, "", "");
        if (options.Summary || content.Findings.Count > 0 || content.Aside.Count > 0) Paragraph(ReportWords.Closing, "", "");
    }

    private void Heading(string path)
    {
        var file = content.FileAt(path);
        if (file is null) return;
        string name = Clip(file.Name.IsGiven ? file.Name.Value : file.Id, LongestNameShown);
        foreach (string line in DisplayText.Wrap(DisplayText.Escape($"{name} ({ReportWords.Of(file.Kind)})"), "", "  ", options.Columns))
            Line(Paint(line, Bold));
    }

    private void WriteFinding(Finding finding)
    {
        Where(finding.Place, $"{ReportWords.Of(finding.Level)} {finding.Rule.Id}", ColourOf(finding.Level));
        Paragraph(options.Units.Sentence(finding.Message), "  ", "  ");
        if (finding.Advice.Length > 0) Paragraph("To put it right: " + options.Units.Sentence(finding.Advice), "  ", "  ");
        foreach (var correction in finding.Corrections) WriteCorrection(correction, finding.Advice);
        if (finding.Caution is not null) Paragraph("Caution: " + options.Units.Sentence(finding.Caution), "  ", "  ");
        foreach (var related in finding.Related)
        {
            if (content.IsInBook(related.Place)) Where(related.Place, options.Units.Sentence(related.Message), null, "  See ", "    ");
            else Paragraph($"See the catalogue, {related.Place.File.Path}: {related.Message}", "  ", "    ");
        }

        if (finding.Folded.Count == 0) return;
        Line(finding.Folded.Count == 1 ? "  From this follows:" : "  From this follow:");
        foreach (var folded in finding.Folded)
            Paragraph($"{ReportWords.Of(folded.Level)} {folded.Rule.Id}, line {folded.Place.Start.Line}: {options.Units.Sentence(folded.Message)}", "  - ", "    ");
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
        foreach (string line in DisplayText.Wrap(DisplayText.Escape(string.Concat($"In {scope}: {found}.{accepted}", content.Aside.Sentence.Length > 0 ? " " + content.Aside.Sentence : "", string.Concat(content.Remarks.Select(r => " " + r)))), "", "", options.Columns)) Line(Paint(line, Bold));
    }

    private void Paragraph(string text, string first, string rest)
    {
        foreach (string line in DisplayText.Wrap(DisplayText.Escape(Clip(text, LongestTextShown)), first, rest, options.Columns)) Line(line);
    }

    private void Line(string text)
    {
        to.Write(text);
        to.Write('\n');
    }

    /// <summary>An edit in words.</summary>
    internal static string WordsOf(TextEdit edit)
    {
        string line = $"line {edit.Place.Start.Line}: ", old = Shorten(edit.Place.File.TextOf(edit.Place.Span)), now = Shorten(edit.NewText);
        return old.Length == 0 ? $"{line}put in {now}" : now.Length == 0 ? $"{line}take out {old}" : $"{line}{old} becomes {now}";
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
