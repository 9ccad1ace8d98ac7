using SpecLint.Findings;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>What nobody wrote, or wrote elsewhere, is not read as harmless.</summary>
public sealed class UnsaidTests
{
    [Theory]
    [InlineData("", "SL5022", true)]
    [InlineData("\"at\": \"45 °C\", ", "SL5022", true)]
    [InlineData("\"at\": \"60 °C\", ", "SL5022", false)]
    public void Drying_at_a_temperature_that_nothing_states(string at, string rule, bool speaks) =>
        Assert.Equal(speaks, Told(("chips.prep.json", $$"""
            { "name": "Chips", "family": "dried", "ingredients": [ { "item": "carrot", "amount": "200 g" } ], "method": [ { "do": "dry", {{at}}"until": "it weighs 25 g" } ],
              "yield": "25 g", "keep": { "at": "20 °C", "in": "tub", "for": "30 d" } }
            """)).Any(f => f.Rule.Id == rule && f.Level == Level.Warning));

    /// <summary>An own file may be a poison by its name or by what it is like, and a note may be all that names it.</summary>
    [Theory]
    [InlineData("""{ "name": "Marsh root", "like": "monkshood" }""")]
    [InlineData("""{ "name": "Ground monkshood", "kind": "herb", "state": "powder", "allergens": { "contains": [] } }""")]
    public void A_poison_of_the_bar_that_only_a_note_names(string file) =>
        Assert.Contains(
            Told(("marsh-root.ingredient.json", file), ("slip.drink.json", Drink("\"notes\": \"Add 1 g of marsh root.\","))),
            f => f.Rule.Id is "SL7034" or "SL6021" && f.Path == "notes");

    [Fact]
    public void Quinine_that_only_a_note_adds() =>
        Assert.Contains(Told(
            ("bark.ingredient.json", """{ "name": "Bark", "kind": "tonic", "state": "liquid", "quinine": "60 mg", "allergens": { "contains": [] } }"""),
            ("slip.drink.json", Drink("\"notes\": \"Add 100 ml of bark.\","))),
            f => f.Rule.Id == "SL7034" && f.Message.Contains("quinine", StringComparison.Ordinal));

    [Theory]
    [InlineData("")]
    [InlineData("\"animal\": \"none\", ")]
    public void Vegan_with_milk_among_the_allergens(string animal) =>
        Assert.Contains(Told(
            ("house.ingredient.json", $$"""{ "name": "House", "kind": "other", "state": "liquid", {{animal}}"allergens": { "contains": ["milk"] } }"""),
            ("slip.drink.json", Drink("\"declares\": { \"claims\": [\"vegan\"] },", "house"))),
            f => f is { Rule.Id: "SL7013", Answer: Answer.Broken });

    /// <summary>What is sealed and not shown to be sour is an error in the cold, and no less above it, whichever law says how cold.</summary>
    [Theory]
    [InlineData("7 °C")]
    [InlineData("9 °C")]
    public void Sealed_and_not_sour_in_Britain(string at) =>
        Assert.Contains(
            Told(("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["GB"] }"""),
                ("dip-base.ingredient.json", """{ "name": "Dip base", "kind": "sauce", "state": "liquid", "allergens": { "contains": [] } }"""),
                ("dip.prep.json", $$"""{ "name": "Dip", "ingredients": [ { "item": "dip-base", "amount": "200 g" } ], "method": [ { "do": "stir" } ], "keep": { "at": "{{at}}", "in": "jar", "sealed": true, "for": "6 d" } }""")),
            f => f.Rule.Id is "SL5002" or "SL5005" && f.Level == Level.Error);

    /// <summary>A lot that is held hot is not refused as too warm; one that is lukewarm is.</summary>
    [Theory]
    [InlineData("65 °C", false)]
    [InlineData("45 °C", true)]
    public void A_lot_that_is_held_hot(string at, bool refused)
    {
        var result = Books.Check(
            ("hot-milk.prep.json", """{ "name": "Hot milk", "ingredients": [ { "item": "whole-milk", "amount": "500 g" } ], "method": [ { "do": "heat", "to": "80 °C", "for": "1 min" } ], "keep": { "at": "65 °C", "in": "urn", "for": "4 h" }, "declares": { "allergens": ["milk"] } }"""),
            ("bar.stock.json", $$"""{ "on": "2026-11-25", "lots": [ { "item": "hot-milk", "made": "2026-11-25", "at": "{{at}}", "amount": "400 g" } ] }"""));
        var stock = result.Book.Stocks[0];
        Assert.Equal(refused, LotCheck.Of(stock.Lots[0], stock, Verdicts.Of(result)).Reasons.Any(r => r.Contains("it stands at", StringComparison.Ordinal)));
    }

    /// <summary>A tin that nobody has opened stands at room temperature; an opened one is refused there.</summary>
    [Theory]
    [InlineData("\"useBy\": \"2027-06-01\"", false)]
    [InlineData("\"opened\": \"2026-11-25\"", true)]
    public void A_closed_tin_is_not_refused(string date, bool refused)
    {
        var result = Books.Check(("bar.stock.json", $$"""{ "on": "2026-11-25", "lots": [ { "item": "coconut-milk", {{date}}, "at": "20 °C", "amount": "400 ml" } ] }"""));
        var stock = result.Book.Stocks[0];
        Assert.Equal(refused, LotCheck.Of(stock.Lots[0], stock, Verdicts.Of(result)).Readiness == Readiness.No);
        Assert.Equal(refused, result.Findings.Flat().Any(f => f.Rule.Id == "SL5012"));
    }

    private static string Drink(string more, string item = "lemon-juice") => $$"""
        { "name": "Slip", {{more}} "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "{{item}}", "amount": "20 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }
        """;

    private static IEnumerable<Finding> Told(params (string Path, string Text)[] files) => Books.Check(files).Findings.Flat();
}
