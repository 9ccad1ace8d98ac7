using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

public class BaselineVerbTests
{
    private const string File1 = "speclint-baseline.json";

    [Fact]
    public void A_missing_baseline_is_wrong_usage()
    {
        using var book = SmallBook.WithBroken();
        Assert.Equal(2, ToolRun.In(book.Path, "baseline").Status);
        Assert.Equal(2, ToolRun.In(book.Path, "baseline", "--refresh").Status);
        Assert.Equal(2, ToolRun.In(book.Path, "baseline", "--refresh", "--admit", "--because", "as found").Status);
        Assert.Equal(2, ToolRun.In(book.Path, "check", "--baseline", File1).Status);
        Assert.False(File.Exists(book[File1]));
    }

    [Theory]
    [InlineData("--create")]
    [InlineData("--create", "--because", " ")]
    [InlineData("--create", "--refresh", "--because", "x")]
    [InlineData("--admit", "--because", "x")]
    [InlineData("--because", "x")]
    [InlineData("--create", "--because", "x", "--until", "2026-11-24")]
    public void A_finding_is_not_taken_in_without_a_reason(params string[] args)
    {
        using var book = SmallBook.WithBroken();
        Assert.Equal(2, ToolRun.In(book.Path, ["baseline", .. args]).Status);
        Assert.False(File.Exists(book[File1]));
    }

    [Fact]
    public void What_is_in_the_baseline_does_not_fail_and_what_is_new_does()
    {
        using var book = SmallBook.WithBroken();
        Assert.Equal(1, ToolRun.In(book.Path, "check").Status);
        Assert.Equal(0, ToolRun.In(book.Path, "baseline", "--create", "--because", "as found", "--until", "2027-01-31").Status);
        Assert.Equal(2, ToolRun.In(book.Path, "baseline", "--create", "--because", "again").Status);
        Assert.Equal(0, ToolRun.In(book.Path, "baseline").Status);
        var check = ToolRun.In(book.Path, "check", "--baseline", File1);
        Assert.Equal(0, check.Status);
        Assert.Contains("in the baseline", check.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(1, ToolRun.In(book.Path, "check", "--baseline", File1, "--on", "2027-02-01").Status);

        book.Write("second.drink.json", SmallBook.Broken.Replace("no-such-thing", "nor-such-a-one", StringComparison.Ordinal));
        var second = ToolRun.In(book.Path, "check", "--baseline", File1);
        Assert.Equal(1, second.Status);
        Assert.Contains("nor-such-a-one", second.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("no-such-thing", second.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refresh_takes_out_and_takes_in_only_when_told()
    {
        using var book = SmallBook.WithBroken();
        ToolRun.In(book.Path, "baseline", "--create", "--because", "as found", "--until", "2027-01-31");
        int before = Count(book);
        book.Write("second.drink.json", SmallBook.Broken.Replace("no-such-thing", "nor-such-a-one", StringComparison.Ordinal));
        Assert.Equal(1, ToolRun.In(book.Path, "baseline", "--refresh").Status);
        Assert.Equal(before, Count(book));
        Assert.Equal(0, ToolRun.In(book.Path, "baseline", "--refresh", "--admit", "--because", "a second one", "--until", "2027-01-31").Status);
        Assert.True(Count(book) > before);
        int both = Count(book);
        File.Delete(book["mudflat.drink.json"]);
        var check = ToolRun.In(book.Path, "baseline");
        Assert.Contains("no-such-thing", check.Output, StringComparison.Ordinal);
        Assert.Equal(0, ToolRun.In(book.Path, "baseline", "--refresh").Status);
        Assert.InRange(Count(book), 1, both - 1);
        Assert.DoesNotContain("no-such-thing", File.ReadAllText(book[File1]), StringComparison.Ordinal);
    }

    [Fact]
    public void Sarif_says_which_results_are_new_unchanged_and_absent()
    {
        using var book = SmallBook.WithBroken();
        ToolRun.In(book.Path, "baseline", "--create", "--because", "as found", "--until", "2027-01-31");
        book.Write("second.drink.json", SmallBook.Broken);
        using (var log = Log(book)) Assert.Equal(["new", "unchanged"], States(log).Distinct().Order());
        File.Delete(book["mudflat.drink.json"]);
        using (var log = Log(book)) Assert.Equal(["absent", "new"], States(log).Distinct().Order());
        using var scanning = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--baseline", File1, "--format", "sarif", "--for", "code-scanning").Bytes);
        SarifTests.AssertValid(scanning.RootElement);
        Assert.Equal(["new"], States(scanning).Distinct());
    }

    [Fact]
    public void A_file_that_is_no_baseline_is_wrong_usage()
    {
        using var book = SmallBook.WithBroken();
        book.Write(File1, "{}");
        var run = ToolRun.In(book.Path, "check", "--baseline", File1);
        Assert.Equal(2, run.Status);
        Assert.Contains("is not a baseline", run.Error, StringComparison.Ordinal);
    }

    private static int Count(TestFolder book)
    {
        using var json = JsonDocument.Parse(File.ReadAllBytes(book[File1]));
        return json.RootElement.GetProperty("findings").GetArrayLength();
    }

    private static JsonDocument Log(TestFolder book)
    {
        var log = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--baseline", File1, "--format", "sarif").Bytes);
        SarifTests.AssertValid(log.RootElement);
        return log;
    }

    private static IEnumerable<string> States(JsonDocument log) =>
        log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().Select(r => r.GetProperty("baselineState").GetString()!);
}
