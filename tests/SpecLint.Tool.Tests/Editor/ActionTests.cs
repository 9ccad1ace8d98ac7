using System.Text.Json;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>What is offered for a finding, and the figures and commands of a recipe.</summary>
public sealed partial class ActionTests
{
    [Fact]
    public void A_missing_item_can_be_written_and_a_finding_be_accepted_with_the_reason_left_open()
    {
        using var book = SmallBar.Make();
        string text = SmallBar.Drink.Replace("\"tide-cordial\"", "\"ebb-cordial\"", StringComparison.Ordinal);
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", text);
        var actions = desk.AskAt(
            "textDocument/codeAction", "mudflat.drink.json", text, "\"ebb-cordial\"", 2, "\"context\":{\"diagnostics\":[]}")
            .EnumerateArray()
            .ToList();
        foreach (string kind in new[] { "ingredient", "prep" })
        {
            var create = actions.First(a => a.GetProperty("edit").TryGetProperty("documentChanges", out var changes)
                && changes[0].GetProperty("uri").ValueEquals(desk.Address($"ebb-cordial.{kind}.json")));
            Assert.Contains(
                "\"name\": \"Ebb cordial\"",
                create.GetProperty("edit").GetProperty("documentChanges")[1].GetProperty("edits")[0].GetProperty("newText").GetString(),
                StringComparison.Ordinal);
        }

        var accept = actions.First(a => a.GetProperty("title").GetString()!.StartsWith("Accept SL9001 until 2027-02-23", StringComparison.Ordinal));
        string accepted = Desk.Applied(text, accept.GetProperty("edit").GetProperty("changes").GetProperty(desk.Address("mudflat.drink.json")));
        Assert.Contains("\"accept\": [{ \"rule\": \"SL9001\", \"because\": \"\", \"until\": \"2027-02-23\" }]", accepted, StringComparison.Ordinal);

        // Without a reason nothing is accepted; with one it is.
        book.Write("mudflat.drink.json", accepted);
        Assert.Contains("SL9001", Support.ToolRun.In(book.Path, "check", "--format", "json").Output, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(WithReason(book, accepted));
        Assert.DoesNotContain(json.RootElement.GetProperty("findings").EnumerateArray(), f => f.GetProperty("rule").ValueEquals("SL9001"));
    }

    [Fact]
    public void A_correction_says_its_effect_in_its_title()
    {
        using var book = SmallBar.Make();
        string text = SmallBar.Drink.Replace("\"45 ml\"", "\"450 ml\"", StringComparison.Ordinal);
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", text);
        desk.Settle();
        var titles = new List<string>();
        string whole = $"\"range\":{{\"start\":{{\"line\":0,\"character\":0}},\"end\":{{\"line\":20,\"character\":0}}}},\"context\":{{\"diagnostics\":[]}}";
        foreach (var action in desk.AskOf("textDocument/codeAction", "mudflat.drink.json", whole).EnumerateArray())
            titles.Add(action.GetProperty("title").GetString()!);
        Assert.Contains(titles, t => t.StartsWith("Proposed: ", StringComparison.Ordinal) && t.Contains(" → ", StringComparison.Ordinal));
    }

    [Fact]
    public void An_undeclared_allergen_is_added_by_an_action()
    {
        using var book = SmallBar.Make();
        string text = SmallBar.Drink.Replace(
            "{ \"item\": \"gin\", \"amount\": \"45 ml\" },",
            "{ \"item\": \"gin\", \"amount\": \"45 ml\" },\n    { \"item\": \"egg-white\", \"amount\": \"20 ml\" },",
            StringComparison.Ordinal);
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", text);
        desk.Settle();
        Assert.Contains("SL7001", desk.Shown("mudflat.drink.json"));
        string whole = $"\"range\":{{\"start\":{{\"line\":0,\"character\":0}},\"end\":{{\"line\":20,\"character\":0}}}},\"context\":{{\"diagnostics\":[]}}";
        var actions = desk.AskOf("textDocument/codeAction", "mudflat.drink.json", whole).EnumerateArray().ToList();
        Assert.Contains(
            actions,
            a => a.GetProperty("edit").TryGetProperty("changes", out var changes)
                && changes.EnumerateObject()
                    .Any(c => c.Value.EnumerateArray()
                        .Any(e => e.GetProperty("newText").GetString()!.Contains("\"egg\"", StringComparison.Ordinal))));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Amounts_are_solved_for_what_the_recipe_itself_says(bool resolves)
    {
        using var book = SmallBar.Make();
        string text = SmallBar.Drink.Replace("\"45 ml\"", "\"90 ml\"", StringComparison.Ordinal);
        book.Write("mudflat.drink.json", text);
        string able = resolves
            ? Desk.Able.Replace(
                "\"textDocument\": {",
                "\"textDocument\": { \"codeAction\": { \"dataSupport\": true, \"resolveSupport\": { \"properties\": [\"edit\"] } },",
                StringComparison.Ordinal)
            : Desk.Able;
        using var desk = new Desk(book.Path, able);
        Assert.True(desk.Capabilities.GetProperty("codeActionProvider").GetProperty("resolveProvider").GetBoolean());
        desk.Open("mudflat.drink.json", text);
        var offered = desk.AskAt("textDocument/codeAction", "mudflat.drink.json", text, "\"90 ml\"", 2, "\"context\":{\"diagnostics\":[]}").EnumerateArray()
            .Where(a => a.GetProperty("kind").ValueEquals("refactor.rewrite")).ToList();
        var glass = offered.Single(a => a.GetProperty("title").GetString()!.StartsWith("Solve the amounts to fit the glass", StringComparison.Ordinal));
        Assert.Contains(
            offered,
            a => a.GetProperty("title").GetString()!.StartsWith("Solve the amounts for the usual shaken sour: ", StringComparison.Ordinal));
        Assert.Equal(!resolves, glass.TryGetProperty("edit", out _));
        if (resolves) glass = desk.Ask("codeAction/resolve", glass.GetRawText());
        string solved = Desk.Applied(text, glass.GetProperty("edit").GetProperty("changes").GetProperty(desk.Address("mudflat.drink.json")));

        // What was solved is checked by the command: the glass no longer overflows, and the file is the same but for its amounts.
        Assert.Contains("SL8001", Support.ToolRun.In(book.Path, "check", "--format", "json").Output, StringComparison.Ordinal);
        book.Write("mudflat.drink.json", solved);
        Assert.DoesNotContain("SL8001", Support.ToolRun.In(book.Path, "check", "--format", "json").Output, StringComparison.Ordinal);
        Assert.Equal(Amounts().Replace(text, "AMOUNT"), Amounts().Replace(solved, "AMOUNT"));
    }

    [Fact]
    public void A_target_that_is_reached_is_not_offered()
    {
        using var book = SmallBar.Make();
        string text = SmallBar.Drink.Replace("\"glass\": \"tide-glass\"", "\"glass\": \"highball\"", StringComparison.Ordinal);
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", text);
        Assert.DoesNotContain(
            desk.AskAt("textDocument/codeAction", "mudflat.drink.json", text, "\"45 ml\"", 2, "\"context\":{\"diagnostics\":[]}")
                .EnumerateArray(),
            a => a.GetProperty("title").GetString()!.Contains("glass", StringComparison.Ordinal));
    }

    [Fact]
    public void Diagnostics_lead_to_the_page_of_the_rule_where_an_address_is_set()
    {
        using var book = Support.SmallBook.WithBroken();
        using var desk = new Desk(book.Path, options: "{\"rulePages\":\"https://example.org/pages\"}");
        desk.Open("mudflat.drink.json", Support.SmallBook.Broken);
        desk.Settle();
        var diagnostic = desk.Received.Where(m => m.GetProperty("method").ValueEquals("textDocument/publishDiagnostics"))
            .SelectMany(m => m.GetProperty("params").GetProperty("diagnostics").EnumerateArray())
            .First(d => d.GetProperty("code").ValueEquals("SL9001"));
        Assert.Equal("https://example.org/pages/SL9001.md", diagnostic.GetProperty("codeDescription").GetProperty("href").GetString());
    }

    [Fact]
    public void Hints_are_off_until_they_are_asked_for()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", SmallBar.Drink);
        const string All = "\"range\":{\"start\":{\"line\":0,\"character\":0},\"end\":{\"line\":99,\"character\":0}}";
        Assert.Empty(desk.AskOf("textDocument/inlayHint", "mudflat.drink.json", All).EnumerateArray());
        desk.Tell("workspace/didChangeConfiguration", "{\"settings\":{\"speclint\":{\"inlayHints\":true}}}");
        var hints = desk.AskOf("textDocument/inlayHint", "mudflat.drink.json", All).EnumerateArray().Select(h => h.GetProperty("label").GetString()!).ToList();
        Assert.Contains(hints, h => h.Contains("% vol", StringComparison.Ordinal));
        Assert.Contains(hints, h => h.EndsWith("% w/w", StringComparison.Ordinal));
    }

    [Fact]
    public void A_lens_names_commands_that_give_back_documents()
    {
        using var book = SmallBar.Make();
        using var desk = new Desk(book.Path);
        desk.Open("mudflat.drink.json", SmallBar.Drink);
        var lenses = desk.AskOf("textDocument/codeLens", "mudflat.drink.json").EnumerateArray().ToList();
        Assert.Equal(["Profile", "Compare with the last commit", "Spec card"], lenses.Select(l => l.GetProperty("command").GetProperty("title").GetString()));
        foreach (var (lens, expected) in lenses.Zip(["| strength |", "", "<html"]))
        {
            var command = lens.GetProperty("command");
            var answer = desk.Answer(
                "workspace/executeCommand",
                $"{{\"command\":{command.GetProperty("command").GetRawText()},\"arguments\":{command.GetProperty("arguments").GetRawText()}}}");

            // Outside a repository there is nothing to compare with, and the answer says so.
            if (expected.Length == 0)
                Assert.Contains("git", answer.GetProperty("error").GetProperty("message").GetString(), StringComparison.OrdinalIgnoreCase);
            else Assert.Contains(expected, answer.GetProperty("result").GetProperty("text").GetString(), StringComparison.Ordinal);
        }
    }

    [System.Text.RegularExpressions.GeneratedRegex("\"[0-9.]+ ml\"")]
    private static partial System.Text.RegularExpressions.Regex Amounts();

    private static string WithReason(Support.TestFolder book, string accepted)
    {
        book.Write("mudflat.drink.json", accepted.Replace("\"because\": \"\"", "\"because\": \"To be written on Monday.\"", StringComparison.Ordinal));
        return Support.ToolRun.In(book.Path, "check", "--format", "json").Output;
    }
}
