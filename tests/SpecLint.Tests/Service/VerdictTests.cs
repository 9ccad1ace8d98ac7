using SpecLint.Book;
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
        var result = Check(
            prep,
            """, { "item": "outer", "made": "2026-11-25", "amount": "1 l", "at": "4 °C" }, { "item": "part", "made": "2026-11-25", "amount": "1 l", "at": "4 °C" }""");
        Assert.Contains(result.Findings, f => f.Rule.Safety && f.Level == Level.Error && f.Subject == "part");
        var verdicts = Verdicts.Of(result);
        var verdict = verdicts.Of(Part(result));
        Assert.Equal((Readiness.No, true), (verdict.Answer, verdict.IsForbidden));
        Assert.False(verdict.Life.IsKnown);

        var label = Assert.Single(LotLabel.OfMade(verdicts, [(Part(result), Books.On)], "NK"));
        Assert.True(label.HasOpenFinding);
        Assert.Null(label.Lot.UseBy);
        var page = new StringWriter();
        LabelPage.Write(page, [label], SpecLint.Catalogue.LabelStock.Find("a4")!, DisplayUnits.Metric);
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
        foreach (string prep in new[] { Fresh, Fresh.Replace("30 d", "900 d", StringComparison.Ordinal), Fresh.Replace(
            ", \"for\": \"30 d\"", "", StringComparison.Ordinal) })
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

    private const string Foam = """
        { "name": "Foam", "family": "foam", "ingredients": [ { "item": "egg-white-pasteurised", "amount": "300 g" }, { "item": "white-sugar", "amount": "30 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "330 g", "keep": { "at": "4 °C", "in": "siphon", "for": "3 d" }, "declares": { "allergens": ["egg"] } }
        """;

    private static LotCheck LotOf(CheckResult result, string code) =>
        LineCheck.Of(Verdicts.Of(result), result.Book.Menus[0], result.Book.Stocks).Lots.Single(l => l.Lot.LotCode.Or("") == code);

    private const string Egg = """, { "item": "egg-white-pasteurised", "lot": "EW", "opened": "2026-11-24", "useBy": "2026-11-25", "amount": "600 g", "at": "4 °C" }""";

    [Fact]
    public void A_mixture_is_used_by_the_last_day_of_the_lot_that_went_into_it()
    {
        var alone = LotOf(Check(Foam, Egg + """, { "item": "part", "lot": "F", "made": "2026-11-25", "amount": "1 l", "at": "4 °C" }"""), "F");
        var named = LotOf(
            Check(
                Foam, Egg + """, { "item": "part", "lot": "F", "made": "2026-11-25", "amount": "1 l", "at": "4 °C", "madeFrom": ["EW"] }"""),
            "F");
        Assert.Equal(("2026-11-27", "2026-11-25"), (alone.UseBy.ToString(), named.UseBy.ToString()));
        Assert.Contains("EW", named.UseByFrom, StringComparison.Ordinal);
        var unlisted = LotOf(
            Check(
                Foam, """, { "item": "part", "lot": "F", "made": "2026-11-25", "amount": "1 l", "at": "4 °C", "madeFrom": ["NO-SUCH"] }"""),
            "F");
        Assert.Equal(Readiness.If, unlisted.Readiness);
    }

    [Fact]
    public void A_bad_lot_is_bad_in_what_was_made_from_it_and_circles_end()
    {
        string warm = Egg.Replace("4 °C", "14 °C", StringComparison.Ordinal);
        var lot = LotOf(
            Check(
                Foam,
                warm + """, { "item": "part", "lot": "F", "made": "2026-11-25", "amount": "1 l", "at": "4 °C", "madeFrom": ["EW"] }"""),
            "F");
        Assert.Equal(Readiness.No, lot.Readiness);
        Assert.Contains(lot.Reasons, r => r.Contains("14 °C", StringComparison.Ordinal));
        var circle = Check(
            Foam,
            """, { "item": "part", "lot": "A", "made": "2026-11-25", "at": "4 °C", "madeFrom": ["B"] }, { "item": "part", "lot": "B", "made": "2026-11-25", "at": "4 °C", "madeFrom": ["A", "B"] }""");
        Assert.NotEqual(Readiness.Ready, LotOf(circle, "B").Readiness);
    }

    [Theory]
    [InlineData(""" "at": "4 °C" """, "2026-11-25", "use it as thawed")]
    [InlineData(""" "at": "-18 °C" """, "2026-11-25", null)]
    [InlineData(""" "at": "4 °C" """, "2026-11-10", "its use-by was 2026-11-16")]
    public void What_has_thawed_is_not_sent_back_to_the_freezer_and_its_days_count(string at, string made, string? says)
    {
        var lot = LotOf(
            Check(
                Foam.Replace("\"4 °C\"", "\"-18 °C\"", StringComparison.Ordinal).Replace("3 d", "60 d", StringComparison.Ordinal),
                $$""", { "item": "part", "lot": "F", "made": "{{made}}", "amount": "1 l", {{at}} }"""),
            "F");
        var told = lot.Reasons.Concat(lot.Conditions).ToList();
        Assert.DoesNotContain(told, t => t.Contains("bring it to", StringComparison.Ordinal));
        if (says is null) Assert.Empty(told);
        else Assert.Contains(told, t => t.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void A_tub_warmer_than_its_recipe_asks_is_not_ready()
    {
        var lot = LotOf(
            Check(
                Fresh.Replace("20 °C", "4 °C", StringComparison.Ordinal),
                """, { "item": "part", "lot": "F", "made": "2026-11-25", "amount": "1 l", "at": "18 °C" }"""),
            "F");
        Assert.Equal(Readiness.If, lot.Readiness);
        Assert.Contains(lot.Conditions, c => c.Contains("bring it to 4 °C", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData(""" "made": "2026-11-25" """)]
    [InlineData(""" "at": "4 °C" """)]
    public void A_lot_that_does_not_say_its_day_or_its_temperature_never_passes(string given)
    {
        var result = Check(Foam, $$""", { "item": "part", "lot": "F", "amount": "1 l" {{(given.Length > 0 ? "," : "")}} {{given}} }""");
        Assert.NotEqual(Readiness.Ready, LotOf(result, "F").Readiness);
        Assert.Contains(result.Findings.Where(f => f.Rule.Safety && f.Level >= Level.Warning), f => f.Place.File.Path == "fridge.stock.json");
    }

    [Fact]
    public void The_use_by_that_check_asks_for_is_that_of_the_label_and_clears_the_finding()
    {
        CsCheck.Check.Sample(
            CsCheck.Gen.Select(CsCheck.Gen.Int[0, 12], CsCheck.Gen.Int[-3, 20], CsCheck.Gen.Int[0, 12], CsCheck.Gen.Int[0, 9], CsCheck.Gen.Bool),
            (age, label, frozenFrom, frozenFor, bought) =>
            {
                var made = Books.On.AddDays(-age);
                string LotText(CalendarDate useBy) =>
                    $$""", { "item": "{{(bought ? "whole-milk" : "part")}}", "lot": "F", "{{(bought ? "opened" : "made")}}": "{{made}}", "useBy": "{{useBy}}", "at": "4 °C", "frozen": [ { "from": "{{made.AddDays(frozenFrom)}}", "to": "{{made.AddDays(frozenFrom + frozenFor)}}" } ] }""";
                var result = Check(LongMilk, LotText(made.AddDays(label)));
                var late = result.Findings.FirstOrDefault(f => f.Rule.Id == "SL5008");
                var life = LotLife.Of(result.Book.Stocks[0].Lots[1], result.Profiles);
                if (late is null)
                {
                    Assert.Equal(made.AddDays(label) < life.LastByRules!.Value.Day ? made.AddDays(label) : life.LastByRules.Value.Day, life.Last!.Value.Day);
                    return;
                }

                string asked = late.Corrections[0].Edits[0].NewText.Trim('"');
                Assert.Equal(life.Last!.Value.Day.ToString(), asked);
                Assert.DoesNotContain(Check(LongMilk, LotText(CalendarDate.Parse(asked)!.Value)).Findings, f => f.Rule.Id == "SL5008");
            },
            iter: 300,
            threads: 1);
    }

    [Fact]
    public void A_bad_lot_is_followed_to_what_names_it_and_to_what_may_hold_it()
    {
        var result = Check(Foam, Egg + """
            , { "item": "part", "lot": "OLD", "made": "2026-11-23", "at": "4 °C" }, { "item": "part", "lot": "NAMED", "made": "2026-11-24", "at": "4 °C", "madeFrom": ["EW"] }
            , { "item": "part", "lot": "SILENT", "made": "2026-11-25", "at": "4 °C" }, { "item": "outer", "lot": "DEEP", "made": "2026-11-25", "at": "4 °C", "madeFrom": ["NAMED"] }
            , { "item": "egg-white-pasteurised", "lot": "EW-2", "opened": "2026-11-24", "at": "4 °C" }, { "item": "part", "lot": "OTHER", "made": "2026-11-25", "at": "4 °C", "madeFrom": ["EW-2"] }
            """);
        var (stock, lot) = result.Book.LotsCalled("EW")[0];
        var trace = LotTrace.Of(result.Book, stock, lot);
        Assert.Equal("2026-11-24", trace.Since.ToString());
        Assert.Equal([("NAMED", true), ("DEEP", true), ("SILENT", false)], trace.Lots.Select(l => (LotTrace.NameOf(l.Lot), l.Certain)));
        Assert.Equal(["outer", "part"], trace.Preps.Select(p => p.Recipe.Id));
        Assert.Equal(["sluice"], trace.Drinks.Select(d => d.Recipe.Id));
        Assert.Equal(["EW", "NAMED", "DEEP"], trace.Lots[1].Through);
    }
}
