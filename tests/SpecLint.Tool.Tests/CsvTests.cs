using System.Text;
using CsCheck;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>What goes out to a spreadsheet and comes in from one.</summary>
public sealed class CsvTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private static readonly string[] Nasty = ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\t=1", " =1", "\u200B=1", "＝1", "a,b", "a\"b", "a\nb", "\r\n", "-18 °C", ""];

    [Theory]
    [InlineData(0, "id,name,kind,fact,", "profile")]
    [InlineData(0, "id,name,", "guests", "evening")]
    [InlineData(1, "what,id,name,grams,", "linecheck", "evening", "--on", "2026-11-25")]
    [InlineData(0, "id,name,per,item,", "costs", "--menu", "evening")]
    public void Every_row_has_the_cells_of_the_header(int status, string begins, params string[] args)
    {
        var run = ToolRun.In(demo.Path, [.. args, "--format", "csv"]);
        Assert.True(run.Status == status || run.Status == 0, run.Error);
        Assert.StartsWith(begins, run.Output, StringComparison.Ordinal);
        Assert.EndsWith("\r\n", run.Output, StringComparison.Ordinal);
        var rows = Rfc4180(run.Output);
        Assert.True(rows.Count > 5);
        Assert.All(rows, row => Assert.Equal(rows[0].Length, row.Length));
        Assert.Equal(rows[0].Length, rows[0].Distinct().Count());
        Assert.All(rows.SelectMany(r => r), cell => Assert.False(IsFormula(cell), cell));
    }

    [Fact]
    public void The_figures_are_those_of_the_profile_and_the_prices_come_back_as_they_went()
    {
        var rows = Rfc4180(ToolRun.In(demo.Path, "profile", "low-tide", "--format", "csv").Output);
        string[] abv = rows.Single(r => r[3] == "abv");
        using var json = System.Text.Json.JsonDocument.Parse(ToolRun.In(demo.Path, "profile", "low-tide", "--format", "json").Bytes);
        Assert.Equal(json.RootElement.GetProperty("facts").GetProperty("abv").GetProperty("value").GetDouble(), double.Parse(abv[4], System.Globalization.CultureInfo.InvariantCulture));

        using var book = new TestFolder();
        Assert.Equal(0, ToolRun.In(book.Path, "start", ".").Status);
        string out1 = ToolRun.In(book.Path, "prices", "--output", "prices.csv").Error;
        var back = ToolRun.In(book.Path, "prices", "prices.csv", "--write", "copy", "--on", "2026-11-25");
        Assert.True(back.Status == 0, out1 + back.Error + back.Output);
        File.Delete(Path.Combine(book.Path, "autumn.prices.json"));
        Assert.Equal(Rfc4180(File.ReadAllText(Path.Combine(book.Path, "prices.csv"))), Rfc4180(ToolRun.In(book.Path, "prices").Output));
    }

    [Fact]
    public void No_cell_is_a_formula_and_every_cell_comes_back() => Gen.Select(Gen.OneOf(Gen.Int[0, Nasty.Length - 1].Select(i => Nasty[i]), Gen.String), Gen.String).Sample(
        (one, two) =>
        {
            var sheet = new Sheet("first", "second");
            sheet.Add(one, two);
            sheet.Add(two, -18.5);
            using var text = new StringWriter();
            CsvFile.Write(text, sheet);
            var rows = Rfc4180(text.ToString());
            Assert.Equal(3, rows.Count);
            Assert.All(rows, r => Assert.Equal(2, r.Length));
            Assert.False(IsFormula(rows[1][0]), rows[1][0]);
            Assert.False(IsFormula(rows[1][1]), rows[1][1]);
            Assert.Equal("-18.5", rows[2][1]);
            Assert.Equal(Sheet.Cell(one), rows[1][0]);
        },
        iter: 2000,
        threads: 1);

    [Fact]
    public void A_supplier_s_list_is_taken_in_and_nothing_unclear_is_written()
    {
        using var book = new TestFolder();
        book.Write("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "costs": { "currency": "EUR" } }""");
        book.Write("neap.drink.json", """{ "name": "Neap", "ingredients": [ { "item": "gin", "amount": "50 ml" } ], "serves": 1 }""");
        book.Write("list.csv", "Item;Price;Size;Supplier\r\nGin;28,00;700 ml;\"Quay; Drinks\"\r\nfresh lime juice;9.50;1 l;\r\nunobtainium;3;1 kg;\r\ngin;much;700 ml;\r\ngin;5;a crate;\r\n");
        var run = ToolRun.In(book.Path, "prices", "list.csv", "--write", "Quay Drinks", "--on", "2026-11-01");
        Assert.Equal(1, run.Status);
        Assert.Contains("3 rows are not understood and left out.", run.Error, StringComparison.Ordinal);
        string written = File.ReadAllText(Path.Combine(book.Path, "quay-drinks.prices.json"));
        Assert.Contains("{ \"item\": \"gin\", \"price\": 28.00, \"for\": \"700 ml\", \"from\": \"Quay; Drinks\" }", written, StringComparison.Ordinal);
        Assert.Contains("\"lime-juice\"", written, StringComparison.Ordinal);
        Assert.DoesNotContain("unobtainium", written, StringComparison.Ordinal);
        Assert.Contains("2.00 EUR", ToolRun.In(book.Path, "costs", "neap").Output, StringComparison.Ordinal);
        Assert.Equal(2, ToolRun.In(book.Path, "prices", "list.csv", "--write", "Quay Drinks").Status);
        Assert.Equal(2, ToolRun.In(book.Path, "prices", "no-such-file.csv").Status);
        book.Write("bad.csv", "a,b\r\n1,2\r\n");
        Assert.Equal(2, ToolRun.In(book.Path, "prices", "bad.csv").Status);
    }

    [Fact]
    public void Rows_of_recipes_are_written_up()
    {
        using var book = new TestFolder();
        book.Write("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""");
        book.Write("drinks.csv", "Recipe,Ingredient,Amount,Unit,Method\r\nHalf Tide,gin,50,ml,\"Shake, and strain.\"\r\n,lime juice,¾,oz,\r\n,simple syrup,15,ml,\r\nEbb,dry vermouth,60,ml,Stir.\r\n,orange bitters,2,dashes,\r\n");
        var run = ToolRun.In(book.Path, "write-up", "drinks.csv", "--write");
        Assert.True(run.Status == 0, run.Error + run.Output);
        string half = File.ReadAllText(Path.Combine(book.Path, "half-tide.drink.json")), ebb = File.ReadAllText(Path.Combine(book.Path, "ebb.drink.json"));
        Assert.Contains("{ \"item\": \"gin\", \"amount\": \"50 ml\" }", half, StringComparison.Ordinal);
        Assert.Contains("\"lime-juice\"", half, StringComparison.Ordinal);
        Assert.Contains("\"shake\"", half, StringComparison.Ordinal);
        Assert.Contains("\"2 dash\"", ebb, StringComparison.Ordinal);
        Assert.Equal(2, ToolRun.With(book.Path, new RunOptions { Input = "one,two\r\n1,2\r\n" }, "write-up", "-", "--csv").Status);
    }

    private static bool IsFormula(string cell)
    {
        string bare = cell.TrimStart(' ', '\t', '\r', '\n', '\u200B');
        return bare.Length > 0 && bare[0] is '=' or '+' or '-' or '@' or '＝' && !double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out _);
    }

    /// <summary>A reader of its own, by the grammar of RFC 4180.</summary>
    private static List<string[]> Rfc4180(string text)
    {
        var rows = new List<string[]>();
        var row = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false, any = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            any = true;
            if (quoted)
            {
                if (c != '"') cell.Append(c);
                else if (i + 1 < text.Length && text[i + 1] == '"') cell.Append(text[++i]);
                else quoted = false;
                continue;
            }

            switch (c)
            {
                case '"': quoted = true; break;
                case ',': row.Add(cell.ToString()); cell.Clear(); break;
                case '\r' when i + 1 < text.Length && text[i + 1] == '\n':
                    i++;
                    row.Add(cell.ToString());
                    cell.Clear();
                    rows.Add([.. row]);
                    row.Clear();
                    any = false;
                    break;
                default: cell.Append(c); break;
            }
        }

        Assert.False(quoted || any, "the last line has no end");
        return rows;
    }
}
