using System.Text.Json;
using System.Text.RegularExpressions;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed partial class LineCheckTests : IClassFixture<DemoBook>
{
    private readonly DemoBook demo;

    public LineCheckTests(DemoBook demo) => this.demo = demo;

    private ToolRun Run(params string[] args) => ToolRun.In(demo.Path, ["linecheck", .. args]);

    [Theory]
    [InlineData("evening.md")]
    public void The_evening_of_the_docs_is_what_the_tool_prints(string page)
    {
        string path = Repository.At("rules-docs", page), text = File.ReadAllText(path).ReplaceLineEndings("\n");
        string now = Printed().Replace(text, match =>
        {
            var run = Run(match.Groups["args"].Value.Split(' '));
            return $"```\n$ speclint linecheck {match.Groups["args"].Value}\n{run.Output}```\n";
        });
        if (Environment.GetEnvironmentVariable("SPECLINT_UPDATE") == "1") File.WriteAllText(path, now);
        else Assert.Equal(text, now);
        Assert.True(Printed().Count(text) >= 2);
    }

    [Fact]
    public void The_status_says_whether_all_can_be_served()
    {
        var evening = Run("evening", "--on", "2026-11-25");
        Assert.Equal((0, ""), (evening.Status, evening.Error));
        Assert.Equal(1, Run("weekend", "--on", "2026-11-25").Status);
        var unknown = Run("no-such-menu");
        Assert.Equal((2, "speclint: no-such-menu is not a menu of the book; its menus are evening, terrace and weekend.\n"), (unknown.Status, unknown.Error));
        Assert.Equal(2, Run("evening", "--stock", "no-such").Status);
    }

    [Fact]
    public void Text_keeps_to_80_columns()
    {
        foreach (string menu in new[] { "evening", "weekend", "terrace" })
            Assert.All(Run(menu, "--on", "2026-12-24").Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= DisplayText.Columns, line));
    }

    [Fact]
    public void The_json_counts_what_it_lists()
    {
        using var json = JsonDocument.Parse(Run("evening", "--on", "2026-11-28", "--format", "json").Bytes);
        var drinks = json.RootElement.GetProperty("drinks").EnumerateArray().Select(d => d.GetProperty("answer").GetString()).ToList();
        var counts = json.RootElement.GetProperty("counts");
        Assert.Equal(14, drinks.Count);
        foreach (string answer in new[] { "ready", "if", "no" }) Assert.Equal(counts.GetProperty(answer).GetInt32(), drinks.Count(d => d == answer));
        Assert.Contains(json.RootElement.GetProperty("lots").EnumerateArray(), l => l.GetProperty("throwAway").GetBoolean());
    }

    [Theory]
    [InlineData("2026-11-25", 0)]
    [InlineData("2026-11-28", 1)]
    public void The_sarif_passes_the_schema_and_holds_what_the_json_holds(string day, int status)
    {
        var run = Run("evening", "--on", day, "--format", "sarif");
        Assert.Equal((status, ""), (run.Status, run.Error));
        using var log = JsonDocument.Parse(run.Bytes);
        SarifTests.AssertValid(log.RootElement);
        using var json = JsonDocument.Parse(Run("evening", "--on", day, "--format", "json").Bytes);
        var drinks = json.RootElement.GetProperty("drinks").EnumerateArray().ToList();
        var results = Results(log);
        int Of(string rule) => results.Count(r => r.GetProperty("ruleId").GetString() == "linecheck/" + rule);
        Assert.Equal(drinks.Sum(d => d.GetProperty("because").GetArrayLength()), Of("cannot-be-served"));
        Assert.Equal(drinks.Sum(d => d.GetProperty("first").GetArrayLength()), Of("do-first"));
        Assert.Equal(json.RootElement.GetProperty("lots").EnumerateArray().Count(l => l.GetProperty("throwAway").GetBoolean()), Of("throw-away"));
        Assert.Equal(json.RootElement.GetProperty("make").GetArrayLength(), Of("make"));
        Assert.Equal(json.RootElement.GetProperty("get").GetArrayLength(), Of("get"));
        Assert.Equal(results.Count, results.Select(PrintOf).Distinct().Count());
        Assert.All(
            results,
            r => Assert.True(File.Exists(Path.Combine(
                demo.Repository,
                Uri.UnescapeDataString(r.GetProperty("locations")[0]
                    .GetProperty("physicalLocation")
                    .GetProperty("artifactLocation")
                    .GetProperty("uri")
                    .GetString()!)))));
    }

    [Fact]
    public void The_fingerprints_of_the_sarif_outlast_amounts_and_covers()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "x.drink.json",
            """{ "name": "X", "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "20 ml" } ], "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" } ] }""");
        var prints = new List<List<string>>();
        foreach (var (covers, left) in new[] { (10, "100 ml"), (40, "60 ml") })
        {
            book.Write("t.menu.json", $$"""{ "name": "T", "drinks": [ { "drink": "x", "covers": {{covers}} } ] }""");
            book.Write("f.stock.json", $$"""{ "on": "2026-11-25", "lots": [ { "item": "gin", "opened": "2026-11-20", "amount": "{{left}}" } ] }""");
            using var log = JsonDocument.Parse(ToolRun.In(book.Path, "linecheck", "t", "--format", "sarif").Bytes);
            Assert.True(Results(log).Count >= 3);
            prints.Add([.. Results(log).Select(PrintOf)]);
        }

        Assert.Equal(prints[0], prints[1]);
    }

    private static List<JsonElement> Results(JsonDocument log) => [.. log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray()];

    private static string PrintOf(JsonElement result) => result.GetProperty("partialFingerprints").GetProperty("specLint/v1").GetString()!;

    [Fact]
    public void The_page_stands_by_itself()
    {
        string page = Run("evening", "--on", "2026-11-25", "--format", "html").Output;
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", page, StringComparison.Ordinal);
        Assert.DoesNotContain("https://", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", page, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Run("evening", "--on", "2026-11-25", "--format", "json").Bytes);
        string summary = page[page.IndexOf("<section class=\"summary\">", StringComparison.Ordinal)..page.IndexOf("</section>", StringComparison.Ordinal)];
        Assert.Equal(14, json.RootElement.GetProperty("drinks").GetArrayLength());
        Assert.All(
            json.RootElement.GetProperty("drinks").EnumerateArray(),
            d => Assert.Contains(System.Net.WebUtility.HtmlEncode(d.GetProperty("name").GetString()!), summary, StringComparison.Ordinal));

        // Only what does not simply go out stands among the details.
        Assert.Equal(
            json.RootElement.GetProperty("drinks").EnumerateArray().Count(d => d.GetProperty("answer").GetString() != "ready"),
            Articles().Count(page));
        Assert.Contains("aria-label=\"Sugar against acid;", page, StringComparison.Ordinal);
        Assert.Contains("Life of the lots", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\\\"><img src=x onerror=alert(1)>")]
    [InlineData("javascript:alert(1)")]
    [InlineData("\\u202Egnp \\u2066x")]
    [InlineData("\\u001b[2J\\u0007\\u009b31m")]
    public void Text_of_the_book_stays_text(string hostile)
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "x.drink.json",
            $$"""{ "name": "{{hostile}}", "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "{{hostile}}", "amount": "5 ml" } ], "method": [ { "do": "stir", "ice": "cubed" } ] }""");
        book.Write("t.menu.json", $$"""{ "name": "{{hostile}}", "drinks": [ { "drink": "x", "name": "{{hostile}}" }, { "drink": "{{hostile}}" } ] }""");
        book.Write(
            "f.stock.json",
            $$"""{ "on": "2026-11-25", "lots": [ { "item": "gin", "lot": "{{hostile}}", "opened": "2026-11-20", "amount": "1 l" }, { "item": "{{hostile}}" } ] }""");
        foreach (string format in new[] { "text", "html", "json", "sarif" })
        {
            var run = ToolRun.In(book.Path, "linecheck", "t", "--format", format);
            Assert.True(run.Status is 1, $"{format}: {run.Status} {run.Error}");
            if (format is "text" or "html") Assert.DoesNotContain(run.Output, c => (char.IsControl(c) && c != '\n') || c is '\u202E' or '\u2066');
            if (format == "sarif")
            {
                using var log = JsonDocument.Parse(run.Bytes);
                SarifTests.AssertValid(log.RootElement);
            }

            if (format != "html") continue;
            Assert.DoesNotContain("<script", run.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("<img", run.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("href", run.Output, StringComparison.Ordinal);
        }
    }

    [GeneratedRegex(@"```\n\$ speclint linecheck (?<args>[^\n]*)\n(?s:.*?)```\n")]
    private static partial Regex Printed();

    [GeneratedRegex("<article id=\"drink-")]
    private static partial Regex Articles();

    [Fact]
    public void What_making_one_thing_leaves_for_another_is_not_to_be_fetched()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "pressed.prep.json",
            """{ "name": "Pressed celery", "family": "juice", "ingredients": [ { "item": "celery-juice", "amount": "1000 g" } ], "method": [ { "do": "strain" } ], "yield": "800 g", "byProducts": [ { "id": "pulp", "amount": "200 g" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" }, "declares": { "allergens": ["celery"] } }""");
        book.Write(
            "pulp-salt.prep.json",
            """{ "name": "Pulp salt", "family": "flavoured-salt", "ingredients": [ { "item": "pulp", "amount": "100 g" }, { "item": "salt", "amount": "100 g" } ], "method": [ { "do": "stir" } ], "yield": "150 g", "keep": { "at": "20 °C", "in": "jar", "for": "30 d" }, "declares": { "allergens": ["celery"] } }""");
        book.Write(
            "green.drink.json",
            """{ "name": "Green", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "pressed", "amount": "30 ml" }, { "item": "pulp-salt", "amount": "2 g" } ], "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "glass": "coupe", "declares": { "allergens": ["celery"] } }""");
        book.Write("t.menu.json", """{ "name": "T", "drinks": [ { "drink": "green", "covers": 20 } ] }""");
        book.Write("f.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "gin", "opened": "2026-11-20", "amount": "5 l" } ] }""");
        using var json = JsonDocument.Parse(ToolRun.In(book.Path, "linecheck", "t", "--format", "json").Bytes);
        var credit = json.RootElement.GetProperty("make")
            .EnumerateArray()
            .Single(m => m.GetProperty("id").GetString() == "pressed")
            .GetProperty("credits")
            .EnumerateArray()
            .Single();
        Assert.Equal("pulp", credit.GetProperty("id").GetString());

        // The salt takes 100 g of pulp a batch, and one batch of juice leaves 200 g.
        Assert.InRange(credit.GetProperty("grams").GetDouble(), 25, 200);
        Assert.DoesNotContain(json.RootElement.GetProperty("get").EnumerateArray(), g => g.GetProperty("id").GetString() == "pulp");
    }
}
