using System.Text;
using System.Text.Json;
using SpecLint.Bench;
using SpecLint.Findings;
using SpecLint.Reports;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Bench;

/// <summary>The bench: text in, what a screen shows out; the same findings and figures as a check of the files.</summary>
public sealed class BenchBookTests
{
    private const string Sour = "Ebb Sour\n60 ml gin\n30 ml lemon juice\n25 ml simple syrup\nShake with ice 12 s, fine strain into a "
        + "small coupe\nstyle: shaken sour";

    [Fact]
    public void What_is_typed_is_understood_line_by_line()
    {
        using var shown = Shown(Plain(), "Ebb Sour\n60 ml gin\n30 ml lemon\n1 oz marsh thing\nShake with ice");
        var lines = shown.RootElement.GetProperty("lines").EnumerateArray().ToList();
        Assert.Equal([2, 3, 4, 5], lines.Select(l => l.GetProperty("line").GetInt32()));
        Assert.Equal(("gin", "60 ml", "certain"), (Text(lines[0], "item"), Text(lines[0], "amount"), Text(lines[0], "certainty")));
        Assert.Equal("unclear", Text(lines[2], "certainty"));
        Assert.Equal("shake, cubed ice", Text(lines[3], "reads"));
    }

    [Fact]
    public void Figures_and_findings_are_those_of_a_check_of_the_same_file()
    {
        var book = Plain();
        var reading = book.Read(new BenchEntry(Sour));
        var check = Books.Check(("bar.json", Books.PlainBar), (reading.File!.Path, Encoding.UTF8.GetString(reading.File.Utf8.ToArray())));
        Assert.Equal(Json(check), Json(reading.Result));
        using var shown = Shown(book, Sour);
        var figures = shown.RootElement.GetProperty("figures").EnumerateArray().Where(f => f.TryGetProperty("value", out _)).ToDictionary(f => Text(f, "fact"));
        Assert.Equal(
            check.Profiles.Of((SpecLint.Book.Recipe)check.Book.Files.Single(f => f.Id == "ebb-sour")).Get(Fact.Abv).Value,
            figures["abv"].GetProperty("value").GetDouble(),
            3);
        Assert.Equal(13, figures["abv"].GetProperty("usual").GetProperty("low").GetDouble());
        Assert.True(shown.RootElement.GetProperty("glass").GetProperty("brim").GetProperty("value").GetDouble() > 100);
    }

    [Fact]
    public void A_finding_stands_at_the_line_that_it_is_about()
    {
        using var shown = Shown(Plain(), "Ebb Sour\n60 ml gin\n30 xl lemon juice");
        Assert.Contains(shown.RootElement.GetProperty("findings").EnumerateArray(), f => f.GetProperty("line").GetInt32() == 3);
    }

    [Fact]
    public void Harm_comes_first_and_brings_its_caution()
    {
        using var shown = Shown(
            Plain(),
            "Garlic oil\n500 g olive oil\n60 g garlic\nSteep for 24 h\nfamily: other\nmakes 500 g\nkeep at 20 °C in a bottle for 30 d");
        var first = shown.RootElement.GetProperty("findings").EnumerateArray().First();
        Assert.True(first.GetProperty("harm").GetBoolean());
        Assert.NotEmpty(Text(first, "caution"));
        var verdict = shown.RootElement.GetProperty("verdict");
        Assert.Equal(("no", "DO NOT USE"), (Text(verdict, "answer"), Text(verdict, "headline")));
        Assert.DoesNotContain("safe", shown.RootElement.GetRawText(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_correction_of_amounts_stays_lines_and_the_finding_is_gone()
    {
        var book = Glassy();
        string text = Sour.Replace("60 ml", "80 ml", StringComparison.Ordinal)
            .Replace("30 ml", "45 ml", StringComparison.Ordinal)
            .Replace("25 ml", "40 ml", StringComparison.Ordinal);
        var overflow = book.Read(new BenchEntry(text)).Result.Findings.Flat().Single(f => f.Rule.Id == "SL8001");
        var edit = BenchEdits.Correct(book, new BenchEntry(text), overflow.Fingerprint);
        Assert.Equal(("", ""), (edit.Why, edit.Path));
        Assert.StartsWith("Ebb Sour\n", edit.Text, StringComparison.Ordinal);
        Assert.NotEqual(text, edit.Text);
        Assert.DoesNotContain(book.Read(new BenchEntry(edit.Text)).Result.Findings.Flat(), f => f.Rule.Id == "SL8001");
    }

    [Fact]
    public void A_choice_is_written_into_its_line()
    {
        var book = Plain();
        var edit = BenchEdits.Choose(book, new BenchEntry("Ebb Sour\n60 ml gin\n25 ml marsh thing"), 3, "simple-syrup", "marsh thing");
        Assert.Equal("", edit.Why);
        using var shown = Shown(book, edit.Text);
        Assert.Equal("simple-syrup", Text(shown.RootElement.GetProperty("lines")[1], "item"));
    }

    [Fact]
    public void Of_a_large_book_only_what_the_recipe_is_made_of_is_checked_while_typing()
    {
        var book = Plain();
        for (int i = 0; i < 20; i++) book.Put($"d{i}.drink.json", Bytes($$"""{ "name": "D{{i}}", "ingredients": [ { "item": "gin", "amount": "50 ml" } ] }"""));
        book.Put(
            "base.prep.json",
            Bytes("""{ "name": "Base", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" } ], "yield": "200 g" }"""));
        book.Put(
            "marsh.prep.json",
            Bytes("""{ "name": "Marsh", "family": "syrup", "ingredients": [ { "item": "base", "amount": "100 g" } ], "yield": "100 g" }"""));
        var quick = book.Read(new BenchEntry("Ebb\n50 ml gin\n20 ml marsh") { Quick = true });
        Assert.Equal(
            ["bar.json", "base.prep.json", "ebb.drink.json", "marsh.prep.json"],
            quick.Result.Book.Files.Select(f => f.Source.Path).Order(StringComparer.Ordinal));
        var whole = book.Read(new BenchEntry("Ebb\n50 ml gin\n20 ml marsh"));
        Assert.Equal(24, whole.Result.Book.Files.Count);
        Assert.Equal(quick.Findings.Select(f => f.Fingerprint), whole.Findings.Select(f => f.Fingerprint));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\u0000\u001b[2J\u202E \uD800")]
    [InlineData("{ \"name\": [[[[")]
    [InlineData("{")]
    [InlineData("\"\\u0000\"")]
    [InlineData("50 ml </script><img src=x onerror=alert(1)>")]
    [InlineData("keep at\nstyle:\nglass: \nmakes ∞ g\nmeasured: pH NaN")]
    public void Hostile_text_is_read_as_text(string text)
    {
        using var shown = Shown(Plain(), "Name\n50 ml gin\n" + text);
        using var alone = Shown(Plain(), text);
        Assert.Equal(JsonValueKind.Object, alone.RootElement.ValueKind);
    }

    /// <summary>What the page of the bench says can be typed is understood.</summary>
    [Fact]
    public void Every_line_that_the_documentation_shows_is_read()
    {
        var lines = File.ReadLines(Repository.At("rules-docs", "page.md"))
            .Where(l => l.StartsWith("| `", StringComparison.Ordinal))
            .SelectMany(l => l.Split('|')[1].Split('`').Where((_, i) => i % 2 == 1))
            .ToList();
        Assert.True(lines.Count > 12);
        Assert.All(lines, line =>
        {
            using var shown = Shown(Plain(), "Ebb\n50 ml rum\n" + line);
            var read = shown.RootElement.GetProperty("lines").EnumerateArray().Where(l => l.GetProperty("line").GetInt32() == 3).ToList();
            Assert.NotEmpty(read);
            Assert.All(read, r => Assert.NotEqual("unclear", Text(r, "certainty")));
        });
    }

    [Fact]
    public void A_text_that_is_too_long_is_refused() =>
        Assert.Throws<ArgumentException>(() => Plain().Read(new BenchEntry(new string('a', BenchBook.LongestText + 1))));

    private static BenchBook Plain()
    {
        var book = new BenchBook(Books.On);
        book.Put("bar.json", Bytes(Books.PlainBar));
        return book;
    }

    private static BenchBook Glassy()
    {
        var book = new BenchBook(Books.On);
        book.Put(
            "bar.json",
            Bytes("""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "jigger": "2.5 ml" }, "glasses": { "small-coupe": { "brim": "150 ml", "washLine": "130 ml" } } }"""));
        return book;
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static string Text(JsonElement element, string name) => element.TryGetProperty(name, out var value) ? value.GetString()! : "";

    private static string Json(CheckResult result)
    {
        using var text = new MemoryStream();
        JsonReport.Write(text, ReportContent.Of(result), "0");
        return Encoding.UTF8.GetString(text.ToArray());
    }

    private static JsonDocument Shown(BenchBook book, string text)
    {
        using var stream = new MemoryStream();
        BenchReport.Write(stream, book.Read(new BenchEntry(text)));
        return JsonDocument.Parse(stream.ToArray());
    }
}
