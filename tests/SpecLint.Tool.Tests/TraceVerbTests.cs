using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class TraceVerbTests
{
    private static TestFolder Book(string lots)
    {
        var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "foam.prep.json",
            """{ "name": "Sea foam", "family": "foam", "ingredients": [ { "item": "egg-white-pasteurised", "amount": "300 g" } ], "method": [ { "do": "stir" } ], "yield": "300 g", "keep": { "at": "4 °C", "in": "siphon", "for": "2 d" }, "declares": { "allergens": ["egg"] } }""");
        book.Write(
            "breaker.drink.json",
            """{ "name": "Breaker", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "foam", "amount": "20 ml" } ], "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" } ] }""");
        book.Write("fridge.stock.json", $$"""{ "on": "2026-11-25", "lots": [ {{lots}} ] }""");
        return book;
    }

    private const string Lots = """
        { "item": "egg-white-pasteurised", "lot": "EW-1124", "opened": "2026-11-24", "at": "4 °C" },
        { "item": "foam", "lot": "SF-1", "made": "2026-11-24", "at": "4 °C", "madeFrom": ["EW-1124"] },
        { "item": "foam", "lot": "SF-2", "made": "2026-11-25", "at": "4 °C" }
        """;

    [Fact]
    public void A_lot_is_followed_to_lots_and_drinks_since_when()
    {
        using var book = Book(Lots);
        var run = ToolRun.In(book.Path, "trace", "EW-1124");
        Assert.Equal((0, ""), (run.Status, run.Error));
        foreach (string text in new[] { "Lot EW-1124 of egg-white-pasteurised, since 2026-11-24", "Lots made from it", "SF-1", "Lots that may hold it", "SF-2", "Breaker" })
            Assert.Contains(text, run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
        Assert.Equal(
            run.Output.Replace("EW-1124,", "", StringComparison.Ordinal),
            ToolRun.In(book.Path, "trace", "egg-white-pasteurised").Output.Replace("EW-1124,", "", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("no-such", "no stock file of the book lists a lot no-such.")]
    [InlineData("foam", "2 lots answer to foam")]
    public void A_name_of_no_lot_or_of_two_is_wrong_usage(string named, string says)
    {
        using var book = Book(Lots);
        var run = ToolRun.In(book.Path, "trace", named);
        Assert.Equal(2, run.Status);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
    }
}
