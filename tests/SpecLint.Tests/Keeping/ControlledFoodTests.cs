using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>
/// What needs time and temperature control, and what clears it: a family word, a split line, a layer of preparation, a pinch of
/// salt, a kill step before the hazard went in, or what is not written, never do.
/// </summary>
public sealed class ControlledFoodTests
{
    private const string Us = """{ "name": "Bar", "jurisdictions": ["US"] }""";
    private const string Ie = """{ "name": "Bar", "jurisdictions": ["IE"] }""";

    /// <summary>A dry plant in water is a plant food in water (US Food Code 1-201.10: heat-treated plant food).</summary>
    [Theory]
    [InlineData("black-tea-leaves", 20)]
    [InlineData("coffee-beans", 100)]
    [InlineData("shiitake", 30)]
    [InlineData("kombu", 30)]
    [InlineData("chickpea", 200)]
    [InlineData("chia-seed", 50)]
    [InlineData("cornstarch", 50)]
    [InlineData("linden-flower", 20)]
    public void Dry_good_in_water_kept_warm(string item, int grams)
    {
        foreach (string family in new[] { "infusion", "other", "batch" })
        {
            var found = Check(
                Us,
                Prep(
                    family,
                    $$"""{ "item": "water", "amount": "1 kg" }, { "item": "{{item}}", "amount": "{{grams}} g" }""",
                    """{ "do": "boil", "for": "5 min" }, { "do": "strain" }""",
                    """{ "at": "20 °C", "in": "jug", "for": "30 d" }"""));
            Assert.Contains(found, f => f.Rule.Id is "SL5005" or "SL5013" && f.Level == Level.Error);
        }
    }

    /// <summary>The brewed drink itself, bought or brewed, likewise.</summary>
    [Fact]
    public void Brewed_tea_kept_warm() =>
        Assert.Contains(
            Check(
                Us,
                Prep(
                    "other", """{ "item": "black-tea", "amount": "1 kg" }""", """{ "do": "stir" }""",
                    """{ "at": "20 °C", "in": "jug", "for": "30 d" }""")),
            f => f.Rule.Id is "SL5005" or "SL5013" && f.Level == Level.Error);

    /// <summary>Its life is not that of the family in spirit (life.json, onlyIf).</summary>
    [Fact]
    public void Water_infusion_has_no_life_of_spirit()
    {
        var (_, profiles) = Checker.Profile(Books.Input(
            ("bar.json", Us),
            ("tea-steep.prep.json", Prep(
                "infusion",
                """{ "item": "water", "amount": "1 kg" }, { "item": "black-tea-leaves", "amount": "20 g" }""",
                """{ "do": "steep", "for": "1 h" }, { "do": "strain" }""",
                """{ "at": "4 °C", "in": "bottle" }"""))));
        Assert.InRange(profiles.Of(profiles.Book.Preps[0]).KeepingTerms!.Least.Days, 0, 7);
    }

    /// <summary>An ingredient of the bar's own that does not say `keepsCold` is not harmless for that.</summary>
    [Theory]
    [InlineData("juice")]
    [InlineData("puree")]
    [InlineData("vegetable")]
    [InlineData("herb")]
    [InlineData("ferment")]
    [InlineData("sauce")]
    [InlineData("other")]
    public void Own_ingredient_without_keepsCold(string kind)
    {
        string own = $$"""{ "name": "Green thing", "kind": "{{kind}}", "state": "liquid", "ph": "6.1", "water": "93 g", "density": "1.02 g/ml", "allergens": { "contains": [] } }""";
        var found = Books.Check(
            ("bar.json", Us),
            ("green-thing.ingredient.json", own),
            ("green-base.prep.json", Prep(
                "other", """{ "item": "green-thing", "amount": "1 kg" }""", """{ "do": "stir" }""",
                """{ "at": "20 °C", "in": "jug", "for": "30 d" }"""))).Findings
            .Flat();
        Assert.Contains(found, f => f.Rule.Id is "SL5005" or "SL5013" && f.Level >= Level.Warning);
    }

    /// <summary>A low-acid juice stays one in two lines, mixed with another, or under another family word.</summary>
    [Theory]
    [InlineData("juice", """{ "item": "carrot-juice", "amount": "1 kg" }""")]
    [InlineData("other", """{ "item": "carrot-juice", "amount": "1 kg" }""")]
    [InlineData("infusion", """{ "item": "carrot-juice", "amount": "500 g" }, { "item": "carrot-juice", "amount": "500 g" }""")]
    [InlineData("batch", """{ "item": "carrot-juice", "amount": "500 g" }, { "item": "celery-juice", "amount": "500 g" }""")]
    public void Low_acid_juice_sealed(string family, string lines) =>
        Assert.Contains(
            Check(
                Us, Prep(family, lines, """{ "do": "stir" }""", """{ "at": "20 °C", "in": "swing-top bottle, closed", "for": "30 d" }""")),
            f => f is { Rule.Id: "SL5013", Level: Level.Error });

    /// <summary>A ferment bursts its bottle whatever was boiled before, however little salt is in it, however the vessel is written.</summary>
    [Theory]
    [InlineData("", """{ "do": "ferment", "at": "24 °C", "for": "3 d" }""", "\"in\": \"bottle\", \"sealed\": true")]
    [InlineData("", """{ "do": "boil", "for": "5 min" }, { "do": "ferment", "at": "24 °C", "for": "3 d" }""", "\"in\": \"bottle\", \"sealed\": true")]
    [InlineData(""", { "item": "salt", "amount": "2 g" }""", """{ "do": "ferment", "at": "24 °C", "for": "3 d" }""", "\"in\": \"bottle\", \"sealed\": true")]
    [InlineData("", """{ "do": "ferment", "at": "24 °C", "for": "3 d" }""", "\"in\": \"swing-top bottle, closed\"")]
    [InlineData(""", { "item": "yeast", "amount": "1 g" }""", """{ "do": "rest", "for": "48 h", "at": "24 °C" }""", "\"in\": \"bottle\", \"sealed\": true")]
    public void Ferment_sealed(string extra, string method, string vessel) =>
        Assert.Contains(
            Check(
                Ie,
                Prep(
                    "carbonated",
                    $$"""{ "item": "pineapple", "amount": "1 kg" }, { "item": "water", "amount": "1 kg" }, { "item": "white-sugar", "amount": "150 g" }{{extra}}""",
                    method,
                    $$"""{ "at": "20 °C", {{vessel}}, "for": "10 d" }""")),
            f => f is { Rule.Id: "SL5027", Level: Level.Error });

    /// <summary>A vent clears it, and so does a kill after the ferment.</summary>
    [Theory]
    [InlineData("""{ "do": "ferment", "at": "24 °C", "for": "3 d" }""", "\"in\": \"bottle, cap loose\"")]
    [InlineData("""{ "do": "ferment", "at": "24 °C", "for": "3 d" }, { "do": "boil", "for": "5 min" }""", "\"in\": \"bottle\", \"sealed\": true")]
    public void Ferment_vented_or_stopped(string method, string vessel) =>
        Assert.DoesNotContain(
            Check(
                Ie,
                Prep(
                    "ferment",
                    """{ "item": "pineapple", "amount": "1 kg" }, { "item": "water", "amount": "1 kg" }, { "item": "white-sugar", "amount": "150 g" }""",
                    method,
                    $$"""{ "at": "4 °C", {{vessel}}, "for": "10 d" }""")),
            f => f.Rule.Id == "SL5027");

    /// <summary>Heat clears egg only where the egg is in, and by the row of that egg (9 CFR 590.570 table I as in force to 2022).</summary>
    [Theory]
    [InlineData(
        "egg-yolk",
        """{ "do": "boil", "items": ["white-sugar", "water"], "to": "100 °C", "for": "5 min" }, { "do": "cool" }, { "do": "stir", "items": ["egg-yolk"] }""",
        true)]
    [InlineData("egg-yolk", """{ "do": "heat", "items": ["white-sugar", "water", "egg-yolk"], "to": "64 °C", "for": "4 min" }, { "do": "cool" }""", false)]
    [InlineData("egg-white", """{ "do": "stir" }""", true)]
    public void Raw_egg(string egg, string method, bool found) =>
        Assert.Equal(
            found,
            Check(
                Us,
                Prep(
                    "other",
                    $$"""{ "item": "white-sugar", "amount": "200 g" }, { "item": "water", "amount": "200 g" }, { "item": "{{egg}}", "amount": "100 g" }""",
                    method,
                    """{ "at": "4 °C", "in": "jar", "for": "5 d" }""")).Any(f => f.Rule.Id == "SL5018"));

    /// <summary>White alone meets its own row.</summary>
    [Fact]
    public void Egg_white_by_its_own_row() =>
        Assert.DoesNotContain(
            Check(
                Us,
                Prep(
                    "other", """{ "item": "egg-white", "amount": "500 g" }""", """{ "do": "pasteurise", "to": "57 °C", "for": "4 min" }""",
                    """{ "at": "4 °C", "in": "jar", "for": "3 d" }""")),
            f => f.Rule.Id is "SL5018" or "SL5029");

    /// <summary>Apple juice is heated for Cryptosporidium (FDA Juice HACCP guidance 2004, V.C 5.2).</summary>
    [Theory]
    [InlineData("3 s", true)]
    [InlineData("6 s", false)]
    public void Apple_juice(string time, bool found) =>
        Assert.Equal(
            found,
            Check(
                Us,
                Prep(
                    "juice", """{ "item": "apple-juice", "amount": "1 kg" }""",
                    $$"""{ "do": "pasteurise", "to": "71.1 °C", "for": "{{time}}" }""", """{ "at": "4 °C", "in": "jug", "for": "3 d" }""",
                    """, "measured": { "ph": 3.6, "on": "2026-11-24" }""")).Any(f => f.Rule.Id == "SL5029"));

    /// <summary>Garlic in a little less than its own weight of oil is garlic in oil, through a layer too.</summary>
    [Fact]
    public void Garlic_in_oil()
    {
        string oil = Prep(
            "infusion", """{ "item": "garlic", "amount": "500 g" }, { "item": "olive-oil", "amount": "450 g" }""", """{ "do": "blend" }""",
            """{ "at": "4 °C", "in": "jar", "for": "14 d" }""");
        Assert.Contains(Check(Ie, oil), f => f is { Rule.Id: "SL5016", Level: Level.Error });
        var layered = Books.Check(
            ("bar.json", Ie),
            ("garlic-oil.prep.json", oil),
            ("dressed.prep.json", Prep(
                "other", """{ "item": "garlic-oil", "amount": "500 g" }""", """{ "do": "stir" }""",
                """{ "at": "4 °C", "in": "jar", "for": "14 d" }"""))).Findings
            .Flat();
        Assert.Contains(layered, f => f is { Rule.Id: "SL5016", Subject: "dressed", Level: Level.Error });
    }

    /// <summary>Reduced oxygen is not only a bag: cold brew in a keg under nitrogen (Food Code 1-201.10, 3-502.12).</summary>
    [Fact]
    public void Cold_brew_in_a_keg() =>
        Assert.Contains(
            Check(
                Us,
                Prep(
                    "infusion", """{ "item": "water", "amount": "5 kg" }, { "item": "coffee-beans", "amount": "500 g" }""",
                    """{ "do": "cold-brew", "for": "18 h" }, { "do": "strain" }""",
                    """{ "at": "4 °C", "in": "nitro keg", "for": "30 d" }""")),
            f => f.Rule.Id == "SL5017");

    /// <summary>The British factors clear nothing where US law is in force.</summary>
    [Theory]
    [InlineData(Us, true)]
    [InlineData(Ie, false)]
    public void Bag_at_pH_4_8(string bar, bool found) =>
        Assert.Equal(
            found,
            Check(
                bar,
                Prep(
                    "other", """{ "item": "pumpkin", "amount": "1 kg" }""", """{ "do": "blend" }""",
                    """{ "at": "3 °C", "in": "vacuum bag", "sealed": true, "for": "7 d" }""",
                    """, "measured": { "ph": 4.8, "on": "2026-11-24" }""")).Any(f => f.Rule.Id == "SL5017"));

    /// <summary>Held hot is not too warm, and a few hours by the clock are a warning.</summary>
    [Theory]
    [InlineData("65 °C", "4 h", Level.None)]
    [InlineData("20 °C", "4 h", Level.Warning)]
    [InlineData("20 °C", "2 d", Level.Error)]
    public void Hot_hold_and_time(string at, string time, Level level) =>
        Assert.Equal(
            level,
            Check(
                Us,
                Prep(
                    "cream", """{ "item": "whole-milk", "amount": "1 kg" }""", """{ "do": "stir" }""",
                    $$"""{ "at": "{{at}}", "in": "urn", "for": "{{time}}" }""")).FirstOrDefault(f => f.Rule.Id == "SL5005")?.Level
                ?? Level.None);

    /// <summary>8 °C is the figure of England; Scotland asks for a cold place without one, so that the yardstick of 5 °C stays.</summary>
    [Theory]
    [InlineData("GB", false)]
    [InlineData("GB-ENG", false)]
    [InlineData("GB-SCT", true)]
    [InlineData("IE", true)]
    public void Seven_degrees_in_Britain(string place, bool found) =>
        Assert.Equal(
            found,
            Check(
                $$"""{ "name": "Bar", "jurisdictions": ["{{place}}"] }""",
                Prep(
                    "cream", """{ "item": "whole-milk", "amount": "1 kg" }""", """{ "do": "stir" }""",
                    """{ "at": "7 °C", "in": "jug", "for": "2 d" }""")).Any(f => f.Rule.Id == "SL5005"));

    /// <summary>The first stage of cooling: 21 °C within 2 h (Food Code 3-501.14(A)).</summary>
    [Fact]
    public void Cooling_in_two_stages() =>
        Assert.Contains(
            Check(
                Us,
                Prep(
                    "other", """{ "item": "celery", "amount": "2 kg" }, { "item": "water", "amount": "4 kg" }""",
                    """{ "do": "simmer", "for": "1 h" }, { "do": "cool", "to": "25 °C", "for": "5 h" }""",
                    """{ "at": "4 °C", "in": "pot", "for": "3 d" }""")),
            f => f.Rule.Id == "SL5021");

    /// <summary>Garlic in honey called a ferment and kept warm is as bad as called a syrup.</summary>
    [Fact]
    public void Garlic_in_honey_called_a_ferment() =>
        Assert.Contains(
            Check(
                Ie,
                Prep(
                    "ferment", """{ "item": "garlic", "amount": "200 g" }, { "item": "honey", "amount": "400 g" }""",
                    """{ "do": "ferment", "for": "30 d" }""", """{ "at": "20 °C", "in": "jar, lid loose", "for": "90 d" }""")),
            f => f.Rule.Id is "SL5026" or "SL5005" or "SL5016" && f.Level == Level.Error);

    /// <summary>A soured low-acid food sealed for the room is an error where US law is in force.</summary>
    [Theory]
    [InlineData(Us, Level.Error)]
    [InlineData(Ie, Level.Warning)]
    public void Acidified_for_the_shelf(string bar, Level level) =>
        Assert.Equal(
            level,
            Check(
                bar,
                Prep(
                    "acid-adjusted-juice",
                    """{ "item": "beetroot-juice", "amount": "500 g" }, { "item": "citric-acid", "amount": "30 g" }""",
                    """{ "do": "stir" }""",
                    """{ "at": "20 °C", "in": "bottle", "sealed": true, "for": "60 d" }""",
                    """, "measured": { "ph": 2.4, "on": "2026-11-24" }""")).FirstOrDefault(f => f.Rule.Id == "SL5014")?.Level);

    /// <summary>Sugar water is too thin under any family word.</summary>
    [Theory]
    [InlineData("syrup")]
    [InlineData("infusion")]
    [InlineData("batch")]
    [InlineData("other")]
    public void Sugar_water_at_room_temperature(string family) =>
        Assert.Contains(
            Check(
                Us,
                Prep(
                    family, """{ "item": "water", "amount": "700 g" }, { "item": "white-sugar", "amount": "300 g" }""",
                    """{ "do": "stir" }""", """{ "at": "20 °C", "in": "bottle", "for": "30 d" }""")),
            f => f is { Rule.Id: "SL5025", Level: Level.Error });

    /// <summary>The rating of the vessel alone decides where it is known, the gas held at closing counted.</summary>
    [Theory]
    [InlineData("1.5 bar", true)]
    [InlineData("8 bar", false)]
    public void Ferment_against_its_rating(string rating, bool found) =>
        Assert.Equal(
            found,
            Check(
                Ie,
                Prep(
                    "ferment",
                    """{ "item": "water", "amount": "1 kg" }, { "item": "white-sugar", "amount": "12 g" }""",
                    """{ "do": "ferment", "at": "22 °C", "for": "2 d" }""",
                    $$"""{ "at": "4 °C", "in": "bottle", "sealed": true, "rating": "{{rating}}", "for": "10 d" }""")).Any(f => f.Rule.Id == "SL5027"));

    /// <summary>Aged egg-nog stays an error: a demonstration is no process.</summary>
    [Fact]
    public void Aged_egg_nog() =>
        Assert.Contains(
            Check(
                Us,
                Prep(
                    "batch",
                    """{ "item": "egg-yolk", "amount": "100 g" }, { "item": "bourbon", "amount": "700 g" }, { "item": "white-sugar", "amount": "100 g" }""",
                    """{ "do": "stir" }""",
                    """{ "at": "4 °C", "in": "jar", "for": "30 d" }""")),
            f => f is { Rule.Id: "SL5018", Level: Level.Error });

    /// <summary>Heat before the pack is closed, or food handled between heat and pack, clears nothing.</summary>
    [Theory]
    [InlineData("""{ "do": "heat", "to": "90 °C", "for": "10 min" }, { "do": "strain" }, { "do": "bottle" }""", true)]
    [InlineData("""{ "do": "bottle" }, { "do": "heat", "to": "90 °C", "for": "10 min" }""", false)]
    public void Heat_and_pack(string method, bool found) =>
        Assert.Equal(
            found,
            Check(
                Ie,
                Prep(
                    "other", """{ "item": "pumpkin", "amount": "1 kg" }, { "item": "water", "amount": "300 g" }""", method,
                    """{ "at": "3 °C", "in": "vacuum bag", "sealed": true, "for": "20 d" }""")).Any(f => f.Rule.Id == "SL5017"));

    /// <summary>Where US law is in force the advice to sour food names the variance.</summary>
    [Fact]
    public void Souring_advice_names_the_variance() =>
        Assert.Contains(
            Check(
                Us,
                Prep(
                    "juice", """{ "item": "carrot-juice", "amount": "1 kg" }""", """{ "do": "stir" }""",
                    """{ "at": "12 °C", "in": "jug", "for": "3 d" }""")),
            f => f.Rule.Id == "SL5005" && f.Advice!.Contains("3-502.11(C)", StringComparison.Ordinal));

    private static string Prep(string family, string lines, string method, string keep, string more = "") =>
        $$"""{ "name": "House base", "family": "{{family}}", "ingredients": [ {{lines}} ], "method": [ {{method}} ], "yield": "900 g", "keep": {{keep}}{{more}} }""";

    private static List<Finding> Check(string bar, string prep) => [.. Books.Check(("bar.json", bar), ("house-base.prep.json", prep)).Findings.Flat()];

    /// <summary>What nobody knows is done, or cooks at nobody knows what, takes nothing away from what was boiled and is not cooled.</summary>
    [Theory]
    [InlineData("")]
    [InlineData(""", { "do": "swoosh" }""")]
    [InlineData(""", { "do": "steam" }""")]
    [InlineData(""", { "do": "cool", "to": "21 °C", "for": "9 h" }, { "do": "swoosh" }, { "do": "cool", "to": "4 °C", "for": "1 h" }""")]
    public void What_was_boiled_is_cooled_whatever_comes_behind(string behind)
    {
        var result = Books.Check(("tide-stock.prep.json", $$"""
            { "name": "Tide stock", "ingredients": [ { "item": "carrot-juice", "amount": "10 kg" } ],
              "method": [ { "do": "boil", "for": "5 min" }{{behind}} ], "yield": "9 kg", "keep": { "at": "4 °C", "in": "tub", "sealed": false, "for": "2 d" } }
            """));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5021");
    }

    /// <summary>A ferment read low in acid, or one of nuts that is not read sour, is an error past its date mark; at the limit it is a warning.</summary>
    [Theory]
    [InlineData("pineapple", "5.5", Level.Error)]
    [InlineData("almond", "4.5", Level.Error)]
    [InlineData("pineapple", "4.5", Level.Warning)]
    public void A_ferment_that_is_not_read_sour_kept_past_its_date_mark(string item, string ph, Level level)
    {
        var result = Books.Check(("tide-ferment.prep.json", $$"""
            { "name": "Tide ferment", "family": "ferment", "ingredients": [ { "item": "{{item}}", "amount": "600 g" }, { "item": "water", "amount": "1 kg" } ],
              "method": [ { "do": "ferment", "at": "24 °C", "for": "3 d" }, { "do": "strain" } ],
              "keep": { "at": "4 °C", "in": "bottle", "for": "20 d" }, "measured": { "ph": {{ph}} } }
            """));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id is "SL5001" or "SL5013" && f.Level == level);
    }
}
