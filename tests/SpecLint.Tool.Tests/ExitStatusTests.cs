using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class ExitStatusTests
{
    [Fact]
    public void Findings_at_the_threshold_make_1()
    {
        using var book = SmallBook.WithBroken();
        var run = ToolRun.In(book.Path, "check");
        Assert.Equal(1, run.Status);
        Assert.Contains("mudflat.drink.json:4:", run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void The_same_findings_below_the_threshold_make_0()
    {
        using var book = SmallBook.WithBroken();
        Assert.Equal(0, ToolRun.In(book.Path, "check", "--fail-at", "never").Status);
        book.Write("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { "SL9001": "note" } }""");
        string[] levels = Levels(ToolRun.In(book.Path, "check", "--format", "json", "--fail-at", "never"));
        Assert.Contains("note", levels);
        int expected = levels.Contains("error") ? 1 : 0;
        Assert.Equal(expected, ToolRun.In(book.Path, "check").Status);
        Assert.Equal(1, ToolRun.In(book.Path, "check", "--fail-at", "note").Status);
    }

    private static string[] Levels(ToolRun run) =>
        [.. System.Text.Json.JsonDocument.Parse(run.Bytes).RootElement
            .GetProperty("findings")
            .EnumerateArray()
            .Select(f => f.GetProperty("level").GetString()!)];

    [Theory]
    [InlineData("check", "--no-such-option")]
    [InlineData("chek")]
    [InlineData("check", "--format", "xml")]
    [InlineData("check", "--fail-at", "fatal")]
    [InlineData("check", "--on", "25.11.2026")]
    [InlineData("check", "--on", "2026-02-30")]
    [InlineData("check", "--threads", "many")]
    [InlineData("check", "--threads", "-1")]
    [InlineData("check", "--rule-pages", "not an address")]
    [InlineData("check", "nowhere")]
    [InlineData("check", "@response-file")]
    [InlineData("profile", "no-such-id")]
    [InlineData("rules", "SL0000")]
    [InlineData("start")]
    [InlineData("settings", "nowhere")]
    public void Wrong_usage_makes_2_with_a_sentence_and_no_result(params string[] args)
    {
        using var book = SmallBook.WithBroken();
        string before = book.Snapshot();
        var run = ToolRun.In(book.Path, args);
        Assert.Equal(2, run.Status);
        Assert.Empty(run.Output);
        Assert.NotEmpty(run.Error);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, book.Snapshot());
    }

    [Fact]
    public void No_verb_makes_2() => Assert.Equal(2, ToolRun.In(Path.GetTempPath()).Status);

    [Fact]
    public void A_folder_without_recipes_makes_2()
    {
        using var folder = new TestFolder();
        var run = ToolRun.In(folder.Path, "check");
        Assert.Equal(2, run.Status);
        Assert.Contains("no recipe was found", run.Error, StringComparison.Ordinal);
        folder.Write("bar.json", SmallBook.Bar);
        Assert.Equal(2, ToolRun.In(folder.Path, "check").Status);
    }

    [Fact]
    public void A_file_that_is_none_of_the_book_makes_2()
    {
        using var book = SmallBook.WithBroken();
        book.Write("notes.txt", "x");
        var run = ToolRun.In(book.Path, "check", "notes.txt");
        Assert.Equal(2, run.Status);
        Assert.Contains("notes.txt is not a file of the book", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_of_the_tool_makes_3_with_one_sentence()
    {
        using var book = SmallBook.WithBroken();
        using var error = new StringWriter();
        var host = new Host
        {
            Output = Stream.Null,
            Error = error,
            CurrentDirectory = book.Path,
            Today = () => throw new InvalidOperationException("the clock stands still"),
        };
        Assert.Equal(3, Shell.Run(["check"], host));
        Assert.Contains("the clock stands still", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_says_where_when_asked()
    {
        using var book = SmallBook.WithBroken();
        using var error = new StringWriter();
        var host = new Host
        {
            Output = Stream.Null,
            Error = error,
            CurrentDirectory = book.Path,
            Today = () => throw new InvalidOperationException("the clock stands still"),
            Variable = name => name == Shell.TraceVariable ? "1" : null,
        };
        Assert.Equal(3, Shell.Run(["check"], host));
        Assert.Contains("   at ", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_bar_file_that_is_no_json_makes_2_and_the_findings_are_still_there()
    {
        using var book = SmallBook.WithBroken();
        book.Write("bar.json", """{ "name": "The Saltm""");
        var run = ToolRun.In(book.Path, "check");
        Assert.Equal(2, run.Status);
        Assert.Contains("bar.json:1:", run.Output, StringComparison.Ordinal);
        Assert.Contains("mudflat.drink.json:4:", run.Output, StringComparison.Ordinal);
        Assert.Contains("bar.json cannot be read", run.Error, StringComparison.Ordinal);
    }
}
