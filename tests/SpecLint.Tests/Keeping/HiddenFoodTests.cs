using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>
/// Food and hazards behind a file of the bar's own, a by-product, a note or another word: what nobody wrote is not known, and what
/// is not known clears nothing. What needs time and temperature control is that of the US Food Code, 1-201.10.
/// </summary>
public sealed class HiddenFoodTests
{
    private const string Warm = """{ "at": "20 °C", "in": "bottle", "sealed": true, "for": "30 d" }""";

    /// <summary>A kind, a claim that it needs no cold, or <c>like</c> water does not make food keep that its name or its <c>like</c> tells of.</summary>
    [Theory]
    [InlineData("beet-red", """{ "name": "Beet red", "kind": "colour", "state": "liquid" }""")]
    [InlineData("dashi", """{ "name": "Dashi brine", "kind": "saline", "state": "liquid" }""")]
    [InlineData("carrot-water", """{ "name": "Carrot water", "kind": "juice", "state": "liquid", "keepsCold": false, "water": "95 g" }""")]
    [InlineData("house-base", """{ "name": "Whey", "like": "water" }""")]
    [InlineData("house-base", """{ "name": "House base", "like": "whole-milk", "kind": "saline", "salt": "2 g", "keepsCold": false }""")]
    public void Own_food_kept_warm(string id, string file) =>
        AssertHarm(
            Books.Check(
                ($"{id}.ingredient.json", file), ("mix.prep.json", Prep("other", $$"""{ "item": "{{id}}", "amount": "500 g" }""", Warm))),
            "mix",
            "SL5005",
            Level.Error);

    /// <summary>What is sold to keep, and a salt of known strength, stay as they were.</summary>
    [Theory]
    [InlineData(
        "marsh-saline",
        """{ "name": "Marsh saline", "kind": "saline", "state": "liquid", "salt": "20 g", "water": "80 g", "allergens": { "contains": [] } }""")]
    [InlineData("beet-red", """{ "name": "Beet red", "kind": "colour", "state": "liquid", "keepsCold": false, "allergens": { "contains": [] } }""")]
    [InlineData("marsh-water", """{ "name": "Marsh water", "kind": "water", "state": "liquid", "allergens": { "contains": [] } }""")]
    public void Own_goods_that_keep(string id, string file) =>
        Assert.DoesNotContain(
            Books.Check(
                ($"{id}.ingredient.json", file), ("mix.prep.json", Prep(
                    "other", $$"""{ "item": "{{id}}", "amount": "500 g" }""", Warm))).Findings
                .Flat(),
            f => f.Rule.Id == "SL5005");

    /// <summary>Garlic under oil is garlic under oil, whichever kind its file has; an oil that is only named by it is not shown to hold none.</summary>
    [Theory]
    [InlineData("house-base", """{ "name": "House base", "like": "garlic", "kind": "spice" }""", Level.Error)]
    [InlineData("sun-tomato", """{ "name": "Sun tomato", "kind": "garnish" }""", Level.Error)]
    [InlineData("confit-oil", """{ "name": "Confit garlic oil", "kind": "fat", "state": "liquid" }""", Level.Warning)]
    public void Own_plant_in_oil(string id, string file, Level level) =>
        AssertHarm(
            Books.Check(
                ($"{id}.ingredient.json", file),
                ("mix.prep.json", Prep(
                    "other", $$"""{ "item": "olive-oil", "amount": "500 g" }, { "item": "{{id}}", "amount": "100 g" }""", Warm))),
            "mix",
            "SL5016",
            level);

    /// <summary>A syrup whose file gives its water and not its sugar is not free of sugar.</summary>
    [Fact]
    public void Own_thin_syrup() =>
        AssertHarm(
            Books.Check(
                ("light-agave.ingredient.json", """{ "name": "Light agave", "kind": "syrup", "state": "liquid", "water": "90 g", "keepsCold": false }"""),
                ("mix.prep.json", Prep("syrup", """{ "item": "light-agave", "amount": "500 g" }""", Warm))),
            "mix",
            "SL5025",
            Level.Error);

    /// <summary>A list of allergens that leaves out what the thing that it is like holds is not shown to be complete.</summary>
    [Theory]
    [InlineData("""{ "name": "House base", "like": "whole-milk", "allergens": { "contains": [] } }""", true)]
    [InlineData("""{ "name": "Whey", "like": "water", "allergens": { "contains": [] } }""", true)]
    [InlineData("""{ "name": "House base", "like": "whole-milk", "allergens": { "contains": ["milk"] } }""", false)]
    [InlineData("""{ "name": "House base", "like": "lime-juice", "allergens": { "contains": [] } }""", false)]
    public void Allergens_left_out(string file, bool found)
    {
        var findings = Books.Check(
            ("house-base.ingredient.json", file),
            ("glass.drink.json", """{ "name": "Glass", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "house-base", "amount": "30 ml" } ], "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }""")).Findings
            .Flat();
        Assert.Equal(found, findings.Any(f => f.Rule.Id == "SL7008" && f.Subject == "house-base"));
    }

    /// <summary>What is called after an allergen and states none is asked for its list, whatever its kind.</summary>
    [Theory]
    [InlineData("""{ "name": "Hazelnut drops", "kind": "other" }""", true)]
    [InlineData("""{ "name": "House rye", "kind": "spirit", "strength": "40 %" }""", false)]
    [InlineData("""{ "name": "Almond water", "kind": "juice" }""", true)]
    [InlineData("""{ "name": "Lupin powder", "kind": "gum" }""", true)]
    [InlineData("""{ "name": "Marsh spirit", "kind": "spirit", "strength": "40 %" }""", false)]
    public void Allergen_in_a_name(string file, bool found) =>
        Assert.Equal(
            found,
            Books.Check(
                ("house-base.ingredient.json", file),
                ("glass.drink.json", """{ "name": "Glass", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "house-base", "amount": "30 ml" } ], "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }""")).Findings
                .Flat()
                .Any(f => f.Rule.Id == "SL7008"));

    /// <summary>Fruit or honey in sugar and water that stands warm for days ferments, whatever the step is called; a boil at the end stops it.</summary>
    [Theory]
    [InlineData("pineapple", """{ "do": "rest", "for": "96 h", "at": "24 °C" }""", true)]
    [InlineData("pineapple", """{ "do": "rest", "for": "96 h", "at": "24 °C" }, { "do": "boil", "for": "5 min" }""", false)]
    [InlineData("pineapple", """{ "do": "rest", "for": "96 h", "at": "4 °C" }""", false)]
    [InlineData("honey", """{ "do": "stand", "for": "14 d", "at": "22 °C" }""", true)]
    public void Ferment_by_another_name(string item, string method, bool found)
    {
        string prep = $$"""{ "name": "Mix", "family": "other", "ingredients": [ { "item": "{{item}}", "amount": "300 g" }, { "item": "water", "amount": "1 kg" }, { "item": "white-sugar", "amount": "100 g" } ], "method": [ {{method}}, { "do": "bottle" } ], "keep": { "at": "20 °C", "in": "swing-top bottle", "for": "30 d" } }""";
        Assert.Equal(found, Books.Check(("mix.prep.json", prep)).Findings.Flat().Any(f => f.Rule.Id == "SL5027" && f.Level == Level.Warning));
    }

    /// <summary>An essential oil in an amount that nobody can work out, here through a preparation of a by-product, is not shown to be little.</summary>
    [Fact]
    public void Essential_oil_through_a_by_product()
    {
        string Oil(string amount) =>
            $$"""{ "name": "Pressed", "ingredients": [ { "item": "bergamot-essential-oil", "amount": "100 g" } ], "method": [ { "do": "strain" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" }, "byProducts": [ { "id": "rest-of-it"{{amount}} } ] }""";
        foreach (string amount in new[] { "", """, "amount": "50 g" """ })
        {
            var result = Books.Check(
                ("pressed.prep.json", Oil(amount)),
                ("wrapped.prep.json", """{ "name": "Wrapped", "ingredients": [ { "item": "rest-of-it", "amount": "100 g" } ], "method": [ { "do": "stir" } ], "yield": "100 g", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" } }"""),
                ("glass.drink.json", """{ "name": "Glass", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "wrapped", "amount": "0.2 ml" } ], "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }"""));
            AssertHarm(result, "glass", "SL6009", Level.Warning);
        }
    }

    /// <summary>A brew of the bar's own that only a note of a preparation names may hold caffeine.</summary>
    [Fact]
    public void Caffeine_in_a_note_of_an_inner_preparation() =>
        AssertHarm(
            Books.Check(
                ("shore-brew.ingredient.json", """{ "name": "Shore brew", "kind": "coffee", "state": "liquid", "density": "1.01 g/ml", "water": "98 g", "allergens": { "contains": [] } }"""),
                ("base.prep.json", """{ "name": "Base", "family": "other", "ingredients": [ { "item": "simple-syrup", "amount": "100 g" } ], "method": [ { "do": "stir" } ], "notes": "Add 150 ml of shore brew at the end.", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" } }"""),
                ("glass.drink.json", """{ "name": "Glass", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, { "item": "base", "amount": "50 ml" } ], "method": [ { "do": "build", "ice": "cubed" } ], "serves": 1 }""")),
            "base", "SL7034", Level.Warning);

    /// <summary>Trade names of dry ice.</summary>
    [Theory]
    [InlineData("Carbon ice under the drink for the mist.")]
    [InlineData("Add a nugget of cardice.")]
    public void Dry_ice_by_another_name(string note) =>
        AssertHarm(
            Books.Check(("fog.drink.json", $$"""{ "name": "Fog", "ingredients": [ { "item": "gin", "amount": "50 ml" } ], "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" } ], "glass": "coupe", "notes": "{{note}}", "serves": 1 }""")),
            "fog",
            "SL6014",
            Level.Error);

    /// <summary>Fire that only a note tells of.</summary>
    [Theory]
    [InlineData("Spray overproof rum through the flame of a lighter over the glass.", true)]
    [InlineData("Flame the peel over the glass.", false)]
    [InlineData("Never set it alight.", false)]
    public void Fire_in_a_note(string note, bool found) =>
        Assert.Equal(
            found,
            Books.Check(("flame.drink.json", $$"""{ "name": "Flame", "ingredients": [ { "item": "aged-rum", "amount": "60 ml" } ], "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" } ], "notes": "{{note}}", "serves": 1 }""")).Findings
                .Flat()
                .Any(f => f.Rule.Id == "SL6016"));

    /// <summary>What spirit drew out of a plant and held needs cold again where the spirit is thinned out.</summary>
    [Theory]
    [InlineData("900 ml", true)]
    [InlineData("10 ml", false)]
    public void Infusion_thinned_out(string water, bool found)
    {
        var findings = Books.Check(
            ("shore.prep.json", """{ "name": "Shore", "family": "infusion", "ingredients": [ { "item": "vodka", "amount": "700 ml" }, { "item": "cucumber", "amount": "300 g" } ], "method": [ { "do": "infuse", "for": "24 h", "at": "20 °C" }, { "do": "strain" } ], "yield": "700 ml", "keep": { "at": "20 °C", "in": "bottle", "for": "60 d" } }"""),
            ("mix.prep.json", Prep(
                "batch", $$"""{ "item": "shore", "amount": "100 ml" }, { "item": "water", "amount": "{{water}}" }""", Warm))).Findings.Flat();
        Assert.Equal(found, findings.Any(f => f.Subject == "mix" && f.Rule.Id == "SL5013" && f.Level == Level.Warning));
    }

    /// <summary>
    /// What is called after caffeine and does not say how much it holds is not shown to hold little; a bottle with an alcoholic strength is
    /// judged by its own figures.
    /// </summary>
    [Theory]
    [InlineData("""{ "name": "Volt energy drink", "kind": "soda", "allergens": { "contains": [] } }""", true)]
    [InlineData("""{ "name": "Guarana syrup", "kind": "syrup", "allergens": { "contains": [] } }""", true)]
    [InlineData("""{ "name": "Marsh soda", "kind": "soda", "allergens": { "contains": [] } }""", false)]
    [InlineData("""{ "name": "Volt energy drink", "kind": "soda", "caffeine": "10 mg", "allergens": { "contains": [] } }""", false)]
    public void Caffeine_by_name(string file, bool found) =>
        Assert.Equal(
            found,
            Books.Check(
                ("volt.ingredient.json", file),
                ("glass.drink.json", """{ "name": "Glass", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, { "item": "volt", "amount": "100 ml" } ], "method": [ { "do": "build", "ice": "cubed" } ], "serves": 1 }""")).Findings
                .Flat()
                .Any(f => f.Rule.Id == "SL6020"));

    /// <summary>An opened bottle of food of the bar's own without a life keeps no longer than any food that needs cold (Food Code 3-501.17).</summary>
    [Theory]
    [InlineData("2026-09-01", true)]
    [InlineData("2026-11-22", false)]
    public void Own_juice_opened_long(string opened, bool found) =>
        Assert.Equal(found, Books.Check(
            ("marsh-juice.ingredient.json", """{ "name": "Marsh juice", "kind": "juice", "allergens": { "contains": [] } }"""),
            ("bar-fridge.stock.json", $$"""{ "name": "Fridge", "on": "2026-11-25", "lots": [ { "item": "marsh-juice", "opened": "{{opened}}", "at": "4 °C", "amount": "300 g" } ] }""")).Findings.Flat().Any(f => f.Rule.Id == "SL5010"
                && f.Level == Level.Warning));

    /// <summary>Sugar with milk that nobody weighed is no dry good.</summary>
    [Fact]
    public void Unweighed_milk_kept_warm() =>
        AssertHarm(
            Books.Check(("mix.prep.json", Prep(
                "syrup", """{ "item": "whole-milk" }, { "item": "white-sugar", "amount": "100 g" }""", Warm))),
            "mix",
            "SL5005",
            Level.Error);

    private static string Prep(string family, string lines, string keep) =>
        $$"""{ "name": "Mix", "family": "{{family}}", "ingredients": [ {{lines}} ], "method": [ { "do": "stir" } ], "keep": {{keep}} }""";

    private static void AssertHarm(CheckResult result, string subject, string rule, Level level) =>
        Assert.Contains(result.Findings.Flat(), f => f.Subject == subject && f.Rule.Id == rule && f.Level == level && f.Caution is not null);
}
