using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>Everything that a check found as one self-contained HTML page: what to do, at its place in the recipe; what the drinks come to.</summary>
internal static class CheckPage
{
    private const int LongestExcerpt = 240;
    private const int MostLinesShown = 400;

    /// <summary>Writes the page.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="content">What.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="version">Version of the product.</param>
    public static void Write(TextWriter to, ReportContent content, DisplayUnits units, string version)
    {
        var page = new Html(to);
        var book = content.Result.Book;
        page.Begin($"{book.Settings.Bar?.Name.Or("") ?? ""} {book.On}".TrimStart());
        page.Paragraph($"{ReportWords.Count(content.Recipes, "recipe", "recipes")}: "
            + $"{ReportWords.Count(content.Errors, "error", "errors")}, {ReportWords.Count(content.Warnings, "warning", "warnings")}, "
            + $"{ReportWords.Count(content.Notes, "note", "notes")}; "
            + $"{ReportWords.Count(content.Accepted.Count, "finding is", "findings are")} accepted.");
        if (content.Aside.Sentence.Length > 0) page.Raw($"<p><strong>{Html.Text(content.Aside.Sentence)}</strong></p>\n");
        Contents(page, content);
        Group(page, content, units, "Somebody could be hurt: see to these first", f => f.Rule.Safety && f.Answer == Answer.Broken);
        Group(page, content, units, "To measure or to find out", f => f.Answer == Answer.NotShown);
        Group(page, content, units, "To put right", f => !f.Rule.Safety && f.Answer == Answer.Broken && f.Level >= Level.Warning);
        Group(page, content, units, "Worth a minute", f => !f.Rule.Safety && f.Answer == Answer.Broken && f.Level < Level.Warning);
        if (content.Accepted.Count > 0)
        {
            page.Heading(2, "Accepted");
            page.Table(
                "Accepted findings",
                ["rule", "recipe", "because", "until"],
                [.. content.Accepted.Select(f => (IReadOnlyList<string>)[
                    f.Rule.Id, f.Subject, f.Suppression?.Justification ?? "", f.Suppression?.Until?.ToString() ?? "no end"])]);
        }

        var drinks = book.Drinks.Where(d => content.Includes(d)).ToList();
        var preps = book.Preps.Where(p => content.Includes(p)).ToList();
        if (drinks.Count > 0)
        {
            page.Heading(2, "What the drinks come to");
            BookPlots.Facts(page, drinks, content.Result.Profiles, units);
            BookPlots.SugarAndAcid(page, drinks, content.Result.Profiles);
            BookPlots.StrengthAndVolume(page, drinks, content.Result.Profiles, units);
            Allergens(page, drinks, content);
        }

        if (preps.Count > 0)
        {
            page.Heading(2, "The preparations");
            BookPlots.PhAndWaterActivity(page, preps, content.Result.Profiles);
        }

        Texts(page, content);
        page.End(ReportWords.Closing, version);
    }

    private static void Contents(Html page, ReportContent content)
    {
        var subjects = content.Findings
            .GroupBy(f => f.Subject, StringComparer.Ordinal)
            .OrderByDescending(g => g.Max(f => f.Level))
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .ToList();
        if (subjects.Count == 0) return;
        page.Raw("<details><summary>By recipe</summary>\n<ul>\n");
        foreach (var subject in subjects)
        {
            page.Raw($"<li>{Html.Text(subject.Key)}: ");
            page.Raw(string.Join(", ", subject.Select(f =>
                $"<a href=\"#{AnchorOf(f)}\">{Html.Text(f.Rule.Id)} {Html.Text(ReportWords.Of(f.Level))}</a>")));
            page.Raw("</li>\n");
        }

        page.Raw("</ul></details>\n");
    }

    private static void Group(Html page, ReportContent content, DisplayUnits units, string heading, Func<Finding, bool> belongs)
    {
        var findings = content.Findings.Where(belongs).OrderByDescending(f => f.Level).ToList();
        if (findings.Count == 0) return;
        page.Heading(2, $"{heading} ({findings.Count})");
        foreach (var finding in findings) WriteFinding(page, content, units, finding);
    }

    private static void WriteFinding(Html page, ReportContent content, DisplayUnits units, Finding finding)
    {
        string css = finding.Level switch { Level.Error => "bad", Level.Warning => "mid", _ => "soft" };
        page.Raw($"<article id=\"{AnchorOf(finding)}\"><h3><span class=\"tag {css}\">"
            + $"{ReportWords.Of(finding.Level)} {Html.Text(finding.Rule.Id)}</span> {Html.Text(NameOf(content, finding))}</h3>\n");
        page.Paragraph(units.Sentence(finding.Message));
        if (finding.Advice.Length > 0) page.Paragraph(units.Sentence(finding.Advice));
        Excerpt(page, content, finding.Place);
        foreach (var correction in finding.Corrections)
        {
            page.Paragraph($"{(correction.Grade == CorrectionGrade.Assured ? "Assured" : "Proposed")} correction: "
                + $"{units.Sentence(correction.Description)}");
            page.List([.. correction.Edits.Take(8).Select(TextReport.WordsOf)]);
        }

        foreach (var related in finding.Related)
            page.Paragraph($"{related.Place.File.Path}, line {related.Place.Start.Line}: {units.Sentence(related.Message)}", "soft");
        if (finding.Caution is { Length: > 0 } caution) page.Raw($"<p><strong>{Html.Text(units.Sentence(caution))}</strong></p>\n");
        if (finding.Folded.Count > 0)
        {
            page.Raw($"<details><summary>{finding.Folded.Count} that follow from it</summary>\n");
            page.List([.. finding.Folded.Select(f => $"{f.Rule.Id}: {units.Sentence(f.Message)}")]);
            page.Raw("</details>\n");
        }

        page.Raw("</article>\n");
    }

    /// <summary>The lines of the place, one before and one after, with what is meant underlined.</summary>
    private static void Excerpt(Html page, ReportContent content, Place place)
    {
        var file = place.File;
        int line = place.Start.Line, first = Math.Max(1, line - 1), last = Math.Min(file.LineCount, line + 1);
        string address = Html.Text($"{file.Path}:{line}:{place.Start.Column}");
        page.Raw(content.IsInBook(place) ? $"<p><a href=\"#{LineOf(file, line)}\">{address}</a></p>\n" : $"<p class=\"soft\">{address}</p>\n");
        page.Raw("<pre>");
        for (int n = first; n <= last; n++)
        {
            var span = file.LineSpan(n);
            int from = Math.Max(place.Span.Start, span.Start), to = Math.Min(place.Span.Start + place.Span.Length, span.Start + span.Length);
            page.Raw($"{n,4}  ");
            if (span.Length > LongestExcerpt || n != line || to <= from)
            {
                page.Raw(Html.Text(Clip(file.TextOf(new TextSpan(span.Start, Math.Min(span.Length, 4 * LongestExcerpt))).Replace("\t", "  "))));
            }
            else
            {
                page.Raw(Html.Text(file.TextOf(new TextSpan(span.Start, from - span.Start)).Replace("\t", "  ")));
                page.Raw($"<mark>{Html.Text(file.TextOf(new TextSpan(from, to - from)))}</mark>");
                page.Raw(Html.Text(file.TextOf(new TextSpan(to, span.Start + span.Length - to))));
            }

            page.Raw("\n");
        }

        page.Raw("</pre>\n");
    }

    /// <summary>The whole text of every file with a finding, line by line: where the links of the findings lead.</summary>
    private static void Texts(Html page, ReportContent content)
    {
        var byFile = content.Findings.Where(f => content.IsInBook(f.Place))
            .GroupBy(f => f.Place.File).OrderBy(g => g.Key.Path, StringComparer.Ordinal).ToList();
        if (byFile.Count == 0) return;
        page.Heading(2, "The files with findings");
        page.Paragraph("A line with a finding begins with its level: ✖ an error, ▲ a warning, ● a note.", "soft");
        foreach (var group in byFile)
        {
            var source = group.Key;
            string name = content.FileAt(source.Path) is { } file ? $"{file.Name.Or(file.Id)} ({ReportWords.Of(file.Kind)})" : source.Path;
            page.Raw($"<article id=\"{Html.Anchor("file-", source.Path)}\"><h3>{Html.Text(name)}</h3>\n<p>{Html.Text(source.Path)}: ");
            page.Raw(string.Join(", ", group.OrderBy(f => f.Place.Span.Start).Select(f =>
                $"<a href=\"#{AnchorOf(f)}\">line {f.Place.Start.Line}, {Html.Text(f.Rule.Id)}</a>")));
            page.Raw("</p>\n<pre>");
            var worst = group.GroupBy(f => f.Place.Start.Line).ToDictionary(g => g.Key, g => g.Max(f => f.Level));
            for (int n = 1; n <= source.LineCount; n++)
            {
                // Of a very long file only the lines about its findings are shown.
                if (source.LineCount > MostLinesShown && !worst.Keys.Any(k => Math.Abs(k - n) <= 2)) continue;
                var span = source.LineSpan(n);
                if (n == source.LineCount && span.Length == 0) continue;
                string sign = worst.TryGetValue(n, out var level) ? level switch { Level.Error => "✖", Level.Warning => "▲", _ => "●" } : " ";
                string text = Html.Text(Clip(source.TextOf(new TextSpan(span.Start, Math.Min(span.Length, 4 * LongestExcerpt))).Replace("\t", "  ")));
                string line = $"{sign}{n,4}  {text}";
                page.Raw(sign == " " ? line + "\n" : $"<span id=\"{LineOf(source, n)}\">{line}</span>\n");
            }

            page.Raw("</pre></article>\n");
        }
    }

    private static void Allergens(Html page, IReadOnlyList<Drink> drinks, ReportContent content)
    {
        var settings = content.Result.Book.Settings;
        var known = drinks.Select(d => (Drink: d, Allergens: content.Result.Profiles.Of(d).Allergens)).ToList();
        var tokens = known
            .SelectMany(k => k.Allergens.Contained(settings).Concat(k.Allergens.Possible(settings)))
            .Distinct().OrderBy(t => t, StringComparer.Ordinal).ToList();
        if (tokens.Count == 0) return;
        page.Allergens(
            "Allergens by drink, worked out through all preparations",
            tokens,
            [.. known.Select(k => new AllergenRow(
                k.Drink.Name.Or(k.Drink.Id),
                k.Allergens.Contained(settings),
                k.Allergens.Possible(settings),
                [.. k.Allergens.Unknown.Select(u => u.Through[u.Through.Count - 1]).Distinct()]))]);
    }

    private static string NameOf(ReportContent content, Finding finding) =>
        content.FileAt(finding.Place.File.Path) is { } file ? $"{file.Name.Or(file.Id)} ({ReportWords.Of(file.Kind)})" : finding.Subject;

    private static string LineOf(SourceFile file, int line) => $"{Html.Anchor("line-", file.Path)}-{line}";

    private static string AnchorOf(Finding finding) => Html.Anchor("finding-", finding.Fingerprint);

    private static string Clip(string text) => text.Length <= LongestExcerpt ? text : text.Substring(0, LongestExcerpt) + "…";
}
