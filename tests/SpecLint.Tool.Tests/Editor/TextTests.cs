using System.Globalization;
using System.Text;
using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Tool.Editor;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>Texts as an editor changes them: whatever is typed where, what is kept is what the editor shows.</summary>
public sealed class TextTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private const int Seed = 20261125;

    private static readonly string[] Typed = ["", "a", "é", "🍋", "\n", "\r\n", "\"", "{}", "lime\njuice 🍸\n", "\t", "中"];

    [Fact]
    public void Random_changes_of_ranges_give_the_text_that_the_editor_has()
    {
        var random = new Random(Seed);
        string text = SmallBar.Drink;
        var document = new OpenDocument("/x.drink.json", 1, text);
        for (int i = 0; i < 2_000; i++)
        {
            if (text.Length > 4_000) text = SmallBar.Drink;
            if (i % 50 == 0) document = new OpenDocument("/x.drink.json", i, text);
            int from = Boundary(text, random.Next(text.Length + 1)), to = Boundary(text, Math.Min(text.Length, from + random.Next(12)));
            string typed = Typed[random.Next(Typed.Length)];
            using var changes = JsonDocument.Parse($"[{{\"range\":{{\"start\":{Position(text, from)},\"end\":{Position(text, to)}}},\"text\":{Desk.Quote(typed)}}}]");
            document.Apply(i, changes.RootElement);
            text = text[..from] + typed + text[to..];
            Assert.True(text == Encoding.UTF8.GetString(document.Utf8), $"change {i} of seed {Seed}");
        }
    }

    [Fact]
    public void At_every_place_of_every_beginning_of_a_file_there_is_an_answer()
    {
        foreach (string text in new[] { SmallBar.Bar, SmallBar.Drink, SmallBar.Cordial, SmallBar.Menu, SmallBar.Stock, "{ \"name\": \"x\\", "[1, {", "// only", "/* open", "{\"a\":tru", "\uFEFF{ \"n" })
        {
            byte[] whole = Encoding.UTF8.GetBytes(text);
            for (int length = 0; length <= whole.Length; length++)
            {
                var file = BookReader.Read(new SourceFile("x.prep.json", whole.AsMemory(0, length)), FileKind.Prep, Measures.Default);
                var cursor = Cursor.At(file, length);
                Assert.True(cursor.Token.Start >= 0 && cursor.Token.End <= length);
                Assert.True(cursor.Typed.Length <= cursor.Word.Length);
                _ = Templates.Properties(cursor, snippets: true);
            }
        }
    }

    [Fact]
    public void However_the_blanks_of_a_file_stand_its_layout_is_one()
    {
        var random = new Random(Seed);
        foreach (string path in Directory.EnumerateFiles(demo.Path, "*.json"))
        {
            var tokens = JsonTokens.Of(new SourceFile("x", File.ReadAllBytes(path)))!;
            if (tokens.Exists(t => t.IsComment)) continue;
            string[] blanks = ["", " ", "\n", "\t", "\r\n  "];
            string? laid = null;
            for (int round = 0; round < 3; round++)
            {
                var text = new StringBuilder();
                foreach (var token in tokens) text.Append(token.Text).Append(blanks[random.Next(2)]);
                string once = Encoding.UTF8.GetString(JsonLayout.Of(new SourceFile("x.drink.json", Encoding.UTF8.GetBytes(text.ToString())))!);
                Assert.Equal(laid ?? once, once);
                laid = once;
                text.Clear();
                foreach (var token in tokens) text.Append(token.Text).Append(blanks[random.Next(blanks.Length)]);
                byte[] other = JsonLayout.Of(new SourceFile("x.drink.json", Encoding.UTF8.GetBytes(text.ToString())))!;
                Assert.Equal(tokens.Select(t => t.Text), JsonTokens.Of(new SourceFile("x", other))!.Select(t => t.Text));
                Assert.Equal(other, JsonLayout.Of(new SourceFile("x.drink.json", other)));
            }
        }
    }

    /// <summary>No editor changes half of a surrogate pair, or half of a line's end.</summary>
    private static int Boundary(string text, int at)
    {
        while (at > 0 && at < text.Length && (char.IsLowSurrogate(text[at]) || (text[at] == '\n' && text[at - 1] == '\r'))) at--;
        return at;
    }

    private static string Position(string text, int at)
    {
        int line = 0, start = 0;
        for (int i = 0; i < at; i++)
        {
            if (text[i] != '\n' && !(text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n'))) continue;
            line++;
            start = i + 1;
        }

        return string.Create(CultureInfo.InvariantCulture, $"{{\"line\":{line},\"character\":{at - start}}}");
    }
}
