using SpecLint.RecipeText;
using SpecLint.Reports;

namespace SpecLint.Bench;

/// <summary>Prices as somebody types them at the bench, one a line: what it is, what it costs, for how much.</summary>
internal static class BenchPrices
{
    /// <summary>Name of the file that holds them.</summary>
    public const string FileName = "bench.prices.json";

    private const int MostRows = 2000;
    private static readonly char[][] Separators = [['\t'], [';'], ['|'], [',']];

    /// <summary>
    /// Reads lines such as <c>gin, 24.50, 700 ml</c> or <c>gin; 24,50; 700 ml</c>, and writes as JSON what each means (<c>rows</c>) and the
    /// price list that they make (<c>path</c>, <c>file</c>).
    /// </summary>
    /// <param name="book">The book.</param>
    /// <param name="text">The lines.</param>
    /// <param name="name">Name of the list.</param>
    public static string Read(BenchBook book, string text, string name)
    {
        var reader = new PriceRowReader(book.Book);
        var rows = JsonOutput.WellFormed(text).Split('\n').Select(r => r.Trim()).Where(r => r.Length > 0)
            .Take(MostRows).Select(r => RowOf(reader, r)).ToList();
        return BenchOutputs.Json(json =>
        {
            json.WriteStartArray("rows");
            foreach (var row in rows)
            {
                json.WriteStartObject();
                json.WriteString("written", row.Written);
                json.WriteGiven("name", row.Item.Length == 0 ? "" : BenchEdits.NameFor(book, book.Book.Resolve(row.Item)!));
                json.WriteGiven("unclear", row.Unclear);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("path", FileName);
            json.WriteString("file", PriceRowReader.FileOf(name, book.On, rows));
        });
    }

    private static WrittenPrice RowOf(PriceRowReader reader, string row)
    {
        var cut = Array.Find(Separators, s => row.Split(s).Length >= 3) ?? Separators[Separators.Length - 1];
        string[] cells = [.. row.Split(cut).Select(c => c.Trim())];

        // A name may hold a comma: the price and the size are the last two cells.
        int last = cells.Length - 1;
        string written = last < 2 ? cells[0] : string.Join(", ", cells, 0, last - 1);
        return reader.Read(new WrittenPrice(written, "", null, last >= 2 ? cells[last] : "", "", "", "", ""), last >= 2 ? cells[last - 1] : "");
    }
}
