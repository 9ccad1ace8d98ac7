using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public sealed class CardTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Fact]
    public void A_card_says_how_the_drink_is_made_in_names_not_ids()
    {
        var run = ToolRun.In(demo.Path, "card", "low-tide");
        Assert.Equal((0, ""), (run.Status, run.Error));
        foreach (string text in new[] { "<td>50 ml</td><th scope=\"row\">Fogbank Dry Gin</th>", "<li>Shake with cubed ice, 12 s</li>", "Glass: Small coupe.", "Garnish: 1 sprig Dill.", "10 serves", "volume in the glass" })
            Assert.Contains(text, run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("fogbank-gin", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_must_not_be_served_says_so_on_its_card_on_the_pocket_list_and_is_off_the_sheet_for_guests()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "garlic-oil.prep.json",
            """{ "name": "Garlic oil", "family": "other", "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "60 g" } ], "method": [ { "do": "steep", "for": "24 h" } ], "yield": "500 g", "keep": { "at": "20 °C", "in": "bottle", "for": "30 d" }, "declares": { "allergens": [] } }""");
        book.Write(
            "mud.drink.json",
            """{ "name": "Mud", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, { "item": "garlic-oil", "amount": "5 ml" } ], "method": [ { "do": "stir", "ice": "cubed" }, { "do": "strain" } ], "glass": "coupe", "declares": { "allergens": [] } }""");
        book.Write(
            "water.drink.json",
            """{ "name": "Clear", "ingredients": [ { "item": "vodka", "amount": "50 ml" } ], "method": [ { "do": "build" } ], "declares": { "allergens": [] } }""");
        book.Write("tonight.menu.json", """{ "name": "Tonight", "drinks": [ { "drink": "mud" }, { "drink": "water", "words": "Vodka <alone>" } ] }""");
        foreach (string[] args in new string[][] { ["card", "mud"], ["card", "--menu", "tonight", "--pocket", "--paper", "a6"] })
        {
            var run = ToolRun.In(book.Path, args);
            Assert.Equal(1, run.Status);
            Assert.Contains("DO NOT SERVE", run.Output, StringComparison.Ordinal);
        }

        Assert.Contains("DO NOT USE", ToolRun.In(book.Path, "card", "garlic-oil").Output, StringComparison.Ordinal);
        var guests = ToolRun.In(book.Path, "guests", "tonight");
        Assert.Equal(1, guests.Status);
        Assert.DoesNotContain("Mud", guests.Output, StringComparison.Ordinal);
        Assert.Contains("Mud is left out", guests.Error, StringComparison.Ordinal);
        Assert.Contains("Vodka &lt;alone&gt;", guests.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sheet_for_guests_names_every_allergen_and_defers_to_the_staff()
    {
        var run = ToolRun.In(demo.Path, "guests", "evening");
        Assert.Equal(0, run.Status);
        Assert.Contains(GuestPage.Please, System.Net.WebUtility.HtmlDecode(run.Output), StringComparison.Ordinal);
        foreach (string allergen in new[] { "egg", "milk", "celery", "almond", "sulphites" }) Assert.Matches($"class=\"allergen\">[^<]*{allergen}", run.Output);
        Assert.DoesNotMatch("(?i)allergen[- ]free|\\bsafe\\b|SL[0-9]{4}", run.Output);
        Assert.DoesNotContain(
            "-",
            string.Concat(System.Text.RegularExpressions.Regex.Matches(run.Output, "<h2>([^<]*)</h2>").Select(m => m.Groups[1].Value)),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("card")]
    [InlineData("card", "low-tide", "--menu", "evening")]
    [InlineData("card", "low-tide", "--pocket")]
    [InlineData("card", "fogbank-gin")]
    [InlineData("guests", "no-such-menu")]
    public void Wrong_use_is_one_sentence_and_status_2(params string[] args)
    {
        var run = ToolRun.In(demo.Path, args);
        Assert.Equal((2, ""), (run.Status, run.Output));
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
    }
}
