using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Facts of the trade that the rules of balance, acid and sugar, and service must know.</summary>
public sealed class TradeFactsTests
{
    private const string Bar = """
        { "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "scale": "0.1 g", "jigger": "2.5 ml", "freezer": "-18 °C" } }
        """;

    /// <summary>Common practice, no source: orange at lime strength is 32 g of citric and 20 g of malic acid to the litre, its own 0.8 % counted.</summary>
    [Theory]
    [InlineData("orange-juice", 32, 20)]
    [InlineData("pineapple-juice", 32, 20)]
    [InlineData("orange-juice", 52, 0)]
    [InlineData("grapefruit-juice", 27, 13)]
    public void Adjusted_juices_of_the_trade_meet_six_per_cent_by_volume(string juice, double citric, double malic)
    {
        var found = Check(Acid(
            $"{{ \"item\": \"{juice}\", \"amount\": \"1000 ml\" }}, {{ \"item\": \"citric-acid\", \"amount\": \"{citric} g\" "
                + $"}}{(malic > 0 ? $", {{ \"item\": \"malic-acid\", \"amount\": \"{malic} g\" }}" : "")}",
            "6 % w/v"));
        Assert.DoesNotContain(found, f => f.Rule.Id is "SL4001" or "SL4018" or "SL4014");
    }

    /// <summary>
    /// Common practice, no source: a wine acid of 48 g of acids and 24 g of sugar in 800 g of water is labelled 6 %, counted on the water;
    /// of the whole 872 g it is 5.5 %.
    /// </summary>
    [Fact]
    public void Per_cent_of_the_water_is_not_per_cent_of_the_whole()
    {
        var found = Check(Acid("""
            { "item": "water", "amount": "800 g" }, { "item": "tartaric-acid", "amount": "12 g" }, { "item": "lactic-acid-powder", "amount": "12 g" },
            { "item": "malic-acid", "amount": "24 g" }, { "item": "white-sugar", "amount": "24 g" }
            """, "6 % w/w", "acid-solution"));
        var finding = Assert.Single(found, f => f.Rule.Id == "SL4001");
        Assert.InRange(finding.Evidence[0].Value, 5.2, 5.55);
    }

    /// <summary>Common practice, no source: liquid lactic acid of 80 % weighed as if it were powder falls short (15 g of it are 12 g).</summary>
    [Fact]
    public void Liquid_lactic_acid_is_not_pure()
    {
        const string Water = """{ "item": "water", "amount": "420 g" }, { "item": "tartaric-acid", "amount": "15 g" }, """;
        Assert.DoesNotContain(
            Check(Acid(Water + """{ "item": "lactic-acid-powder", "amount": "15 g" }""", "6.67 % w/w", "acid-solution")),
            f => f.Rule.Id == "SL4001");
        Assert.Contains(Check(Acid(Water + """{ "item": "lactic-acid-80", "amount": "15 g" }""", "6.67 % w/w", "acid-solution")), f => f.Rule.Id == "SL4001");
    }

    /// <summary>
    /// Published sheets of extended juices, computed on acid and water (restaurant recipes): 48 g of citric and 10 g of malic acid
    /// in a US quart of water are 5.8 %, 45 and 8 g are 5.3 %; the first is lime strength, the second is just under.
    /// </summary>
    [Theory]
    [InlineData(48, 10, 5.8, false)]
    [InlineData(45, 8, 5.3, true)]
    [InlineData(30, 9, 3.96, true)]
    public void Extended_juices_are_held_to_lime_strength(double citric, double malic, double percent, bool isWeak)
    {
        var result = Books.Check(("bar.json", Bar), ("stretched.prep.json", $$"""
            { "name": "Stretched lime", "family": "juice-extension",
              "ingredients": [ { "item": "citric-acid", "amount": "{{citric}} g" }, { "item": "malic-acid", "amount": "{{malic}} g" }, { "item": "water", "amount": "946 g" } ],
              "method": [ { "do": "stir", "until": "dissolved" } ], "source": "House recipe", "declares": { "allergens": [] } }
            """));
        var grams = result.Profiles.Of(result.Book.Preps[0]).Grams;
        Assert.Equal(percent, 100 * Solving.AcidsOf(grams) / Solving.MassOf(grams), 1);
        Assert.Equal(isWeak, result.Findings.Any(f => f.Rule.Id == "SL4009"));
    }

    /// <summary>Common practice, no source: a cup of sugar to a cup of water makes about 56 g in 100 mL, and not the 61.5 of one to one by mass.</summary>
    [Fact]
    public void A_syrup_by_the_cup_is_weaker_than_one_by_mass()
    {
        var result = Books.Check(("syrup.prep.json", """
            { "name": "House syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "1 cup" }, { "item": "water", "amount": "1 cup" } ],
              "method": [ { "do": "stir", "until": "dissolved" } ], "source": "House recipe", "declares": { "allergens": [] } }
            """));
        Assert.InRange(result.Profiles.Of(result.Book.Preps[0]).Get(Fact.Sugar).Value, 53, 60);
        Assert.Contains(result.Findings, f => f.Rule.Id == "SL4016");
    }

    /// <summary>Common practice, no source: a freezer bottle pours at −18 °C from about 27 % vol on; at 23 % vol it is a slush.</summary>
    [Theory]
    [InlineData(400, 500, true)]
    [InlineData(400, 300, true)]
    [InlineData(400, 150, false)]
    public void A_freezer_bottle_sets_below_a_quarter(double vodka, double water, bool sets)
    {
        var found = Check($$"""
            { "name": "Cold vodka", "family": "freezer-batch",
              "ingredients": [ { "item": "vodka", "amount": "{{vodka}} ml" }, { "item": "water", "amount": "{{water}} ml" } ],
              "method": [ { "do": "stir" } ], "keep": { "at": "-18 °C", "in": "bottle", "for": "30 d" }, "source": "House recipe", "declares": { "allergens": [] } }
            """);
        Assert.Equal(sets, found.Any(f => f.Rule.Id == "SL8009"));
    }

    /// <summary>Common practice, no source: orange juice in the place of lime, one for one, is no sour.</summary>
    [Theory]
    [InlineData("lime-juice", false)]
    [InlineData("lemon-juice", false)]
    [InlineData("orange-juice", true)]
    [InlineData("pineapple-juice", true)]
    public void A_mild_juice_does_not_make_a_sour(string juice, bool lacks)
    {
        var result = Books.Check(("daiquiri.drink.json", $$"""
            { "name": "Saltpan Daiquiri", "style": "shaken-sour",
              "ingredients": [ { "item": "white-rum", "amount": "60 ml" }, { "item": "{{juice}}", "amount": "22.5 ml" }, { "item": "simple-syrup", "amount": "20 ml" } ],
              "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain", "into": "glass" } ], "declares": { "allergens": [] } }
            """));
        Assert.Equal(lacks, result.Findings.Any(f => f.Rule.Id is "SL3003" or "SL3016"));
    }

    /// <summary>The house's limit is its own; the country gives the words (Ireland: a standard drink of 10 g).</summary>
    [Fact]
    public void Alcohol_is_told_in_the_standard_drinks_of_the_country()
    {
        var result = Books.Check(("king.drink.json", """
            { "name": "King Tide",
              "ingredients": [ { "item": "white-rum", "amount": "120 ml" }, { "item": "lime-juice", "amount": "30 ml" }, { "item": "simple-syrup", "amount": "30 ml" } ],
              "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain", "into": "glass" } ], "declares": { "allergens": [] } }
            """));
        var finding = Assert.Single(result.Findings, f => f.Rule.Id == "SL3017");
        Assert.Contains("standard drink of 10 g (Ireland)", finding.Message, StringComparison.Ordinal);
        Assert.NotNull(finding.Caution);
    }

    private static IReadOnlyList<Finding> Check(string prep) => Books.Check(("bar.json", Bar), ("made.prep.json", prep)).Findings;

    private static string Acid(string lines, string target, string family = "acid-adjusted-juice") => $$"""
        { "name": "Soured", "family": "{{family}}", "ingredients": [ {{lines}} ], "method": [ { "do": "stir", "until": "dissolved" } ],
          "target": { "acid": "{{target}}" }, "measured": { "ph": 2.3, "on": "2026-11-25" }, "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
          "source": "House recipe", "declares": { "allergens": [] } }
        """;
}
