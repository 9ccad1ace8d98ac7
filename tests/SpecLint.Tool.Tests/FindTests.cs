using System.Text.Json;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class FindTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Theory]
    [InlineData("lime-juice", "lime", "juice")]
    [InlineData("lime-juice", "juice", "LIME")]
    [InlineData("sour-cucumber", "sour cucumber")]
    [InlineData("fogbank-gin", "fogbank")]
    [InlineData("maraschino-liqueur", "maraschno")]
    [InlineData("celery-pulp", "celery", "pulp")]
    [InlineData("lime-juice", "freshly", "squeezed", "lime", "juice")]
    [InlineData("lime-juice", "juice", "of", "limes")]
    public void The_best_is_what_was_meant(string id, params string[] words) => Assert.Equal(id, Found(words)[0].GetProperty("id").GetString());

    [Fact]
    public void All_words_must_fit_and_a_slip_is_looked_for_only_where_nothing_fits()
    {
        var found = Found("dry", "vermouth");
        Assert.NotEmpty(found);
        Assert.All(
            found,
            f => Assert.Contains(
                "verm",
                (f.GetProperty("id").GetString() + f.GetProperty("name").GetString() + (f.TryGetProperty("called", out var called)
                    ? called.GetString()
                    : "")).ToLowerInvariant(),
                StringComparison.Ordinal));
        Assert.Equal((1, "speclint: nothing in the book or the catalogue is called qqqqqq.\n"), Status("find", "qqqqqq"));
        Assert.Equal(2, Status("find").Status);
        Assert.Equal(2, Status("find", "--like", "no-such-thing").Status);
    }

    [Fact]
    public void By_make_up_the_nearest_comes_first_and_says_what_differs()
    {
        var found = Found("--like", "lime-juice", "--most", "12");
        Assert.DoesNotContain("lime-juice", found.Select(f => f.GetProperty("id").GetString()));

        // The preparation that stands in for lime by its own target is among the nearest.
        Assert.Contains("sour-cucumber", found.Select(f => f.GetProperty("id").GetString()));
        var far = Found("simple", "syrup", "--like", "lime-juice");
        Assert.Contains(
            far[0].GetProperty("differs").EnumerateArray(),
            d => d.GetString()!.StartsWith('+') && d.GetString()!.EndsWith("sugar", StringComparison.Ordinal));
    }

    [Fact]
    public void Text_keeps_to_eighty_columns_and_names_what_it_compares_with()
    {
        string text = ToolRun.In(demo.Path, "find", "gin").Output;
        Assert.All(text.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
        Assert.Contains("% vol", text, StringComparison.Ordinal);
        Assert.Contains("against ", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(?i)\bsafe\b|allergen[- ]free", text);
    }

    private List<JsonElement> Found(params string[] args)
    {
        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, ["find", .. args, "--format", "json"]).Bytes);
        return [.. json.RootElement.GetProperty("found").EnumerateArray().Select(e => e.Clone())];
    }

    private (int Status, string Error) Status(params string[] args)
    {
        var run = ToolRun.In(demo.Path, args);
        return (run.Status, run.Error);
    }
}
