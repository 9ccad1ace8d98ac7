using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class HouseSchemaVerbTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "schemas": { "drink": "house/drink.schema.json" } }""";

    private const string Schema = """
        {
          "$schema": "https://json-schema.org/draft/2020-12/schema",
          "type": "object",
          "required": ["author", "name"],
          "properties": {
            "style": { "enum": ["sour", "stirred"] },
            "glass": false,
            "ingredients": { "maxItems": 2, "items": { "$ref": "#/$defs/line" } }
          },
          "$defs": { "line": { "required": ["note"], "properties": { "item": { "pattern": "^[a-m]" } } } }
        }
        """;

    private const string Drink = """
        {
          // the house asks for more
          "name": "Ebb",
          "style": "highball",
          "ingredients": [
            { "item": "gin", "amount": "45 ml", "note": "cold" },
            { "item": "soda-water", "amount": "90 ml" },
          ],
          "method": [ { "do": "build", "ice": "cubed" } ],
          "glass": "highball"
        }
        """;

    [Fact]
    public void What_the_house_asks_for_is_found_at_its_place()
    {
        using var book = Book(Bar, Schema, Drink);
        var run = ToolRun.In(book.Path, "check", "--format", "json");
        Assert.Equal(1, run.Status);
        using var json = JsonDocument.Parse(run.Bytes);
        var found = json.RootElement.GetProperty("findings").EnumerateArray().Where(f => f.GetProperty("rule").GetString() == "SL1028")
            .Select(f => $"{f.GetProperty("region").GetProperty("startLine").GetInt32()}:{f.GetProperty("region").GetProperty("startColumn").GetInt32()} {f.GetProperty("message").GetString()}").ToList();
        string all = string.Join('\n', found);
        Assert.True(found.Count == 5, all);
        Assert.Matches(@"(?m)^1:1 .*`author`.*missing", all);
        Assert.Matches(@"(?m)^4:12 .*highball", all);
        Assert.Matches(@"(?m)^7:5 .*`note`.*missing", all);
        Assert.Matches(@"(?m)^7:15 .*soda-water", all);
        Assert.Matches(@"(?m)^10:3 .*glass", all);
    }

    [Fact]
    public void Other_kinds_of_file_are_left_alone()
    {
        using var book = Book(Bar, Schema, Drink);
        book.Write("bar.json", Bar.Replace("\"drink\"", "\"menu\"", StringComparison.Ordinal));
        Assert.DoesNotContain("SL1028", ToolRun.In(book.Path, "check").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("house/none.schema.json")]
    [InlineData("../outside.schema.json")]
    [InlineData("/etc/hostname")]
    [InlineData("house/broken.schema.json")]
    [InlineData("house/wrong.schema.json")]
    public void A_schema_that_cannot_be_used_makes_2(string path)
    {
        using var book = Book(Bar.Replace("house/drink.schema.json", path, StringComparison.Ordinal), Schema, Drink);
        book.Write("house/broken.schema.json", "{ \"type\": ");
        book.Write("house/wrong.schema.json", """{ "type": 7 }""");
        var run = ToolRun.In(book.Path, "check");
        Assert.Equal(2, run.Status);
        Assert.Contains(path, run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task A_bar_without_schemas_does_not_load_the_engine()
    {
        using var book = SmallBook.WithBroken();
        var start = new System.Diagnostics.ProcessStartInfo(
            "dotnet", [typeof(Shell).Assembly.Location, "check", book.Path])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        string folder = Path.GetDirectoryName(typeof(Shell).Assembly.Location)!;
        using var copy = new TestFolder();
        foreach (string file in Directory.EnumerateFiles(folder, "*", SearchOption.TopDirectoryOnly)
            .Where(f => !Path.GetFileName(f).StartsWith("JsonSchema", StringComparison.Ordinal)))
            File.Copy(file, copy[Path.GetFileName(file)]);
        start.ArgumentList[0] = copy["SpecLint.Tool.dll"];
        using var process = System.Diagnostics.Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 1, output + await error);
    }

    private static TestFolder Book(string bar, string schema, string drink)
    {
        var book = new TestFolder();
        book.Write("bar.json", bar);
        book.Write("house/drink.schema.json", schema);
        book.Write("ebb.drink.json", drink);
        return book;
    }
}
