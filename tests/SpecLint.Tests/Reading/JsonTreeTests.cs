using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CsCheck;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

public class JsonTreeTests
{
    private static readonly JsonSerializerOptions Indented = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, WriteIndented = true };

    [Theory]
    [InlineData("{ \"é\": 1 }", "1", 1, 8)]
    [InlineData("{ \"🍋\": 1 }", "1", 1, 9)]
    [InlineData("{ \"a\": \"🍋é\", \"b\": 1 }", "1", 1, 20)]
    [InlineData("{\r\n \"a\": 1 }", "1", 2, 7)]
    [InlineData("{\r \"a\": 1 }", "1", 2, 7)]
    [InlineData("{\n\n \"a\": 1 }", "1", 3, 7)]
    [InlineData("\uFEFF{ \"a\": 1 }", "1", 1, 8)]
    [InlineData("// ½ oz 🍋\n{ /* é */ \"a\": 1, }", "1", 2, 16)]
    [InlineData("{ \"e\u0301\": 1 }", "1", 1, 9)]
    public void Lines_and_columns_count_UTF_16_units(string text, string value, int line, int column)
    {
        var (tree, problems) = Samples.Parse(text);
        Assert.Empty(problems);
        var node = tree.Root.Properties.Last();
        Assert.Equal(value, tree.Source.TextOf(node.Span));
        Assert.Equal(new LinePosition(line, column), tree.Source.PositionOf(node.Span.Start));
    }

    [Fact]
    public void Places_agree_with_a_walk_over_the_characters()
    {
        string[] pieces = ["a", "é", "🍋", "½", "\n", "\r\n", "\r", "\u2028", "\t", "漢", "e\u0301", " "];
        Gen.Int[0, pieces.Length - 1].Select(i => pieces[i]).Array[0, 40].Select(string.Concat).Sample(text =>
        {
            var file = Samples.File(text);
            int line = 1, column = 1, offset = 0;
            for (int i = 0; i <= text.Length; i++)
            {
                if (i < text.Length && char.IsLowSurrogate(text[i]))
                {
                    column++;
                    continue;
                }

                Assert.Equal(new LinePosition(line, column), file.PositionOf(offset));
                if (i == text.Length) break;
                bool ends = text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n'));
                offset += char.IsHighSurrogate(text[i]) ? 4 : Encoding.UTF8.GetByteCount(text, i, 1);
                column = ends ? 1 : column + 1;
                if (ends) line++;
            }
        });
    }

    [Theory]
    [InlineData(FileKind.Drink)]
    [InlineData(FileKind.Bar)]
    public void A_tree_holds_what_another_reader_reads_and_every_span_is_its_value(FileKind kind) => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            string text = new DocumentMaker(seed).Make(FileShapes.Of(kind)).ToJsonString(Indented);
            var (tree, problems) = Samples.Parse(text);
            Assert.Empty(problems);
            using var document = JsonDocument.Parse(text);
            Compare(tree.Root, document.RootElement);
            foreach (var node in Enumerable.Range(0, tree.Count).Select(i => tree[i]))
            {
                using var alone = JsonDocument.Parse(tree.Source.TextOf(node.Span));
                Compare(node, alone.RootElement);
                if (node.HasName) Assert.Equal(node.Name, JsonSerializer.Deserialize<string>(tree.Source.TextOf(node.NameSpan)));
            }
        },
        iter: 200);

    [Fact]
    public void Finding_an_offset_gives_the_deepest_value()
    {
        var (tree, _) = Samples.Parse(Samples.Drink);
        for (int offset = 0; offset <= tree.Source.Utf8.Length; offset++)
        {
            JsonNode deepest = default;
            for (int i = 0; i < tree.Count; i++)
            {
                int from = tree[i].HasName ? tree[i].NameSpan.Start : tree[i].Span.Start;
                if (offset >= from && offset <= tree[i].Span.End) deepest = tree[i];
            }

            Assert.Equal(deepest.Index, tree.Find(offset).Index);
            Assert.Equal(deepest.Exists, tree.Find(offset).Exists);
        }

        Assert.Equal("ingredients[saline-20].amount", tree.Find(Encoding.UTF8.GetBytes(Samples.Drink).AsSpan().IndexOf("2 drops"u8)).Path);
    }

    [Fact]
    public void Paths_are_by_the_name_of_an_item()
    {
        var (tree, _) = Samples.Parse("""
            { "ingredients": [ { "item": "gin", "amount": "1" }, { "amount": "2", "item": "gin" }, { "amount": "3" } ],
              "drinks": [ { "drink": "low-tide" } ], "x": { "a.b": ["milk", "milk", 3] }, "": 1 }
            """);
        Assert.Equal(
            [
                "", "ingredients", "ingredients[gin]", "ingredients[gin].item", "ingredients[gin].amount", "ingredients[gin#2]",
                "ingredients[gin#2].amount", "ingredients[gin#2].item", "ingredients[3]", "ingredients[3].amount", "drinks", "drinks[low-tide]",
                "drinks[low-tide].drink", "x", "x.a.b", "x.a.b[milk]", "x.a.b[milk#2]", "x.a.b[3]", "\"\"",
            ],
            Enumerable.Range(0, tree.Count).Select(i => tree[i].Path));
    }

    [Fact]
    public void Comments_are_kept()
    {
        var (tree, problems) = Samples.Parse("// one\n{ /* two */ \"a\": 1, // three\n }\n// four");
        Assert.Empty(problems);
        Assert.Equal(["// one", "/* two */", "// three", "// four"], tree.Comments.Select(c => tree.Source.TextOf(c).TrimEnd()));
    }

    [Theory]
    [InlineData("{ \"a\": 1 \"b\": 2 }", 1, 10, "A comma is missing before this.")]
    [InlineData("{ \"a\": 1,, \"b\": 2 }", 1, 10, "There is a comma too many here.")]
    [InlineData("{ a: 1 }", 1, 3, "A name without quotes.")]
    [InlineData("{ 'a': 1 }", 1, 3, "A name stands in straight double quotes.")]
    [InlineData("{ “a”: 1 }", 1, 3, "A name stands in straight double quotes.")]
    [InlineData("{ \"a\" 1 }", 1, 7, "A colon is missing between a name and its value.")]
    [InlineData("{ \"a\": }", 1, 8, "A value is missing here.")]
    [InlineData("{ \"a\": lime }", 1, 8, "A text without quotes.")]
    [InlineData("{ \"a\": 'x' }", 1, 8, "A text stands in straight double quotes.")]
    [InlineData("{ \"a\": 45 ml }", 1, 11, "A quantity without quotes.")]
    [InlineData("{ \"a\": 1/2 }", 1, 9, "A single slash does not start a comment.")]
    [InlineData("{ \"a\": .5 }", 1, 8, "This is not a JSON number.")]
    [InlineData("{ \"a\": 012 }", 1, 8, "This is not a JSON number.")]
    [InlineData("{ \"a\": \"x\n\" }", 1, 8, "A text is not closed on its line.")]
    [InlineData("{ \"a\": \"x\ty\" }", 1, 10, "A control character (a tab, perhaps) stands inside a text.")]
    [InlineData("{ \"a\": \"\\q\" }", 1, 9, "A backslash stands before something that it cannot stand before.")]
    [InlineData("{ \"a\": \"\\u12g4\" }", 1, 9, "An escape \\u needs four hexadecimal digits.")]
    [InlineData("{ \"a\": [ 1, 2 }", 1, 15, "A list is closed with } instead of ].")]
    [InlineData("{ \"a\": { \"b\": 1 ]", 1, 17, "An object is closed with ] instead of }.")]
    [InlineData("{ \"a\": [ 1", 1, 11, "The text breaks off: a list is not closed.")]
    [InlineData("{ \"a\": 1", 1, 9, "The text breaks off: an object is not closed.")]
    [InlineData("{ \"a\": \"x", 1, 8, "The text breaks off: a double quote is not closed.")]
    [InlineData("{ \"a\":", 1, 7, "The text breaks off: an object is not closed.")]
    [InlineData("{} {}", 1, 4, "The recipe ends before this: something follows its closing bracket.")]
    [InlineData("{ \"a\": 1 /* x", 1, 10, "A comment is not closed.")]
    [InlineData("gin", 1, 1, "A text without quotes.")]
    [InlineData("{ \"a\": nul }", 1, 8, "A text without quotes.")]
    [InlineData("{ {} }", 1, 3, "A value without a name.")]
    [InlineData("{ \"a\": 1 ; }", 1, 10, "This has no place here: the text is no JSON from here on.")]
    public void A_syntax_error_says_where_and_what(string text, int line, int column, string message)
    {
        var (tree, problems) = Samples.Parse(text);
        var problem = Assert.Single(problems);
        Assert.Equal((ReadingProblemKind.Syntax, message), (problem.Kind, problem.Message));
        Assert.Equal(new LinePosition(line, column), tree.Source.PositionOf(problem.Span.Start));
        Assert.False(tree.IsWhole);
    }

    [Fact]
    public void What_stands_before_a_syntax_error_is_kept()
    {
        var drink = Samples.ReadDrink("{ \"name\": \"X\", \"ingredients\": [ { \"item\": \"gin\", \"amount\": \"45 ml\" }, { \"item\": "
            + "\"lime-juice\" \"amount\": \"1 g\" } ] }");
        Assert.Single(drink.Problems);
        Assert.Equal("X", drink.Name.Value);
        Assert.Equal(["gin", "lime-juice"], drink.Ingredients.Select(l => l.Item.Value));
    }

    [Fact]
    public void Reading_agrees_with_another_reader_on_what_is_JSON()
    {
        byte[] sample = Encoding.UTF8.GetBytes(Samples.Bar);
        Gen.Select(Gen.Int[0, sample.Length - 1], Gen.Int[0, 4], Gen.Byte).Array[1, 3].Sample(
            changes =>
            {
                var bytes = new List<byte>(sample);
                foreach (var (at, how, value) in changes)
                {
                    int i = Math.Min(at, bytes.Count - 1);
                    if (how == 0) bytes.RemoveAt(i);
                    else if (how == 1) bytes.Insert(i, value);
                    else if (how == 2) bytes[i] = value;
                    else if (how == 3) bytes.RemoveRange(i, Math.Min(5, bytes.Count - i));
                    else bytes[i] = (byte)"{}[]\",:\\/*"[value % 10];
                    if (bytes.Count == 0) return;
                }

                byte[] text = [.. bytes];
                var (tree, problems) = Samples.Parse(text);
                bool ours = tree.IsWhole && problems.TrueForAll(p => p.Kind is not (ReadingProblemKind.Syntax or ReadingProblemKind.Encoding));
                Assert.True(ours == IsJson(text), Encoding.UTF8.GetString(text) + "\n" + Samples.List(problems));
                Assert.All(problems, p => Assert.InRange(p.Span.End, 0, text.Length));
                foreach (var kind in Enum.GetValues<FileKind>())
                {
                    var file = BookReader.Read(new SourceFile("x.drink.json", text), kind, Measures.Default);
                    Assert.All(file.Problems, p => Assert.InRange(p.Span.End, p.Span.Start, text.Length));
                }
            },
            iter: 3000);

        static bool IsJson(byte[] text)
        {
            // The other reader lets it pass within a comment; here it marks a file that is no text.
            if (text.Contains((byte)0)) return false;
            try
            {
                using var document = JsonDocument.Parse(
                    text, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
                Touch(document.RootElement);
                // Bytes in comments are not looked at by the other reader.
                _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetCharCount(text);
                return true;
            }
            catch (Exception e) when (e is JsonException or InvalidOperationException or DecoderFallbackException)
            {
                return false;
            }
        }

        static void Touch(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.String) element.GetString();
            if (element.ValueKind == JsonValueKind.Array) foreach (var item in element.EnumerateArray()) Touch(item);
            if (element.ValueKind != JsonValueKind.Object) return;
            foreach (var member in element.EnumerateObject())
            {
                _ = member.Name;
                Touch(member.Value);
            }
        }
    }

    private static void Compare(JsonNode ours, JsonElement other)
    {
        switch (other.ValueKind)
        {
            case JsonValueKind.Object:
                Assert.Equal(JsonKind.Object, ours.Kind);
                Assert.Equal(other.EnumerateObject().Select(m => m.Name), ours.Properties.Select(p => p.Name));
                foreach (var member in other.EnumerateObject())
                {
                    Assert.True(ours.TryGetProperty(Encoding.UTF8.GetBytes(member.Name), out var property));
                    Compare(property, member.Value);
                }

                break;
            case JsonValueKind.Array:
                Assert.Equal(JsonKind.Array, ours.Kind);
                Assert.Equal(other.GetArrayLength(), ours.Items.Count);
                foreach (var (item, element) in ours.Items.Select(i => i).Zip(other.EnumerateArray())) Compare(item, element);
                break;
            case JsonValueKind.String:
                Assert.Equal(JsonKind.String, ours.Kind);
                Assert.Equal(other.GetString(), ours.GetString());
                break;
            case JsonValueKind.Number:
                Assert.Equal(other.GetDouble(), ours.GetDouble());
                break;
            default:
                Assert.Equal(other.ValueKind.ToString(), ours.Kind.ToString());
                break;
        }
    }
}

/// <summary>Linq for the enumerators of the tree, in tests only.</summary>
internal static class ChildrenLinq
{
    public static IEnumerable<T> Select<T>(this JsonNode.Children children, Func<JsonNode, T> map)
    {
        foreach (var child in children) yield return map(child);
    }

    public static JsonNode Last(this JsonNode.Children children) => children.Select(c => c).Last();
}
