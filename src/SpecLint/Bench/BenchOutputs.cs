using System.Text;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reports;
using SpecLint.Rules;
using SpecLint.Service;

namespace SpecLint.Bench;

/// <summary>Outputs of the command, for a book at the bench: byte for byte the same.</summary>
public static class BenchOutputs
{
    /// <summary>Writes what <c>check --format json</c> writes.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="result">The check of the book.</param>
    /// <param name="version">Version of the product.</param>
    public static void WriteCheck(Stream to, CheckResult result, string version) => JsonReport.Write(to, ReportContent.Of(result), version);

    /// <summary>Writes what <c>profile --format json</c> writes: every recipe of the book.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="result">The check of the book.</param>
    public static void WriteProfile(Stream to, CheckResult result) =>
        ProfileReport.WriteJson(
            to, [.. result.Book.Files.OfType<Recipe>().Select(r => new Item(r.Id, r, null, false))],
            Verdicts.Of(result), single: false);

    /// <summary>The spec card of what is being written, as an HTML page; empty where it is no recipe.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="paper"><c>a4</c>, <c>letter</c> or <c>a6</c>.</param>
    /// <param name="version">Version of the product.</param>
    public static string Card(BenchReading reading, string paper, string version)
    {
        if (reading.Recipe is not { } recipe) return "";
        var kind = paper switch { "letter" => CardPaper.Letter, "a6" => CardPaper.A6, _ => CardPaper.A4 };
        using var text = new StringWriter();
        CardPage.WriteCards(text, reading.Verdicts, [recipe], kind, reading.Entry.Units.Keeping(reading.Result.Book), version);
        return text.ToString();
    }

    /// <summary>
    /// The kitchen label of a preparation that is made on the day of the check, as an HTML page; empty where it is none, or where it
    /// fits on no label of the stock.
    /// </summary>
    /// <param name="reading">The reading.</param>
    /// <param name="stock">Id of the label stock.</param>
    /// <param name="by">Initials of who made it; empty to leave room for them.</param>
    public static string Label(BenchReading reading, string stock, string by)
    {
        if (reading.Recipe is not Prep prep || LabelStock.Find(stock) is not { } sheet) return "";
        var units = reading.Entry.Units.Keeping(reading.Result.Book);
        var labels = LotLabel.OfMade(reading.Verdicts, [(prep, reading.Result.Book.On)], by.Length == 0 ? null : by);
        if (labels.Count == 0 || LabelPage.Misfits(labels, sheet, units).Count > 0) return "";
        using var text = new StringWriter();
        LabelPage.Write(text, labels, sheet, units);
        return text.ToString();
    }

    /// <summary>What became of an edit, as JSON.</summary>
    public static string Write(BenchEdit edit) => Json(json =>
    {
        json.WriteString("text", JsonOutput.WellFormed(edit.Text));
        json.WriteString("path", JsonOutput.WellFormed(edit.Path));
        json.WriteString("why", JsonOutput.WellFormed(edit.Why));
    });

    /// <summary>The words that a screen offers: styles, glasses, families, label stocks, by id and name; the rules that guard against harm.</summary>
    public static string Words() => Json(json =>
    {
        Write(json, "styles", Style.All.Select(s => (s.Id, s.Name)));
        Write(json, "glasses", GlassTable.All.Select(g => (g.Id, g.Name)));
        Write(json, "families", Family.All.Select(f => (f.Id, f.Id.Replace('-', ' '))));
        Write(json, "labels", LabelStock.All.Select(s => (s.Id, s.Name)));
        WriteTexts(json, "harm", RuleRegistry.All.Where(r => r.Info.Safety).Select(r => r.Info.Id));
    });

    internal static void WriteTexts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts) json.WriteStringValue(JsonOutput.WellFormed(text));
        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, string name, IEnumerable<(string Id, string Name)> words)
    {
        json.WriteStartArray(name);
        foreach (var (id, word) in words)
        {
            json.WriteStartObject();
            json.WriteString("id", id);
            json.WriteString("name", word);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static string Json(Action<Utf8JsonWriter> write)
    {
        using var text = new MemoryStream();
        using (var json = new Utf8JsonWriter(text))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(text.ToArray());
    }
}
