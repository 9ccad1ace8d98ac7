using System.Text.Json;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>What can be written at the cursor, also where the text is half typed.</summary>
public sealed class CompletionTests
{
    /// <summary>A text with ‸ at the cursor, and what is offered there.</summary>
    public static TheoryData<string, string, string, string> Places => new()
    {
        { "new.drink.json", """{ "name": "X", "ingredients": [ { "item": "tide‸" } ] }""", "tide-cordial", "sugar" },
        { "new.drink.json", """{ "name": "X", "ingredients": [ { "item": "maras‸" } ] }""", "maraschino-liqueur", "% vol" },
        { "new.drink.json", """{ "name": "X", "ingredients": [ { "item": "‸""", "tide-cordial", "" },
        { "new.drink.json", """{ "name": "X", "ingredients": [ { "item": "gin", "amount": "45‸" } ] }""", "45 ml", "" },
        { "new.drink.json", """{ "name": "X", "ingredients": [ { "item": "gin", ‸ } ] }""", "amount", "required" },
        { "new.drink.json", """{ "name": "X", "method": [ { "do": "sha‸" } ] }""", "shake", "" },
        { "new.drink.json", """{ "name": "X", "method": [ { "do": "shake", "ice": "‸" } ] }""", "crushed", "" },
        { "new.drink.json", """{ "name": "X", "glass": "‸" }""", "tide-glass", "150 mL" },
        { "new.drink.json", """{ "name": "X", "style": "‸" }""", "shaken-sour", "" },
        { "new.drink.json", """{ "name": "X", "declares": { "allergens": ["‸"] } }""", "almond", "" },
        { "new.drink.json", """{ "name": "X", "accept": [ { "rule": "‸" } ] }""", "SL3004", "" },
        { "new.drink.json", """{ "name": "X", "accept": [ { "rule": "SL3004", "until": "‸" } ] }""", "2027-02-23", "in 90 days" },
        { "new.drink.json", """{ "name": "X", "date": "‸" }""", "2026-11-25", "today" },
        { "new.prep.json", """{ "name": "X", "family": "‸" }""", "cordial", "" },
        { "new.prep.json", """{ "name": "X", "measured": { "ph": 3, "meter": "‸" } }""", "bench", "meter" },
        { "new.ingredient.json", """{ "name": "X", "like": "navy‸" }""", "navy-strength-gin", "% vol" },
        { "new.menu.json", """{ "name": "X", "drinks": [ { "drink": "mud‸" } ] }""", "mudflat", "" },
        { "new.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "tide‸" } ] }""", "tide-cordial", "" },
        { "new.drink.json", """{ "name": "X", "ingredients": [ ‸ ] }""", "{ item, amount }", "an ingredient line" },
        { "new.drink.json", """{ "name": "X", "method": [ ‸ ] }""", "{ do }", "a step" },
        { "new.drink.json", "‸", "new drink", "a drink" },
    };

    [Theory]
    [MemberData(nameof(Places))]
    public void It_offers_what_can_stand_there(string file, string marked, string label, string beside)
    {
        using var book = SmallBar.Make();
        var choice = Offered(book.Path, file, marked, out string text).FirstOrDefault(c => c.GetProperty("label").ValueEquals(label));
        Assert.True(choice.ValueKind == JsonValueKind.Object, $"{label} is not offered at {marked}");
        string detail = choice.TryGetProperty("detail", out var said) ? said.GetString()! : "";
        Assert.Contains(beside, detail, StringComparison.Ordinal);
        Assert.NotEqual(text, Desk.Applied(text, JsonDocument.Parse($"[{choice.GetProperty("textEdit").GetRawText()}]").RootElement));
    }

    [Fact]
    public void An_item_is_found_by_its_name_and_its_synonyms_and_takes_the_place_of_what_was_typed()
    {
        using var book = SmallBar.Make();
        var choice = Offered(
            book.Path, "new.drink.json", """{ "name": "X", "ingredients": [ { "item": "aromatic‸", "amount": "1 dash" } ] }""",
            out string text).First();
        string made = Desk.Applied(text, JsonDocument.Parse($"[{choice.GetProperty("textEdit").GetRawText()}]").RootElement);
        Assert.Contains($"\"item\": \"{choice.GetProperty("label").GetString()}\", \"amount\"", made, StringComparison.Ordinal);
    }

    [Fact]
    public void Properties_that_are_there_already_and_words_in_comments_are_not_offered()
    {
        using var book = SmallBar.Make();
        var names = Offered(book.Path, "new.drink.json", """{ "name": "X", ‸, "glass": "coupe" }""", out _)
            .Select(c => c.GetProperty("label").GetString())
            .ToList();
        Assert.DoesNotContain("name", names);
        Assert.DoesNotContain("glass", names);
        Assert.Contains("style", names);
        Assert.Empty(Offered(book.Path, "new.drink.json", "{ // a ‸\n }", out _));
    }

    [Fact]
    public void A_template_is_a_file_that_can_be_read()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path, capabilities: "");
        foreach (string kind in new[] { "drink", "prep", "ingredient", "menu", "stock" })
        {
            desk.Open($"x.{kind}.json", "");
            var choice = desk.AskAt("textDocument/completion", $"x.{kind}.json", "", "", 0).GetProperty("items")[0];
            string text = choice.GetProperty("textEdit").GetProperty("newText").GetString()!;
            var file = Binding.BookReader.Read(
                new Reading.SourceFile($"x.{kind}.json", System.Text.Encoding.UTF8.GetBytes(text)),
                Book.FileKinds.Of($"x.{kind}.json")!.Value, Reading.Measures.Default);
            Assert.True(file.Problems.Count == 0, $"{kind}: {string.Join(' ', file.Problems.Select(p => p.Message))}\n{text}");
        }
    }

    private static List<JsonElement> Offered(string folder, string file, string marked, out string text)
    {
        int at = marked.IndexOf('‸', StringComparison.Ordinal);
        text = marked.Remove(at, 1);
        using var desk = new Desk(folder);
        desk.Open(file, text);
        string where = text[..at];
        return [.. desk.Ask("textDocument/completion", desk.ParametersAt(file, text, where, where.Length)).GetProperty("items").EnumerateArray()];
    }
}
