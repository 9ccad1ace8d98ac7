using System.Text.Json;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>What hovering says.</summary>
public sealed class HoverTests
{
    public static TheoryData<string, string, string, string> Places => new()
    {
        { "mudflat.drink.json", "\"gin\"", "in the built-in catalogue, `gin`", "Allergens:" },
        { "mudflat.drink.json", "\"tide-cordial\"", "**Tide cordial** (preparation, `tide-cordial`)", "| sugar |" },
        { "mudflat.drink.json", "\"Mudflat\"", "**Mudflat** (drink, `mudflat`)", "| strength |" },
        { "mudflat.drink.json", "\"amount\"", "**amount** (required)", "```json" },
        { "mudflat.drink.json", "\"45 ml\"", "1.52", "g alcohol" },
        { "mudflat.drink.json", "\"tide-glass\"", "a glass of the bar", "150 mL" },
        { "mudflat.drink.json", "\"shake\"", "a step that the rules know", "" },
        { "mudflat.drink.json", "\"shaken-sour\"", "a style that the rules of balance know", "" },
        { "tonight.menu.json", "\"mudflat\"", "**Mudflat** (drink", "| strength |" },
        { "fridge.stock.json", "\"tide-cordial\"", "**Lot of Tide cordial** TC-1: its last day is", "**Tide cordial**" },
        { "fridge.stock.json", "\"TC-1\"", "**Lot of Tide cordial**", "" },
        { "bar.json", "\"alcoholPerServe\"", "The house sets 24 g", "" },
        { "bar.json", "\"SL3004\"", "SL3004", "" },
        { "bar.json", "\"brim\"", "**brim**", "Volume to the brim" },
    };

    [Theory]
    [MemberData(nameof(Places))]
    public void It_says_in_Markdown_what_is_known_of_the_word(string file, string where, string expected, string also)
    {
        using var book = SmallBar.Make();
        string text = File.ReadAllText(book[file]);
        using var desk = new Desk(book.Path);
        desk.Open(file, text);
        var hover = desk.AskAt("textDocument/hover", file, text, where);
        Assert.Equal("markdown", hover.GetProperty("contents").GetProperty("kind").GetString());
        string said = hover.GetProperty("contents").GetProperty("value").GetString()!;
        Assert.Contains(expected, said, StringComparison.Ordinal);
        Assert.Contains(also, said, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_file_says_is_text_and_not_markup()
    {
        using var book = SmallBar.Make();
        string text = SmallBar.Drink.Replace("Mudflat", "[x](http://y) `z` <b>", StringComparison.Ordinal);
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", text);
        string said = desk.AskAt("textDocument/hover", "mudflat.drink.json", text, "[x]").GetProperty("contents").GetProperty("value").GetString()!;
        Assert.Contains("\\[x\\]\\(http://y\\) \\`z\\` \\<b\\>", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_there_is_nothing_it_says_nothing()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("tide-cordial.prep.json", SmallBar.Cordial);
        Assert.Equal(JsonValueKind.Null, desk.AskAt("textDocument/hover", "tide-cordial.prep.json", SmallBar.Cordial, "from the back bar").ValueKind);
        Assert.Equal(JsonValueKind.Null, desk.AskAt("textDocument/hover", "tide-cordial.prep.json", SmallBar.Cordial, "{", 0).ValueKind);
    }
}
