using System.Text.Json;
using System.Xml.Linq;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>Every report says what is put aside, and closes with the same sentence.</summary>
public class HarmAsideReportTests
{
    private const string Garlic = """
        {
          "name": "Garlic oil",
          "family": "infusion",
          "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "50 g" } ],
          "method": [ { "do": "steep", "for": "24 h" }, { "do": "strain" } ],
          "yield": "480 g",
          "keep": { "at": "4 °C", "in": "bottle", "for": "30 d" }
        }
        """;

    private const string Off = """{ "level": "none", "because": "assayed", "until": "2027-01-31" }""";

    [Theory]
    [InlineData("text")]
    [InlineData("html")]
    [InlineData("github")]
    [InlineData("junit")]
    [InlineData("json")]
    [InlineData("sarif")]
    public void It_counts_what_is_put_aside_and_closes_with_the_sentence(string format)
    {
        using var folder = new TestFolder();
        folder.Write("garlic-oil.prep.json", Garlic);
        folder.Write("bar.json", SmallBook.Bar);
        using var found = JsonDocument.Parse(ToolRun.In(folder.Path, "check", "--format", "json", "--on", "2026-11-25").Bytes);
        var ids = found.RootElement.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("rule").GetString()).Distinct().ToList();
        folder.Write(
            "bar.json",
            $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { {{string.Join(", ", ids.Select(i => $"\"{i}\": {Off}"))}} } }""");
        var run = ToolRun.In(folder.Path, "check", "--format", format, "--on", "2026-11-25");
        Assert.Equal(0, run.Status);
        string text = TextOf(format, run.Output);
        Assert.Contains("put aside", text, StringComparison.Ordinal);
        Assert.Contains("until 2027-01-31", text, StringComparison.Ordinal);
        Assert.Contains(ReportWords.Closing, text, StringComparison.Ordinal);
        Assert.DoesNotContain("nothing found", text, StringComparison.OrdinalIgnoreCase);
        if (format != "json") return;
        using var json = JsonDocument.Parse(run.Bytes);
        var aside = json.RootElement.GetProperty("harmPutAside");
        Assert.True(aside.GetProperty("count").GetInt32() > 0);
        Assert.Equal(aside.GetProperty("count").GetInt32(), aside.GetProperty("switchedOff").GetInt32());
        Assert.Equal("2027-01-31", aside.GetProperty("lastEnd").GetString());
    }

    [Theory]
    [InlineData("text")]
    [InlineData("html")]
    [InlineData("github")]
    [InlineData("junit")]
    [InlineData("json")]
    [InlineData("sarif")]
    public void A_clean_report_closes_with_the_sentence(string format)
    {
        using var folder = new TestFolder();
        folder.Write("bar.json", SmallBook.Bar);
        folder.Write("still.ingredient.json", """{ "name": "Still water", "kind": "water", "like": "water" }""");
        Assert.Contains(ReportWords.Closing, TextOf(format, ToolRun.In(folder.Path, "check", "--format", format).Output), StringComparison.Ordinal);
    }

    [Fact]
    public void Quiet_output_still_says_what_is_put_aside()
    {
        using var folder = new TestFolder();
        folder.Write("garlic-oil.prep.json", Garlic);
        folder.Write("bar.json", SmallBook.Bar);
        using var found = JsonDocument.Parse(ToolRun.In(folder.Path, "check", "--format", "json", "--on", "2026-11-25").Bytes);
        var ids = found.RootElement.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("rule").GetString()).Distinct().ToList();
        folder.Write(
            "bar.json",
            $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { {{string.Join(", ", ids.Select(i => $"\"{i}\": {Off}"))}} } }""");
        Assert.Contains("put aside", ToolRun.In(folder.Path, "check", "--quiet", "--on", "2026-11-25").Output, StringComparison.Ordinal);
    }

    /// <summary>What is put aside is counted on the sheet of the evening, and beside a label and a scaled recipe.</summary>
    [Fact]
    public void The_line_check_labels_and_scale_count_what_is_put_aside()
    {
        using var folder = new TestFolder();
        folder.Write("garlic-oil.prep.json", Garlic);
        folder.Write(
            "low-oil.drink.json",
            """{ "name": "Low Oil", "ingredients": [ { "item": "gin", "amount": "60 ml" }, { "item": "garlic-oil", "amount": "5 ml" } ], "method": [ { "do": "stir", "ice": "cubed", "for": "20 s" } ] }""");
        folder.Write("evening.menu.json", """{ "name": "Evening", "drinks": [ { "drink": "low-oil", "covers": 2 } ] }""");
        folder.Write(
            "fridge.stock.json",
            """{ "on": "2026-11-25", "lots": [ { "item": "garlic-oil", "made": "2026-11-25", "amount": "400 g", "at": "4 °C" } ] }""");
        folder.Write("bar.json", SmallBook.Bar);
        using var found = JsonDocument.Parse(ToolRun.In(folder.Path, "check", "--format", "json", "--on", "2026-11-25").Bytes);
        var ids = found.RootElement.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("rule").GetString()).Distinct().ToList();
        folder.Write(
            "bar.json",
            $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { {{string.Join(", ", ids.Select(i => $"\"{i}\": {Off}"))}} } }""");
        foreach (string format in new[] { "text", "html", "json" })
        {
            string sheet = TextOf(format, ToolRun.In(folder.Path, "linecheck", "evening", "--book", ".", "--format", format, "--on", "2026-11-25").Output);
            Assert.Contains("put aside", sheet, StringComparison.Ordinal);
            Assert.Contains("2027-01-31", sheet, StringComparison.Ordinal);
        }

        var label = ToolRun.In(folder.Path, "labels", "--made", "garlic-oil", "--book", ".", "--on", "2026-11-25");
        Assert.Contains("put aside", label.Error, StringComparison.Ordinal);
        Assert.Contains("until 2027-01-31", label.Error, StringComparison.Ordinal);
        Assert.Contains(
            "put aside",
            ToolRun.In(folder.Path, "scale", "garlic-oil", "--to", "1 kg", "--book", ".", "--on", "2026-11-25").Error,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_settings_say_which_level_has_no_effect_and_why()
    {
        using var folder = new TestFolder();
        folder.Write("bar.json", $$"""{ "name": "The Saltmarsh Room", "rules": { "SL5013": "none", "SL6003": {{Off}} } }""");
        string text = ToolRun.In(folder.Path, "settings", "--on", "2026-11-25").Output.ReplaceLineEndings(" ");
        Assert.Contains("has no effect: it gives no reason", System.Text.RegularExpressions.Regex.Replace(text, " +", " "), StringComparison.Ordinal);
        Assert.Contains("none until 2027-01-31 because: assayed", System.Text.RegularExpressions.Regex.Replace(text, " +", " "), StringComparison.Ordinal);
    }

    private static string TextOf(string format, string output) => format switch
    {
        "junit" => string.Join(" ", XDocument.Parse(output).Descendants().SelectMany(e => e.Attributes().Select(a => a.Value).Append(e.Value))),
        "github" => output.Replace("%25", "%", StringComparison.Ordinal),
        _ => System.Text.RegularExpressions.Regex.Replace(output, @"\s+", " "),
    };
}
