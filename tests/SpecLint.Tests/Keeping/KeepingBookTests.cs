using CsCheck;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>Keeping of whole preparations: facts of the trade, life, and the way that no computed figure clears.</summary>
public sealed class KeepingBookTests
{
    private const string SourCucumber = """
        {
          "name": "Sour cucumber", "family": "acid-adjusted-juice",
          "ingredients": [ { "item": "cucumber-juice", "amount": "500 g" }, { "item": "citric-acid", "amount": "30 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ],
          "yield": "530 g", MEASURED
          "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" },
          "declares": { "allergens": [] }
        }
        """;

    /// <summary>Acid-adjusted vegetable juice, bottled, refrigerated, three days: common practice, no source.</summary>
    [Fact]
    public void Soured_vegetable_juice_keeps_three_days_when_its_pH_is_measured() =>
        Assert.Empty(Keeping(("sour-cucumber.prep.json", SourCucumber.Replace("MEASURED", "\"measured\": { \"ph\": 2.3, \"on\": \"2026-11-24\" },", StringComparison.Ordinal))));

    /// <summary>The same with a computed pH only is not shown: common practice, no source.</summary>
    [Fact]
    public void Soured_vegetable_juice_is_not_shown_when_its_pH_is_computed()
    {
        var finding = Assert.Single(Keeping(("sour-cucumber.prep.json", SourCucumber.Replace("MEASURED", "", StringComparison.Ordinal))));
        Assert.Equal(("SL5002", Answer.NotShown, Level.Warning), (finding.Rule.Id, finding.Answer, finding.Level));
    }

    /// <summary>Pulp dried four hours at 60 °C asks for an end point, not only a time: common practice, no source.</summary>
    [Fact]
    public void Pulp_dried_by_the_clock_asks_for_an_end_point()
    {
        const string Pulp = """
            {
              "name": "Celery salt", "family": "flavoured-salt",
              "ingredients": [ { "item": "celery", "amount": "200 g" }, { "item": "salt", "amount": "200 g" } ],
              "method": [ { "do": "dry", "at": "60 °C", "for": "4 h" } ],
              "keep": { "at": "20 °C", "in": "jar", "for": "30 d" },
              "declares": { "allergens": ["celery"] }
            }
            """;
        var finding = Assert.Single(Keeping(("celery-salt-house.prep.json", Pulp)));
        Assert.Equal(("SL5022", Answer.NotShown), (finding.Rule.Id, finding.Answer));
        Assert.Contains("400 g", finding.Advice, StringComparison.Ordinal);
    }

    /// <summary>
    /// The worst case: whatever acid, sugar, spirit, part and storage, a preparation whose pH is only computed is never cleared for keeping.
    /// </summary>
    [Fact]
    public void A_preparation_without_a_measured_pH_is_never_cleared()
    {
        string[] parts = ["cucumber-juice", "celery-juice", "lime-juice", "orange-juice", "carrot-juice", "whole-milk", "egg-white", "strawberry", "mint", "almond-milk", "cantaloupe"];
        string[] families = ["acid-adjusted-juice", "cordial", "syrup", "shrub", "juice", "infusion", "batch", "clarification", "milk-wash", "other"];
        string[] places = ["4 °C", "20 °C", "-18 °C"];
        Gen.Select(Gen.Int[0, parts.Length - 1], Gen.Int[0, families.Length - 1], Gen.Int[0, 60], Gen.Int[0, 400], Gen.Int[0, 400], Gen.Int[0, 2], Gen.Bool, Gen.Bool).Sample(
            t =>
            {
                var (part, family, acid, sugar, spirit, place, isSealed, heated) = t;
                string heat = heated ? "{ \"do\": \"pasteurise\", \"to\": \"85 °C\", \"for\": \"5 min\" }" : "{ \"do\": \"stir\" }";
                string text = $$"""
                    {
                      "name": "Trial", "family": "{{families[family]}}",
                      "ingredients": [
                        { "item": "{{parts[part]}}", "amount": "500 g" }, { "item": "citric-acid", "amount": "{{acid}}.1 g" },
                        { "item": "white-sugar", "amount": "{{sugar}}.1 g" }, { "item": "vodka", "amount": "{{spirit}}.1 g" } ],
                      "method": [ {{heat}} ],
                      "keep": { "at": "{{places[place]}}", "for": "10 d", "sealed": {{(isSealed ? "true" : "false")}} }
                    }
                    """;
                var result = Books.Check(("trial.prep.json", text));
                var state = result.Profiles.Of(result.Book.Preps[0]).Keeping!;
                return state.Verdict != KeepingVerdict.NotControlled && (!state.HoldsPerishable || places[place] == "-18 °C" || result.Findings.Flat().Any(f => f.Rule.Family == RuleFamily.Keeping));
            },
            iter: 300);
    }

    /// <summary>Day made counts as day 1: 7 days end on the sixth day after (Food Code 3-501.17).</summary>
    [Fact]
    public void Life_of_a_mixture_is_that_of_its_shortest_part()
    {
        const string Cordial = """
            { "name": "Celery cordial", "family": "cordial", "ingredients": [ { "item": "celery-juice", "amount": "500 g" }, { "item": "white-sugar", "amount": "300 g" }, { "item": "citric-acid", "amount": "30 g" } ],
              "yield": "830 g", "keep": { "at": "4 °C", "for": "3 d" } }
            """;
        const string Batch = """
            { "name": "Batch", "family": "batch", "ingredients": [ { "item": "gin", "amount": "500 ml" }, { "item": "celery-cordial", "amount": "300 g" }, { "item": "dry-vermouth", "amount": "100 ml" } ],
              "yield": "830 ml", "keep": { "at": "4 °C", "for": "20 d" } }
            """;
        var (_, profiles) = Checker.Profile(Books.Input(("celery-cordial.prep.json", Cordial), ("house-batch.prep.json", Batch)));
        var batch = profiles.Book.Preps.Single(p => p.Id == "house-batch");
        var life = profiles.Of(batch).Get(Fact.Life);
        Assert.Equal((3, "celery-cordial"), (life.Value, life.From));
        Assert.Contains(Keeping(("celery-cordial.prep.json", Cordial), ("house-batch.prep.json", Batch)), f => f is { Rule.Id: "SL5007", Level: Level.Error, Subject: "house-batch" });
    }

    /// <summary>Milk kept in the cold ends by the date mark, in the freezer its clock stands still (Food Code 3-501.17).</summary>
    [Theory]
    [InlineData("4 °C", true)]
    [InlineData("-18 °C", false)]
    public void The_freezer_stops_the_clock(string at, bool ends)
    {
        string base1 = $$"""
            { "name": "Sweet milk", "family": "cream", "ingredients": [ { "item": "whole-milk", "amount": "500 g" }, { "item": "white-sugar", "amount": "60 g" } ],
              "method": [ { "do": "stir" } ], "yield": "560 g", "keep": { "at": "{{at}}", "for": "20 d" }, "declares": { "allergens": ["milk"] } }
            """;
        Assert.Equal(ends, Keeping(("sweet-milk.prep.json", base1)).Any(f => f.Rule.Id == "SL5001"));
    }

    /// <summary>Spirit of full strength with a strained plant has no part that needs cold; strength alone clears nothing else.</summary>
    [Fact]
    public void A_strong_infusion_has_no_part_that_needs_cold()
    {
        const string Infusion = """
            { "name": "Chilli vodka", "family": "infusion", "ingredients": [ { "item": "vodka", "amount": "700 ml" }, { "item": "red-chilli", "amount": "30 g" } ],
              "method": [ { "do": "steep", "for": "2 d" }, { "do": "strain" } ], "yield": "690 ml", "keep": { "at": "20 °C", "in": "bottle", "for": "90 d" }, "declares": { "allergens": [] } }
            """;
        const string Sour = """
            { "name": "Cream rum", "family": "liqueur", "ingredients": [ { "item": "aged-rum", "amount": "700 ml" }, { "item": "double-cream", "amount": "300 ml" } ],
              "method": [ { "do": "stir" } ], "yield": "990 ml", "keep": { "at": "4 °C", "in": "bottle", "for": "30 d" }, "declares": { "allergens": ["milk"] } }
            """;
        Assert.Empty(Keeping(("chilli-vodka.prep.json", Infusion)));
        Assert.Contains(Keeping(("cream-rum.prep.json", Sour)), f => f.Rule.Id == "SL5001");
    }

    private static List<Finding> Keeping(params (string Path, string Text)[] files) =>
        [.. Books.Check(files).Findings.Flat().Where(f => f.Rule.Family == RuleFamily.Keeping && f.Level >= Level.Warning)];
}
