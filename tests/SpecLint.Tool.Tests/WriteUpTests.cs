using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class WriteUpTests : IClassFixture<DemoBook>
{
    private const string Text = """
        Ebb Sour
        2 oz gin, ¾ oz lemon juice
        1 oz simple syrup
        Shake with ice and strain.
        Garnish with lemon twist

        Neap Highball
        45 ml rum
        juice of 1/2 lime
        top up with ginger ale
        """;

    private readonly DemoBook demo;

    public WriteUpTests(DemoBook demo) => this.demo = demo;

    [Fact]
    public void Each_line_stands_beside_what_is_understood()
    {
        string file = Path.Combine(demo.Path, "drinks.txt");
        File.WriteAllText(file, Text);
        var run = ToolRun.In(demo.Path, "write-up", "drinks.txt");
        File.Delete(file);
        Assert.Equal((1, ""), (run.Status, run.Error));
        Assert.Contains("  1 oz simple syrup                   1 oz simple-syrup\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("14 ml lime-juice (likely:", run.Output, StringComparison.Ordinal);
        Assert.Contains("45 ml ? (unclear:", run.Output, StringComparison.Ordinal);
        Assert.Contains("7 lines with an item: 5 certain, 1 likely, 1 unclear.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_are_written_once_and_never_over_others()
    {
        string folder = Directory.CreateTempSubdirectory("speclint-write-up").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "bar.json"), """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""");
            File.WriteAllText(Path.Combine(folder, "drinks.txt"), Text);
            var first = ToolRun.In(folder, "write-up", "drinks.txt", "--write");
            Assert.Equal(1, first.Status);
            string ebb = File.ReadAllText(Path.Combine(folder, "ebb-sour.drink.json"));
            Assert.Contains("""{ "item": "gin", "amount": "2 oz" }""", ebb, StringComparison.Ordinal);
            Assert.Contains("""{ "do": "shake", "ice": "cubed" }""", ebb, StringComparison.Ordinal);
            var check = ToolRun.In(folder, "check", "--format", "line");
            Assert.Contains("neap-highball.drink.json", check.Output, StringComparison.Ordinal);
            Assert.Contains("SL9001", check.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("ebb-sour.drink.json:5", check.Output, StringComparison.Ordinal);
            var again = ToolRun.In(folder, "write-up", "drinks.txt", "--write");
            Assert.Equal((2, ""), (again.Status, again.Output));
            Assert.Equal(ebb, File.ReadAllText(Path.Combine(folder, "ebb-sour.drink.json")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("no-such-file.txt")]
    public void Wrong_usage_is_one_sentence_and_status_2(string file)
    {
        var run = ToolRun.In(demo.Path, "write-up", file);
        Assert.Equal((2, ""), (run.Status, run.Output));
        Assert.NotEmpty(run.Error);
    }
}
