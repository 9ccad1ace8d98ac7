using System.Text.Json;
using SpecLint.Bench;
using SpecLint.Book;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Bench;

/// <summary>Preparations from a few figures, targets, readings: each held against hand arithmetic or against the library's own check.</summary>
public sealed class BenchPreparingTests
{
    private const string Drink = "Ebb Sour\n60 ml gin\n30 ml lemon juice\n25 ml simple syrup\nShake with cubed ice 12 s, fine "
        + "strain\nglass: coupe\nstyle: shaken sour";

    /// <summary>By hand: 20 % of 500 g are 100 g.</summary>
    [Fact]
    public void A_saline_is_a_share_of_the_whole()
    {
        string text = Prepared("""{ "kind": "saline", "item": "salt", "grams": "500", "percent": "20" }""");
        Assert.Contains("\n100 g salt\n400 g water\n", text, StringComparison.Ordinal);
        Assert.Empty(Unclear(text));
    }

    /// <summary>By hand: °Brix is g of solids in 100 g, so 600 g of sugar take 600 × (100 / °Brix − 1) g of water.</summary>
    [Theory]
    [InlineData("50", 600)]
    [InlineData("60", 400)]
    [InlineData("65", 323)]
    [InlineData("20", 2400)]
    public void A_syrup_by_brix_takes_the_water_that_a_scale_says(string brix, double water) =>
        Assert.Equal(
            water,
            Amount(Prepared($$"""{ "kind": "syrup", "item": "white sugar", "grams": "600", "ratio": "", "brix": "{{brix}}" }"""), "water"),
            0.01 * water);

    [Fact]
    public void A_syrup_of_honey_counts_the_water_that_the_honey_holds()
    {
        double water = Book().Profiles.MaterialOf("honey")!.PerGram[(int)SpecLint.Science.Component.Water];
        Assert.Equal(
            500 * (((1 - water) / 0.6) - 1),
            Amount(Prepared("""{ "kind": "syrup", "item": "honey", "grams": "500", "ratio": "", "brix": "60" }"""), "water"),
            4.0);
        using var thin = JsonDocument.Parse(BenchPreparing.Prepare(
            Book(), new BenchEntry(""), """{ "kind": "syrup", "item": "honey", "grams": "500", "brix": "85" }"""));
        Assert.Contains("solids", thin.RootElement.GetProperty("why").GetString(), StringComparison.Ordinal);
    }

    /// <summary>By hand: 400 g of sugar are half of 800 g; two to one they take 200 g.</summary>
    [Fact]
    public void A_syrup_is_made_by_brix_or_by_ratio()
    {
        string brix = Prepared("""{ "kind": "syrup", "item": "white sugar", "grams": "400", "ratio": "", "brix": "50" }""");
        Assert.Equal(400, Amount(brix, "water"), 1.0);
        Assert.Equal(200, Amount(Prepared("""{ "kind": "syrup", "item": "white sugar", "grams": "400", "ratio": "2:1", "brix": "" }"""), "water"));
        Assert.Empty(Unclear(brix));
    }

    [Theory]
    [InlineData("orange juice", "lime juice")]
    [InlineData("pineapple juice", "lemon juice")]
    public void A_soured_juice_stands_in_for_its_model(string juice, string model)
    {
        var book = Book();
        string text = Prepared($$"""{ "kind": "sour", "item": "{{juice}}", "grams": "1000", "like": "{{model}}" }""");
        Assert.Empty(Unclear(text));
        Assert.Equal(1000, Amount(text, juice));
        var reading = book.Read(new BenchEntry(text));
        var prep = Assert.IsType<Prep>(reading.Recipe);
        double acid = reading.Result.Profiles.Of(prep).Get(Fact.Acid).Value;
        var like = reading.Result.Profiles.MaterialOf(model.Replace(' ', '-'))!;
        double wanted = SpecLint.Profile.Solving.AcidPerVolume(like.PerGram);
        Assert.InRange(acid / wanted, 0.97, 1.03);
    }

    /// <summary>By hand: what is not water stays; at 10 % of water it is nine tenths of what is left.</summary>
    [Fact]
    public void What_is_dried_keeps_all_but_water()
    {
        double water = Book().Profiles.MaterialOf("orange-juice")!.PerGram[(int)SpecLint.Science.Component.Water];
        string text = Prepared("""{ "kind": "dried", "item": "orange juice", "grams": "1000", "percent": "10", "at": "57" }""");
        Assert.Contains($"makes {Math.Round(1000 * (1 - water) / 0.9)} g", text, StringComparison.Ordinal);
        Assert.Contains("Dehydrate at 57 °C", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_is_the_drink_times_its_serves_with_the_water_of_the_ice()
    {
        string text = Prepared("""{ "kind": "batch", "serves": "10", "poured": "true" }""", Drink);
        Assert.Equal((600, 300, 250), (Amount(text, "gin"), Amount(text, "lemon juice"), Amount(text, "simple")));
        Assert.InRange(Amount(text, "water"), 400, 800);
        Assert.Contains("\nbatch of: ebb-sour\n", text, StringComparison.Ordinal);
        Assert.Empty(Unclear(text));
        Assert.DoesNotContain(
            "water",
            Prepared("""{ "kind": "batch", "serves": "10", "poured": "false" }""", Drink).Split("\nStir")[0],
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "kind": "saline", "item": "salt", "grams": "0", "percent": "20" }""")]
    [InlineData("""{ "kind": "saline", "item": "salt", "grams": "1e9", "percent": "20" }""")]
    [InlineData("""{ "kind": "sour", "item": "marsh thing", "grams": "100", "like": "lime juice" }""")]
    [InlineData("""{ "kind": "sour", "item": "orange juice", "grams": "100", "like": "water" }""")]
    [InlineData("""{ "kind": "syrup", "item": "white sugar", "grams": "100", "ratio": "two to one" }""")]
    [InlineData("""{ "kind": "dried", "item": "white sugar", "grams": "100", "percent": "10" }""")]
    [InlineData("""{ "kind": "batch", "serves": "10" }""")]
    [InlineData("""{ }""")]
    public void What_cannot_be_written_says_why_or_writes_nothing(string request)
    {
        using var answer = JsonDocument.Parse(BenchPreparing.Prepare(Book(), new BenchEntry(""), request));
        Assert.Equal("", answer.RootElement.GetProperty("text").GetString());
    }

    [Fact]
    public void A_reading_counts_until_the_amounts_change()
    {
        var book = Book();
        string text = Prepared("""{ "kind": "sour", "item": "orange juice", "grams": "1000", "like": "lime juice" }""");
        var edit = BenchPreparing.Record(book, new BenchEntry(text), 2.31, double.NaN);
        Assert.Equal("", edit.Why);
        var read = book.Read(new BenchEntry(edit.Text));
        Assert.Equal(2.31, read.Result.Profiles.Of(read.Recipe!).Get(Fact.Ph).Value, 2);
        Assert.Null(read.Recipe!.StaleBecause);
        var changed = book.Read(new BenchEntry(edit.Text.Replace("1000 g", "2000 g", StringComparison.Ordinal)));
        Assert.NotNull(changed.Recipe!.StaleBecause);
        Assert.Equal(1, BenchPreparing.Record(book, new BenchEntry(edit.Text), 2.4, double.NaN).Text.Split("measured:").Length - 1);
    }

    [Fact]
    public void Targets_are_solved_into_lines_and_what_is_held_stays()
    {
        var book = Book();
        using var answer = JsonDocument.Parse(BenchSolving.Adjust(
            book,
            new BenchEntry(Drink),
            """{ "targets": [ { "fact": "abv", "low": 16, "high": 16 } ], "like": "", "glass": "", "keep": [ "lemon-juice", "simple-syrup" ], "add": [] }"""));
        Assert.Equal("", answer.RootElement.GetProperty("why").GetString());
        string text = answer.RootElement.GetProperty("text").GetString()!;
        Assert.Equal((30, 25), (Amount(text, "lemon juice"), Amount(text, "simple syrup")));
        var after = book.Read(new BenchEntry(text));
        Assert.InRange(after.Result.Profiles.Of(after.Recipe!).Get(Fact.Abv).Value, 15.4, 16.6);
    }

    [Fact]
    public void What_is_added_becomes_a_line_of_its_own()
    {
        const string text = "Soured cucumber\n940 g cucumber juice\n20 g citric acid\nStir until dissolved\nfamily: acid-adjusted juice\nlike: lime juice";
        using var answer = JsonDocument.Parse(BenchSolving.Adjust(
            Book(),
            new BenchEntry(text),
            """{ "targets": [], "like": "lime juice", "glass": "", "keep": [ "cucumber-juice" ], "add": [ "malic acid" ] }"""));
        Assert.Equal(("", ""), (answer.RootElement.GetProperty("why").GetString(), answer.RootElement.GetProperty("path").GetString()));
        Assert.Contains(" g malic acid\nStir until dissolved", answer.RootElement.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "targets": [ { "fact": "abv", "low": 5, "high": 4 } ], "like": "", "glass": "", "keep": [], "add": [] }""")]
    [InlineData("""{ "targets": [], "like": "marsh thing", "glass": "", "keep": [], "add": [] }""")]
    [InlineData("""{ "targets": [], "like": "", "glass": "", "keep": [], "add": [] }""")]
    [InlineData("""{ "targets": [], "like": "", "glass": "bathtub", "keep": [], "add": [] }""")]
    public void A_target_that_cannot_be_tried_says_why(string request)
    {
        using var answer = JsonDocument.Parse(BenchSolving.Adjust(Book(), new BenchEntry(Drink), request));
        Assert.NotEqual("", answer.RootElement.GetProperty("why").GetString());
    }

    [Fact]
    public void Card_and_label_are_those_of_the_command()
    {
        var book = Book();
        Assert.Contains("Spec card: Ebb Sour", BenchOutputs.Card(book.Read(new BenchEntry(Drink)), "a6", "0"), StringComparison.Ordinal);
        string text = Prepared("""{ "kind": "saline", "item": "salt", "grams": "500", "percent": "20" }""");
        Assert.Contains("Saline 20 %", BenchOutputs.Label(book.Read(new BenchEntry(text)), "roll", "NK"), StringComparison.Ordinal);
        Assert.Equal("", BenchOutputs.Label(book.Read(new BenchEntry(Drink)), "roll", ""));
        Assert.Equal("", BenchOutputs.Card(book.Read(new BenchEntry("")), "a4", "0"));
    }

    private static BenchBook Book()
    {
        var book = new BenchBook(Books.On);
        book.Put("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "scale": "1 g", "jigger": "2.5 ml" } }"""u8.ToArray());
        return book;
    }

    private static string Prepared(string request, string text = "")
    {
        using var answer = JsonDocument.Parse(BenchPreparing.Prepare(Book(), new BenchEntry(text), request));
        Assert.Equal("", answer.RootElement.GetProperty("why").GetString());
        return answer.RootElement.GetProperty("text").GetString()!;
    }

    private static double Amount(string text, string item) =>
        double.Parse(
            text.Split('\n')
                .Skip(1)
                .First(r => r.EndsWith(item, StringComparison.OrdinalIgnoreCase)
                    || r.Contains(" " + item + " ", StringComparison.OrdinalIgnoreCase))
                .Split(' ')[0],
            System.Globalization.CultureInfo.InvariantCulture);

    private static List<string> Unclear(string text)
    {
        using var stream = new MemoryStream();
        BenchReport.Write(stream, Book().Read(new BenchEntry(text)));
        using var shown = JsonDocument.Parse(stream.ToArray());
        return [.. shown.RootElement.GetProperty("lines")
            .EnumerateArray()
            .Where(l => l.GetProperty("certainty").GetString() != "certain")
            .Select(l => l.GetRawText())];
    }
}
