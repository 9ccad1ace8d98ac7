using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class EventTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Theory]
    [InlineData("text")]
    [InlineData("html")]
    [InlineData("csv")]
    public void A_plan_is_written_in_each_format(string format)
    {
        var run = ToolRun.In(demo.Path, "event", "evening", "--guests", "120", "--on", "2026-12-12", "--each", "2.5", "--format", format);
        Assert.True(run.Status is 0 or 1, run.Error);
        Assert.Contains("2026-12-09", run.Output, StringComparison.Ordinal);
        Assert.Contains("Pineapple tepache", run.Output, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(?i)\bsafe\b|allergen[- ]free", run.Output);
        if (format == "text") Assert.All(run.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
        if (format == "html") Assert.DoesNotContain("<script", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("event", "evening", "--on", "2026-12-12")]
    [InlineData("event", "evening", "--guests", "120")]
    [InlineData("event", "evening", "--guests", "0", "--on", "2026-12-12")]
    [InlineData("event", "no-such", "--guests", "12", "--on", "2026-12-12")]
    [InlineData("event", "evening", "--guests", "12", "--on", "2026-12-12", "--at", "late")]
    [InlineData("event", "evening", "--guests", "12", "--on", "2026-12-12", "--share", "low-tide")]
    [InlineData("event", "evening", "--guests", "12", "--on", "2026-12-12", "--each", "0")]
    public void Wrong_use_is_status_two(params string[] args) => Assert.Equal(2, ToolRun.In(demo.Path, args).Status);
}
