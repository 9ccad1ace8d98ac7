using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class AdjustTests
{
    [Fact]
    public void It_shows_before_and_after_and_writes_only_when_asked()
    {
        using var book = Demo();
        string path = Path.Combine(book.Path, "low-tide.drink.json"), before = File.ReadAllText(path);
        var shown = ToolRun.In(book.Path, "adjust", "low-tide", "--abv", "18", "--keep", "sour-cucumber", "--on", ToolRun.Day);
        Assert.Equal((0, "speclint: nothing is written; --write writes it.\n"), (shown.Status, shown.Error));
        Assert.Contains("18 % vol: yes, ", shown.Output, StringComparison.Ordinal);
        Assert.Contains(" becomes ", shown.Output, StringComparison.Ordinal);
        Assert.All(shown.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
        Assert.DoesNotMatch(@"(?i)\bsafe\b|allergen[- ]free", shown.Output);
        Assert.Equal(before, File.ReadAllText(path));

        var written = ToolRun.In(book.Path, "adjust", "low-tide", "--abv", "18", "--keep", "sour-cucumber", "--on", ToolRun.Day, "--write");
        Assert.Equal((0, "speclint: low-tide.drink.json is written.\n"), (written.Status, written.Error));
        Assert.Equal(shown.Output, written.Output);
        Assert.NotEqual(before, File.ReadAllText(path));
    }

    [Fact]
    public void A_target_out_of_reach_is_status_one()
    {
        using var book = Demo();
        var run = ToolRun.In(book.Path, "adjust", "low-tide", "--abv", "60", "--on", ToolRun.Day);
        Assert.Equal(1, run.Status);
        Assert.Contains("60 % vol: no, ", run.Output, StringComparison.Ordinal);
        Assert.Contains("in the way", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Harm_is_written_only_where_it_is_admitted()
    {
        using var book = Demo();
        string path = Path.Combine(book.Path, "low-tide.drink.json"), before = File.ReadAllText(path);
        string[] swap = ["adjust", "low-tide", "--without", "heather-honey-syrup", "--use", "almond-orgeat", "--on", ToolRun.Day, "--write"];
        var refused = ToolRun.In(book.Path, swap);
        Assert.Equal(1, refused.Status);
        Assert.Contains("is not written: the change brings the allergen ", refused.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(path));
        Assert.Contains("is written.", ToolRun.In(book.Path, [.. swap, "--admit-new"]).Error, StringComparison.Ordinal);
        Assert.Contains("\"almond-orgeat\"", File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("adjust", "low-tide")]
    [InlineData("adjust", "low-tide", "--abv", "strong")]
    [InlineData("adjust", "low-tide", "--abv", "19-17")]
    [InlineData("adjust", "low-tide", "--abv", "-3")]
    [InlineData("adjust", "low-tide", "--abv", "120")]
    [InlineData("adjust", "lime-juice", "--acid", "6")]
    [InlineData("adjust", "low-tide", "--abv", "18", "--keep", "no-such-line")]
    [InlineData("adjust", "low-tide", "--use", "gin")]
    [InlineData("adjust", "low-tide", "--without", "gin")]
    [InlineData("adjust", "low-tide", "--without", "fogbank-gin", "--write")]
    [InlineData("adjust", "low-tide", "--abv", "18", "--admit-new")]
    public void Wrong_use_is_status_two(params string[] args)
    {
        using var book = Demo();
        var run = ToolRun.In(book.Path, args);
        Assert.Equal(2, run.Status);
        Assert.Equal("", run.Output);
    }

    private static TestFolder Demo()
    {
        var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", ".").Status);
        return folder;
    }
}
