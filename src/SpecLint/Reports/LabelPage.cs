using SpecLint.Findings;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>Sheets that labels are printed on.</summary>
public enum LabelSheet
{
    /// <summary>A4 (ISO 216), 2 by 7 labels of 99 by 38 mm.</summary>
    A4,

    /// <summary>Letter (ANSI/ASME Y14.1), 2 by 5 labels of 4 by 2 inches.</summary>
    Letter,

    /// <summary>A roll of 62 mm, a page a label.</summary>
    Roll,
}

/// <summary>Labels of lots as one self-contained HTML page to print.</summary>
public static class LabelPage
{
    /// <summary>Writes the page.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="labels">The labels.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="units">Units of temperature.</param>
    public static void Write(TextWriter to, IReadOnlyList<LotLabel> labels, LabelSheet sheet, DisplayUnits units)
    {
        var page = new Html(to);
        var (size, width, height, columns, font) = sheet switch
        {
            LabelSheet.A4 => ("A4; margin: 15mm 5mm", "99mm", "38mm", 2, "9pt"),
            LabelSheet.Letter => ("letter; margin: 0.5in 0.15in", "4in", "2in", 2, "10pt"),
            _ => ("62mm 60mm; margin: 2mm", "58mm", "56mm", 1, "9.5pt"),
        };
        page.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n<title>Labels</title>\n<style>\n");
        page.Raw($"@page{{size:{size}}}body{{margin:0;color:#000;background:#fff;font:{font}/1.25 system-ui,sans-serif}}\n");
        page.Raw($"main{{display:grid;grid-template-columns:repeat({columns},minmax(0,{width}))}}section{{width:100%;max-width:{width};min-height:{height};padding:2mm;overflow-wrap:anywhere;box-sizing:border-box;break-inside:avoid;outline:.2mm dotted #999}}\n");
        if (sheet == LabelSheet.Roll) page.Raw("section{break-after:page}");
        page.Raw("h2{font-size:1.4em;line-height:1.1;margin:0 0 .5mm}p{margin:0}.dates{font-size:1.15em}strong{font-weight:800}@media screen and (max-width:500px){main{grid-template-columns:1fr}}@media print{section{outline:none}}\n</style>\n</head>\n<body>\n<main>\n");
        foreach (var label in labels) Section(page, label, units);
        page.Raw("</main>\n</body>\n</html>\n");
    }

    private static void Section(Html page, LotLabel label, DisplayUnits units)
    {
        var lot = label.Lot;
        page.Raw($"<section><h2>{Html.Text(lot.Name)}</h2>\n");
        string from = lot.From is { } day ? $"{(lot.Lot.Made.IsGiven ? "Made" : "Opened")} {day}" : "Made __________";
        page.Raw($"<p class=\"dates\">{Html.Text(from)} · <strong>Use by {Html.Text(lot.UseBy?.ToString() ?? "— no date set")}</strong></p>\n");
        string where = double.IsNaN(label.StorageCelsius) ? "" : $"Keep at {units.Temperature(label.StorageCelsius)}";
        var facts = new List<string> { where, label.StoredIn, label.StrengthInWords, lot.Lot.LotCode.IsGiven ? $"Lot {lot.Lot.LotCode.Value}" : "", lot.Lot.By.IsGiven ? $"By {lot.Lot.By.Value}" : "By ____" };
        page.Raw($"<p>{string.Join(" · ", facts.Where(f => f.Length > 0).Select(Html.Text))}</p>\n");
        if (label.Contains.Count > 0) page.Raw($"<p>Contains <strong>{string.Join(", ", label.Contains.Select(c => Html.Text(c.ToUpperInvariant())))}</strong></p>\n");
        if (label.MayContain.Count > 0) page.Raw($"<p>May contain <strong>{string.Join(", ", label.MayContain.Select(c => Html.Text(c.ToUpperInvariant())))}</strong></p>\n");
        if (label.NotKnownOf.Count > 0) page.Raw($"<p><strong>Allergens not known of {Html.Text(Say.List(label.NotKnownOf))}: ask</strong></p>\n");
        foreach (string text in label.Advisories) page.Raw($"<p>{Html.Text(text)}</p>\n");
        if (lot.Readiness == Readiness.No) page.Raw($"<p><strong>NOT TO BE USED: {Html.Text(string.Join("; ", lot.Reasons))}</strong></p>\n");
        page.Raw("</section>\n");
    }
}
