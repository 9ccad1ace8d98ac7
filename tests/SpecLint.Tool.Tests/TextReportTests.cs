using System.Text.RegularExpressions;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class TextReportTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Fact]
    public void The_demo_book_fits_eighty_columns()
    {
        var run = ToolRun.In(demo.Path, "check");
        Assert.Equal(1, run.Status);
        Assert.All(run.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
    }

    [Fact]
    public void The_example_in_the_readme_is_what_is_printed()
    {
        string readme = File.ReadAllText(Repository.At("README.md")).ReplaceLineEndings("\n");
        int start = readme.IndexOf("<!-- finding -->\n```\n", StringComparison.Ordinal) + "<!-- finding -->\n```\n".Length;
        string example = readme[start..readme.IndexOf("\n```", start, StringComparison.Ordinal)];
        Assert.Contains(example, ToolRun.In(Repository.Root, "check", "src/SpecLint.Tool/Demo").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Addresses_start_at_the_current_folder()
    {
        var run = ToolRun.In(demo.Repository, "check", "house");
        string first = run.Output.Split('\n').First(l => l.Contains(".json:", StringComparison.Ordinal));
        Assert.StartsWith("house/the book/", first, StringComparison.Ordinal);
        string path = first[..first.IndexOf(".json:", StringComparison.Ordinal)] + ".json";
        Assert.True(File.Exists(Path.Combine(demo.Repository, path)), path);
    }

    [Fact]
    public void The_summary_counts_what_the_json_report_counts()
    {
        using var json = System.Text.Json.JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "json").Bytes);
        var counts = json.RootElement.GetProperty("counts");
        string summary = ToolRun.In(demo.Path, "check").Output.TrimEnd('\n').Split("\n\n")[^1].Replace('\n', ' ');
        Assert.StartsWith(
            $"In {json.RootElement.GetProperty("recipes").GetInt32()} recipes: {counts.GetProperty("error").GetInt32()} error",
            summary,
            StringComparison.Ordinal);
        int accepted = counts.GetProperty("accepted").GetInt32();
        Assert.Equal(accepted > 0, summary.Contains("accepted", StringComparison.Ordinal));
    }

    [Fact]
    public void What_could_hurt_somebody_comes_first_then_errors_warnings_and_notes()
    {
        string output = ToolRun.In(demo.Path, "check").Output;
        var heads = output.Split('\n').Where(l => Regex.IsMatch(l, @"^\w.* \(\d+\)$")).ToList();
        Assert.Equal(
            ["Somebody could be hurt: see to these first", "Errors", "Warnings"],
            heads.Select(h => h[..h.LastIndexOf(" (", StringComparison.Ordinal)]));
        using var json = System.Text.Json.JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "json").Bytes);
        Assert.Equal(
            json.RootElement.GetProperty("findings").GetArrayLength(),
            heads.Sum(h => int.Parse(h[(h.LastIndexOf('(') + 1)..^1], System.Globalization.CultureInfo.InvariantCulture)));
        string urgent = output[..output.IndexOf("\nErrors (", StringComparison.Ordinal)];
        Assert.Contains("error SL7001", urgent, StringComparison.Ordinal);
        Assert.Contains("error SL5027", urgent, StringComparison.Ordinal);
        Assert.DoesNotContain("error SL", output[output.IndexOf("\nWarnings (", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.True(output.LastIndexOf("To do first:", StringComparison.Ordinal) < output.LastIndexOf("By rule: ", StringComparison.Ordinal));
    }

    [Fact]
    public void Equal_findings_share_their_advice_and_a_group_its_caution()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "marsh.prep.json",
            """{ "name": "Marsh", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ], "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "1 kg", "keep": { "at": "4 °C", "in": "bottle", "for": "7 d" }, "declares": { "allergens": [] } }""");
        string lots = string.Join(
            ", ",
            Enumerable.Range(1, 5)
                .Select(n => $$"""{ "item": "marsh", "lot": "M-{{n}}", "made": "2026-06-0{{n}}", "amount": "1 l", "at": "4 °C" }"""));
        book.Write("fridge.stock.json", $$"""{ "on": "2026-11-25", "lots": [ {{lots}} ] }""");
        using var json = System.Text.Json.JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "json").Bytes);
        var expired = json.RootElement.GetProperty("findings")
            .EnumerateArray()
            .GroupBy(f => (f.GetProperty("rule").GetString(), f.GetProperty("advice").GetString()))
            .OrderByDescending(g => g.Count())
            .First()
            .ToList();
        Assert.Equal(5, expired.Count);
        string output = ToolRun.In(book.Path, "check").Output;
        string flat = output.ReplaceLineEndings(" ");
        Assert.Equal(2, flat.Split("To put these right: ").Length);
        Assert.Equal(2, flat.Split("Caution").Length);
        Assert.Equal(5, output.Split('\n').Count(l => l.StartsWith("fridge.stock.json:", StringComparison.Ordinal)));
    }

    [Fact]
    public void An_example_book_is_checked_for_the_day_that_it_is_set_on_and_says_so()
    {
        string then = ToolRun.In(demo.Path, "check", "--on", ToolRun.Day).Output;
        var later = ToolRun.With(demo.Path, new RunOptions { Today = "2027-06-01" }, "check");
        Assert.Equal(then, later.Output);
        Assert.Contains("set on 2026-11-25 (asOf in bar.json)", later.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("set on", ToolRun.In(demo.Path, "check", "--on", "2026-12-01").Error, StringComparison.Ordinal);
        Assert.NotEqual(then, ToolRun.In(demo.Path, "check", "--on", "2027-06-01").Output);
        foreach (string[] args in new string[][] { ["linecheck", "evening"], ["labels"], ["profile", "low-tide"], ["trace", "SC-24"], ["compare", ".", "."], ["scale", "low-tide", "--serves", "2"] })
            Assert.Contains("set on 2026-11-25", ToolRun.With(demo.Path, new RunOptions { Today = "2027-06-01" }, args).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Colour_is_only_for_terminals_that_want_it()
    {
        using var book = SmallBook.WithBroken();
        Assert.DoesNotContain('\u001b', ToolRun.In(book.Path, "check").Output);
        Assert.Contains('\u001b', ToolRun.With(book.Path, new RunOptions { Terminal = true }, "check").Output);
        Assert.DoesNotContain(
            '\u001b',
            ToolRun.With(
                book.Path,
                new RunOptions { Terminal = true, Variables = new Dictionary<string, string> { ["NO_COLOR"] = "1" } },
                "check").Output);
        Assert.DoesNotContain('\u001b', ToolRun.With(book.Path, new RunOptions { Terminal = true }, "check", "--colour", "never").Output);
        Assert.Contains('\u001b', ToolRun.In(book.Path, "check", "--colour", "always").Output);
    }

    [Fact]
    public void Hostile_text_of_a_file_is_shown_escaped()
    {
        using var book = SmallBook.WithBroken();
        book.Write(
            "evil.drink.json",
            SmallBook.Broken.Replace("Mudflat", "a\\u001b[2Jb\\u202Ec", StringComparison.Ordinal)
                .Replace("no-such-thing", "gone\\u001b]0;x\\u0007", StringComparison.Ordinal));
        var run = ToolRun.In(book.Path, "check", "evil.drink.json");
        Assert.DoesNotContain(run.Output, c => (char.IsControl(c) && c != '\n') || c == '\u202E');
        Assert.Contains("a\\u001B[2Jb\\u202Ec", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drink_without_fault_is_said_to_be_so_and_deferred()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write("sea-water.drink.json", """
            { "name": "Water", "ingredients": [ { "item": "water", "amount": "100 ml" } ], "method": [ { "do": "build" } ], "declares": { "allergens": [] } }
            """);
        var run = ToolRun.In(book.Path, "check", "--fail-at", "note");
        Assert.Equal($"In 1 recipe: nothing found.\n{ReportWords.Closing}\n", run.Output.Replace("they\nask", "they ask", StringComparison.Ordinal));
        Assert.Equal(0, run.Status);
        Assert.Empty(ToolRun.In(book.Path, "check", "--quiet").Output);
    }

    [Fact]
    public void Nothing_that_the_tool_prints_calls_a_drink_safe()
    {
        string output = ToolRun.In(demo.Path, "check").Output + ToolRun.In(demo.Path, "profile").Output;
        Assert.DoesNotMatch(@"(?i)\bsafe\b|allergen[- ]free", output);
    }

    [Fact]
    public void However_many_threads_write_a_long_report_it_is_the_same()
    {
        using var folder = new TestFolder();
        new SpecLint.Benchmarks.BookGenerator(600, 20261125).WriteTo(folder.Path);
        string one = ToolRun.In(folder.Path, "check", "--threads", "1").Output;
        Assert.Contains("Notes (", one, StringComparison.Ordinal);
        Assert.Equal(one, ToolRun.In(folder.Path, "check", "--threads", "3").Output);
    }
}
