using System.Text;
using System.Text.Json;
using SpecLint.Catalogue;

namespace SpecLint.Tests.BuiltIn;

/// <summary>The quick reader of the tables, held against System.Text.Json, a full reader of JSON.</summary>
public sealed class TableReaderTests
{
    private static readonly JsonDocumentOptions Loose = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    public static TheoryData<string> All => [.. Tables.NamesStartingWith("")];

    [Theory]
    [MemberData(nameof(All))]
    public void Every_value_of_every_table_is_what_a_full_reader_finds(string name)
    {
        using var expected = JsonDocument.Parse(Resources.Read("table/" + name), Loose);
        using var table = Tables.Open(name);
        Assert.True(Compare(expected.RootElement, table.Root) > 10);
    }

    [Theory]
    [InlineData("""{ "a": [1, -2.5e3, "x\"y\\z\u00e9 \/", true, false, null, [], {}, { "b": { "c": "d" } }], "e": "" }""")]
    [InlineData("[ // one, \"two\"\n { \"a\": \"http://x\", }, [\n], ]")]
    [InlineData("\"\\\\\"")]
    [InlineData("7")]
    public void Escapes_comments_and_empty_values_are_read(string json)
    {
        using var expected = JsonDocument.Parse(json, Loose);
        using var table = new Table(new Resource(Encoding.UTF8.GetBytes(json)));
        Compare(expected.RootElement, table.Root);
    }

    [Fact]
    public void A_table_in_a_table_and_one_after_another_keep_their_values()
    {
        using (var outer = Tables.Open("styles"))
        {
            string first = Tables.Rows(outer).First().Text("id");
            using (var inner = Tables.Open("verbs")) Assert.NotEqual("", Tables.Rows(inner).First().Text("id"));
            Assert.Equal(first, Tables.Rows(outer).First().Text("id"));
        }

        TableText later;
        string now;
        using (var closed = Tables.Open("limits")) (later, now) = (Tables.Rows(closed).First().TextLater("source"), Tables.Rows(closed).First().Text("source"));
        using var next = Tables.Open("glasses");
        Assert.Equal("", Tables.Rows(next).First().TextLater("nothing").ToString());
        Assert.NotEqual("", now);
        Assert.Equal(now, later);
    }

    [Fact]
    public void A_list_that_is_not_there_is_empty()
    {
        Assert.Empty(default(TableItems));
        using var table = new Table(new Resource("""{ "a": { }, "b": [ ] }"""u8.ToArray()));
        Assert.Empty(table.Root.Get("b").Items);
        Assert.Empty(table.Root.Texts("b"));
        Assert.Empty(table.Root.Texts("c"));
        Assert.Throws<InvalidOperationException>(() => table.Root.Get("c"));
    }

    [Fact]
    public void A_list_that_is_repeated_is_made_once_and_another_is_not_taken_for_it()
    {
        using var table = new Table(new Resource("""[{ "j": ["a", "b"] }, { "j": [ "a", "b" ] }, { "j": ["a"] }, { "j": ["a", "c"] }, { "j": "a" }]"""u8.ToArray()));
        var lists = Tables.Rows(table).Select(row => row.RepeatedTexts("j")).ToList();
        Assert.Same(lists[0], lists[1]);
        Assert.Equal(["a b", "a b", "a", "a c", "a"], lists.Select(list => string.Join(' ', list)));
    }

    /// <summary>The search by halving, held against the file as a full reader reads it.</summary>
    [Fact]
    public void Every_synonym_is_found_and_nothing_beside_them()
    {
        using var index = JsonDocument.Parse(Resources.Read("catalogue/aliases"));
        foreach (var synonym in index.RootElement.EnumerateObject()) Assert.Equal(synonym.Value.GetString(), BuiltInCatalogue.Find(synonym.Name)?.Id);
        foreach (string other in (string[])["", "-", "0", "a", "zzz", "ÿ", "\uFFFF", "1-1-simple-syru", "1-1-simple-syrup-"])
            Assert.Null(BuiltInCatalogue.Find(other));
        Assert.Equal(index.RootElement.EnumerateObject().Select(p => p.Name), BuiltInCatalogue.Synonyms);
    }

    private static int Compare(JsonElement expected, TableValue value)
    {
        int count = 1;
        switch (expected.ValueKind)
        {
            case JsonValueKind.Object:
                Assert.True(value.IsObject);
                var properties = value.Properties.ToList();
                Assert.Equal(expected.EnumerateObject().Select(p => p.Name), properties.Select(p => p.Name));
                foreach (var (one, other) in expected.EnumerateObject().Zip(properties))
                {
                    Assert.True(value.TryGet(one.Name, out var found) && Compare(one.Value, found) > 0);
                    count += Compare(one.Value, other.Value);
                }

                Assert.False(value.TryGet("no such name", out _));
                break;
            case JsonValueKind.Array:
                Assert.True(value.IsList);
                Assert.Equal(expected.GetArrayLength(), value.Count);
                foreach (var (one, other) in expected.EnumerateArray().Zip(value.Items)) count += Compare(one, other);
                break;
            case JsonValueKind.String:
                Assert.True(value.IsText);
                Assert.Equal(expected.GetString(), value.GetText());
                Assert.Equal(expected.GetString(), value.GetTextLater());
                break;
            case JsonValueKind.Number:
                Assert.True(value.IsNumber);
                Assert.Equal(expected.GetDouble(), value.GetNumber());
                break;
            default:
                Assert.Equal(expected.ValueKind == JsonValueKind.True, value.IsTrue);
                Assert.False(value.IsText || value.IsNumber || value.IsList || value.IsObject);
                break;
        }

        return count;
    }
}
