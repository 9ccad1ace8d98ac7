using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>What is sent of what changed, and when.</summary>
public sealed class SyncTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private const string Syrup = """
        { "name": "Tide syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ],
          "method": [ { "do": "stir" } ], "yield": "1000 g", "keep": { "at": "4 °C", "in": "bottle", "for": "7 d" }, "declares": { "allergens": [] } }
        """;

    private static string Drink(string name, string item) => $$"""
        {
          "name": "{{name}} é🍋",
          "ingredients": [
            { "item": "gin", "amount": "45 ml" }, { "item": "{{item}}", "amount": "20 ml" }, { "item": "lime-juice", "amount": "25 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe", "declares": { "allergens": [] }
        }
        """;

    [Fact]
    public void Of_a_keystroke_only_the_files_whose_findings_changed_are_told_of()
    {
        using var desk = new Desk(demo.Path);
        string text = File.ReadAllText(Path.Combine(demo.Path, "low-tide.drink.json"));
        desk.Open("low-tide.drink.json", text);
        desk.Settle();
        Assert.True(desk.Told().Count > 20);
        text = desk.Type("low-tide.drink.json", text, "fogbank-gin", "no-such-gin");
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown("low-tide.drink.json"));
        var told = desk.Told();
        Assert.Contains("low-tide.drink.json", told);
        Assert.DoesNotContain("mudlark.drink.json", told);
        desk.Type("low-tide.drink.json", text, "no-such-gin", "fogbank-gin");
        desk.Settle();
        Assert.DoesNotContain("SL9001", desk.Shown("low-tide.drink.json"));
        desk.Told();

        // Nothing that anybody sees differs.
        desk.Open("mudlark.drink.json", File.ReadAllText(Path.Combine(demo.Path, "mudlark.drink.json")));
        desk.Settle();
        Assert.Empty(desk.Told().Except(["mudlark.drink.json"]));
    }

    [Fact]
    public void A_change_of_a_preparation_reaches_the_drinks_that_use_it_and_the_versions_are_those_of_the_editor()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write("one.drink.json", Drink("One", "tide-syrup"));
        book.Write("two.drink.json", Drink("Two", "simple-syrup"));
        book.Write("tide-syrup.prep.json", Syrup);
        using var desk = new Desk(book.Path);
        desk.Open("tide-syrup.prep.json", Syrup);
        desk.Settle();
        Assert.DoesNotContain("SL9001", desk.Shown("one.drink.json"));
        desk.Told();
        string egg = desk.Type("tide-syrup.prep.json", Syrup, "\"item\": \"water\"", "\"item\": \"egg-white\"");
        desk.Settle();
        var last = desk.Received.Last(m => m.GetProperty("params").TryGetProperty("version", out _));
        Assert.Equal(2, last.GetProperty("params").GetProperty("version").GetInt32());
        Assert.Contains("SL7001", desk.Shown("one.drink.json"));
        var told = desk.Told();
        Assert.Contains("one.drink.json", told);
        Assert.DoesNotContain("two.drink.json", told);
        Assert.Contains("egg-white", egg, StringComparison.Ordinal);
    }

    [Fact]
    public void Changed_ranges_are_counted_in_UTF_16_units_and_applied_one_after_the_other()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        using var desk = new Desk(book.Path);
        string text = Drink("Über", "simple-syrup");
        desk.Open("new.drink.json", text);
        string name = text.Split('\n')[1];
        int behind = name.IndexOf('"', name.IndexOf("🍋", StringComparison.Ordinal));
        desk.Tell("textDocument/didChange", $$$"""
            {"textDocument":{"uri":{{{Desk.Quote(desk.Address("new.drink.json"))}}},"version":5},"contentChanges":[
              {"range":{"start":{"line":1,"character":{{{behind}}}},"end":{"line":1,"character":{{{behind}}}}},"text":"X"},
              {"range":{"start":{"line":1,"character":{{{behind}}}},"end":{"line":1,"character":{{{behind + 1}}}}},"text":"YZ"}]}
            """);
        var symbols = desk.AskOf("textDocument/documentSymbol", "new.drink.json");
        Assert.Equal("Über é🍋YZ", symbols[0].GetProperty("name").GetString());
    }

    [Fact]
    public void An_editor_that_asks_for_diagnostics_is_sent_none_and_told_what_is_unchanged()
    {
        using var book = SmallBook.WithBroken();
        using var desk = new Desk(book.Path, "\"textDocument\":{\"diagnostic\":{}},\"workspace\":{\"diagnostics\":{\"refreshSupport\":true}}");
        Assert.True(desk.Capabilities.GetProperty("diagnosticProvider").GetProperty("interFileDependencies").GetBoolean());
        desk.Open("mudflat.drink.json", SmallBook.Broken);
        var full = desk.AskOf("textDocument/diagnostic", "mudflat.drink.json");
        Assert.Equal("full", full.GetProperty("kind").GetString());
        Assert.Contains(full.GetProperty("items").EnumerateArray(), d => d.GetProperty("code").ValueEquals("SL9001"));
        string mark = full.GetProperty("resultId").GetString()!;
        var same = desk.AskOf("textDocument/diagnostic", "mudflat.drink.json", $"\"previousResultId\":{Desk.Quote(mark)}");
        Assert.Equal("unchanged", same.GetProperty("kind").GetString());
        Assert.False(same.TryGetProperty("items", out _));
        desk.Type("mudflat.drink.json", SmallBook.Broken, "no-such-thing", "gin");
        var other = desk.AskOf("textDocument/diagnostic", "mudflat.drink.json", $"\"previousResultId\":{Desk.Quote(mark)}");
        Assert.Equal("full", other.GetProperty("kind").GetString());
        Assert.Empty(desk.Told());
    }

    [Fact]
    public void The_findings_of_the_whole_book_come_at_the_start_where_they_are_asked_for()
    {
        using var book = SmallBook.WithBroken();
        using (var quiet = new Desk(book.Path))
        {
            quiet.Settle();
            Assert.Empty(quiet.Told());
        }

        using var desk = new Desk(book.Path, options: "{\"wholeBook\":true}");
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown("mudflat.drink.json"));
    }

    [Fact]
    public void Folders_that_come_and_go_later_are_followed()
    {
        using var book = SmallBook.WithBroken();
        using var other = SmallBook.WithBroken();
        using var desk = new Desk(book.Path, options: "{\"wholeBook\":true}");
        Assert.True(desk.Capabilities.GetProperty("workspace").GetProperty("workspaceFolders").GetProperty("changeNotifications").GetBoolean());
        desk.Settle();
        string far = Path.GetRelativePath(book.Path, other["mudflat.drink.json"]), folder = Desk.Quote(new Uri(other.Path).AbsoluteUri);
        Assert.Empty(desk.Shown(far));
        desk.Tell("workspace/didChangeWorkspaceFolders", $"{{\"event\":{{\"added\":[{{\"uri\":{folder},\"name\":\"other\"}}],\"removed\":[]}}}}");
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown(far));

        // A book of which a document is open stays, and goes once that is closed and the folder goes again.
        desk.Open(far, SmallBook.Broken);
        desk.Tell("workspace/didChangeWorkspaceFolders", $"{{\"event\":{{\"added\":[],\"removed\":[{{\"uri\":{folder},\"name\":\"other\"}}]}}}}");
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown(far));
        desk.Tell("textDocument/didClose", $"{{\"textDocument\":{{\"uri\":{Desk.Quote(desk.Address(far))}}}}}");
        desk.Tell("workspace/didChangeWorkspaceFolders", $"{{\"event\":{{\"added\":[],\"removed\":[{{\"uri\":{folder},\"name\":\"other\"}}]}}}}");
        desk.Settle();
        Assert.Empty(desk.Shown(far));
        Assert.Contains("SL9001", desk.Shown("mudflat.drink.json"));
    }

    [Fact]
    public void Files_that_change_on_disk_are_watched_and_taken()
    {
        using var book = SmallBook.WithBroken();
        book.Write("other.drink.json", Drink("Other", "gin"));
        using var desk = new Desk(book.Path, "\"workspace\":{\"didChangeWatchedFiles\":{\"dynamicRegistration\":true}}");
        desk.Open("other.drink.json", Drink("Other", "gin"));
        desk.Settle();
        var registered = desk.Received.Single(m => m.GetProperty("method").ValueEquals("client/registerCapability"))
            .GetProperty("params")
            .GetProperty("registrations")[0];
        Assert.Equal("workspace/didChangeWatchedFiles", registered.GetProperty("method").GetString());
        Assert.Contains(
            registered.GetProperty("registerOptions").GetProperty("watchers").EnumerateArray(),
            w => w.GetProperty("globPattern").ValueEquals("**/*.drink.json"));
        Assert.Contains("SL9001", desk.Shown("mudflat.drink.json"));
        book.Write("no-such-thing.ingredient.json", """{ "name": "Such a thing", "like": "gin" }""");
        desk.Tell("workspace/didChangeWatchedFiles", $"{{\"changes\":[{{\"uri\":{Desk.Quote(desk.Address("no-such-thing.ingredient.json"))},\"type\":1}}]}}");
        desk.Settle();
        Assert.DoesNotContain("SL9001", desk.Shown("mudflat.drink.json"));
        File.Delete(book["no-such-thing.ingredient.json"]);
        desk.Tell("workspace/didChangeWatchedFiles", $"{{\"changes\":[{{\"uri\":{Desk.Quote(desk.Address("no-such-thing.ingredient.json"))},\"type\":3}}]}}");
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown("mudflat.drink.json"));
    }

    [Fact]
    public void A_closed_document_is_again_what_stands_on_disk_and_a_new_day_is_noticed()
    {
        using var book = SmallBook.WithBroken();
        var today = Reading.CalendarDate.Parse("2026-11-25")!.Value;
        using var desk = new Desk(book.Path, today: () => today);
        desk.Open("mudflat.drink.json", SmallBook.Broken.Replace("no-such-thing", "gin", StringComparison.Ordinal));
        desk.Settle();
        Assert.DoesNotContain("SL9001", desk.Shown("mudflat.drink.json"));
        desk.Tell("textDocument/didClose", $"{{\"textDocument\":{{\"uri\":{Desk.Quote(desk.Address("mudflat.drink.json"))}}}}}");
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown("mudflat.drink.json"));
        string dated = SmallBook.Broken.Replace(
            "\"glass\"",
            "\"accept\": [ { \"rule\": \"SL9001\", \"because\": \"To be bought.\", \"until\": \"2026-11-26\" } ], \"glass\"",
            StringComparison.Ordinal);
        desk.Open("mudflat.drink.json", dated);
        desk.Settle();
        Assert.DoesNotContain("SL9001", desk.Shown("mudflat.drink.json"));
        today = today.AddDays(2);
        desk.Settle();
        Assert.Contains("SL9001", desk.Shown("mudflat.drink.json"));
    }
}
