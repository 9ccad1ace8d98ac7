using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>One cause gives one finding: what the pages' examples cannot show, since each has one rule in view.</summary>
public sealed class OneCauseTests
{
    private const string House = "\"family\": \"juice\", \"ingredients\": [ { \"item\": \"celery-juice\", \"amount\": \"500 g\" } ], "
        + "\"method\": [ { \"do\": \"strain\" } ], \"yield\": \"500 g\", \"declares\": { \"allergens\": [\"celery\"] }, "
        + "\"source\": \"House recipe\"";

    private static readonly (string, string) Australia = ("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["AU"] }""");

    /// <summary>A lot without any date, in whatever way the recipe is kept, is told once.</summary>
    [Theory]
    [InlineData("")]
    [InlineData(", \"keep\": { \"at\": \"4 °C\", \"in\": \"bottle\", \"for\": \"3 d\" }")]
    public void An_undated_lot_is_told_once(string keep)
    {
        var found = OfStock(keep, "{ \"item\": \"pressed-celery\", \"amount\": \"500 ml\", \"at\": \"4 °C\" }");
        Assert.Equal(["SL9016"], found);
    }

    /// <summary>A lot with a day made and no use-by, of a recipe that says no time: the missing day is told by one rule alone.</summary>
    [Fact]
    public void A_lot_with_half_of_its_dates_is_told_once()
    {
        var found = OfStock("", "{ \"item\": \"pressed-celery\", \"made\": \"2026-11-25\", \"amount\": \"500 ml\", \"at\": \"4 °C\" }");
        Assert.Equal(["SL5009"], found);
        found = OfStock("", "{ \"item\": \"pressed-celery\", \"useBy\": \"2026-11-26\", \"amount\": \"500 ml\", \"at\": \"4 °C\" }");
        Assert.Equal(["SL5009"], found);
    }

    /// <summary>An item with its amount in it: neither the id that it is not, nor the amount that is missing, nor the step is told again.</summary>
    [Fact]
    public void An_amount_in_the_item_is_told_once()
    {
        var result = Books.Check(("pressed.prep.json", """
            { "name": "Pressed", "family": "juice", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
              "ingredients": [ { "item": "1000 g celery" } ],
              "method": [ { "do": "juice", "items": [ "celery" ] }, { "do": "strain" } ], "yield": "620 g" }
            """));
        Assert.Equal(["SL2011"], Ids(result).Where(i => i is "SL1008" or "SL1010" or "SL1017" or "SL2011" or "SL2012" or "SL9001"));
    }

    /// <summary>An item of several words without an amount stays what it is: no id.</summary>
    [Fact]
    public void Words_without_an_amount_are_still_no_id()
    {
        var result = Books.Check(("low-tide.drink.json", """
            { "name": "Low Tide", "ingredients": [ { "item": "lime juice", "amount": "25 ml" }, { "item": "gin", "amount": "45 ml" } ],
              "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ] }
            """));
        Assert.Contains("SL1010", Ids(result));
        Assert.DoesNotContain("SL2011", Ids(result));
    }

    /// <summary>The unscaled dash of a batch is said in words: once, not "1 times".</summary>
    [Fact]
    public void Unscaled_dashes_are_said_in_words()
    {
        var result = Books.Check(
            ("salt-path.drink.json", """
                { "name": "Salt Path", "ingredients": [ { "item": "bourbon", "amount": "60 ml" }, { "item": "sweet-vermouth", "amount": "30 ml" }, { "item": "aromatic-bitters", "amount": "2 dashes" } ],
                  "method": [ { "do": "stir", "ice": "cubed" }, { "do": "strain" } ], "declares": { "allergens": ["sulphites"] } }
                """),
            ("salt-path-batch.prep.json", """
                { "name": "Salt Path, batch", "family": "batch", "batchOf": "salt-path", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
                  "ingredients": [ { "item": "bourbon", "amount": "600 ml" }, { "item": "sweet-vermouth", "amount": "300 ml" }, { "item": "aromatic-bitters", "amount": "2 dashes" } ],
                  "method": [ { "do": "stir" } ], "yield": "900 ml", "declares": { "allergens": ["sulphites"] } }
                """));
        string message = Assert.Single(Flat(result.Findings), f => f.Rule.Id == "SL8014").Message;
        Assert.Contains("10 times `salt-path` and only once its aromatic-bitters", message, StringComparison.Ordinal);
    }

    /// <summary>A copper cup is told once, where it is named first, and lining clears it wherever it stands.</summary>
    [Theory]
    [InlineData("Copper cup", "", 1)]
    [InlineData("Copper cup", ", \"note\": \"in the copper cup\"", 1)]
    [InlineData("Copper cup, lined", "", 0)]
    [InlineData("Steel cup", ", \"note\": \"polish the copper cup\"", 1)]
    [InlineData("Steel cup", ", \"note\": \"a copper-coloured drink\"", 0)]
    public void A_copper_cup_is_told_once(string glass, string note, int times)
    {
        var result = Books.Check(
            ("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "glasses": { "house-cup": { "name": "{{glass}}", "brim": "500 ml" } } }"""),
            ("harbour-mule.drink.json", $$"""
                { "name": "Harbour Mule", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, { "item": "lime-juice", "amount": "15 ml" }, { "item": "ginger-beer", "amount": "120 ml", "role": "top" } ],
                  "method": [ { "do": "build", "ice": "cubed"{{note}} }, { "do": "top" } ], "glass": "house-cup" }
                """));
        Assert.Equal(times, Ids(result).Count(i => i == "SL6012"));
    }

    /// <summary>Months of a milk punch rest on 15 % vol or more (common practice, no source): under it the trade's least time holds.</summary>
    [Theory]
    [InlineData("12 % v/v", 1)]
    [InlineData("18 % v/v", 0)]
    public void A_weak_milk_punch_has_the_least_time(string abv, int times)
    {
        var result = Books.Check(("tea-punch.prep.json", $$"""
            { "name": "Tea punch", "family": "milk-wash",
              "ingredients": [ { "item": "aged-rum", "amount": "500 ml" }, { "item": "water", "amount": "300 ml" }, { "item": "lemon-juice", "amount": "100 ml" }, { "item": "simple-syrup", "amount": "150 ml" }, { "item": "whole-milk", "amount": "250 ml", "role": "wash" } ],
              "method": [ { "do": "stir" }, { "do": "filter", "into": "bottle" } ], "measured": { "ph": 3.1, "abv": "{{abv}}", "on": "2026-11-24" },
              "keep": { "at": "4 °C", "in": "bottle", "for": "60 d" }, "declares": { "allergens": ["milk"] } }
            """));
        Assert.Equal(times, Ids(result).Count(i => i == "SL5007"));
    }

    /// <summary>A shrub lasts months in the cold and weeks in the room (common practice, no source); its vinegar keeps yeasts down.</summary>
    [Theory]
    [InlineData("4 °C", 0)]
    [InlineData("20 °C", 1)]
    public void What_is_kept_cold_lasts_less_in_the_room(string at, int times)
    {
        var result = Books.Check(("blackcurrant-shrub.prep.json", $$"""
            { "name": "Blackcurrant shrub", "family": "shrub",
              "ingredients": [ { "item": "white-sugar", "amount": "400 g" }, { "item": "apple-cider-vinegar", "amount": "400 g" }, { "item": "water", "amount": "200 g" } ],
              "method": [ { "do": "stir", "until": "dissolved" }, { "do": "funnel", "into": "bottle" } ], "yield": "1000 g", "measured": { "ph": 3.0, "on": "2026-11-24" },
              "keep": { "at": "{{at}}", "in": "bottle", "for": "120 d" }, "declares": { "allergens": [] } }
            """));
        Assert.Equal(times, Ids(result).Count(i => i == "SL5007"));
        Assert.DoesNotContain("SL5031", Ids(result));
    }

    /// <summary>A second advisory, or a second word of what a drink may contain, is added behind the one that is there.</summary>
    [Theory]
    [InlineData("[ \"Contains raw egg.\" ]")]
    [InlineData("[\n  \"Contains raw egg.\"\n]")]
    [InlineData("[ \"Contains raw egg.\", \"Ask us.\" ]")]
    [InlineData("[]")]
    public void A_statement_joins_the_one_that_is_there(string advisory)
    {
        string text = $$"""
            { "name": "Foam", "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "lemon-juice", "amount": "25 ml" }, { "item": "egg-white", "amount": "20 ml" }, { "item": "bee-pollen", "amount": "2 g" } ],
              "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ], "declares": { "allergens": ["egg"], "advisory": {{advisory}} } }
            """;
        var edit = Assert.Single(Assert.Single(
            Flat(Books.Check(Australia, ("foam.drink.json", text)).Findings), f => f.Rule.Id == "SL7028").Corrections).Edits[0];
        byte[] utf8 = System.Text.Encoding.UTF8.GetBytes(text);
        string after = System.Text.Encoding.UTF8.GetString(utf8, 0, edit.Place.Span.Start) + edit.NewText + System.Text.Encoding.UTF8.GetString(
            utf8, edit.Place.Span.End, utf8.Length - edit.Place.Span.End);
        Assert.DoesNotContain(Ids(Books.Check(Australia, ("foam.drink.json", after))), i => i is "SL1001" or "SL7028");
        using var document = System.Text.Json.JsonDocument.Parse(after);
        Assert.Equal(
            System.Text.Json.JsonDocument.Parse(advisory).RootElement.GetArrayLength() + 1,
            document.RootElement.GetProperty("declares").GetProperty("advisory").GetArrayLength());
    }

    /// <summary>Two batches of a drink in two sizes are no copies of each other; the same bottle written twice is.</summary>
    [Theory]
    [InlineData("1 l bottle", 1)]
    [InlineData("0.5 l bottle", 0)]
    public void A_batch_written_twice_is_a_copy(string into, int times)
    {
        static (string, string) Batch(string id, string name, string into) => ($"{id}.prep.json", $$"""
            { "name": "{{name}}", "family": "batch", "batchOf": "salt-path", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
              "ingredients": [ { "item": "bourbon", "amount": "600 ml" }, { "item": "sweet-vermouth", "amount": "300 ml" } ],
              "method": [ { "do": "stir" }, { "do": "funnel", "into": "{{into}}" } ], "yield": "900 ml", "declares": { "allergens": ["sulphites"] } }
            """);
        var result = Books.Check(
            ("salt-path.drink.json", """
                { "name": "Salt Path", "ingredients": [ { "item": "bourbon", "amount": "60 ml" }, { "item": "sweet-vermouth", "amount": "30 ml" } ],
                  "method": [ { "do": "stir", "ice": "cubed" }, { "do": "strain" } ], "declares": { "allergens": ["sulphites"] } }
                """),
            Batch("salt-path-batch", "Salt Path, batch", "1 l bottle"),
            Batch("quay-batch", "Quay batch", into));
        Assert.Equal(times, Ids(result).Count(i => i == "SL9003"));
    }

    private static string[] OfStock(string keep, string lot)
    {
        var result = Books.Check(
            ("pressed-celery.prep.json", $"{{ \"name\": \"Pressed celery\", {House}{keep} }}"),
            ("fridge.stock.json", $"{{ \"on\": \"2026-11-25\", \"lots\": [ {lot} ] }}"));
        return [.. Flat(result.Findings).Where(f => f.Subject == "fridge").Select(f => f.Rule.Id)];
    }

    private static string[] Ids(CheckResult result) => [.. Flat(result.Findings).Select(f => f.Rule.Id)];

    private static IEnumerable<Finding> Flat(IEnumerable<Finding> findings) => findings.SelectMany(f => Flat(f.Folded).Prepend(f));
}
