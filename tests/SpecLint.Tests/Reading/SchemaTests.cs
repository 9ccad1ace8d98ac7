using System.Text.Encodings.Web;
using System.Text.Json;
using CsCheck;
using Json.Schema;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

/// <summary>The published schemas and the binder agree. Oracle: JsonSchema.Net, an implementation of JSON Schema 2020-12.</summary>
public class SchemaTests
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Dictionary<FileKind, JsonSchema> Schemas = Enum.GetValues<FileKind>().ToDictionary(kind => kind, kind => JsonSchema.FromText(SchemaWriter.Write(kind)));

    public static TheoryData<FileKind> Kinds => [.. Enum.GetValues<FileKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_published_schema_is_up_to_date(FileKind kind)
    {
        string path = Repository.At("schemas", SchemaWriter.FileName(kind));
        string written = SchemaWriter.Write(kind);
        if (Environment.GetEnvironmentVariable("SPECLINT_UPDATE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, written);
        }

        Assert.True(File.Exists(path) && File.ReadAllText(path) == written, $"{SchemaWriter.FileName(kind)} is stale: run the tests once with SPECLINT_UPDATE=1 and commit the change.");
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_property_explains_itself(FileKind kind)
    {
        var seen = new HashSet<ObjectShape>();
        Visit(FileShapes.Of(kind));

        void Visit(ObjectShape shape)
        {
            if (!seen.Add(shape)) return;
            foreach (var property in shape.Properties)
            {
                Assert.True(property.Description.EndsWith('.') && property.Description.Length > 2, property.Name);
                Assert.NotEmpty(property.Examples);
                for (var value = property.Value; value is not null; value = value.Item)
                {
                    if (value.Object is not null) Visit(value.Object);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_example_of_a_property_is_valid_by_the_schema(FileKind kind)
    {
        using var schema = JsonDocument.Parse(SchemaWriter.Write(kind));
        int checks = 0;
        Visit(schema.RootElement);
        Assert.True(checks > 5);

        void Visit(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray()) Visit(item);
            }

            if (element.ValueKind != JsonValueKind.Object) return;
            foreach (var member in element.EnumerateObject())
            {
                if (member.Name != "examples") Visit(member.Value);
            }

            if (!element.TryGetProperty("examples", out var examples) || examples.ValueKind != JsonValueKind.Array) return;
            var parts = element.EnumerateObject().Where(m => m.Name is not ("title" or "description" or "examples")).Select(m => $"\"{m.Name}\": {m.Value.GetRawText()}");
            string body = string.Join(", ", parts);
            var alone = JsonSchema.FromText($"{{ {body}, \"$defs\": {{ {string.Join(", ", Needed(body).Select(d => $"\"{d.Name}\": {d.Value.GetRawText()}"))} }} }}");
            foreach (var example in examples.EnumerateArray())
            {
                Assert.True(alone.Evaluate(example).IsValid, $"{element.GetProperty("title")}: {example.GetRawText()}");
                checks++;
            }
        }

        // Only the definitions that a property uses: building all of them for each property takes its time.
        List<JsonProperty> Needed(string text)
        {
            var needed = new List<JsonProperty>();
            var texts = new Queue<string>([text]);
            while (texts.TryDequeue(out string? next))
            {
                foreach (var definition in schema.RootElement.GetProperty("$defs").EnumerateObject())
                {
                    if (!next.Contains($"\"#/$defs/{definition.Name}\"", StringComparison.Ordinal) || needed.Exists(d => d.Name == definition.Name)) continue;
                    needed.Add(definition);
                    texts.Enqueue(definition.Value.GetRawText());
                }
            }

            return needed;
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_examples_of_the_format_are_valid(FileKind kind) => Assert.True(IsValid(kind, Samples.Of(kind)));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Random_documents_are_valid_by_both(FileKind kind) => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            string text = new DocumentMaker(seed).Make(FileShapes.Of(kind)).ToJsonString(Plain);
            var problems = Problems(kind, text);
            bool valid = IsValid(kind, text);
            Assert.True(valid && problems.Count == 0, $"schema: {valid}\n{text}\n{Samples.List(problems)}");
        },
        iter: 500);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Broken_documents_are_judged_alike(FileKind kind)
    {
        int valid = 0, broken = 0;
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                var maker = new DocumentMaker(seed);
                var document = maker.Make(FileShapes.Of(kind));
                maker.Break(document);
                string text = document.ToJsonString(Plain);
                var problems = Problems(kind, text);
                bool bySchema = IsValid(kind, text);
                if (bySchema) Interlocked.Increment(ref valid);
                else Interlocked.Increment(ref broken);
                bool alike = bySchema == (problems.Count == 0) || (bySchema && problems.All(IsBeyondPatterns));
                Assert.True(alike, $"schema: {bySchema}\n{text}\n{Samples.List(problems)}");
            },
            iter: 2000);
        Assert.True(broken > 500 && valid > 100, $"{broken} broken, {valid} valid: the mutations lost their bite");
    }

    [Fact]
    public void Random_quantities_are_judged_alike()
    {
        var shapes = new[] { "amount", "temperature", "duration", "percentage", "strength", "brix", "limit", "density" };
        var drink = new Dictionary<string, (FileKind Kind, Func<string, string> Text)>(StringComparer.Ordinal)
        {
            ["amount"] = (FileKind.Prep, q => $$"""{ "name": "X", "family": "syrup", "ingredients": [ { "item": "a", "amount": {{q}} } ] }"""),
            ["temperature"] = (FileKind.Bar, q => $$"""{ "name": "X", "tools": { "fridge": {{q}} } }"""),
            ["duration"] = (FileKind.Ingredient, q => $$"""{ "name": "X", "kind": "juice", "life": { "opened": {{q}} } }"""),
            ["percentage"] = (FileKind.Prep, q => $$"""{ "name": "X", "family": "syrup", "ingredients": [ { "item": "a", "amount": "1 g", "share": {{q}} } ] }"""),
            ["strength"] = (FileKind.Ingredient, q => $$"""{ "name": "X", "kind": "spirit", "strength": {{q}} }"""),
            ["brix"] = (FileKind.Prep, q => $$"""{ "name": "X", "family": "syrup", "ingredients": [ { "item": "a", "amount": "1 g" } ], "target": { "brix": {{q}} } }"""),
            ["limit"] = (FileKind.Bar, q => $$"""{ "name": "X", "limits": { "x": {{q}} } }"""),
            ["density"] = (FileKind.Ingredient, q => $$"""{ "name": "X", "kind": "syrup", "density": {{q}} }"""),
        };
        string[] pieces = ["1", "20", "0.5", ".5", "5.", "1/2", "½", "1½", " ", "  ", "\u00A0", "-", "–", "−", " to ", "to", ",", "ml", "ML", "oz", "fl oz", "oz US", "% w/w", "%w/v", "% ", "%", "°C", "° C", "C", "°F", "d", "week", "Weeks", "dash", "top up", "topup", "bar spoon", "g/ml", "kg/m³", "°Bx", "proof", "µl", "μl", "12345678", "1,000", "007", "/", "⁄"];
        var text = Gen.Int[0, pieces.Length - 1].Select(i => pieces[i]).Array[1, 6].Select(p => string.Concat(p));
        int valid = 0;
        Gen.Select(Gen.Int[0, shapes.Length - 1].Select(i => shapes[i]), text).Sample(
            (name, quantity) =>
            {
                var (kind, document) = drink[name];
                string json = document(JsonSerializer.Serialize(quantity, Plain));
                var problems = Problems(kind, json);
                bool bySchema = IsValid(kind, json);
                if (bySchema) Interlocked.Increment(ref valid);
                bool alike = bySchema == (problems.Count == 0) || (bySchema && problems.All(IsBeyondPatterns));
                Assert.True(alike, $"{name} `{quantity}` schema: {bySchema}\n{Samples.List(problems)}");
            },
            iter: 10000);
        Assert.True(valid > 100, $"only {valid} quantities were valid");
    }

    /// <summary>What the patterns of the schemas are documented to let pass: numbers inside texts that would have to be compared.</summary>
    private static bool IsBeyondPatterns(ReadingProblem problem) =>
        problem.Message.EndsWith("is a range that runs downwards.", StringComparison.Ordinal) || problem.Kind == ReadingProblemKind.NumberOutOfRange;

    private static IReadOnlyList<ReadingProblem> Problems(FileKind kind, string text) => Samples.Read(kind, text).Problems;

    private static bool IsValid(FileKind kind, string text)
    {
        using var document = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        return Schemas[kind].Evaluate(document.RootElement).IsValid;
    }
}
