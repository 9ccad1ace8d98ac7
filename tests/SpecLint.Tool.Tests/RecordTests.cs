using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The verb that writes readings.</summary>
public class RecordTests
{
    private const string Cordial = """
        {
          "name": "Shore cordial", // kept
          "family": "cordial",
          "ingredients": [
            { "item": "white-sugar", "amount": "500 g" },
            { "item": "water", "amount": "480 g" },
            { "item": "citric-acid", "amount": "20 g" }
          ],
          "method": [ { "do": "stir", "until": "dissolved" } ],
          "date": "2026-11-24",
          "measured": { "ph": 2.2, "on": "2026-11-20" },
          "keep": { "at": "4 °C", "in": "bottle", "for": "14 d" }
        }
        """;

    [Fact]
    public void It_stamps_the_recipe_and_keeps_everything_else()
    {
        using var book = Book();
        Assert.Contains("SL5033", ToolRun.In(book.Path, "check", "--on", "2026-11-25").Output, StringComparison.Ordinal);
        Assert.Equal(0, ToolRun.In(book.Path, "record", "shore-cordial", "--ph", "2.3", "--brix", "50", "--on", "2026-11-25").Status);
        string now = File.ReadAllText(Path.Combine(book.Path, "shore-cordial.prep.json"));
        Assert.Matches("\"measured\": \\{ \"ph\": 2\\.3, \"brix\": 50, \"on\": \"2026-11-25\", \"of\": \"r1-[0-9a-f]{16}\" \\},\n", now);
        Assert.Equal(Cordial[..Cordial.IndexOf("{ \"ph\"", StringComparison.Ordinal)], now[..now.IndexOf("{ \"ph\"", StringComparison.Ordinal)]);
        Assert.DoesNotContain("SL5033", ToolRun.In(book.Path, "check", "--on", "2026-11-25").Output, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(book.Path, "shore-cordial.prep.json"), now.Replace("\"20 g\"", "\"5 g\"", StringComparison.Ordinal));
        Assert.Contains("SL5033", ToolRun.In(book.Path, "check", "--on", "2026-11-25").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_of_one_day_are_added_to_one_another()
    {
        using var book = Book();
        ToolRun.In(book.Path, "record", "shore-cordial", "--ph", "2.3", "--on", "2026-11-25");
        ToolRun.In(book.Path, "record", "shore-cordial", "--brix", "50", "--on", "2026-11-25");
        string now = File.ReadAllText(Path.Combine(book.Path, "shore-cordial.prep.json"));
        Assert.Contains("\"ph\": 2.3", now, StringComparison.Ordinal);
        Assert.Contains("\"brix\": 50", now, StringComparison.Ordinal);
    }

    [Fact]
    public void It_writes_into_the_lot_of_a_code()
    {
        using var book = Book();
        book.Write(
            "fridge.stock.json",
            """{ "on": "2026-11-25", "lots": [ { "item": "water" }, { "item": "shore-cordial", "lot": "24-2", "made": "2026-11-24" /* second shelf */ } ] }""");
        Assert.Equal(0, ToolRun.In(book.Path, "record", "24-2", "--ph", "2.3", "--on", "2026-11-25").Status);
        Assert.Matches(
            "\"lot\": \"24-2\", \"made\": \"2026-11-24\", \"measured\": \\{ \"ph\": 2\\.3, \"on\": \"2026-11-25\", \"of\": "
                + "\"r1-[0-9a-f]{16}\" \\} /\\* second shelf \\*/",
            File.ReadAllText(Path.Combine(book.Path, "fridge.stock.json")));
    }

    [Theory]
    [InlineData("record", "shore-cordial")]
    [InlineData("record", "no-such-thing", "--ph", "2.3")]
    [InlineData("record", "shore-cordial", "--ph", "15")]
    [InlineData("record", "shore-cordial", "--mass", "2 l")]
    public void Wrong_use_is_said_and_nothing_is_written(params string[] arguments)
    {
        using var book = Book();
        Assert.Equal(2, ToolRun.In(book.Path, arguments).Status);
        Assert.Equal(Cordial, File.ReadAllText(Path.Combine(book.Path, "shore-cordial.prep.json")));
    }

    private static TestFolder Book()
    {
        var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write("shore-cordial.prep.json", Cordial);
        return book;
    }
}
