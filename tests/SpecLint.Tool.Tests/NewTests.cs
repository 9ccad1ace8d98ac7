using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class NewTests : IDisposable
{
    private readonly TestFolder folder = new();

    public NewTests() => Assert.Equal(0, ToolRun.In(folder.Path, "start", "bar", "--empty").Status);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void An_empty_book_holds_its_bar_and_the_schemas_and_checks_without_an_error()
    {
        Assert.Equal(["bar.json"], Directory.EnumerateFiles(folder["bar"]).Select(Path.GetFileName));
        Assert.True(File.Exists(folder["bar/schemas/drink.schema.json"]));
        Assert.Equal(0, New("drink", "Half Tide", "50 ml gin", "25 ml lemon juice", "20 ml simple syrup").Status);
        var check = ToolRun.In(folder.Path, "check", "bar");
        Assert.True(check.Status == 0, check.Output);
    }

    [Fact]
    public void A_drink_is_written_with_ids_steps_and_allergens_and_without_an_error()
    {
        var run = New("drink", "Half Tide", "50 ml London dry gin", "3/4 oz lemon juice", "2 dashes of aromatic bitters", "20 ml egg white", "top whatsit");
        Assert.Equal(0, run.Status);
        Assert.Contains("top whatsit", run.Output, StringComparison.Ordinal);
        using var json = Read("half-tide.drink.json");
        Assert.Equal(
            ["gin", "lemon-juice", "aromatic-bitters", "egg-white"],
            json.RootElement.GetProperty("ingredients")
                .EnumerateArray()
                .Select(i => i.GetProperty("item").GetString()!.Replace("london-dry-gin", "gin", StringComparison.Ordinal)));
        Assert.Equal("shake", json.RootElement.GetProperty("method")[0].GetProperty("do").GetString());

        // One line is not clear, so that no list of allergens is written that could be short of one.
        Assert.False(json.RootElement.TryGetProperty("declares", out _));
        Assert.Equal(0, New("drink", "Whole Tide", "50 ml gin", "20 ml egg white").Status);
        using var whole = Read("whole-tide.drink.json");
        Assert.Equal(["egg"], whole.RootElement.GetProperty("declares").GetProperty("allergens").EnumerateArray().Select(a => a.GetString()));
    }

    [Fact]
    public void Nothing_is_ever_overwritten()
    {
        Assert.Equal(0, New("drink", "Half Tide", "50 ml gin").Status);
        string before = folder.Snapshot();
        var again = New("drink", "half  tide", "60 ml gin");
        Assert.Equal(2, again.Status);
        Assert.Contains("nothing was written", again.Error, StringComparison.Ordinal);
        Assert.Equal(2, New("prep", "Half tide", "--family", "syrup").Status);
        Assert.Equal(before, folder.Snapshot());
    }

    [Fact]
    public void A_preparation_takes_its_family_from_its_name_and_adds_up_its_yield()
    {
        Assert.Equal(0, New("prep", "Bay syrup", "500 g white sugar", "500 g water").Status);
        using var json = Read("bay-syrup.prep.json");
        Assert.Equal(("syrup", "1000 g"), (json.RootElement.GetProperty("family").GetString(), json.RootElement.GetProperty("yield").GetString()));
        var unknown = New("prep", "Bay thing", "500 g water");
        Assert.Equal(2, unknown.Status);
        Assert.Contains("--family", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_ingredient_a_menu_and_a_stock_file_read_as_what_they_are()
    {
        Assert.Equal(0, New("ingredient", "Fogbank Dry Gin", "gin").Status);
        Assert.Equal(0, New("drink", "Half Tide", "50 ml fogbank dry gin").Status);
        Assert.Equal(0, New("menu", "Friday", "30 half tide", "no such drink").Status);
        Assert.Equal(0, New("stock", "Fridge", "700 ml fogbank dry gin").Status);
        using var drink = Read("half-tide.drink.json");
        Assert.Equal("fogbank-dry-gin", drink.RootElement.GetProperty("ingredients")[0].GetProperty("item").GetString());
        using var menu = Read("friday.menu.json");
        Assert.Equal(
            ("half-tide", 30),
            (menu.RootElement.GetProperty("drinks")[0]
                .GetProperty("drink")
                .GetString(), menu.RootElement.GetProperty("drinks")[0].GetProperty("covers").GetInt32()));
        Assert.Equal(1, menu.RootElement.GetProperty("drinks").GetArrayLength());
        using var stock = Read("fridge.stock.json");
        Assert.Equal("fogbank-dry-gin", stock.RootElement.GetProperty("lots")[0].GetProperty("item").GetString());
        Assert.DoesNotContain("SL1", ToolRun.In(folder.Path, "check", "bar").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\u001b[2J evil", "50 ml gin \n \"x\": 1")]
    [InlineData("a \"quoted\" */ name", "50 ml \"gin\"")]
    public void What_somebody_says_cannot_break_out_of_the_file(string name, string line)
    {
        Assert.Equal(0, New("drink", name, line).Status);
        using var json = JsonDocument.Parse(File.ReadAllBytes(Directory.EnumerateFiles(folder["bar"], "*.drink.json").Single()), Options);
        Assert.Equal(name, json.RootElement.GetProperty("name").GetString());
        Assert.False(json.RootElement.TryGetProperty("x", out _));
    }

    private static readonly JsonDocumentOptions Options = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    private JsonDocument Read(string file) => JsonDocument.Parse(File.ReadAllBytes(folder["bar/" + file]), Options);

    private ToolRun New(params string[] args) => ToolRun.In(folder.Path, ["new", .. args, "--book", "bar"]);
}
