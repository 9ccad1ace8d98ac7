using System.Text.Json;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>Going to what a word names, finding what names it, and giving it another name.</summary>
public sealed class NamingTests
{
    public static TheoryData<string, string, string, string> Definitions => new()
    {
        { "mudflat.drink.json", "\"tide-cordial\"", "tide-cordial.prep.json", "\"Tide cordial\"" },
        { "mudflat.drink.json", "\"tide-glass\"", "bar.json", "\"tide-glass\"" },
        { "tide-cordial.prep.json", "\"bench\"", "bar.json", "\"bench\"" },
        { "tonight.menu.json", "\"mudflat\"", "mudflat.drink.json", "\"Mudflat\"" },
        { "fridge.stock.json", "\"tide-cordial\"", "tide-cordial.prep.json", "\"Tide cordial\"" },
    };

    [Theory]
    [MemberData(nameof(Definitions))]
    public void A_word_leads_to_where_the_thing_is_made(string file, string where, string toFile, string toWord)
    {
        using var book = SmallBar.Make();
        string text = File.ReadAllText(book[file]);
        using var desk = new Desk(book.Path);
        desk.Open(file, text);
        var place = Assert.Single(desk.AskAt("textDocument/definition", file, text, where).EnumerateArray());
        Assert.Equal(desk.Address(toFile), place.GetProperty("uri").GetString());
        Assert.Equal(toWord, WordAt(File.ReadAllText(book[toFile]), place.GetProperty("range")));
    }

    [Fact]
    public void References_are_all_places_of_the_book_that_name_it()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("tide-cordial.prep.json", SmallBar.Cordial);
        var found = desk.AskAt(
            "textDocument/references", "tide-cordial.prep.json", SmallBar.Cordial, "\"Tide cordial\"", 1,
            "\"context\":{\"includeDeclaration\":true}");
        Assert.Equal(
            ["fridge.stock.json", "mudflat.drink.json", "tide-cordial.prep.json"],
            found.EnumerateArray()
                .Select(p => Path.GetFileName(new Uri(p.GetProperty("uri").GetString()!).LocalPath))
                .Order(StringComparer.Ordinal));
        var glass = desk.AskOf("textDocument/foldingRange", "tide-cordial.prep.json");
        Assert.Equal(JsonValueKind.Array, glass.ValueKind);
    }

    [Fact]
    public void A_new_name_goes_through_recipes_menu_stock_and_the_file_name()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", SmallBar.Drink);
        var prepared = desk.AskAt("textDocument/prepareRename", "mudflat.drink.json", SmallBar.Drink, "\"tide-cordial\"");
        Assert.Equal("tide-cordial", prepared.GetProperty("placeholder").GetString());
        var changes = desk.AskAt(
            "textDocument/rename", "mudflat.drink.json", SmallBar.Drink, "\"tide-cordial\"", 1, "\"newName\":\"ebb-cordial\"")
            .GetProperty("documentChanges")
            .EnumerateArray()
            .ToList();
        var renamed = Assert.Single(changes, c => c.TryGetProperty("kind", out _));
        Assert.Equal("rename", renamed.GetProperty("kind").GetString());
        Assert.Equal(desk.Address("ebb-cordial.prep.json"), renamed.GetProperty("newUri").GetString());
        foreach (var change in changes.Where(c => c.TryGetProperty("edits", out _)))
        {
            string file = Path.GetFileName(new Uri(change.GetProperty("textDocument").GetProperty("uri").GetString()!).LocalPath);
            book.Write(file, Desk.Applied(File.ReadAllText(book[file]), change.GetProperty("edits")));
        }

        File.Move(book["tide-cordial.prep.json"], book["ebb-cordial.prep.json"]);
        string now = string.Concat(Directory.EnumerateFiles(book.Path).Select(File.ReadAllText));
        Assert.DoesNotContain("tide-cordial", now, StringComparison.Ordinal);
        Assert.DoesNotContain("SL9001", Support.ToolRun.In(book.Path, "check").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"gin\"", "my-gin", "catalogue")]
    [InlineData("\"tide-cordial\"", "Not An Id", "not an id")]
    [InlineData("\"tide-cordial\"", "lime-juice", "catalogue")]
    [InlineData("\"tide-cordial\"", "mudflat", "mudflat.drink.json")]
    [InlineData("\"strain\"", "pour", "no name here")]
    public void A_name_that_cannot_be_given_is_refused_with_the_reason(string where, string name, string reason)
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", SmallBar.Drink);
        var answer = desk.Answer("textDocument/rename", desk.ParametersAt("mudflat.drink.json", SmallBar.Drink, where, 1, $"\"newName\":\"{name}\""));
        Assert.Contains(reason, answer.GetProperty("error").GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_glass_and_a_by_product_get_other_names_without_a_file()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", SmallBar.Drink);
        desk.Open("tide-cordial.prep.json", SmallBar.Cordial);
        var glass = desk.AskAt(
            "textDocument/rename", "mudflat.drink.json", SmallBar.Drink, "\"tide-glass\"", 1, "\"newName\":\"ebb-glass\"")
            .GetProperty("documentChanges");
        Assert.Equal(
            ["bar.json", "mudflat.drink.json"],
            glass.EnumerateArray()
                .Select(c => Path.GetFileName(new Uri(c.GetProperty("textDocument").GetProperty("uri").GetString()!).LocalPath))
                .Order(StringComparer.Ordinal));
        var pulp = desk.AskAt(
            "textDocument/rename", "tide-cordial.prep.json", SmallBar.Cordial, "\"tide-pulp\"", 1, "\"newName\":\"ebb-pulp\"")
            .GetProperty("documentChanges");
        Assert.Single(pulp.EnumerateArray());
    }

    [Fact]
    public void Symbols_are_the_parts_of_a_document_and_the_files_of_the_book()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", SmallBar.Drink);
        var symbol = Assert.Single(desk.AskOf("textDocument/documentSymbol", "mudflat.drink.json").EnumerateArray());
        Assert.Equal("Mudflat", symbol.GetProperty("name").GetString());
        var ingredients = symbol.GetProperty("children").EnumerateArray().First(c => c.GetProperty("name").ValueEquals("ingredients"));
        Assert.Equal(
            ["gin 45 ml", "tide-cordial 25 ml", "lime-juice 25 ml"],
            ingredients.GetProperty("children")
                .EnumerateArray()
                .Select(c => $"{c.GetProperty("name").GetString()} {c.GetProperty("detail").GetString()}"));
        var found = desk.Ask("workspace/symbol", "{\"query\":\"tide\"}");
        Assert.Equal("Tide cordial", Assert.Single(found.EnumerateArray()).GetProperty("name").GetString());
        Assert.NotEmpty(desk.AskOf("textDocument/foldingRange", "mudflat.drink.json").EnumerateArray());
    }

    private static string WordAt(string text, JsonElement range)
    {
        string line = text.Split('\n')[range.GetProperty("start").GetProperty("line").GetInt32()];
        return line[range.GetProperty("start").GetProperty("character").GetInt32()..range.GetProperty("end").GetProperty("character").GetInt32()];
    }
}
