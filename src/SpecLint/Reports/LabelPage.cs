using System.Text.Json;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>Labels of lots as one self-contained HTML page to print, and as JSON.</summary>
internal static class LabelPage
{
    /// <summary>What a label says of what must not be used.</summary>
    internal const string DoNotUse = "DO NOT USE – see check";

    private static readonly CalendarDate Monday = CalendarDate.Of(2024, 1, 1)!.Value;
    private static readonly string[] Weekdays = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    /// <summary>What every label says of itself.</summary>
    internal const string NotForSale = "Kitchen label, not for sale";

    // Sizes of letters, points: from what is read at arm's length down to the smallest that a label may have; common practice, no source.
    private const double LargestPoints = 12, ShortPoints = 7, SmallestPoints = 6, PointStep = 0.25;

    private const double MillimetresPerPoint = 25.4 / 72;

    /// <summary>Room between the edge of a label and its text, mm: printers feed a sheet a millimetre or so off.</summary>
    private const double Padding = 2.5;

    // Sizes of the name and of the use-by in sizes of the text, and heights of lines in their own size.
    private const double NameSize = 1.35, UntilSize = 1.3, NoteSize = 0.8, LineHeight = 1.2, UntilRoom = 3.2;

    /// <summary>Labels that do not fit on a stock even at the smallest letters; such a label must not be printed on it.</summary>
    /// <param name="labels">The labels.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="units">Units of temperature.</param>
    public static IReadOnlyList<LotLabel> Misfits(
        IReadOnlyList<LotLabel> labels, LabelStock stock, DisplayUnits units) =>
            [.. labels.Where(l => Fit(l, stock, units).Points == 0).Distinct()];

    /// <summary>Writes the page: each label at its place, at the largest letters at which it fits.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="labels">The labels, each of which fits.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="units">Units of temperature.</param>
    /// <param name="startAt">Place of the first label on the first sheet, from 1, line by line: those before it are used.</param>
    public static void Write(TextWriter to, IReadOnlyList<LotLabel> labels, LabelStock stock, DisplayUnits units, int startAt = 1)
    {
        var page = new Html(to);
        string title = $"{Say.Count(labels.Count, "label")} to print";
        Begin(page, stock, title);
        page.Raw($"<header><h1>{title}</h1><p>For {Html.Text(stock.Id)}: {Html.Text(stock.Name)}. Print at its true size (100 %), "
            + $"without headers or footers of the browser; print the test page first. {NotForSale}. This head is not "
            + $"printed.</p></header>\n<main>\n");
        int place = startAt - 1;
        for (int i = 0; i < labels.Count; i++, place++)
        {
            if (i == 0 || place % stock.PerPage == 0) page.Raw("<div class=\"sheet\">\n");
            Section(page, labels[i], stock, units, place % stock.PerPage);
            if (i == labels.Count - 1 || place % stock.PerPage == stock.PerPage - 1) page.Raw("</div>\n");
        }

        page.Raw("</main>\n</body>\n</html>\n");
    }

    /// <summary>Labels of food prepacked for direct sale that do not fit on a stock even at the smallest letters.</summary>
    /// <param name="labels">The labels with their lists of ingredients.</param>
    /// <param name="bar">Name of the bar.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="units">Units of temperature.</param>
    public static IReadOnlyList<LotLabel> PackedMisfits(
        IReadOnlyList<(LotLabel Label, PackedLabel Packed)> labels, string bar, LabelStock stock, DisplayUnits units) =>
        [.. labels.Where(l => PackedPoints(l.Label, l.Packed, bar, stock, units) == 0).Select(l => l.Label).Distinct()];

    /// <summary>
    /// Writes labels of food prepacked for direct sale: name, ingredients in descending order with the allergens emphasised, use-by,
    /// keeping.
    /// </summary>
    /// <param name="to">Where to.</param>
    /// <param name="labels">The labels with their lists of ingredients, each of which fits.</param>
    /// <param name="bar">Name of the bar.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="units">Units of temperature.</param>
    /// <param name="startAt">Place of the first label on the first sheet, from 1.</param>
    public static void WritePacked(
        TextWriter to, IReadOnlyList<(LotLabel Label, PackedLabel Packed)> labels, string bar, LabelStock stock, DisplayUnits units,
        int startAt = 1)
    {
        var page = new Html(to);
        string title = $"{Say.Count(labels.Count, "label")} of food prepacked for direct sale";
        Begin(page, stock, title);
        page.Raw($"<header><h1>{title}</h1><p>For {Html.Text(stock.Id)}: {Html.Text(stock.Name)}. Print at its true size (100 %); "
            + $"print the test page first. {Html.Text(PackedLabel.Defers)} This head is not printed.</p></header>\n<main>\n");
        int place = startAt - 1;
        for (int i = 0; i < labels.Count; i++, place++)
        {
            if (i == 0 || place % stock.PerPage == 0) page.Raw("<div class=\"sheet\">\n");
            var (label, packed) = labels[i];
            double points = PackedPoints(label, packed, bar, stock, units);
            page.Raw($"<section style=\"{At(stock, place % stock.PerPage)};font-size:{N(points == 0 ? SmallestPoints : points)}pt\">"
                + $"<h2>{Html.Text(label.Lot.Name)}</h2>\n<p>Ingredients: ");
            foreach (var run in packed.Ingredients) page.Raw(run.IsStrong ? $"<strong>{Html.Text(run.Text)}</strong>" : Html.Text(run.Text));
            page.Raw($".</p>\n<p class=\"until\">Use by <strong>{Html.Text(Day(label.Lot.UseBy!.Value))}</strong></p>\n");
            foreach (string text in PackedTexts(label, bar, units)) page.Raw($"<p>{Html.Text(text)}</p>\n");
            page.Raw("</section>\n");
            if (i == labels.Count - 1 || place % stock.PerPage == stock.PerPage - 1) page.Raw("</div>\n");
        }

        page.Raw("</main>\n</body>\n</html>\n");
    }

    private static List<string> PackedTexts(LotLabel label, string bar, DisplayUnits units)
    {
        var texts = new List<string>();
        if (label.MayContain.Count > 0) texts.Add($"May contain {string.Join(", ", label.MayContain).ToUpperInvariant()}");
        texts.Add(Joined(
            double.IsNaN(label.StorageCelsius) ? "" : $"Keep at {units.Temperature(label.StorageCelsius)}",
            label.StrengthInWords.Length > 0 ? "alcohol " + label.StrengthInWords : "",
            "contents ______"));
        texts.AddRange(label.Advisories);
        texts.Add(Joined(bar, label.Lot.Lot.LotCode.IsGiven ? $"lot {label.Lot.Lot.LotCode.Value}" : ""));
        texts.RemoveAll(t => t.Length == 0);
        return texts;
    }

    private static double PackedPoints(LotLabel label, PackedLabel packed, string bar, LabelStock stock, DisplayUnits units)
    {
        double width = stock.Width - (2 * Padding), height = stock.Height - (2 * Padding);
        string ingredients = $"Ingredients: {string.Concat(packed.Ingredients.Select(r => r.Text))}.";
        for (double points = LargestPoints; points >= SmallestPoints; points -= PointStep)
        {
            double em = points * MillimetresPerPoint;
            double lines = (TextFit.Lines(label.Lot.Name, width / (em * NameSize), bold: true) * NameSize)
                + TextFit.Lines(ingredients, width / em, bold: true)
                + (TextFit.Lines($"Use by {Day(label.Lot.UseBy!.Value)}", (width - UntilRoom) / (em * UntilSize), bold: true) * UntilSize)
                + PackedTexts(label, bar, units).Sum(t => TextFit.Lines(t, width / em, bold: false));
            if ((lines * LineHeight * em) + UntilRoom <= height) return points;
        }

        return 0;
    }

    /// <summary>
    /// Writes a page that shows where a stock's labels stand: printed on plain paper and
    /// held against a sheet, it shows whether they meet.
    /// </summary>
    /// <param name="to">Where to.</param>
    /// <param name="stock">The stock.</param>
    public static void WriteTest(TextWriter to, LabelStock stock)
    {
        var page = new Html(to);
        Begin(page, stock, "Test page for labels");
        page.Raw($"<header><h1>Test page for {Html.Text(stock.Id)}</h1><p>{Html.Text(stock.Name)}. Print on plain paper at its true "
            + $"size (100 %), lay it behind a sheet and hold both against the light: the outlines must meet the labels. This head is "
            + $"not printed.</p></header>\n<main>\n<div class=\"sheet\">\n");
        for (int i = 0; i < stock.PerPage; i++)
            page.Raw($"<section class=\"outline\" style=\"{At(stock, i)}\"><p><strong>{i + 1}</strong></p><p>{N(stock.Width)} × "
                + $"{N(stock.Height)} mm</p>{(i == 0 ? "<div class=\"ruler\">50 mm</div>" : "")}</section>\n");
        page.Raw("</div>\n</main>\n</body>\n</html>\n");
    }

    private static void Begin(Html page, LabelStock stock, string title)
    {
        page.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
            + "content=\"width=device-width, initial-scale=1\">\n");
        page.Raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
            + $"<title>{title}</title>\n<style>\n");
        page.Raw($"@page{{size:{(stock.IsRoll ? $"{N(stock.PageWidth)}mm {N(stock.PageHeight)}mm" : stock.Paper)};margin:0}}"
            + $"body{{margin:0;color:#000;background:#fff;font:10pt/{N(LineHeight)} Helvetica,Arial,'Liberation Sans',sans-serif}}"
            + "header{padding:2mm;border-bottom:1px solid #666}h1{font-size:1.3em;margin:0}\n");

        // A hair less than the page, so that rounding does not begin another one.
        page.Raw($".sheet{{position:relative;width:{N(stock.PageWidth)}mm;height:{N(stock.PageHeight - 0.3)}mm;break-after:page}}"
            + ".sheet:last-child{break-after:auto}\n");
        page.Raw($"section{{position:absolute;width:{N(stock.Width)}mm;min-height:{N(stock.Height)}mm;padding:{N(Padding)}mm;"
            + "overflow-wrap:anywhere;box-sizing:border-box;outline:.2mm dotted #777}"
            + ".outline{outline:.3mm solid #000}.ruler{width:50mm;border-top:.3mm solid #000}\n");
        page.Raw($"h2{{font-size:{N(NameSize)}em;line-height:{N(LineHeight)};margin:0}}p{{margin:0}}"
            + $".until{{font-size:{N(UntilSize)}em;margin:.6mm 0;padding:.2mm 1.2mm;"
            + "border:.5mm solid #000;border-radius:1mm;width:fit-content}"
            + $".no{{border-style:double;border-width:.8mm}}strong{{font-weight:700}}.note{{font-size:{N(NoteSize)}em}}\n");
        page.Raw("@media screen and (max-width:56rem){.sheet{position:static;width:auto;height:auto}"
            + "section{position:static;width:auto;max-width:100%;margin:2mm}}"
            + "@media print{header{display:none}section{outline:none}.outline{outline:.3mm solid #000}}\n</style>\n</head>\n<body>\n");
    }

    private static string At(LabelStock stock, int place)
    {
        var (x, y) = stock.At(place);
        return $"left:{N(x)}mm;top:{N(y)}mm";
    }

    private static string N(double number) => Say.Number(number, 2);

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

    /// <summary>The largest letters at which a label fits, and its texts; 0 points where it does not fit.</summary>
    private static (double Points, IReadOnlyList<(string Before, string Strong)> Texts) Fit(LotLabel label, LabelStock stock, DisplayUnits units)
    {
        var whole = TextsOf(label, units, isShort: false);
        double points = Largest(label, whole, stock);
        if (points >= ShortPoints) return (points, whole);

        // Why it must not be used stands in check; that it must not be used, allergens and advice stay.
        var brief = TextsOf(label, units, isShort: true);
        double other = Largest(label, brief, stock);
        return other > points ? (other, brief) : (points, whole);
    }

    private static double Largest(LotLabel label, IReadOnlyList<(string Before, string Strong)> texts, LabelStock stock)
    {
        double width = stock.Width - (2 * Padding), height = stock.Height - (2 * Padding);
        for (double points = LargestPoints; points >= SmallestPoints; points -= PointStep)
        {
            double em = points * MillimetresPerPoint;
            double lines = (TextFit.Lines(label.Lot.Name, width / (em * NameSize), bold: true) * NameSize)
                + (TextFit.Lines(UntilOf(label), (width - UntilRoom) / (em * UntilSize), bold: true) * UntilSize)
                + texts.Sum(t => TextFit.Lines(t.Before + t.Strong, width / em, t.Strong.Length > 0))
                + (TextFit.Lines(NotForSale, width / (em * NoteSize), bold: false) * NoteSize);
            if ((lines * LineHeight * em) + UntilRoom <= height) return points;
        }

        return 0;
    }

    private static string UntilOf(LotLabel label) =>
        label.Lot is { Readiness: Readiness.No, UseBy: null } ? DoNotUse : label.Lot.UseBy is { } last ? $"Use by {Day(last)}" : "Use by no date set";

    private static List<(string Before, string Strong)> TextsOf(LotLabel label, DisplayUnits units, bool isShort)
    {
        var lot = label.Lot;
        bool made = lot.From is null || lot.Lot.Made.IsGiven;
        string where = double.IsNaN(label.StorageCelsius) || (lot.Readiness == Readiness.No && lot.UseBy is null)
            ? ""
            : $"Keep at {units.Temperature(label.StorageCelsius)}";
        var texts = new List<(string Before, string Strong)>
        {
            (Joined(
                lot.From is { } day ? $"{(made ? "Made" : "Opened")} {Day(day)}" : "Made __________",
                lot.Lot.By.IsGiven
                    ? $"by {lot.Lot.By.Value}"
                    : "by ____", lot.Lot.LotCode.IsGiven ? $"lot {lot.Lot.LotCode.Value}" : ""), ""),
            (Joined(where, label.StoredIn, label.StrengthInWords), ""),
        };
        if (label.Contains.Count > 0) texts.Add(("Contains ", string.Join(", ", label.Contains).ToUpperInvariant()));
        if (label.MayContain.Count > 0) texts.Add(("May contain ", string.Join(", ", label.MayContain).ToUpperInvariant()));
        if (label.NotKnownOf.Count > 0) texts.Add(("", $"Allergens not known of {Say.List(label.NotKnownOf)}: ask"));
        foreach (string text in label.Advisories) texts.Add((text, ""));
        if (lot.Readiness == Readiness.No)
        {
            string why = isShort ? lot.UseBy is null ? "" : "run check to see why" : units.Spoken(string.Join("; ", lot.Reasons));
            texts.Add(("", (lot.UseBy is null ? "" : "NOT TO BE USED: ") + why));
        }
        else if (lot.Verdict is { Shortening.Count: > 0 } shortened)
        {
            texts.Add(("", $"Not kept as long as its recipe says: see check ({Verdict.RulesOf(shortened.Shortening)})"));
        }
        else if (lot.Verdict is { ToShow.Count: > 0 } open)
        {
            texts.Add(($"Not shown yet: see check ({Verdict.RulesOf(open.ToShow)})", ""));
        }

        texts.RemoveAll(t => t.Before.Length + t.Strong.Length == 0);
        return texts;
    }

    private static void Section(Html page, LotLabel label, LabelStock stock, DisplayUnits units, int place)
    {
        var (points, texts) = Fit(label, stock, units);
        page.Raw($"<section style=\"{At(stock, place)};font-size:{N(points == 0 ? SmallestPoints : points)}pt\">"
            + $"<h2>{Html.Text(label.Lot.Name)}</h2>\n");
        string until = label.Lot is { Readiness: Readiness.No, UseBy: null }
            ? $"<strong>{DoNotUse}</strong>"
            : $"Use by <strong>{Html.Text(label.Lot.UseBy is { } last ? Day(last) : "no date set")}</strong>";
        page.Raw($"<p class=\"until{(label.Lot.Readiness == Readiness.No ? " no" : "")}\">{until}</p>\n");
        foreach (var (before, strong) in texts)
            page.Raw($"<p>{Html.Text(before)}{(strong.Length == 0 ? "" : $"<strong>{Html.Text(strong)}</strong>")}</p>\n");
        page.Raw($"<p class=\"note\">{NotForSale}</p></section>\n");
    }

    private static string Joined(params string[] texts) => string.Join(" · ", texts.Where(t => t.Length > 0));

    /// <summary>A day with its weekday, which a shift reads faster than a date.</summary>
    private static string Day(CalendarDate day) => $"{Weekdays[((day.DaysSince(Monday) % 7) + 7) % 7]} {day}";
}
