using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Changes;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The JSON of every verb keeps to its published schema. Oracle: JsonSchema.Net, an implementation of JSON Schema 2020-12.</summary>
public sealed class OutputSchemaTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private static readonly Dictionary<string, JsonSchema> Schemas = OutputSchemas.Names.ToDictionary(n => n, n => JsonSchema.FromText(OutputSchemas.Write(n)));

    public static TheoryData<string> Names => [.. OutputSchemas.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_published_schema_is_up_to_date(string name)
    {
        string path = Repository.At("schemas", "outputs", name + ".schema.json"), written = OutputSchemas.Write(name);
        if (Environment.GetEnvironmentVariable("SPECLINT_UPDATE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, written);
        }

        Assert.True(
            File.Exists(path) && File.ReadAllText(path) == written,
            $"outputs/{name}.schema.json is stale: run the tests once with SPECLINT_UPDATE=1 and commit the change.");
    }

    [Theory]
    [InlineData("check", "check", "--format", "json")]
    [InlineData("profile", "profile", "--format", "json")]
    [InlineData("profile", "profile", "low-tide", "--format", "json")]
    [InlineData("profile", "profile", "lime-juice", "fogbank-gin", "celery-pulp-salt", "--format", "json")]
    [InlineData("correct", "correct", "--format", "json", "--quiet")]
    [InlineData("linecheck", "linecheck", "evening", "--on", "2026-11-25", "--format", "json")]
    [InlineData("linecheck", "linecheck", "evening", "--on", "2026-11-28", "--format", "json")]
    [InlineData("linecheck", "linecheck", "weekend", "--on", "2027-02-28", "--format", "json")]
    [InlineData("scale", "scale", "low-tide", "--serves", "40", "--format", "json")]
    [InlineData("scale", "scale", "spring-tide", "--serves", "12", "--poured", "--format", "json")]
    [InlineData("scale", "scale", "sour-cucumber", "--to", "2.5 l", "--format", "json")]
    [InlineData("scale", "scale", "celery-pulp-salt", "--to", "400 g", "--format", "json")]
    [InlineData("labels", "labels", "--bought", "--format", "json")]
    [InlineData("find", "find", "dry", "vermouth", "--format", "json")]
    [InlineData("find", "find", "--like", "lime-juice", "--most", "500", "--format", "json")]
    [InlineData("adjust", "adjust", "low-tide", "--abv", "18", "--format", "json")]
    [InlineData("adjust", "adjust", "low-tide", "--abv", "60", "--keep", "sour-cucumber", "--format", "json")]
    [InlineData("adjust", "adjust", "sour-cucumber", "--like", "lime-juice", "--format", "json")]
    [InlineData("adjust", "adjust", "low-tide", "--without", "fogbank-gin", "--format", "json")]
    [InlineData("costs", "costs", "--format", "json")]
    [InlineData("costs", "costs", "sour-cucumber", "celery-pulp-salt", "--format", "json")]
    [InlineData("event", "event", "evening", "--guests", "120", "--on", "2026-12-12", "--format", "json")]
    [InlineData("trace", "trace", "egg-white-pasteurised", "--format", "json")]
    [InlineData("labels", "labels", "--made", "sour-cucumber", "--on", "2026-12-24", "--format", "json")]
    public void What_the_demo_book_gives_keeps_to_it(string schema, params string[] args)
    {
        var run = ToolRun.In(demo.Path, args);
        Assert.True(run.Status is 0 or 1, run.Error);
        AssertValid(schema, run.Bytes);
    }

    [Fact]
    public void A_comparison_and_a_baseline_keep_to_theirs()
    {
        using var repository = new GitFolder();
        Assert.Equal(0, ToolRun.In(repository.Path, "start", "book").Status);
        repository.Commit("Write the book");
        repository.Replace("book/heather-honey-syrup.prep.json", "\"name\"", "\"notes\": \"thinner\", \"name\"");
        repository.Replace("book/low-tide.drink.json", "\"heather-honey-syrup\"", "\"simple-syrup\"");
        repository.Replace("book/neap-martini.drink.json", "\"name\"", "\"nmae\"");
        File.Delete(repository["book/spring-tide.drink.json"]);
        File.Copy(repository["book/low-tide.drink.json"], repository["book/new-tide.drink.json"]);
        var compared = ToolRun.In(repository.Path, "compare", "HEAD", "--book", "book", "--format", "json", "--on", ToolRun.Day);
        Assert.Equal((0, ""), (compared.Status, compared.Error));
        AssertValid("compare", compared.Bytes);
        using (var json = JsonDocument.Parse(compared.Bytes))
            Assert.Equal(
                ["added", "changed", "removed"],
                json.RootElement.GetProperty("recipes")
                    .EnumerateArray()
                    .Select(r => r.GetProperty("change").GetString())
                    .Distinct()
                    .Order(StringComparer.Ordinal));

        ToolRun.In(repository.Path, "baseline", "book", "--create", "--because", "as found", "--until", "2027-01-31");
        AssertValid("baseline", File.ReadAllBytes(repository["book/speclint-baseline.json"]));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_property_explains_itself_and_no_object_is_open(string name)
    {
        using var schema = JsonDocument.Parse(OutputSchemas.Write(name));
        int objects = 0;
        Visit(schema.RootElement);
        Assert.True(objects > 0);

        void Visit(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray()) Visit(item);
                return;
            }

            if (element.ValueKind != JsonValueKind.Object) return;
            if (element.TryGetProperty("properties", out var properties)
                && properties.ValueKind == JsonValueKind.Object
                && element.TryGetProperty("type", out var type)
                && type.ValueKind == JsonValueKind.String)
            {
                objects++;
                Assert.Equal(JsonValueKind.False, element.GetProperty("additionalProperties").ValueKind);
                Assert.All(properties.EnumerateObject(), p => Assert.NotEmpty(p.Value.GetProperty("description").GetString()!));
            }

            foreach (var member in element.EnumerateObject()) Visit(member.Value);
        }
    }

    [Fact]
    public void The_schema_test_can_fail()
    {
        var node = JsonNode.Parse(ToolRun.In(demo.Path, "labels", "--format", "json").Bytes)!;
        node[0]!["surplus"] = 1;
        using var surplus = JsonDocument.Parse(node.ToJsonString());
        Assert.False(Schemas["labels"].Evaluate(surplus.RootElement).IsValid);
        node[0]!.AsObject().Remove("surplus");
        node[0]!.AsObject().Remove("name");
        using var missing = JsonDocument.Parse(node.ToJsonString());
        Assert.False(Schemas["labels"].Evaluate(missing.RootElement).IsValid);
    }

    private static void AssertValid(string schema, byte[] bytes)
    {
        using var json = JsonDocument.Parse(bytes);
        var outcome = Schemas[schema].Evaluate(json.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(
            outcome.IsValid,
            string.Join(
                "\n",
                (outcome.Details ?? [])
                    .Where(d => !d.IsValid && d.Errors is not null)
                    .Take(10)
                    .Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}")));
    }
}
