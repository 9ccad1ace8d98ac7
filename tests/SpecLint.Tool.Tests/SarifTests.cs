using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class SarifTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private static readonly JsonSchema Schema = LoadSchema();

    [Fact]
    public void The_demo_book_passes_the_schema_of_oasis()
    {
        using var log = Check();
        AssertValid(log.RootElement);
    }

    [Fact]
    public void The_schema_test_can_fail()
    {
        using var log = Check();
        var changed = JsonNode.Parse(log.RootElement.GetRawText())!;
        changed["runs"]![0]!["results"]![0]!["level"] = "fatal";
        using var bad = JsonDocument.Parse(changed.ToJsonString());
        Assert.False(Schema.Evaluate(bad.RootElement).IsValid);
    }

    [Fact]
    public void Hostile_names_and_texts_pass_the_schema_too()
    {
        using var book = SmallBook.WithBroken();
        book.Write("a b/100% café#?.drink.json", SmallBook.Broken.Replace("no-such-thing", "\\ud800 \\u001b lone", StringComparison.Ordinal));
        using var log = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "sarif").Bytes);
        AssertValid(log.RootElement);
        Assert.Contains(Results(log), r => Address(r) == "a%20b/100%25%20caf%C3%A9%23%3F.drink.json");
    }

    /// <summary>Examples of the rule pages, thrown together and broken at random.</summary>
    [Fact]
    public void Random_books_pass_the_schema_too()
    {
        string[] examples = [.. Directory.GetFiles(Repository.At("rules-docs"), "SL*.md").Order(StringComparer.Ordinal)
            .SelectMany(p => Regex.Matches(File.ReadAllText(p), "```jsonc?[^\n]*\n(.*?)```", RegexOptions.Singleline)).Select(m => m.Groups[1].Value)];
        Assert.True(examples.Length > 300);
        var random = new Random(20261125);
        string[] endings = [".drink.json", ".prep.json", ".ingredient.json", ".menu.json", ".stock.json", ".prices.json"];
        for (int i = LongRun.Cases(12, 2_000); i > 0; i--)
        {
            using var book = new TestFolder();
            book.Write("bar.json", SmallBook.Bar);
            for (int f = random.Next(1, 9); f > 0; f--)
            {
                byte[] text = Encoding.UTF8.GetBytes(examples[random.Next(examples.Length)]);
                if (random.Next(2) == 0) text[random.Next(text.Length)] = (byte)random.Next(256);
                book.Write($"{new[] { "", "deep/", "a b/é#/", "%41/" }[random.Next(4)]}f{f}{endings[random.Next(endings.Length)]}", text);
            }

            string[] args = random.Next(3) == 0 ? ["check", "--format", "sarif", "--for", "code-scanning"] : ["check", "--format", "sarif"];
            using var log = JsonDocument.Parse(ToolRun.In(book.Path, args).Bytes);
            AssertValid(log.RootElement);
        }
    }

    [Fact]
    public void Every_result_has_a_region_a_fingerprint_and_a_rule()
    {
        using var log = Check();
        var rules = log.RootElement.GetProperty("runs")[0].GetProperty("tool").GetProperty("driver").GetProperty("rules");
        var seen = new HashSet<string>(StringComparer.Ordinal);
        Assert.NotEmpty(Results(log));
        foreach (var result in Results(log))
        {
            var region = Physical(result).GetProperty("region");
            Assert.True(region.GetProperty("startLine").GetInt32() >= 1);
            Assert.True(region.GetProperty("startColumn").GetInt32() >= 1);
            Assert.True(region.GetProperty("endLine").GetInt32() >= region.GetProperty("startLine").GetInt32());
            string print = result.GetProperty("partialFingerprints").GetProperty("specLint/v1").GetString()!;
            Assert.True(
                seen.Add(print),
                $"{result.GetProperty("ruleId").GetString()} {Address(result)}: "
                    + $"{result.GetProperty("message").GetProperty("text").GetString()} has the fingerprint of another result");
            Assert.Equal(result.GetProperty("ruleId").GetString(), rules[result.GetProperty("ruleIndex").GetInt32()].GetProperty("id").GetString());
            Assert.False(result.GetProperty("partialFingerprints").TryGetProperty("primaryLocationLineHash", out _));
        }
    }

    [Fact]
    public void Addresses_are_relative_to_the_root_of_the_repository()
    {
        string text = ToolRun.In(demo.Path, "check", "--format", "sarif").Output;
        Assert.DoesNotContain(demo.Repository, text, StringComparison.Ordinal);
        Assert.DoesNotContain("file:", text, StringComparison.Ordinal);
        using var log = JsonDocument.Parse(text);
        foreach (var result in Results(log))
        {
            Assert.StartsWith("house/the%20book/", Address(result), StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(demo.Repository, Uri.UnescapeDataString(Address(result)))));
        }
    }

    [Fact]
    public void Without_a_repository_addresses_are_relative_to_the_book()
    {
        using var book = SmallBook.WithBroken();
        using var log = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "sarif").Bytes);
        Assert.All(Results(log), r => Assert.Equal("mudflat.drink.json", Address(r)));
    }

    [Fact]
    public void Regions_count_utf16_units_and_bytes_of_the_same_text()
    {
        using var log = Check();
        Assert.Equal("utf16CodeUnits", log.RootElement.GetProperty("runs")[0].GetProperty("columnKind").GetString());
        foreach (var result in Results(log))
        {
            AssertSameText(Physical(result).GetProperty("region"), Address(result));
            if (!result.TryGetProperty("fixes", out var fixes)) continue;
            foreach (var change in fixes.EnumerateArray().SelectMany(f => f.GetProperty("artifactChanges").EnumerateArray()))
            {
                string address = change.GetProperty("artifactLocation").GetProperty("uri").GetString()!;
                Assert.All(change.GetProperty("replacements").EnumerateArray(), r => AssertSameText(r.GetProperty("deletedRegion"), address));
            }
        }
    }

    [Fact]
    public void Columns_of_a_very_long_line_are_right()
    {
        using var book = SmallBook.WithBroken();
        string line = string.Concat(Enumerable.Repeat("crème \U0001F379 ", 1500));
        string text = $$"""{ "name": "X", "notes": "{{line}}", "ingredients": [ { "item": "no-such-thing", "amount": "45 ml" } ] }""";
        book.Write("long.drink.json", text);
        using var log = JsonDocument.Parse(ToolRun.In(book.Path, "check", "long.drink.json", "--format", "sarif").Bytes);
        var region = Physical(Results(log).Single(r => r.GetProperty("ruleId").GetString() == "SL9001")).GetProperty("region");
        Assert.Equal(text.IndexOf("\"no-such-thing\"", StringComparison.Ordinal) + 1, region.GetProperty("startColumn").GetInt32());
    }

    [Fact]
    public void A_fix_puts_the_finding_right()
    {
        using var book = SmallBook.WithBroken();
        book.Write(
            "comma.drink.json",
            "\uFEFF" + SmallBook.Broken.Replace("Mudflat", "Crème \U0001F379", StringComparison.Ordinal)
                .Replace("no-such-thing", "gin", StringComparison.Ordinal)
                .Replace("45 ml", "45,5 ml", StringComparison.Ordinal));
        using var log = JsonDocument.Parse(ToolRun.In(book.Path, "check", "comma.drink.json", "--format", "sarif").Bytes);
        var result = Results(log).Single(r => r.GetProperty("ruleId").GetString() == "SL2001");
        var replacement = result.GetProperty("fixes")[0].GetProperty("artifactChanges")[0].GetProperty("replacements")[0];
        var region = replacement.GetProperty("deletedRegion");
        byte[] text = File.ReadAllBytes(book["comma.drink.json"]);
        int at = region.GetProperty("byteOffset").GetInt32(), length = region.GetProperty("byteLength").GetInt32();
        byte[] put = Encoding.UTF8.GetBytes(replacement.GetProperty("insertedContent").GetProperty("text").GetString()!);
        File.WriteAllBytes(book["comma.drink.json"], [.. text[..at], .. put, .. text[(at + length)..]]);
        using var after = JsonDocument.Parse(ToolRun.In(book.Path, "check", "comma.drink.json", "--format", "sarif").Bytes);
        Assert.DoesNotContain(Results(after), r => r.GetProperty("ruleId").GetString() == "SL2001");
    }

    [Fact]
    public void An_accepted_finding_is_a_suppressed_result()
    {
        using var book = SmallBook.WithBroken();
        book.Write(
            "mudflat.drink.json",
            SmallBook.Broken.Replace(
                "\"glass\"",
                "\"accept\": [ { \"rule\": \"SL9001\", \"because\": \"it arrives tomorrow\", \"until\": \"2026-12-01\" } ],\n  \"glass\"",
                StringComparison.Ordinal));
        var run = ToolRun.In(book.Path, "check", "--format", "sarif");
        using var log = JsonDocument.Parse(run.Bytes);
        AssertValid(log.RootElement);
        var result = Results(log).Single(r => r.GetProperty("ruleId").GetString() == "SL9001");
        Assert.Equal("it arrives tomorrow", result.GetProperty("suppressions")[0].GetProperty("justification").GetString());
        using var later = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "sarif", "--on", "2026-12-02").Bytes);
        Assert.False(Results(later).Single(r => r.GetProperty("ruleId").GetString() == "SL9001").TryGetProperty("suppressions", out _));
    }

    [Fact]
    public void Fingerprints_outlive_another_order_and_another_layout()
    {
        using var other = new DemoBookCopy(demo);
        foreach (string file in Directory.EnumerateFiles(other.Path, "*.json")) Rewrite(file);
        Assert.Equal(Prints(demo.Path), Prints(other.Path));

        static List<string> Prints(string book)
        {
            using var log = JsonDocument.Parse(ToolRun.In(book, "check", "--format", "sarif").Bytes);
            var prints = Results(log)
                .Select(r => r.GetProperty("ruleId").GetString() + " " + r.GetProperty("partialFingerprints")
                    .GetProperty("specLint/v1")
                    .GetString())
                .ToList();
            prints.Sort(StringComparer.Ordinal);
            return prints;
        }
    }

    [Fact]
    public void A_rule_has_a_page_on_the_web_where_the_caller_knows_one()
    {
        using var log = JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "sarif", "--rule-pages", "https://example.org/pages").Bytes);
        AssertValid(log.RootElement);
        var rules = log.RootElement.GetProperty("runs")[0].GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray().ToList();
        Assert.Equal(Rules.RuleRegistry.All.Count, rules.Count);
        Assert.All(rules, r => Assert.Equal($"https://example.org/pages/{r.GetProperty("id").GetString()}.md", r.GetProperty("helpUri").GetString()));
        Assert.All(rules, r => Assert.NotEmpty(r.GetProperty("fullDescription").GetProperty("text").GetString()!));
    }

    /// <summary>Reverses the properties of every object and the lines of every list of ingredients, and lays the text out anew.</summary>
    private static void Rewrite(string file)
    {
        JsonNode? node;
        try
        {
            node = JsonNode.Parse(
                File.ReadAllText(file),
                documentOptions: new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            File.WriteAllText(
                file,
                Reverse(node, "")!.ToJsonString(new JsonSerializerOptions
                {
                    WriteIndented = true,
                    IndentCharacter = '\t',
                    IndentSize = 1,
                    NewLine = "\r\n",
                    Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
                }));
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            // A file that is broken on purpose cannot be laid out anew.
        }
    }

    private static JsonNode? Reverse(JsonNode? node, string name) => node switch
    {
        JsonObject o => new JsonObject(o.Reverse().Select(p => KeyValuePair.Create(p.Key, Reverse(p.Value, p.Key)))),
        JsonArray a when name is "ingredients" or "garnish" or "byProducts" => new JsonArray([.. a.Reverse().Select(i => Reverse(i, ""))]),
        JsonArray a => new JsonArray([.. a.Select(i => Reverse(i, ""))]),
        _ => node?.DeepClone(),
    };

    private void AssertSameText(JsonElement region, string address)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(demo.Repository, Uri.UnescapeDataString(address)));
        int at = region.GetProperty("byteOffset").GetInt32(), length = region.GetProperty("byteLength").GetInt32();
        string[] lines = Encoding.UTF8.GetString(bytes).ReplaceLineEndings("\n").Split('\n');
        int startLine = region.GetProperty("startLine").GetInt32(), endLine = region.GetProperty("endLine").GetInt32();
        int startColumn = region.GetProperty("startColumn").GetInt32(), endColumn = region.GetProperty("endColumn").GetInt32();
        string byColumns = startLine == endLine
            ? lines[startLine - 1][(startColumn - 1)..(endColumn - 1)]
            : string.Join('\n', [lines[startLine - 1][(startColumn - 1)..], .. lines[startLine..(endLine - 1)], lines[endLine - 1][..(endColumn - 1)]]);
        Assert.Equal(Encoding.UTF8.GetString(bytes, at, length).ReplaceLineEndings("\n"), byColumns);
    }

    private JsonDocument Check() => JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "sarif").Bytes);

    private static IEnumerable<JsonElement> Results(JsonDocument log) => log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray();

    private static JsonElement Physical(JsonElement result) => result.GetProperty("locations")[0].GetProperty("physicalLocation");

    private static string Address(JsonElement result) => Physical(result).GetProperty("artifactLocation").GetProperty("uri").GetString()!;

    internal static void AssertValid(JsonElement log)
    {
        var outcome = Schema.Evaluate(log, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        Assert.True(
            outcome.IsValid,
            string.Join(
                "\n",
                (outcome.Details ?? [])
                    .Where(d => !d.IsValid && d.Errors is not null)
                    .Take(10)
                    .Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}")));
    }

    /// <summary>The draft-04 schema named as draft-07; nothing that it uses changed its meaning but the word for its id.</summary>
    private static JsonSchema LoadSchema()
    {
        var schema = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "sarif-2.1.0-rtm.5.json")))!.AsObject();
        schema["$schema"] = "http://json-schema.org/draft-07/schema#";
        schema.Remove("id");
        return JsonSchema.FromText(schema.ToJsonString());
    }

    private sealed class DemoBookCopy : IDisposable
    {
        private readonly TestFolder folder = new();

        public DemoBookCopy(DemoBook demo)
        {
            foreach (string file in Directory.EnumerateFiles(demo.Path, "*", SearchOption.AllDirectories))
                folder.Write(System.IO.Path.GetRelativePath(demo.Path, file), File.ReadAllBytes(file));
        }

        public string Path => folder.Path;

        public void Dispose() => folder.Dispose();
    }
}
