using System.Text.Json;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Service;

/// <summary>What check forbids, no label, line check, scaled recipe or profile allows.</summary>
public sealed class VerdictTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "scale": "1 g", "jigger": "2.5 ml", "fridge": "4 °C" } }""";

    private const string GarlicOil = """
        { "name": "Garlic oil", "family": "other", "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "60 g" } ],
          "method": [ { "do": "steep", "for": "24 h" } ], "yield": "500 g", "keep": { "at": "20 °C", "in": "bottle", "sealed": true, "for": "30 d" }, "declares": { "allergens": [] } }
        """;

    private const string PooledWhites = """
        { "name": "Pooled whites", "family": "other", "ingredients": [ { "item": "egg-white", "amount": "500 g" } ],
          "method": [ { "do": "strain" } ], "yield": "500 g", "keep": { "at": "4 °C", "in": "bottle", "for": "4 d" }, "declares": { "allergens": ["egg"] } }
        """;

    private const string SealedCelery = """
        { "name": "Sealed celery", "family": "juice", "ingredients": [ { "item": "celery-juice", "amount": "1 kg" } ],
          "method": [ { "do": "strain" } ], "yield": "1 kg", "keep": { "at": "20 °C", "in": "bottle", "sealed": true, "for": "30 d" }, "declares": { "allergens": ["celery"] } }
        """;

    private const string LongMilk = """
        { "name": "Long milk", "family": "syrup", "ingredients": [ { "item": "whole-milk", "amount": "500 g" }, { "item": "white-sugar", "amount": "100 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "600 g", "keep": { "at": "4 °C", "in": "bottle", "for": "30 d" }, "declares": { "allergens": ["milk"] } }
        """;

    private const string Fresh = """
        { "name": "Salt water", "family": "saline", "ingredients": [ { "item": "salt", "amount": "20 g" }, { "item": "water", "amount": "80 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "100 g", "keep": { "at": "20 °C", "in": "bottle", "for": "30 d" }, "declares": { "allergens": [] } }
        """;

    private static string DrinkOf(string part) => $$"""
        { "name": "Sluice", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "{{part}}", "amount": "20 ml" } ],
          "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" } ], "serves": 1 }
        """;

    private static CheckResult Check(string prep, string lots = "") => Books.Check(
        ("bar.json", Bar), ("part.prep.json", prep), ("outer.prep.json", Wrapped), ("sluice.drink.json", DrinkOf("outer")),
        ("tonight.menu.json", """{ "name": "Tonight", "drinks": [ { "drink": "sluice", "covers": 4 } ] }"""),
        ("fridge.stock.json", $$"""{ "on": "2026-11-25", "lots": [ { "item": "gin", "opened": "2026-11-20", "amount": "2 l" }{{lots}} ] }"""));

    private const string Wrapped = """{ "name": "Outer", "ingredients": [ { "item": "part", "amount": "100 g" } ], "method": [ { "do": "strain" } ], "yield": "100 g", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" } }""";

    private static Prep Part(CheckResult result) => (Prep)result.Book.Resolve("part")!.File;

    [Theory]
    [InlineData(GarlicOil)]
    [InlineData(PooledWhites)]
    [InlineData(SealedCelery)]
    public void What_check_forbids_no_one_allows(string prep)
    {
        var result = Check(prep, """, { "item": "outer", "made": "2026-11-25", "amount": "1 l", "at": "4 °C" }, { "item": "part", "made": "2026-11-25", "amount": "1 l", "at": "4 °C" }""");
        Assert.Contains(result.Findings, f => f.Rule.Safety && f.Level == Level.Error && f.Subject == "part");
        var verdicts = Verdicts.Of(result);
        var verdict = verdicts.Of(Part(result));
        Assert.Equal((Readiness.No, true), (verdict.Answer, verdict.IsForbidden));
        Assert.False(verdict.Life.IsKnown);

        var label = Assert.Single(LotLabel.OfMade(verdicts, [(Part(result), Books.On)], "NK"));
        Assert.True(label.HasOpenFinding);
        Assert.Null(label.Lot.UseBy);
        var page = new StringWriter();
        LabelPage.Write(page, [label], LabelSheet.A4, DisplayUnits.Metric);
        Assert.Contains("DO NOT USE – see check", page.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("Use by", page.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("Keep at", page.ToString(), StringComparison.Ordinal);

        var evening = LineCheck.Of(verdicts, result.Book.Menus[0], result.Book.Stocks);
        Assert.Equal(Readiness.No, Assert.Single(evening.Drinks).Readiness);
        Assert.All(evening.Lots.Where(l => l.Id is "part" or "outer"), l => Assert.Equal(Readiness.No, l.Readiness));
        Assert.Empty(evening.Make);

        foreach (var recipe in result.Book.Recipes)
        {
            var plan = ScalePlan.Of(verdicts, recipe, recipe is Drink ? new ScaleRequest { Serves = 10 } : new ScaleRequest { Grams = 1000 }, out _)!;
            Assert.Equal(Readiness.No, plan.Verdict.Answer);
            var text = new StringWriter();
            ScaleReport.WriteText(text, plan, DisplayUnits.Metric, colour: false);
            Assert.Contains("DO NOT USE", text.ToString().Split('\n')[1], StringComparison.Ordinal);
            Assert.Contains("not at all", text.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_time_that_is_too_long_becomes_the_time_that_the_law_allows()
    {
        var result = Check(LongMilk);
        var verdicts = Verdicts.Of(result);
        var verdict = verdicts.Of(Part(result));
        Assert.Equal((Readiness.No, false), (verdict.Answer, verdict.IsForbidden));
        Assert.True(verdict.Days <= 7, $"{verdict.Days} d");
        var label = Assert.Single(LotLabel.OfMade(verdicts, [(Part(result), Books.On)], null));
        Assert.True(label.HasOpenFinding);
        Assert.Equal(verdict.Days - 1, label.Lot.UseBy!.Value.DaysSince(Books.On));
        Assert.Equal(Readiness.No, LineCheck.Of(verdicts, result.Book.Menus[0], result.Book.Stocks).Drinks[0].Readiness);
    }

    [Fact]
    public void One_number_of_days_stands_on_the_label_in_the_make_list_and_in_the_scaled_recipe()
    {
        foreach (string prep in new[] { Fresh, Fresh.Replace("30 d", "900 d", StringComparison.Ordinal), Fresh.Replace(", \"for\": \"30 d\"", "", StringComparison.Ordinal) })
        {
            var result = Check(prep);
            var verdicts = Verdicts.Of(result);
            double days = verdicts.Of(Part(result)).Days;
            Assert.InRange(days, 1, 900);
            int label = LotLabel.OfMade(verdicts, [(Part(result), Books.On)], null)[0].Lot.UseBy!.Value.DaysSince(Books.On) + 1;
            var plan = ScalePlan.Of(verdicts, Part(result), new ScaleRequest { Grams = 200 }, out _)!;
            var made = LineCheck.Of(verdicts, result.Book.Menus[0], result.Book.Stocks).Make.Single(m => m.Prep.Id == "part");
            Assert.Equal((days, days), (label, plan.Days));
            Assert.Equal(days, made.LastsUntil!.Value.DaysSince(Books.On) + 1);
        }
    }
}
