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
        string? root = AppContext.BaseDirectory;
        while (root is not null && !File.Exists(Path.Combine(root, "SpecLint.sln"))) root = Path.GetDirectoryName(root);
        string readme = File.ReadAllText(Path.Combine(root!, "README.md")).ReplaceLineEndings("\n");
        int start = readme.IndexOf("<!-- finding -->\n```\n", StringComparison.Ordinal) + "<!-- finding -->\n```\n".Length;
        string example = readme[start..readme.IndexOf("\n```", start, StringComparison.Ordinal)];
        Assert.Contains(example, ToolRun.In(root!, "check", "src/SpecLint.Tool/Demo").Output, StringComparison.Ordinal);
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
        Assert.StartsWith($"In {json.RootElement.GetProperty("recipes").GetInt32()} recipes: {counts.GetProperty("error").GetInt32()} error", summary, StringComparison.Ordinal);
        int accepted = counts.GetProperty("accepted").GetInt32();
        Assert.Equal(accepted > 0, summary.Contains("accepted", StringComparison.Ordinal));
    }

    [Fact]
    public void Colour_is_only_for_terminals_that_want_it()
    {
        using var book = SmallBook.WithBroken();
        Assert.DoesNotContain('\u001b', ToolRun.In(book.Path, "check").Output);
        Assert.Contains('\u001b', ToolRun.With(book.Path, new RunOptions { Terminal = true }, "check").Output);
        Assert.DoesNotContain('\u001b', ToolRun.With(book.Path, new RunOptions { Terminal = true, Variables = new Dictionary<string, string> { ["NO_COLOR"] = "1" } }, "check").Output);
        Assert.DoesNotContain('\u001b', ToolRun.With(book.Path, new RunOptions { Terminal = true }, "check", "--colour", "never").Output);
        Assert.Contains('\u001b', ToolRun.In(book.Path, "check", "--colour", "always").Output);
    }

    [Fact]
    public void Hostile_text_of_a_file_is_shown_escaped()
    {
        using var book = SmallBook.WithBroken();
        book.Write("evil.drink.json", SmallBook.Broken.Replace("Mudflat", "a\\u001b[2Jb\\u202Ec", StringComparison.Ordinal).Replace("no-such-thing", "gone\\u001b]0;x\\u0007", StringComparison.Ordinal));
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
}
