using SpecLint.Changes;
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
        Assert.Equal(found, Check("US", $$"""{ "item": "water", "amount": "1 kg" }, { "item": "cinchona-bark", "amount": "20 g", "note": "{{note}}" }""").Any(f => f.Rule.Id == "SL6005"));

    /// <summary>Only what is freed of the acid is free of it.</summary>
    [Theory]
    [InlineData("rich in prussic acid", true)]
    [InlineData("not free of prussic acid", true)]
    [InlineData("freed of prussic acid", false)]
    [InlineData("FFPA", false)]
    public void Kernels(string note, bool found) =>
        Assert.Equal(found, Check("IE", $$"""{ "item": "vodka", "amount": "700 ml" }, { "item": "bitter-almond", "amount": "100 g", "note": "{{note}}" }""").Any(f => f.Rule.Id == "SL6008"));

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
        Assert.Equal(found, Check("IE", """{ "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" }, { "item": "elderberry", "amount": "300 g" }""", method).Any(f => f.Rule.Id == "SL6008"));

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
        var found = Check(place, $$"""{ "item": "aged-rum", "amount": "700 ml" }, { "item": "{{item}}", "amount": "20 g" }""").FirstOrDefault(f => f.Rule.Id == "SL6002");
        Assert.Equal(level, found?.Level);
    }

    /// <summary>Schedule 23 of Australia and New Zealand, where the catalogue has the plant.</summary>
    [Theory]
    [InlineData("AU")]
    [InlineData("NZ")]
    public void Calamus_in_Australia_and_New_Zealand(string place) =>
        Assert.Contains(Check(place, """{ "item": "vodka", "amount": "700 ml" }, { "item": "calamus", "amount": "20 g" }"""), f => f is { Rule.Id: "SL6002", Level: Level.Error });

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
        Assert.DoesNotContain(Books.Check(("bar.json", """{ "name": "Bar", "jurisdictions": ["US"], "glasses": { "copper-mug": { "name": "Copper mug, lined", "brim": "350 ml" } } }"""), ("mule.drink.json", Mule)).Findings.Flat(), f => f.Rule.Id == "SL6012");
        Assert.Contains(Books.Check(("bar.json", """{ "name": "Bar", "jurisdictions": ["US"], "glasses": { "copper-mug": { "name": "Copper mug, unlined", "brim": "350 ml" } } }"""), ("mule.drink.json", Mule)).Findings.Flat(), f => f.Rule.Id == "SL6012");
    }

    /// <summary>Rows of the table of hazards that ask something are read by a rule.</summary>
    [Theory]
    [InlineData("quassia")]
    [InlineData("star-anise")]
    [InlineData("raw-milk")]
    [InlineData("cassava")]
    [InlineData("camphor")]
    public void Asked(string item) =>
        Assert.Contains(Check("IE", $$"""{ "item": "water", "amount": "1 kg" }, { "item": "{{item}}", "amount": "20 g" }""", """{ "do": "stir" }"""), f => f.Rule.Id == "SL6023");

    private static List<Finding> Check(string place, string lines, string method = """{ "do": "steep", "for": "2 d" }, { "do": "strain" }""") =>
        [.. Books.Check(("bar.json", Bar(place)), ("house-base.prep.json", $$"""{ "name": "House base", "family": "infusion", "ingredients": [ {{lines}} ], "method": [ {{method}} ], "yield": "600 g", "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" } }""")).Findings.Flat()];
}
