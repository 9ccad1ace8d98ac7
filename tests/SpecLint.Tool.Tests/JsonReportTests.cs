using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class JsonReportTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Fact]
    public void Every_finding_says_what_where_and_who_says_so()
    {
        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "json").Bytes);
        var findings = json.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.NotEmpty(findings);
        foreach (var finding in findings)
        {
            Assert.Matches("^SL[1-9][0-9]{3}$", finding.GetProperty("rule").GetString());
            Assert.Contains(finding.GetProperty("level").GetString(), new[] { "error", "warning", "note" });
            Assert.NotEmpty(finding.GetProperty("message").GetString()!);
            Assert.Matches("^[0-9a-f]{32}$", finding.GetProperty("fingerprint").GetString());
            Assert.True(File.Exists(Path.Combine(demo.Path, finding.GetProperty("file").GetString()!)));
        }
    }

    [Fact]
    public void A_region_points_at_its_bytes()
    {
        using var book = SmallBook.WithBroken();
        using var json = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "json").Bytes);
        var finding = json.RootElement.GetProperty("findings").EnumerateArray().Single(f => f.GetProperty("rule").GetString() == "SL9001");
        var region = finding.GetProperty("region");
        byte[] text = File.ReadAllBytes(book["mudflat.drink.json"]);
        var bytes = text.AsSpan(region.GetProperty("byteOffset").GetInt32(), region.GetProperty("byteLength").GetInt32());
        Assert.Equal("\"no-such-thing\"", System.Text.Encoding.UTF8.GetString(bytes));
        Assert.Equal(4, region.GetProperty("startLine").GetInt32());
        Assert.Equal(15, region.GetProperty("startColumn").GetInt32());
    }

    [Fact]
    public void Only_what_is_named_is_reported_but_the_book_is_read_whole()
    {
        using var book = SmallBook.WithBroken();
        book.Write(
            "prep/brine.prep.json",
            """{ "name": "Brine", "family": "saline", "ingredients": [ { "item": "water", "amount": "80 g" }, { "item": "sea-salt", "amount": "20 g" } ], "yield": "100 g" }""");
        book.Write("marsh.drink.json", SmallBook.Broken.Replace("no-such-thing", "brine", StringComparison.Ordinal));
        using var one = JsonDocument.Parse(ToolRun.In(book.Path, "check", "marsh.drink.json", "--format", "json").Bytes);
        Assert.Equal(1, one.RootElement.GetProperty("files").GetInt32());
        Assert.DoesNotContain(one.RootElement.GetProperty("findings").EnumerateArray(), f => f.GetProperty("rule").GetString() == "SL9001");
        using var folder = JsonDocument.Parse(ToolRun.In(book.Path, "check", "prep", "marsh.drink.json", "--format", "json").Bytes);
        Assert.Equal(2, folder.RootElement.GetProperty("files").GetInt32());
    }
}
