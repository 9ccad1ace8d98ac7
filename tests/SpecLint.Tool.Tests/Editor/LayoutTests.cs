using System.Text;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>Laying files out moves blanks and nothing else.</summary>
public sealed class LayoutTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private const string Written = """
        // the house's own
        {"name":"Mudflat",  /* as sold */ "serves": 1.50,

        "ingredients":[{"item":"gin","amount":"45 ml"},   // the well
        {"item":"lime-juice","amount":"25 ml",}],
          "method": [ ], "notes": [ "one",
           "two" ]
        }
        """;

    private const string Laid = """
        // the house's own
        {
          "name": "Mudflat", /* as sold */
          "serves": 1.50,

          "ingredients": [
            { "item": "gin", "amount": "45 ml" }, // the well
            { "item": "lime-juice", "amount": "25 ml", }
          ],
          "method": [],
          "notes": [ "one", "two" ]
        }

        """;

    [Fact]
    public void Comments_numbers_commas_and_order_stay() => Assert.Equal(Laid, LaidOut(Written));

    [Fact]
    public void Laid_out_twice_is_laid_out_once_and_says_the_same()
    {
        foreach (string path in Directory.EnumerateFiles(demo.Path, "*.json"))
        {
            string text = File.ReadAllText(path), once = LaidOut(text);
            Assert.Equal(once, LaidOut(once));
            Assert.Equal(Bare(text), Bare(once));
        }
    }

    [Theory]
    [InlineData("{ \"name\": \"x\"")]
    [InlineData("{ \"name\" \"x\" ")]
    [InlineData("")]
    public void What_cannot_be_read_to_its_end_is_left_alone(string text) =>
        Assert.Null(JsonLayout.Of(new SourceFile("x.drink.json", Encoding.UTF8.GetBytes(text))));

    [Fact]
    public void Line_ends_and_the_byte_order_mark_stay()
    {
        string laid = LaidOut("\uFEFF" + Written.Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal("\uFEFF" + Laid.Replace("\n", "\r\n", StringComparison.Ordinal), laid);
    }

    [Fact]
    public void The_editor_is_given_one_edit_and_the_command_does_the_same()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBar.Bar);
        book.Write("mudflat.drink.json", Written);
        using (var desk = new Desk(book.Path))
        {
            desk.Open("mudflat.drink.json", Written);
            var edits = desk.AskOf("textDocument/formatting", "mudflat.drink.json", "\"options\":{\"tabSize\":2,\"insertSpaces\":true}");
            Assert.Equal(1, edits.GetArrayLength());
            Assert.Equal(Laid, Desk.Applied(Written, edits));
        }

        var told = ToolRun.In(book.Path, "neaten", "mudflat.drink.json", "--only-tell");
        Assert.Equal(1, told.Status);
        Assert.Equal("mudflat.drink.json\n", told.Output);
        Assert.Equal(Written, File.ReadAllText(book["mudflat.drink.json"]));
        Assert.Equal(0, ToolRun.In(book.Path, "neaten", "mudflat.drink.json").Status);
        Assert.Equal(Laid, File.ReadAllText(book["mudflat.drink.json"]));
        Assert.Equal(0, ToolRun.In(book.Path, "neaten", "mudflat.drink.json", "--only-tell").Status);
    }

    private static string LaidOut(string text) => Encoding.UTF8.GetString(JsonLayout.Of(new SourceFile("x.drink.json", Encoding.UTF8.GetBytes(text)))!);

    /// <summary>A text without its blanks, those in texts and comments apart.</summary>
    private static string Bare(string text) => string.Join('\n', JsonTokens.Of(new SourceFile("x", Encoding.UTF8.GetBytes(text)))!.Select(t => t.Text));
}
