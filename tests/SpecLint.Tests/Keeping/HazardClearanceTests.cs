using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>What clears a hazard, and what only looks as if it did; and which law speaks where.</summary>
public sealed class HazardClearanceTests
{
    private static string Bar(string place) => $$"""{ "name": "Bar", "jurisdictions": ["{{place}}"] }""";

    /// <summary>An assay is a figure.</summary>
    [Theory]
    [InlineData("not assayed, bought in the market", true)]
    [InlineData("no assay", true)]
    [InlineData("assay to follow", true)]
    [InlineData("assay: 2.4 %", false)]
    [InlineData("assayed at 24 mg/g of quinine", false)]
    public void Bark(string note, bool found) =>
        Assert.Equal(
            found,
            Check(
                "US", $$"""{ "item": "water", "amount": "1 kg" }, { "item": "cinchona-bark", "amount": "20 g", "note": "{{note}}" }""").Any(f => f.Rule.Id == "SL6005"));

    /// <summary>Only what is freed of the acid is free of it.</summary>
    [Theory]
    [InlineData("rich in prussic acid", true)]
    [InlineData("not free of prussic acid", true)]
    [InlineData("freed of prussic acid", false)]
    [InlineData("FFPA", false)]
    public void Kernels(string note, bool found) =>
        Assert.Equal(
            found,
            Check(
                "IE", $$"""{ "item": "vodka", "amount": "700 ml" }, { "item": "bitter-almond", "amount": "100 g", "note": "{{note}}" }""").Any(f => f.Rule.Id == "SL6008"));

    /// <summary>Mahlab and stones that are in no file give off hydrocyanic acid like the kernels that are.</summary>
    [Theory]
    [InlineData("mahlab")]
    [InlineData("cherry-stones")]
    [InlineData("cherry-laurel-leaves")]
    [InlineData("peach-kernels")]
    public void Kernels_by_name(string item) =>
        Assert.Contains(Check("IE", $$"""{ "item": "vodka", "amount": "700 ml" }, { "item": "{{item}}", "amount": "100 g" }"""), f => f.Rule.Id == "SL6008");

    /// <summary>Heat before the berries are in has cooked no berry.</summary>
    [Theory]
    [InlineData("""{ "do": "boil", "items": ["white-sugar", "water"] }, { "do": "blend", "items": ["elderberry"] }""", true)]
    [InlineData("""{ "do": "boil", "items": ["white-sugar", "water", "elderberry"] }""", false)]
    public void Elderberries(string method, bool found) =>
        Assert.Equal(
            found,
            Check(
                "IE",
                """{ "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" }, { "item": "elderberry", "amount": "300 g" }""",
                method).Any(f => f.Rule.Id == "SL6008"));

    /// <summary>The law of the place: forbidden there, or harmful anywhere.</summary>
    [Theory]
    [InlineData("kava", "GB", Level.Error)]
    [InlineData("kava", "AU", Level.Warning)]
    [InlineData("kava", "CA", Level.Warning)]
    [InlineData("kratom", "GB", Level.Warning)]
    [InlineData("tonka-bean", "GB", Level.Warning)]
    [InlineData("sassafras", "US", Level.Error)]
    public void Forbidden(string item, string place, Level level)
    {
        var found = Check(
            place, $$"""{ "item": "aged-rum", "amount": "700 ml" }, { "item": "{{item}}", "amount": "20 g" }""").FirstOrDefault(f => f.Rule.Id == "SL6002");
        Assert.Equal(level, found?.Level);
    }

    /// <summary>Schedule 23 of Australia and New Zealand, where the catalogue has the plant.</summary>
    [Theory]
    [InlineData("AU")]
    [InlineData("NZ")]
    public void Calamus_in_Australia_and_New_Zealand(string place) =>
        Assert.Contains(
            Check(place, """{ "item": "vodka", "amount": "700 ml" }, { "item": "calamus", "amount": "20 g" }"""),
            f => f is { Rule.Id: "SL6002", Level: Level.Error });

    /// <summary>Wormwood by the glass speaks in Great Britain, Australia and Canada too.</summary>
    [Theory]
    [InlineData("IE")]
    [InlineData("GB")]
    [InlineData("AU")]
    [InlineData("CA")]
    [InlineData("US")]
    public void Wormwood(string place)
    {
        var findings = Books.Check(
            ("bar.json", Bar(place)),
            ("worm-spirit.prep.json", """{ "name": "Bitter base", "family": "infusion", "ingredients": [ { "item": "vodka", "amount": "700 ml" }, { "item": "wormwood", "amount": "100 g" } ], "method": [ { "do": "steep", "for": "2 d" }, { "do": "strain" } ], "yield": "600 ml" }"""),
            ("bitter-glass.drink.json", """{ "name": "Bitter glass", "ingredients": [ { "item": "worm-spirit", "amount": "50 ml" } ], "method": [ { "do": "build" } ], "glass": "coupe", "serves": 1 }""")).Findings.Flat();
        Assert.Contains(findings, f => f.Rule.Id == "SL6004");
    }

    /// <summary>An ingredient of the bar's own brings its quinine to the rule.</summary>
    [Fact]
    public void Own_quinine()
    {
        var findings = Books.Check(
            ("bar.json", Bar("US")),
            ("fever-drops.ingredient.json", """{ "name": "Fever drops", "kind": "other", "state": "liquid", "density": "1 g/ml", "water": "99 g", "quinine": "500 mg", "keepsCold": false, "allergens": { "contains": [] } }"""),
            ("fever-glass.drink.json", """{ "name": "Fever glass", "ingredients": [ { "item": "gin", "amount": "40 ml" }, { "item": "fever-drops", "amount": "20 ml" }, { "item": "soda-water", "amount": "100 ml" } ], "method": [ { "do": "build", "ice": "cubed" } ], "glass": "highball", "serves": 1 }""")).Findings.Flat();
        Assert.Contains(findings, f => f.Rule.Id == "SL6006");
    }

    /// <summary>Each law has its own limit of benzoate; the Australian one is of drinks without alcohol.</summary>
    [Theory]
    [InlineData("AU", "0.1 g", "water", "benzoate-anz")]
    [InlineData("NZ", "0.1 g", "water", "benzoate-anz")]
    [InlineData("AU", "0.1 g", "gin", "")]
    [InlineData("CA", "0.1 g", "water", "")]
    [InlineData("CA", "0.4 g", "water", "benzoate-ca")]
    public void Benzoate(string place, string amount, string with, string limit)
    {
        string drink = $$"""{ "name": "Glass", "ingredients": [ { "item": "{{with}}", "amount": "150 ml" }, { "item": "sodium-benzoate", "amount": "{{amount}}" } ], "method": [ { "do": "build", "into": "glass" } ], "serves": 1 }""";
        var found = Books.Check(("bar.json", Bar(place)), ("glass.drink.json", drink)).Findings.Flat().Where(f => f.Rule.Id == "SL6018").ToList();
        Assert.Equal(limit.Length == 0 ? [] : [limit], found.Select(f => f.Key));
        Assert.All(found, f => Assert.Equal(Level.Warning, f.Level));
    }

    /// <summary>A lined mug is a lined mug, whatever its id; a "solid lime shell" is no lid.</summary>
    [Fact]
    public void Lined_mug_by_its_name()
    {
        const string Mule = """{ "name": "Mule", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, { "item": "lime-juice", "amount": "20 ml" } ], "method": [ { "do": "build", "ice": "cubed" } ], "glass": "copper-mug", "serves": 1 }""";
        Assert.DoesNotContain(
            Books.Check(
                ("bar.json", """{ "name": "Bar", "jurisdictions": ["US"], "glasses": { "copper-mug": { "name": "Copper mug, lined", "brim": "350 ml" } } }"""),
                ("mule.drink.json", Mule)).Findings
                .Flat(),
            f => f.Rule.Id == "SL6012");
        Assert.Contains(
            Books.Check(
                ("bar.json", """{ "name": "Bar", "jurisdictions": ["US"], "glasses": { "copper-mug": { "name": "Copper mug, unlined", "brim": "350 ml" } } }"""),
                ("mule.drink.json", Mule)).Findings
                .Flat(),
            f => f.Rule.Id == "SL6012");
    }

    /// <summary>Rows of the table of hazards that ask something are read by a rule.</summary>
    [Theory]
    [InlineData("quassia")]
    [InlineData("star-anise")]
    [InlineData("raw-milk")]
    [InlineData("cassava")]
    [InlineData("camphor")]
    public void Asked(string item) =>
        Assert.Contains(
            Check("IE", $$"""{ "item": "water", "amount": "1 kg" }, { "item": "{{item}}", "amount": "20 g" }""", """{ "do": "stir" }"""),
            f => f.Rule.Id == "SL6023");

    /// <summary>
    /// Methyl salicylate: a teaspoon (5 mL) or less has killed (J. Davis, Journal of Emergency Medicine 32:63, 2007); a tenth of it in a
    /// serve is an error.
    /// </summary>
    [Theory]
    [InlineData("10 ml", Level.Error)]
    [InlineData("1 ml", Level.Warning)]
    public void Wintergreen(string amount, Level level)
    {
        string cordial = $$"""{ "name": "Green cordial", "family": "cordial", "ingredients": [ { "item": "white-sugar", "amount": "250 g" }, { "item": "water", "amount": "250 g" }, { "item": "wintergreen-oil", "amount": "{{amount}}" } ], "method": [ { "do": "stir" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" } }""";
        Assert.Equal(level, Assert.Single(Books.Check(("green-cordial.prep.json", cordial)).Findings.Flat(), f => f.Rule.Id == "SL6009").Level);
    }

    /// <summary>What smoulders is named, and is not treated or resinous wood (Regulation (EC) 2065/2003, Annex I, on smoke flavourings).</summary>
    [Theory]
    [InlineData("", Level.Note)]
    [InlineData("over treated chips", Level.Warning)]
    [InlineData("over pine", Level.Warning)]
    [InlineData("over untreated oak", Level.None)]
    [InlineData("over hay", Level.None)]
    [InlineData("not treated, hardwood", Level.None)]
    public void Smoke(string note, Level level)
    {
        string drink = $$"""{ "name": "Glass", "ingredients": [ { "item": "bourbon", "amount": "50 ml" } ], "method": [ { "do": "build", "into": "glass" }, { "do": "smoke"{{(note.Length == 0 ? "" : $", \"note\": \"{note}\"")}} } ], "serves": 1 }""";
        Assert.Equal(level, Books.Check(("glass.drink.json", drink)).Findings.Flat().FirstOrDefault(f => f.Rule.Id == "SL6023")?.Level ?? Level.None);
    }

    /// <summary>A raw oyster asks for its advisory (US FDA Food Code 2022, 3-603.11).</summary>
    [Theory]
    [InlineData("", true)]
    [InlineData("Contains raw shellfish", false)]
    [InlineData("No raw shellfish", true)]
    public void Raw_oyster(string advisory, bool found)
    {
        string drink = $$"""{ "name": "Glass", "ingredients": [ { "item": "vodka", "amount": "50 ml" } ], "method": [ { "do": "build", "into": "glass" } ], "garnish": [ { "item": "oyster", "amount": "1 piece" } ], "declares": { "allergens": ["mollusc"], "advisory": ["{{advisory}}"] } }""";
        Assert.Equal(found, Books.Check(("glass.drink.json", drink)).Findings.Flat().Any(f => f.Rule.Id == "SL6023"));
    }

    /// <summary>21 CFR 184.1069: 0.7 % of malic acid; what juice brings is no addition.</summary>
    [Theory]
    [InlineData("US", "malic-acid", "1.5 g", true)]
    [InlineData("IE", "malic-acid", "1.5 g", false)]
    [InlineData("US", "malic-acid", "0.5 g", false)]
    [InlineData("US", "apple-juice", "150 ml", false)]
    public void Malic_acid(string place, string item, string amount, bool found)
    {
        string drink = $$"""{ "name": "Glass", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "simple-syrup", "amount": "20 ml" }, { "item": "{{item}}", "amount": "{{amount}}" } ], "method": [ { "do": "build", "into": "glass" } ], "serves": 1 }""";
        Assert.Equal(found, Books.Check(("bar.json", Bar(place)), ("glass.drink.json", drink)).Findings.Flat().Any(f => f.Rule.Id == "SL6018"));
    }

    /// <summary>A carbonator is plumbed without copper (US FDA Food Code 4-101.14(A)); a steel line is in order.</summary>
    [Theory]
    [InlineData("through the copper coil", true)]
    [InlineData("through the steel coil", false)]
    public void Carbonator(string note, bool found)
    {
        string soda = $$"""{ "name": "House soda", "family": "carbonated", "ingredients": [ { "item": "water", "amount": "5 l" } ], "method": [ { "do": "carbonate", "at": "4 °C", "note": "{{note}}" } ], "keep": { "at": "4 °C", "in": "steel keg", "for": "2 d" } }""";
        Assert.Equal(found, Books.Check(("house-soda.prep.json", soda)).Findings.Flat().Any(f => f.Rule.Id == "SL6012"));
    }

    /// <summary>A vegetable syrup that stood warm is thrown away, not tasted.</summary>
    [Theory]
    [InlineData("carrot-syrup", true)]
    [InlineData("simple-syrup", false)]
    public void Low_acid_syrup_in_the_room(string item, bool found)
    {
        var findings = Books.Check(("shelf.stock.json", $$"""{ "on": "2026-11-25", "lots": [ { "item": "{{item}}", "opened": "2026-11-05", "amount": "500 ml", "at": "20 °C" } ] }""")).Findings
            .Flat()
            .ToList();
        Assert.Equal(found, findings.Any(f => f is { Rule.Id: "SL5012", Level: >= Level.Warning }));
        if (found) Assert.DoesNotContain(findings, f => f.Advice.Contains("Taste", StringComparison.Ordinal));
    }

    private static List<Finding> Check(string place, string lines, string method = """{ "do": "steep", "for": "2 d" }, { "do": "strain" }""") =>
        [.. Books.Check(
            ("bar.json", Bar(place)),
            ("house-base.prep.json", $$"""{ "name": "House base", "family": "infusion", "ingredients": [ {{lines}} ], "method": [ {{method}} ], "yield": "600 g", "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" } }""")).Findings
            .Flat()];
}
