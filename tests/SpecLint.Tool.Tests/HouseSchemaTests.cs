using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool.Tests;

public class HouseSchemaTests
{
    private const string Schema = """
        {
          "$schema": "https://json-schema.org/draft/2020-12/schema",
          // the house's own wishes
          "required": ["author", "date"],
          "properties": {
            "name": { "maxLength": 12 },
            "style": { "enum": ["shaken-sour", "stirred"] },
            "serves": { "minimum": 1, "maximum": 2 },
            "garnish": false,
            "ingredients": { "maxItems": 3, "items": { "$ref": "#/$defs/line" }, "contains": { "properties": { "item": { "const": "gin" } } } },
            "glass": { "anyOf": [ { "const": "coupe" }, { "pattern": "^house-" } ] },
            "notes": { "type": "array", "description": "Every spec says who tastes it." },
          },
          "$defs": { "line": { "properties": { "amount": { "pattern": "ml$", "description": "We pour in millilitres." } } } }
        }
        """;

    [Fact]
    public void What_the_house_asks_for_is_said_in_words_at_its_place()
    {
        var schemas = new HouseSchemas();
        Assert.Null(schemas.Add(FileKind.Drink, new SourceFile("house.schema.json", Encoding.UTF8.GetBytes(Schema))));
        var drink = Read("""
            {
              "name": "A Rather Long Name", "style": "swizzle", "serves": 4, "garnish": [],
              "ingredients": [
                { "item": "rum", "amount": "45 ml" }, { "item": "lime-juice", "amount": "3/4 oz" },
                { "item": "soda", "amount": "1 ml" }, { "item": "mint", "amount": "1 ml" }
              ],
              "glass": "tumbler",
              "notes": "é"
            }
            """);
        Assert.Empty(drink.Problems);
        var problems = schemas.Check(drink);
        Assert.Equal(
            [
                "1:1 `author` is missing. The schema of the house asks for it.",
                "1:1 `date` is missing. The schema of the house asks for it.",
                "2:11 `name` is longer than the schema of the house allows. It allows 12 at most.",
                "2:42 `style` is `swizzle`. The schema of the house allows: shaken-sour, stirred.",
                "2:63 `serves` is 4, too much for the schema of the house. It allows 2 at most.",
                "2:66 `garnish` is not wanted. The schema of the house does not allow it.",
                "3:3 `ingredients` is longer than the schema of the house allows. It allows 3 at most.",
                "3:3 `ingredients` lacks an item that the schema of the house asks for, or has too many of them. Compare it with a file "
                    + "of the house that passes.",
                "4:77 `amount` of ingredient 2 (lime-juice) is written otherwise than the schema of the house asks for: `3/4 oz`. It "
                    + "asks for the pattern `ml$`. The house says: We pour in millilitres.",
                "7:12 `glass` fits none of the ways, or more than the one way, that the schema of the house allows. Compare it with a "
                    + "file of the house that passes.",
                "8:12 `notes` is of another type than the schema of the house asks for. It asks for: array. The house says: Every spec says who tastes it.",
            ],
            problems.Select(p => FormattableString.Invariant($"{drink.At(p.Span).Start.Line}:{drink.At(p.Span).Start.Column} {p.Message} {p.Advice}")));
        Assert.All(problems, p => Assert.Equal(ReadingProblemKind.HouseSchema, p.Kind));
        Assert.Contains(problems, p => p.Path == "ingredients[lime-juice].amount");
    }

    [Fact]
    public void A_file_that_keeps_to_the_schema_has_no_problem_and_other_kinds_are_not_asked()
    {
        var schemas = new HouseSchemas();
        Assert.Null(schemas.Add(FileKind.Drink, new SourceFile("house.schema.json", Encoding.UTF8.GetBytes(Schema))));
        var drink = Read("""{ "name": "Short", "author": "MQ", "date": "2026-11-25", "style": "stirred", "glass": "house-1", "ingredients": [ { "item": "gin", "amount": "60 ml" }, ] } // end""");
        Assert.Empty(schemas.Check(drink));
        var menu = BookReader.Read(new SourceFile("a.menu.json", "{ \"name\": \"x\", \"drinks\": [] }"u8.ToArray()), FileKind.Menu, Measures.Default);
        Assert.Empty(schemas.Check(menu));
    }

    [Theory]
    [InlineData("{ \"type\": ", "The schema house.schema.json cannot be read (line 1, column 11): The text breaks off: an object is not closed.")]
    [InlineData("{ \"type\": \"strnig\" }", "The schema house.schema.json cannot be used: it is no JSON Schema that can be run.")]
    [InlineData("{ \"$ref\": \"https://example.invalid/other.json\" }", "The schema house.schema.json cannot be used: it refers to something outside of it.")]
    public void A_schema_that_cannot_be_used_says_so(string text, string sentence) =>
        Assert.Equal(sentence, new HouseSchemas().Add(FileKind.Drink, new SourceFile("house.schema.json", Encoding.UTF8.GetBytes(text))));

    [Fact]
    public void Two_houses_may_give_their_schemas_one_and_the_same_id()
    {
        var first = new HouseSchemas();
        var second = new HouseSchemas();
        Assert.Null(first.Add(FileKind.Drink, new SourceFile("a.json", """{ "$id": "https://example.invalid/drink", "required": ["author"] }"""u8.ToArray())));
        Assert.Null(second.Add(FileKind.Drink, new SourceFile("b.json", """{ "$id": "https://example.invalid/drink", "required": ["date"] }"""u8.ToArray())));
        var drink = Read("""{ "name": "X", "ingredients": [ { "item": "gin", "amount": "60 ml" } ] }""");
        Assert.Equal(["`author` is missing."], first.Check(drink).Select(p => p.Message));
        Assert.Equal(["`date` is missing."], second.Check(drink).Select(p => p.Message));
    }

    // Doubled at each of 40 steps it would be run 2^40 times over one value.
    [Fact]
    public void References_that_multiply_or_go_round_are_refused()
    {
        static string? Trouble(string text) => new HouseSchemas().Add(FileKind.Drink, new SourceFile("house.schema.json", Encoding.UTF8.GetBytes(text)));
        var steps = Enumerable.Range(0, 40)
            .Select(i => $"\"s{i}\": {{ \"allOf\": [ {{ \"$ref\": \"#/$defs/s{i + 1}\" }}, {{ \"$ref\": \"#/$defs/s{i + 1}\" }} ] }}");
        string doubling = $"{{ \"properties\": {{ \"name\": {{ \"$ref\": \"#/$defs/s0\" }} }}, \"$defs\": {{ "
            + $"{string.Join(", ", steps)}, \"s40\": {{ \"type\": \"string\" }} }} }}";
        Assert.Contains("its references multiply", Trouble(doubling), StringComparison.Ordinal);
        Assert.Contains("in a circle", Trouble("""{ "anyOf": [ { "type": "string" }, { "$ref": "#" } ] }"""), StringComparison.Ordinal);
        Assert.Contains(
            "in a circle",
            Trouble("""{ "$ref": "#a", "$defs": { "x": { "$anchor": "a", "not": { "$ref": "#/$defs/y" } }, "y": { "$ref": "#a" } } }"""),
            StringComparison.Ordinal);

        // A schema that describes a tree goes into the file at each turn.
        Assert.Null(Trouble("""{ "properties": { "ingredients": { "items": { "$ref": "#" } } }, "additionalProperties": { "$ref": "#" } }"""));
    }

    // The engine's pattern cannot be stopped within this process: it runs in one of its own, which ends.
    [LongFact]
    public void A_pattern_that_would_search_for_years_is_stopped_and_said_to_be()
    {
        using var folder = new Support.TestFolder();
        File.WriteAllText(folder["bar.json"], """{ "name": "The Saltmarsh Room", "jurisdictions": [ "IE" ], "schemas": { "drink": "house.schema.json" } }""");
        File.WriteAllText(folder["house.schema.json"], """{ "properties": { "name": { "pattern": "^(a+)+$" } } }""");
        foreach (string name in new[] { "one", "two", "three" }) File.WriteAllText(folder[name + ".drink.json"], $"{{ \"name\": \"{new string('a', 60)}!\" }}");
        var start = new System.Diagnostics.ProcessStartInfo(
            "dotnet", [typeof(Shell).Assembly.Location, "check", folder.Path, "--threads", "1", "--format", "line"])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
        };
        using var process = System.Diagnostics.Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Contains("It was stopped after some seconds, and is not run on further files.", output, StringComparison.Ordinal);
    }

    private static BookFile Read(string text) =>
        BookReader.Read(new SourceFile("a.drink.json", Encoding.UTF8.GetBytes(text)), FileKind.Drink, Measures.Default);
}
