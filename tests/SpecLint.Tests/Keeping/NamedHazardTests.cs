using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>Hazards are found by what they are called, wherever they stand, and only there.</summary>
public sealed class NamedHazardTests
{
    private const string Sour = """
        { "name": "NAME", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "lemon-juice", "amount": "25 ml" }, { "item": "simple-syrup", "amount": "20 ml" }LINE ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s"STEP }, { "do": "strain" } ], "glass": "coupe", "serves": 1, "garnish": [ GARNISH ], "declares": { "allergens": [] } }
        """;

    /// <summary>An item that is in no file, by its words, is the poison that its words name.</summary>
    [Theory]
    [InlineData("monkshood", Level.Error)]
    [InlineData("aconitum-napellus", Level.Error)]
    [InlineData("wolf-s-bane", Level.None)]
    [InlineData("wolfsbane-root", Level.Error)]
    [InlineData("castor-beans", Level.Error)]
    [InlineData("angels-trumpet-flowers", Level.Error)]
    [InlineData("nux-vomica", Level.Warning)]
    [InlineData("yew-berries", Level.Error)]
    [InlineData("caster-sugar-rim", Level.None)]
    [InlineData("ivy", Level.Error)]
    public void Unresolved_item(string item, Level level)
    {
        var finding = Check(garnish: $$"""{ "item": "{{item}}", "amount": "1 piece" }""").FirstOrDefault(f => f.Rule.Id == "SL6001");
        Assert.Equal(level, finding?.Level ?? Level.None);
    }

    /// <summary>A file of the bar's own hides nothing: by its name, its aliases, or what it is like.</summary>
    [Theory]
    [InlineData("""{ "name": "Blue hood, dried", "aliases": ["Aconitum"], "kind": "herb", "allergens": { "contains": [] } }""")]
    [InlineData("""{ "name": "Foxglove tips", "kind": "flower", "allergens": { "contains": [] } }""")]
    [InlineData("""{ "name": "Garden bells", "like": "oleander" }""")]
    [InlineData("""{ "name": "Datura extract", "kind": "bitters", "allergens": { "contains": [] } }""")]
    [InlineData("""{ "name": "Hemlock", "kind": "spice", "hazard": "nutmeg", "allergens": { "contains": [] } }""")]
    public void Own_ingredient(string file)
    {
        var findings = Books.Check(
            ("house-thing.ingredient.json", file), ("low-sour.drink.json", Text(line: """, { "item": "house-thing", "amount": "2 g" }"""))).Findings
            .Flat();
        Assert.Contains(findings, f => f is { Rule.Id: "SL6001", Subject: "low-sour", Level: Level.Error });
    }

    /// <summary>A preparation or a by-product of it hides nothing either: the finding is on the preparation, the load in the drink.</summary>
    [Fact]
    public void By_product_keeps_the_hazard()
    {
        var result = Books.Check(
            ("bell-syrup.prep.json", """{ "name": "Bell syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" }, { "item": "foxglove", "amount": "5 g" } ], "method": [ { "do": "steep", "for": "1 h" }, { "do": "strain" } ], "yield": "990 g", "byProducts": [ { "id": "spent-bells", "amount": "10 g" } ] }"""),
            ("low-sour.drink.json", Text(garnish: """{ "item": "spent-bells", "amount": "1 g" }""")));
        Assert.Contains(result.Profiles.Of(result.Book.Drinks[0]).HazardLoads, l => l.Hazard.Id == "foxglove");
    }

    /// <summary>Notes and methods are read; what they deny is not there.</summary>
    [Theory]
    [InlineData("bruise a foxglove petal", true)]
    [InlineData("a drop of belladonna tincture", true)]
    [InlineData("no foxglove", false)]
    [InlineData("never use any hemlock", false)]
    [InlineData("foxglove-free", false)]
    [InlineData("not to be confused with hemlock", false)]
    [InlineData("not too sweet, foxglove on top", true)]
    [InlineData("shake hard. Monkshood honey last", true)]
    public void Note(string note, bool found) =>
        Assert.Equal(found, Check(step: $", \"note\": \"{note}\"").Any(f => f is { Rule.Id: "SL6021", Level: Level.Error }));

    /// <summary>A drink may be called after a poison and hold none.</summary>
    [Fact]
    public void Name_of_a_drink_is_a_warning() =>
        Assert.Equal(Level.Warning, Assert.Single(Check(name: "Nightshade"), f => f.Rule.Id == "SL6021").Level);

    /// <summary>Cryogens are found in any text, and only words about them clear.</summary>
    [Theory]
    [InlineData("drop a dry ice pellet into the glass", "", true)]
    [InlineData("a splash of LN2", "", true)]
    [InlineData("top with liquid nitrogen", "until the froth is gone", true)]
    [InlineData("dry ice that sublimes in the glass", "", true)]
    [InlineData("liquid nitrogen; all of it boils off before the pour", "", false)]
    [InlineData("dry ice in the outer bowl, outside the glass", "", false)]
    [InlineData("sorry, no dry ice", "", false)]
    public void Cryogen(string note, string other, bool found)
    {
        string step = $", \"note\": \"{note}\"";
        string line = other.Length == 0 ? "" : $$""", { "item": "dry-ice", "amount": "20 g", "note": "{{other}}" }""";
        Assert.Equal(
            found,
            Check(
                step: step,
                line: line.Replace(
                    "\"note\": \"until the froth is gone\"", "\"note\": \"stir the froth\"", StringComparison.Ordinal)).Any(f => f.Rule.Id == "SL6014"));
    }

    /// <summary>An end that speaks of the froth does not clear the ice.</summary>
    [Fact]
    public void Froth_that_is_gone_clears_no_dry_ice() =>
        Assert.Contains(Check(line: """, { "item": "dry-ice", "amount": "20 g" }""", step: ", \"until\": \"the froth is gone\""), f => f.Rule.Id == "SL6014");

    /// <summary>Every row of the table of poisons that is read is an error, every recalled one a warning, and the deadliest are there.</summary>
    [Theory]
    [InlineData("monkshood")]
    [InlineData("hemlock")]
    [InlineData("deadly-nightshade")]
    [InlineData("yew")]
    [InlineData("angel-trumpet")]
    [InlineData("castor-bean")]
    [InlineData("foxglove")]
    [InlineData("death-cap")]
    public void Deadliest_are_errors(string id)
    {
        var hazard = HazardTable.Find(id)!;
        Assert.True(hazard.IsDeadly);
        Assert.Equal(Level.Error, hazard.Rules[0].Level);
    }

    private static string Text(string name = "Low sour", string line = "", string step = "", string garnish = "") =>
        Sour.Replace("NAME", name, StringComparison.Ordinal)
            .Replace("LINE", line, StringComparison.Ordinal)
            .Replace("STEP", step, StringComparison.Ordinal)
            .Replace("GARNISH", garnish, StringComparison.Ordinal);

    private static List<Finding> Check(string name = "Low sour", string line = "", string step = "", string garnish = "") =>
        [.. Books.Check(("low-sour.drink.json", Text(name, line, step, garnish))).Findings.Flat()];
}
