using System.Text;
using System.Text.Json;
using SpecLint.Bench;
using SpecLint.Reports;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Bench;

/// <summary>Prices as they are typed at the bench, and what a drink then costs.</summary>
public sealed class BenchPricesTests
{
    private const string Sour = "Ebb Sour\n60 ml gin\n30 ml lemon juice\n25 ml simple syrup\nShake with ice 12 s, fine strain into a "
        + "small coupe\nstyle: shaken sour";

    [Fact]
    public void Lines_are_understood_with_whatever_stands_between_and_what_is_not_is_said()
    {
        using var read = Read(
            Plain(),
            "gin, 28.00, 700 ml\nfresh lime juice; 9,50; 1 l\nsimple syrup\t2\t1 l\nunobtainium, 3, 1 kg\ngin, much, 700 ml\ngin 28\n\n");
        var rows = read.RootElement.GetProperty("rows").EnumerateArray().ToList();
        Assert.Equal([true, true, true, false, false, false], rows.Select(r => !r.TryGetProperty("unclear", out _)));
        Assert.StartsWith("item: ", rows[3].GetProperty("unclear").GetString(), StringComparison.Ordinal);
        Assert.StartsWith("price: ", rows[4].GetProperty("unclear").GetString(), StringComparison.Ordinal);
        using var file = JsonDocument.Parse(read.RootElement.GetProperty("file").GetString()!);
        Assert.Equal(
            ["gin 28.00 700 ml", "lime-juice 9.50 1 l", "simple-syrup 2 1 l"],
            file.RootElement.GetProperty("prices")
                .EnumerateArray()
                .Select(p => $"{p.GetProperty("item").GetString()} {p.GetProperty("price").GetRawText()} {p.GetProperty("for").GetString()}"));
    }

    [Fact]
    public void A_list_without_a_clear_line_is_a_file_that_can_be_read()
    {
        var book = Plain();
        using var read = Read(book, "nothing");
        book.Put(BenchPrices.FileName, Encoding.UTF8.GetBytes(read.RootElement.GetProperty("file").GetString()!));
        Assert.DoesNotContain(book.Check().Findings, f => f.Rule.Id.StartsWith("SL1", StringComparison.Ordinal) && f.Place.File.Path == BenchPrices.FileName);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_drink_costs_what_the_report_on_costs_says(bool quick)
    {
        var book = Plain();

        // More files than are read while somebody types: the prices are among those that are.
        for (int i = 0; i < 20; i++) book.Put(
            $"other-{i}.drink.json",
            Encoding.UTF8.GetBytes($$"""{ "name": "Other {{i}}", "ingredients": [ { "item": "gin", "amount": "50 ml" } ] }"""));
        using (var without = Shown(book, quick))
        {
            Assert.False(without.RootElement.TryGetProperty("cost", out _));
            Assert.DoesNotContain(without.RootElement.GetProperty("figures").EnumerateArray(), f => f.GetProperty("fact").ValueEquals("cost"));
        }

        using var read = Read(book, "gin, 28.00, 700 ml\nlemon juice, 9.60, 1 l");
        book.Put(BenchPrices.FileName, Encoding.UTF8.GetBytes(read.RootElement.GetProperty("file").GetString()!));
        using var shown = Shown(book, quick);
        var cost = shown.RootElement.GetProperty("cost");

        // 60 of 700 ml at 28.00, and 30 of 1,000 ml at 9.60; the syrup has no price.
        Assert.StartsWith("2.69 ", cost.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(["there is no price of simple-syrup"], cost.GetProperty("open").EnumerateArray().Select(o => o.GetString()));
        Assert.Equal(3, cost.GetProperty("lines").GetArrayLength());
        Assert.Equal(CostReport.LeftOut, cost.GetProperty("leftOut").GetString());
        Assert.Contains(
            shown.RootElement.GetProperty("figures").EnumerateArray(),
            f => f.GetProperty("fact").ValueEquals("cost") && f.TryGetProperty("open", out _));
    }

    private static BenchBook Plain()
    {
        var book = new BenchBook(Books.On);
        book.Put("bar.json", Encoding.UTF8.GetBytes(Books.PlainBar));
        return book;
    }

    private static JsonDocument Read(BenchBook book, string lines) => JsonDocument.Parse(BenchPrices.Read(book, lines, "Prices typed at the bench"));

    private static JsonDocument Shown(BenchBook book, bool quick)
    {
        using var json = new MemoryStream();
        BenchReport.Write(json, book.Read(new BenchEntry(Sour) { Quick = quick }));
        return JsonDocument.Parse(json.ToArray());
    }
}
