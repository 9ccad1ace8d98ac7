using System.Text.Json;
using SpecLint.Findings;
using SpecLint.Reading;
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

/// <summary>Labels of lots as one self-contained HTML page to print, and as JSON.</summary>
public static class LabelPage
{
    /// <summary>What a label says of what must not be used.</summary>
    internal const string DoNotUse = "DO NOT USE – see check";

    private static readonly CalendarDate Monday = CalendarDate.Of(2024, 1, 1)!.Value;
    private static readonly string[] Weekdays = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    /// <summary>Writes the page.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="labels">The labels.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="units">Units of temperature.</param>
    public static void Write(TextWriter to, IReadOnlyList<LotLabel> labels, LabelSheet sheet, DisplayUnits units)
    {
        var page = new Html(to);

        // Characters of a line and lines beneath the date that a label holds at its usual size, at half an em a character.
        var (size, width, height, columns, font, until, characters, lines) = sheet switch
        {
            LabelSheet.A4 => ("A4; margin: 15mm 5mm", "99mm", "38mm", 2, "10pt", "1.5em", 50, 4),
            LabelSheet.Letter => ("letter; margin: 0.5in 0.15in", "4in", "2in", 2, "11pt", "1.5em", 50, 6),
            _ => ("62mm 60mm; margin: 2mm", "58mm", "56mm", 1, "10pt", "1.2em", 27, 7),
        };
        string title = $"{Say.Count(labels.Count, "label")} to print";
        page.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Raw($"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n<title>{title}</title>\n<style>\n");
        page.Raw($"@page{{size:{size}}}body{{margin:0;color:#000;background:#fff;font:{font}/1.25 system-ui,sans-serif}}header{{padding:2mm;border-bottom:1px solid #666}}h1{{font-size:1.3em;margin:0}}\n");
        page.Raw($"main{{display:grid;grid-template-columns:repeat({columns},minmax(0,{width}))}}section{{width:100%;max-width:{width};min-height:{height};padding:2mm;overflow-wrap:anywhere;box-sizing:border-box;break-inside:avoid;outline:.2mm dotted #777}}\n");
        if (sheet == LabelSheet.Roll) page.Raw("section{break-after:page}");
        page.Raw($".until{{font-size:{until}}}");
        page.Raw("h2{font-size:1.45em;line-height:1.1;margin:0}p{margin:0}.until{line-height:1.15;margin:.6mm 0 .8mm;padding:.3mm 1.5mm;border:.5mm solid #000;border-radius:1mm;width:fit-content}.until strong{white-space:nowrap}strong{font-weight:800}.dense{font-size:.8em;line-height:1.15}.no{border-style:double;border-width:1mm}\n");
        page.Raw("@media screen and (max-width:500px){main{grid-template-columns:minmax(0,1fr)}}@media print{header{display:none}section{outline:none}}\n</style>\n</head>\n<body>\n");
        page.Raw($"<header><h1>{title}</h1><p>Print at its true size, without headers or footers of the browser. This head is not printed.</p></header>\n<main>\n");
        foreach (var label in labels) Section(page, label, units, characters, lines);
        page.Raw("</main>\n</body>\n</html>\n");
    }

    /// <summary>Writes the labels as JSON, temperatures in °C.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="labels">The labels.</param>
    public static void WriteJson(Stream to, IReadOnlyList<LotLabel> labels)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartArray();
            foreach (var label in labels) WriteLabel(json, label);
            json.WriteEndArray();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static void WriteLabel(Utf8JsonWriter json, LotLabel label)
    {
        var lot = label.Lot;
        json.WriteStartObject();
        json.WriteString("item", JsonOutput.WellFormed(lot.Id));
        json.WriteString("name", JsonOutput.WellFormed(lot.Name));
        if (lot.From is { } from) json.WriteString(lot.Lot.Made.IsGiven ? "made" : "opened", from.ToString());
        if (lot.UseBy is { } last) json.WriteString("useBy", last.ToString());
        json.WriteGiven("useByFrom", lot.UseByFrom);
        json.WriteGiven("lot", lot.Lot.LotCode.Or(""));
        json.WriteGiven("by", lot.Lot.By.Or(""));
        if (lot.Readiness != Readiness.No) json.WriteFinite("keepAtCelsius", label.StorageCelsius);
        json.WriteGiven("keepIn", label.StoredIn);
        if (label.Strength.IsKnown)
        {
            json.WriteStartObject("strength");
            json.WriteFinite("value", label.Strength.Value);
            json.WriteFinite("low", label.Strength.Low);
            json.WriteFinite("high", label.Strength.High);
            json.WriteString("unit", "%{vol}");
            json.WriteEndObject();
        }

        json.WriteStartObject("allergens");
        LineCheckReport.Texts(json, "contains", label.Contains);
        LineCheckReport.Texts(json, "mayContain", label.MayContain);
        LineCheckReport.Texts(json, "notKnownOf", label.NotKnownOf);
        json.WriteEndObject();
        LineCheckReport.Texts(json, "advisories", label.Advisories);
        json.WriteString("answer", LineCheckReport.KeyOf(lot.Readiness));
        LineCheckReport.Texts(json, "because", lot.Reasons);
        LineCheckReport.Texts(json, "first", lot.Conditions);
        json.WriteEndObject();
    }

    private static void Section(Html page, LotLabel label, DisplayUnits units, int characters, int lines)
    {
        var lot = label.Lot;
        bool made = lot.From is null || lot.Lot.Made.IsGiven;
        string where = double.IsNaN(label.StorageCelsius) || (lot.Readiness == Readiness.No && lot.UseBy is null) ? "" : $"Keep at {units.Temperature(label.StorageCelsius)}";
        var texts = new List<(string Before, string Strong)>
        {
            (Joined(lot.From is { } day ? $"{(made ? "Made" : "Opened")} {Day(day)}" : "Made __________", lot.Lot.By.IsGiven ? $"by {lot.Lot.By.Value}" : "by ____", lot.Lot.LotCode.IsGiven ? $"lot {lot.Lot.LotCode.Value}" : ""), ""),
            (Joined(where, label.StoredIn, label.StrengthInWords), ""),
        };
        if (label.Contains.Count > 0) texts.Add(("Contains ", string.Join(", ", label.Contains).ToUpperInvariant()));
        if (label.MayContain.Count > 0) texts.Add(("May contain ", string.Join(", ", label.MayContain).ToUpperInvariant()));
        if (label.NotKnownOf.Count > 0) texts.Add(("", $"Allergens not known of {Say.List(label.NotKnownOf)}: ask"));
        foreach (string text in label.Advisories) texts.Add((text, ""));
        bool forbidden = lot.Readiness == Readiness.No;
        if (forbidden) texts.Add(("", (lot.UseBy is null ? "" : "NOT TO BE USED: ") + units.Spoken(string.Join("; ", lot.Reasons))));
        else if (lot.Verdict is { Shortening.Count: > 0 } shortened) texts.Add(("", $"Not kept as long as its recipe says: see check ({Verdict.RulesOf(shortened.Shortening)})"));
        else if (lot.Verdict is { ToShow.Count: > 0 } open) texts.Add(($"Not shown yet: see check ({Verdict.RulesOf(open.ToShow)})", ""));
        texts.RemoveAll(t => t.Before.Length + t.Strong.Length == 0);

        // What does not fit at the usual size is set smaller; nothing is ever cut off.
        int needed = texts.Sum(t => 1 + ((t.Before.Length + t.Strong.Length - 1) / characters)) + (2 * (lot.Name.Length * 3 / 2 / characters));
        page.Raw($"<section{(needed > lines ? " class=\"dense\"" : "")}><h2>{Html.Text(lot.Name)}</h2>\n");
        string until = forbidden && lot.UseBy is null ? $"<strong>{DoNotUse}</strong>" : lot.UseBy is { } last ? $"Use by <strong>{Html.Text(Day(last))}</strong>" : "Use by <strong>no date set</strong>";
        page.Raw($"<p class=\"until{(forbidden ? " no" : "")}\">{until}</p>\n");
        foreach (var (before, strong) in texts) page.Raw($"<p>{Html.Text(before)}{(strong.Length == 0 ? "" : $"<strong>{Html.Text(strong)}</strong>")}</p>\n");
        page.Raw("</section>\n");
    }

    private static string Joined(params string[] texts) => string.Join(" · ", texts.Where(t => t.Length > 0));

    /// <summary>A day with its weekday, which a shift reads faster than a date.</summary>
    private static string Day(CalendarDate day) => $"{Weekdays[((day.DaysSince(Monday) % 7) + 7) % 7]} {day}";
}
