using System.Text;
using SpecLint.Book;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>A line check as one self-contained HTML page, for a screen in the bar and for paper.</summary>
internal static class LineCheckPage
{
    private const string Style = """
        .summary{break-after:page}.summary h2{margin:.9rem 0 .2rem}.summary table{width:100%}
        .summary .allergens td,.summary .allergens th{font-size:.8rem;padding:.1rem .3rem}
        @page{size:A4;margin:10mm}
        @media print{.summary{font-size:8pt;line-height:1.25}.summary h2{font-size:10pt;margin:1.6mm 0 .6mm}
        .summary p,.summary ul{margin:.3mm 0}.summary table{font-size:7.5pt}
        .summary th,.summary td,.summary .allergens td,.summary .allergens th{padding:.15mm .8mm;font-size:7.5pt}}
        """;

    /// <summary>Writes the page.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="check">The check.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="version">Version of the product.</param>
    /// <param name="aside">Harm findings that are put aside.</param>
    public static void Write(TextWriter to, LineCheck check, DisplayUnits units, string version, HarmAside? aside = null)
    {
        var page = new Html(to);
        page.Begin($"{check.Menu.Name.Or(check.Menu.Id)}, {check.On}", css: Style);
        page.Raw("<section class=\"summary\">\n");
        Summary(page, check, units);
        page.Raw("</section>\n");
        page.Heading(2, "Details");
        Group(page, check, Readiness.No, "Cannot be served", "no", "bad", units);
        Group(page, check, Readiness.If, "Can be served if", "if", "mid", units);
        Making(page, check, units);
        Lots(page, check, units);
        var drinks = check.Drinks.Select(d => d.Drink).OfType<Drink>().Distinct().ToList();
        if (drinks.Count > 0)
        {
            page.Heading(2, "What the drinks come to");
            BookPlots.Facts(page, drinks, check.Profiles, units);
            BookPlots.SugarAndAcid(page, drinks, check.Profiles);
            BookPlots.StrengthAndVolume(page, drinks, check.Profiles, units);
        }

        if (aside is { Sentence.Length: > 0 }) page.Raw($"<p><strong>{Html.Text(aside.Sentence)}</strong></p>\n");
        page.End(LineCheckReport.Caution, version);
    }

    /// <summary>What the team needs on one sheet: what can be served, what to make, to discard and to fetch, the allergens.</summary>
    private static void Summary(Html page, LineCheck check, DisplayUnits units)
    {
        page.Paragraph(LineCheckReport.Summary(check));
        if (LineCheckReport.Count(check, Readiness.No) > 0)
            page.Raw($"<p><strong class=\"bad\">Do not serve: {Html.Text(Names(Readiness.No))}.</strong> Why stands "
                + $"under the details.</p>\n");
        if (LineCheckReport.Count(check, Readiness.Ready) > 0)
            page.Raw($"<p><strong class=\"good\">Serve:</strong> {Html.Text(Names(Readiness.Ready))}.</p>\n");

        // What several drinks wait for is said once.
        var first = check.Drinks.Where(d => d.Readiness == Readiness.If)
            .SelectMany(d => d.Conditions.Select(c => (Condition: c, d.Name)))
            .GroupBy(c => c.Condition, StringComparer.Ordinal)
            .ToList();
        if (first.Count > 0)
        {
            page.Heading(2, "First");
            page.List([.. first.Select(g => $"{Say.List([.. g.Select(c => c.Name).Distinct()])}: {units.Spoken(g.Key)}")]);
        }

        if (check.Make.Count > 0)
        {
            page.Heading(2, "Make, in this order");
            page.Table("To make", ["what", "how much", "for", "leaves"], [.. check.Make.Select(t => (IReadOnlyList<string>)[
                t.Prep.Name.Or(t.Prep.Id),
                $"{(double.IsNaN(t.MakesMillilitres) ? units.Mass(t.Makes) : units.Volume(t.MakesMillilitres))}, {LineCheckReport.TimesOf(t.Times)}",
                Say.List([.. t.For.Select(f => LineCheckReport.NameOf(check, f))]),
                t.Credits.Count == 0 ? "" : LineCheckReport.CreditsOf(check, t, units)])]);
        }

        if (check.ThrowAway.Any())
        {
            page.Heading(2, "Discard");
            page.List([.. check.ThrowAway.GroupBy(l => string.Join("; ", l.Reasons), StringComparer.Ordinal)
                .Select(g => $"{Say.List([.. g.Select(l => NameOf(check, l))])}: {units.Spoken(g.Key)}")]);
        }

        if (check.Get.Count > 0)
        {
            page.Heading(2, "Fetch, or look for");
            page.Paragraph(string.Join(
                "; ",
                check.Get.Select(g =>
                    $"{LineCheckReport.NameOf(check, g.Id)}"
                    + $"{(g.Grams > 0 ? " " + LineCheckReport.AmountOf(check, g.Id, g.Grams, units) : "")} "
                    + $"(for {Say.List([.. g.For.Select(f => LineCheckReport.NameOf(check, f))])})")) + ".");
        }

        Allergens(page, check);

        string Names(Readiness readiness) =>
            string.Join(
                ", ",
                check.Drinks.Where(d => d.Readiness == readiness)
                    .Select(d => d.Name + (d.Covers > 0 ? $" ({Say.Number(d.Covers, 0)})" : "")));
    }

    private static string NameOf(LineCheck check, LotCheck lot) =>
        LineCheckReport.NameOf(check, lot.Id) + (lot.Lot.LotCode.IsGiven
            ? $" {lot.Lot.LotCode.Value}"
            : lot.From is { } from ? $" of {from}" : "");

    private static void Group(Html page, LineCheck check, Readiness readiness, string heading, string tag, string css, DisplayUnits units)
    {
        if (LineCheckReport.Count(check, readiness) == 0) return;
        page.Heading(2, heading);
        foreach (var drink in check.Drinks)
        {
            if (drink.Readiness != readiness) continue;
            string covers = drink.Covers == 0 ? "no covers given" : drink.CoversReady < drink.Covers
                ? $"ready for {Say.Number(drink.CoversReady, 0)} of {Say.Number(drink.Covers, 0)} covers" : $"{Say.Number(drink.Covers, 0)} covers";
            page.Raw($"<article id=\"{Html.Anchor("drink-", drink.Id)}\"><h3><span class=\"tag {css}\">{tag}</span> "
                + $"{Html.Text(drink.Name)} <span class=\"soft\">{Html.Text(covers)}</span></h3>\n");
            page.List([.. drink.Reasons.Concat(drink.Conditions).Select(units.Spoken)]);
            if (drink.LookFor.Count > 0) page.Paragraph(units.Spoken($"Look for {Say.List(drink.LookFor)}."), "soft");
            page.Raw("</article>\n");
        }
    }

    private static void Making(Html page, LineCheck check, DisplayUnits units)
    {
        if (check.Make.Count == 0) return;
        page.Heading(2, "To make today, in this order");
        foreach (var task in check.Make)
        {
            string makes = double.IsNaN(task.MakesMillilitres) ? units.Mass(task.Makes) : units.Volume(task.MakesMillilitres);
            page.Raw($"<article><h3>{Html.Text(task.Prep.Name.Or(task.Prep.Id))} <span "
                + $"class=\"soft\">{Html.Text(LineCheckReport.TimesOf(task.Times))}, {Html.Text(makes)}</span></h3>\n");
            page.Paragraph($"For {Say.List([.. task.For.Select(f => LineCheckReport.NameOf(check, f))])}"
                + $"{(task.LastsUntil is { } last ? $"; use by {last}" : "")}.");
            page.List([.. task.Lines.Select(l => $"{LineCheckReport.NameOf(check, l.Item)}: {LineCheckReport.LineOf(l, units)}")]);
            page.Raw("</article>\n");
        }
    }

    private static void Allergens(Html page, LineCheck check)
    {
        page.Heading(2, "Allergens, for the team");
        page.Raw("<div class=\"allergens\">\n");
        page.Allergens(
            "Allergens by drink",
            check.Allergens,
            [.. check.Drinks.Where(d => d.Drink is not null).Select(d => new AllergenRow(d.Name, d.Contains, d.MayContain, d.NotKnownOf))]);
        page.Raw("</div>\n");
    }

    /// <summary>The name of a lot's item, with the code of the lot.</summary>
    private static string Titled(LineCheck check, LotCheck lot) =>
        LineCheckReport.NameOf(check, lot.Id) + (lot.Lot.LotCode.IsGiven ? $" {lot.Lot.LotCode.Value}" : "");

    private static void Lots(Html page, LineCheck check, DisplayUnits units)
    {
        if (check.Lots.Count == 0) return;
        page.Heading(2, "Lots");
        var lots = check.Lots.OrderBy(l => l.UseBy?.DayNumber ?? int.MaxValue).ThenBy(l => l.Id, StringComparer.Ordinal).ToList();
        Timeline(page, check, [.. lots.Where(l => l.From is not null && l.UseBy is not null)]);
        page.Table(
            "Lots by use-by",
            ["lot", "from", "use by", "because of", "left", "stands at", "state"],
            [.. lots.Select(l => (IReadOnlyList<string>)[
                Titled(check, l), l.From?.ToString() ?? "not given", l.UseBy?.ToString() ?? "no end", l.UseByFrom,
                double.IsNaN(l.Grams) ? "not known" : LineCheckReport.AmountOf(check, l.Id, l.Grams, units),
                l.Lot.At.IsGiven ? units.Temperature(l.Lot.At.Value.Base) : "not given",
                l.Readiness switch
                {
                    Readiness.Ready => "usable",
                    Readiness.If => "first: " + units.Spoken(string.Join("; ", l.Conditions)),
                    _ => "not to be used: " + units.Spoken(string.Join("; ", l.Reasons)),
                }])]);
    }

    /// <summary>Life of the lots, a bar each, from three weeks back to three weeks ahead.</summary>
    private static void Timeline(Html page, LineCheck check, List<LotCheck> lots)
    {
        if (lots.Count == 0) return;
        const int Span = 21;
        const double Left = 190, Row = 20, Day = 12, Top = 24;
        double width = Left + (((2 * Span) + 1) * Day) + 10, height = Top + (lots.Count * Row) + 10;
        var svg = new StringBuilder();
        svg.Append($"<svg viewBox=\"0 0 {Plot.N(width)} {Plot.N(height)}\" role=\"img\" "
            + "aria-label=\"Life of the lots; the table beneath says the same\">");
        for (int week = -Span; week <= Span; week += 7)
            svg.Append($"<path d=\"M{Plot.N(X(week))} {Plot.N(Top - 4)}V{Plot.N(height - 6)}\" stroke=\"var(--line)\"/><text "
                + $"x=\"{Plot.N(X(week))}\" y=\"14\" text-anchor=\"middle\">{check.On.AddDays(week).ToString().Substring(5)}</text>");
        for (int i = 0; i < lots.Count; i++)
        {
            var lot = lots[i];
            double y = Top + (i * Row),
                from = Math.Max(-Span, lot.From!.Value.DaysSince(check.On)),
                to = Math.Min(Span, lot.UseBy!.Value.DaysSince(check.On) + 1);
            string name = Titled(check, lot);
            string shown = name.Length > 26 ? name.Substring(0, 25) + "…" : name;
            string pattern = lot.Readiness == Readiness.Ready ? ""
                : lot.Readiness == Readiness.If ? " stroke-dasharray=\"6 3\""
                : " stroke-dasharray=\"2 2\"";
            svg.Append($"<g class=\"mark\"><title>{Html.Text($"{name}: {lot.From} to {lot.UseBy}")}</title><text x=\"4\" "
                + $"y=\"{Plot.N(y + 13)}\">{Html.Text(shown)}</text>");
            svg.Append($"<rect x=\"{Plot.N(X(Math.Min(from, to - 1)))}\" y=\"{Plot.N(y + 3)}\" "
                + $"width=\"{Plot.N(Math.Max(1, to - from) * Day)}\" height=\"12\" "
                + $"fill=\"{(lot.Readiness == Readiness.Ready ? "var(--mark)" : "var(--paper)")}\" fill-opacity=\"0.6\" "
                + $"stroke=\"var(--mark)\"{pattern}/>");
            if (lot.Readiness == Readiness.No) svg.Append($"<text x=\"{Plot.N(X(to) + 3)}\" y=\"{Plot.N(y + 13)}\">✕</text>");
            svg.Append("</g>");
        }

        svg.Append($"<path d=\"M{Plot.N(X(0))} {Plot.N(Top - 4)}V{Plot.N(height - 6)}\" stroke=\"currentColor\" stroke-width=\"2\"/></svg>\n");
        page.BeginWide("Life of the lots");
        page.Raw(svg.ToString());
        page.Raw("</div>\n");
        page.Paragraph("Full: usable. Dashed: something first. Dotted with a cross: not to be used. The heavy line is the day of the check.", "soft");

        static double X(double day) => Left + ((day + Span) * Day);
    }
}
