using System.Text.Json;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class ScaleTests : IClassFixture<DemoBook>
{
    private readonly DemoBook demo;

    public ScaleTests(DemoBook demo) => this.demo = demo;

    [Theory]
    [InlineData("low-tide", "--serves", "40")]
    [InlineData("spring-tide", "--serves", "12", "--poured")]
    [InlineData("harbour-light", "--to", "3 l", "--poured", "--units", "us")]
    [InlineData("sour-cucumber", "--to", "2.5 l")]
    [InlineData("tern-collins-batch", "--serves", "6")]
    public void It_prints_a_plan_of_80_columns(params string[] args)
    {
        var run = ToolRun.In(demo.Path, ["scale", .. args]);
        Assert.Equal((0, ""), (run.Status, run.Error));
        Assert.Contains("goes into", run.Output, StringComparison.Ordinal);
        Assert.Equal(args.Contains("--poured"), run.Output.Contains("water, for dilution", StringComparison.Ordinal));
        Assert.Equal(args.Contains("us"), run.Output.Contains(" oz", StringComparison.Ordinal));
        Assert.All(run.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= DisplayText.Columns, line));
    }

    [Fact]
    public void The_json_stays_metric_and_complete()
    {
        var run = ToolRun.In(demo.Path, "scale", "low-tide", "--serves", "40", "--units", "us", "--format", "json");
        Assert.Equal(0, run.Status);
        using var json = JsonDocument.Parse(run.Bytes);
        Assert.Equal(40, json.RootElement.GetProperty("factor").GetDouble());
        Assert.Equal(4, json.RootElement.GetProperty("lines").GetArrayLength());
        Assert.Equal(2000, json.RootElement.GetProperty("lines")[0].GetProperty("amount").GetDouble());
        Assert.Equal("dill", json.RootElement.GetProperty("atTheGlass")[0].GetProperty("item").GetString());
    }

    [Theory]
    [InlineData("low-tide")]
    [InlineData("low-tide", "--serves", "0")]
    [InlineData("low-tide", "--serves", "4", "--to", "1 l")]
    [InlineData("low-tide", "--to", "3 °C")]
    [InlineData("low-tide", "--to", "-3 l")]
    [InlineData("no-such-drink", "--serves", "4")]
    [InlineData("fogbank-gin", "--serves", "4")]
    [InlineData("sour-cucumber", "--to", "1 l", "--poured")]
    public void Wrong_usage_is_one_sentence_and_status_2(params string[] args)
    {
        var run = ToolRun.In(demo.Path, ["scale", .. args]);
        Assert.Equal(2, run.Status);
        Assert.NotEmpty(run.Error);
        Assert.Empty(run.Output);
    }
}
