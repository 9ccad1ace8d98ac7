using System.Text.Json;
using SpecLint.Reports;
using SpecLint.Rules;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class ProfileVerbTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Fact]
    public void One_id_gives_one_object_of_the_agreed_shape()
    {
        var run = ToolRun.In(demo.Path, "profile", "low-tide", "--format", "json");
        Assert.Equal(0, run.Status);
        using var json = JsonDocument.Parse(run.Bytes);
        var root = json.RootElement;
        Assert.Equal(["id", "kind", "file", "facts", "open", "allergens"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal("low-tide", root.GetProperty("id").GetString());
        Assert.Equal("drink", root.GetProperty("kind").GetString());
        Assert.Equal("low-tide.drink.json", root.GetProperty("file").GetString());
        foreach (var fact in root.GetProperty("facts").EnumerateObject())
        {
            Assert.Equal(["value", "low", "high", "unit", "from"], fact.Value.EnumerateObject().Select(p => p.Name));
            Assert.True(fact.Value.GetProperty("low").GetDouble() <= fact.Value.GetProperty("high").GetDouble(), fact.Name);
        }
    }

    [Fact]
    public void Every_fact_has_a_value_or_a_reason()
    {
        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, "profile", "--format", "json").Bytes);
        Assert.True(json.RootElement.GetArrayLength() > 28);
        foreach (var recipe in json.RootElement.EnumerateArray())
        {
            var known = recipe.GetProperty("facts").EnumerateObject().Select(p => p.Name).ToList();
            var open = recipe.GetProperty("open").EnumerateObject().ToList();
            Assert.Equal(Vocabulary.FactNames.Count, known.Count + open.Count);
            Assert.Empty(known.Intersect(open.Select(o => o.Name)));
            Assert.All(open, o => Assert.NotEmpty(o.Value.GetString()!));
        }
    }

    [Fact]
    public void A_catalogue_item_shows_its_values_with_ranges_marks_and_sources()
    {
        using var nowhere = new TestFolder();
        var run = ToolRun.In(nowhere.Path, "profile", "lime-juice", "--format", "json");
        Assert.Equal(0, run.Status);
        using var json = JsonDocument.Parse(run.Bytes);
        Assert.Equal("ingredient", json.RootElement.GetProperty("kind").GetString());
        var citric = json.RootElement.GetProperty("values").GetProperty("acids.citric");
        Assert.InRange(citric.GetProperty("value").GetDouble(), citric.GetProperty("low").GetDouble(), citric.GetProperty("high").GetDouble());
        Assert.Equal("g", citric.GetProperty("unit").GetString());
        Assert.NotEmpty(citric.GetProperty("mark").GetString()!);
        Assert.NotEmpty(citric.GetProperty("source").GetString()!);
    }

    [Fact]
    public void A_file_gives_its_recipe_and_a_folder_a_list()
    {
        using var one = JsonDocument.Parse(ToolRun.In(demo.Repository, "profile", "house/the book/low-tide.drink.json", "--format", "json").Bytes);
        Assert.Equal("low-tide", one.RootElement.GetProperty("id").GetString());
        using var all = JsonDocument.Parse(ToolRun.In(demo.Repository, "profile", "house", "--format", "json").Bytes);
        Assert.Equal(JsonValueKind.Array, all.RootElement.ValueKind);
        using var two = JsonDocument.Parse(ToolRun.In(demo.Path, "profile", "low-tide", "gin", "--format", "json").Bytes);
        Assert.Equal(["low-tide", "gin"], two.RootElement.EnumerateArray().Select(i => i.GetProperty("id").GetString()));
    }

    [Fact]
    public void The_text_fits_eighty_columns()
    {
        string all = ToolRun.In(demo.Path, "profile").Output + ToolRun.In(demo.Path, "profile", "lime-juice", "gin", "egg-white").Output;
        Assert.All(all.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
    }
}

public class RulesVerbTests
{
    [Fact]
    public void The_list_names_every_rule()
    {
        var run = ToolRun.In(Path.GetTempPath(), "rules");
        Assert.Equal(0, run.Status);
        Assert.All(RuleRegistry.All, r => Assert.Contains("  " + r.Info.Id, run.Output, StringComparison.Ordinal));
        Assert.All(run.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
    }

    [Fact]
    public void A_rule_is_explained_by_its_page()
    {
        foreach (var rule in RuleRegistry.All)
        {
            var run = ToolRun.In(Path.GetTempPath(), "rules", rule.Info.Id);
            Assert.Equal(0, run.Status);
            Assert.Contains(rule.Info.Id, run.Output, StringComparison.Ordinal);
        }

        Assert.Equal(ToolRun.In(Path.GetTempPath(), "rules", "SL9001").Output, ToolRun.In(Path.GetTempPath(), "rules", "sl9001").Output);
    }

    [Fact]
    public void The_list_as_json_can_be_read()
    {
        using var json = JsonDocument.Parse(ToolRun.In(Path.GetTempPath(), "rules", "--format", "json").Bytes);
        Assert.Equal(RuleRegistry.All.Count, json.RootElement.GetArrayLength());
    }
}

public class SettingsVerbTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Fact]
    public void Every_value_says_where_it_came_from()
    {
        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, "settings", "--format", "json").Bytes);
        var settings = json.RootElement.EnumerateArray()
            .ToDictionary(
                s => s.GetProperty("name").GetString()!,
                s => (Value: s.GetProperty("value").GetString()!, From: s.GetProperty("from").GetString()!),
                StringComparer.Ordinal);
        Assert.StartsWith("bar.json:", settings["jurisdictions"].From, StringComparison.Ordinal);
        Assert.Contains("EU", settings["jurisdictions"].Value, StringComparison.Ordinal);
        Assert.All(RuleRegistry.All, r => Assert.True(settings.ContainsKey("rules." + r.Info.Id)));
        Assert.StartsWith("bar.json:", settings["tools.fridge"].From, StringComparison.Ordinal);
        Assert.StartsWith("bar.json:", settings["measures.dash"].From, StringComparison.Ordinal);
        Assert.StartsWith("0.8 mL", settings["measures.dash"].Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_bar_all_values_are_defaults()
    {
        using var folder = new TestFolder();
        using var json = JsonDocument.Parse(ToolRun.In(folder.Path, "settings", "--format", "json").Bytes);
        Assert.All(json.RootElement.EnumerateArray(), s => Assert.Equal("default", s.GetProperty("from").GetString()));
    }

    [Fact]
    public void A_level_that_the_bar_sets_is_shown_with_its_line()
    {
        using var folder = new TestFolder();
        folder.Write("bar.json", "{ \"name\": \"The Saltmarsh Room\",\n \"rules\": {\n \"SL9001\": \"note\" } }");
        string output = ToolRun.In(folder.Path, "settings").Output;
        Assert.Matches(@"rules\.SL9001\s+note \[bar\.json:3\]", output);
    }
}

public class StartVerbTests
{
    [Fact]
    public void The_new_book_names_schemas_that_are_there()
    {
        using var folder = new TestFolder();
        var run = ToolRun.In(folder.Path, "start", "book");
        Assert.Equal(0, run.Status);
        var files = Directory.EnumerateFiles(folder["book"], "*.json").ToList();
        Assert.True(files.Count(f => f.EndsWith(".drink.json", StringComparison.Ordinal)) >= 14);
        Assert.True(files.Count(f => f.EndsWith(".prep.json", StringComparison.Ordinal)) >= 14);
        foreach (string file in files)
        {
            using var json = JsonDocument.Parse(
                File.ReadAllBytes(file), new JsonDocumentOptions
                {
                    CommentHandling = JsonCommentHandling.Skip,
                    AllowTrailingCommas = true,
                });
            if (json.RootElement.TryGetProperty("$schema", out var schema))
                Assert.True(File.Exists(Path.Combine(folder["book"], schema.GetString()!)), $"{file}: {schema.GetString()}");
        }
    }

    [Fact]
    public void Nothing_is_overwritten_and_nothing_is_written_beside_it()
    {
        using var folder = new TestFolder();
        folder.Write("book/low-tide.drink.json", "mine");
        string before = folder.Snapshot();
        var run = ToolRun.In(folder.Path, "start", "book");
        Assert.Equal(2, run.Status);
        Assert.Contains("nothing was written", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, folder.Snapshot());
    }

    [Fact]
    public void A_book_gets_the_schemas_that_it_lacks_and_nothing_else()
    {
        using var folder = new TestFolder();
        folder.Write("book/bar.json", "mine");
        folder.Write("book/schemas/drink.schema.json", "mine too");
        var run = ToolRun.In(folder.Path, "start", "book");
        Assert.Equal(0, run.Status);
        Assert.Matches(@"wrote \d+ schemas that were missing", run.Output);
        Assert.Equal(("mine", "mine too"), (File.ReadAllText(folder["book/bar.json"]), File.ReadAllText(folder["book/schemas/drink.schema.json"])));
        Assert.True(File.Exists(folder["book/schemas/prep.schema.json"]));
        Assert.Empty(Directory.EnumerateFiles(folder["book"], "*.drink.json"));
        string before = folder.Snapshot();
        Assert.Contains("nothing was written", ToolRun.In(folder.Path, "start", "book", "--empty").Output, StringComparison.Ordinal);
        Assert.Equal(before, folder.Snapshot());
    }
}
