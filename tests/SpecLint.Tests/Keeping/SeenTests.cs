using SpecLint.Findings;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>What was once seen to pass as harmless, each as it was seen, where no other test holds it.</summary>
public sealed class SeenTests
{
    /// <summary>200 g of fresh celery hold about 10 g of dry matter: less cannot be left, and 190 g are not dry.</summary>
    [Theory]
    [InlineData("""{ "do": "dry", "at": "60 °C", "for": "9 h" }""", """ "measured": { "mass": "4 g" },""", "SL5038")]
    [InlineData("""{ "do": "dry", "at": "60 °C", "until": "it weighs 190 g" }""", "", "SL5022")]
    public void A_mass_that_cannot_be_clears_no_drying(string step, string measured, string rule)
    {
        var result = Books.Check(("dried-celery.prep.json", $$"""
            { "name": "Dried celery", "family": "other", "ingredients": [ { "item": "celery", "amount": "200 g" } ], "method": [ {{step}} ], {{measured}}
              "keep": { "at": "20 °C", "in": "jar", "for": "90 d" }, "declares": { "allergens": ["celery"] } }
            """));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == rule && f.Level >= Level.Warning);
        Assert.NotEqual(Readiness.Ready, Verdicts.Of(result).Of(result.Book.Preps[0]).Answer);
    }

    /// <summary>Coffee and tea in water have neither the pH of the bean nor no caffeine, nor its life.</summary>
    [Theory]
    [InlineData("coffee-beans", "100 g", true)]
    [InlineData("black-tea-leaves", "20 g", true)]
    [InlineData("shiitake", "30 g", false)]
    [InlineData("kombu", "20 g", false)]
    public void An_extract_has_neither_the_pH_nor_the_life_of_the_dry_good(string item, string amount, bool caffeine)
    {
        var result = Books.Check(("steeped.prep.json", $$"""
            { "name": "Steeped", "family": "other", "ingredients": [ { "item": "{{item}}", "amount": "{{amount}}" }, { "item": "water", "amount": "1 kg" } ],
              "method": [ { "do": "steep", "at": "4 °C", "for": "16 h" }, { "do": "strain" } ], "yield": "900 g", "keep": { "at": "4 °C", "in": "bottle", "for": "365 d" } }
            """));
        var profile = result.Profiles.Of(result.Book.Preps[0]);
        Assert.False(profile.Keeping!.Ph.IsKnown);
        if (caffeine) Assert.False(profile.Get(Fact.Caffeine) is { IsKnown: true, High: 0 });
        Assert.True(Verdicts.Of(result).Of(result.Book.Preps[0]).Days <= 7);
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Safety && f.Caution is not null && f.Level >= Level.Warning && f.Subject == "steeped");
    }

    /// <summary>Fruit that is squeezed in the recipe has the life of juice.</summary>
    [Theory]
    [InlineData("lime", "1 kg")]
    [InlineData("lime", "20 pieces")]
    [InlineData("orange", "1 kg")]
    public void Fruit_squeezed_in_the_recipe_has_an_end(string fruit, string amount)
    {
        var result = Books.Check(("squeezed.prep.json", $$"""
            { "name": "Squeezed", "family": "juice", "ingredients": [ { "item": "{{fruit}}", "amount": "{{amount}}" } ], "method": [ { "do": "juice" }, { "do": "strain" } ],
              "yield": "400 ml", "keep": { "at": "4 °C", "in": "bottle", "for": "60 d" } }
            """));
        Assert.True(Verdicts.Of(result).Of(result.Book.Preps[0]).Days <= 7);
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Safety && f.Caution is not null && f.Level >= Level.Warning);
    }

    /// <summary>A nut milk with a date in it, and vanilla, kept for a month.</summary>
    [Fact]
    public void A_nut_milk_with_a_date_is_an_error()
    {
        var result = Check("30 d", "60 g");
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5001" && f.Level == Level.Error);
    }

    /// <summary>What the trade keeps a syrup says nothing of a nut milk that is called one.</summary>
    [Fact]
    public void A_scaled_nut_milk_keeps_its_own_days()
    {
        var result = Check("3 d", "60 g");
        var plan = ScalePlan.Of(Verdicts.Of(result), result.Book.Preps[0], new ScaleRequest { Grams = 500 }, out _)!;
        var text = new StringWriter();
        ScaleReport.WriteText(text, plan, DisplayUnits.Metric, colour: false);
        Assert.Equal(3, plan.Days);
        Assert.DoesNotContain("180", text.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("(syrup)", text.ToString(), StringComparison.Ordinal);
    }

    private static CheckResult Check(string time, string dates) => Books.Check(("nut-milk.prep.json", $$"""
        { "name": "Nut milk", "family": "syrup", "ingredients": [ { "item": "almond", "amount": "100 g" }, { "item": "water", "amount": "400 g" }, { "item": "dates", "amount": "{{dates}}" }, { "item": "vanilla-extract", "amount": "5 g" } ],
          "method": [ { "do": "blend" }, { "do": "strain" } ], "yield": "480 g", "keep": { "at": "4 °C", "in": "bottle", "for": "{{time}}" }, "declares": { "allergens": ["almond"] } }
        """));

    /// <summary>Oil and brine are what they are in a preparation of their own.</summary>
    [Theory]
    [InlineData("""{ "item": "garlic", "amount": "60 g" }, { "item": "part", "amount": "500 g" }""", "olive-oil", "steep", "SL5016")]
    [InlineData("""{ "item": "celery", "amount": "500 g" }, { "item": "part", "amount": "500 g" }""", "salt", "ferment", "SL5028")]
    public void One_layer_hides_neither_oil_nor_salt(string lines, string inner, string verb, string rule)
    {
        string outer = $$"""{ "name": "Outer", "family": "other", "ingredients": [ {{lines}} ], "method": [ { "do": "{{verb}}", "for": "24 h" } ], "yield": "500 g", "keep": { "at": "4 °C", "in": "bottle", "for": "14 d" } }""";
        string salt = inner == "salt"
            ? """{ "item": "salt", "amount": "1 g" }, { "item": "water", "amount": "99 g" }"""
            : $$"""{ "item": "{{inner}}", "amount": "100 g" }""";
        string part = $$"""{ "name": "Part", "family": "other", "ingredients": [ {{salt}} ], "method": [ { "do": "stir" } ], "yield": "100 g", "keep": { "at": "4 °C", "in": "bottle", "for": "30 d" } }""";
        string flat = outer.Replace(
            "{ \"item\": \"part\", \"amount\": \"500 g\" }",
            salt.Replace("100 g", "500 g", StringComparison.Ordinal)
                .Replace("\"1 g\"", "\"5 g\"", StringComparison.Ordinal)
                .Replace("99 g", "495 g", StringComparison.Ordinal),
            StringComparison.Ordinal);
        var open = Books.Check(("outer.prep.json", flat)).Findings.Flat().Where(f => f.Rule.Id == rule).Select(f => f.Level).ToList();
        Assert.NotEmpty(open);
        Assert.Equal(
            open,
            Books.Check(("outer.prep.json", outer), ("part.prep.json", part)).Findings
                .Flat()
                .Where(f => f.Rule.Id == rule && f.Subject == "outer")
                .Select(f => f.Level));
    }

    /// <summary>The make list and the label of a dried salt bear the same day.</summary>
    [Fact]
    public void A_salt_has_one_day_on_the_make_list_and_on_its_label()
    {
        var result = Books.Check(
            ("celery-salt.prep.json", """{ "name": "Celery salt", "family": "flavoured-salt", "ingredients": [ { "item": "celery-seed", "amount": "20 g" }, { "item": "salt", "amount": "200 g" } ], "method": [ { "do": "blend" } ], "yield": "220 g", "keep": { "at": "20 °C", "in": "jar", "for": "90 d" }, "declares": { "allergens": ["celery"] } }"""),
            ("low-rim.drink.json", """{ "name": "Low Rim", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, { "item": "tomato-juice", "amount": "100 ml" } ], "rim": [ { "item": "celery-salt", "amount": "2 g" } ], "method": [ { "do": "build", "ice": "cubed" } ] }"""),
            ("evening.menu.json", """{ "name": "Evening", "drinks": [ { "drink": "low-rim", "covers": 10 } ] }"""),
            ("shelf.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "vodka", "opened": "2026-11-20", "amount": "2 l" }, { "item": "tomato-juice", "opened": "2026-11-25", "amount": "3 l", "at": "4 °C" } ] }"""));
        var verdicts = Verdicts.Of(result);
        var made = LineCheck.Of(verdicts, result.Book.Menus[0], result.Book.Stocks).Make.Single(m => m.Prep.Id == "celery-salt");
        var label = LotLabel.OfMade(verdicts, [(made.Prep, Books.On)], null)[0];
        Assert.NotNull(label.Lot.UseBy);
        Assert.Equal(label.Lot.UseBy, made.LastsUntil);
    }

    /// <summary>An opened carton is used within the typical time of its range, and the range is said.</summary>
    [Fact]
    public void An_opened_life_is_not_read_at_its_longest_end()
    {
        var result = Books.Check(
            ("house-cream.ingredient.json", """{ "name": "House cream", "like": "double-cream", "life": { "opened": "2–6 d" } }"""),
            ("fridge.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "house-cream", "opened": "2026-11-25", "amount": "1 l", "at": "4 °C" } ] }"""));
        var lot = LotCheck.Of(result.Book.Stocks[0].Lots[0], result.Book.Stocks[0], Verdicts.Of(result));
        Assert.Equal(3, lot.UseBy!.Value.DaysSince(Books.On));
        Assert.Contains("2 to 6 days", lot.UseByFrom, StringComparison.Ordinal);
    }

    /// <summary>Days that come of hours are whole: on the last of them nothing asks to taste it first.</summary>
    [Theory]
    [InlineData("720 h")]
    [InlineData("30 d")]
    [InlineData("43200 min")]
    public void A_rounding_ends_no_life_a_day_early(string time)
    {
        var result = Books.Check(
            ("saline-house.prep.json", $$"""{ "name": "House saline", "family": "saline", "ingredients": [ { "item": "salt", "amount": "20 g" }, { "item": "water", "amount": "80 g" } ], "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "100 g", "keep": { "at": "20 °C", "in": "bottle", "for": "{{time}}" } }"""),
            ("shelf.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "saline-house", "made": "2026-10-27", "amount": "80 g", "at": "20 °C" } ] }"""));
        var lot = LotCheck.Of(result.Book.Stocks[0].Lots[0], result.Book.Stocks[0], Verdicts.Of(result));
        Assert.Equal(Books.On, lot.UseBy);
        Assert.DoesNotContain(lot.Conditions, c => c.Contains("taste", StringComparison.Ordinal));
        Assert.Equal(Readiness.Ready, lot.Readiness);
    }

    /// <summary>A lot with a use-by day and no day made: check and the line check ask for the same.</summary>
    [Fact]
    public void A_lot_with_a_use_by_alone_is_asked_for_its_day_by_both_verbs()
    {
        var (result, lot) = Lot("\"useBy\": \"2026-11-27\"");
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5009" && f.Level == Level.Warning);
        Assert.Equal(Readiness.If, lot.Readiness);
        Assert.Contains(lot.Conditions, c => c.Contains("on which day it was made", StringComparison.Ordinal));
        Assert.False(lot.ThrowAway);
    }

    /// <summary>Whenever it was made, a label later than that of a batch made today is wrong.</summary>
    [Fact]
    public void A_use_by_later_than_a_batch_of_today_could_have_is_an_error()
    {
        var (result, lot) = Lot("\"useBy\": \"2026-12-20\"");
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5008" && f.Level == Level.Error && f.Corrections.Count == 0);
        Assert.Equal(Readiness.No, lot.Readiness);
    }

    /// <summary>Readings stamped with another recipe say that the lot was made by it.</summary>
    [Fact]
    public void A_lot_whose_readings_are_of_another_recipe_is_not_cleared_by_the_recipe()
    {
        var (result, lot) = Lot("\"made\": \"2026-11-25\", \"measured\": { \"brix\": 20, \"on\": \"2026-11-25\", \"of\": \"r1-0000000000000000\" }");
        Assert.Equal(Readiness.If, lot.Readiness);
        Assert.Contains(lot.Conditions, c => c.Contains("by which recipe it was made", StringComparison.Ordinal));
    }

    /// <summary>A reading without a day, a revision or a fingerprint may be older than the recipe.</summary>
    [Fact]
    public void An_undated_reading_in_a_dated_recipe_clears_nothing()
    {
        var result = Books.Check(("sour-celery.prep.json", """{ "name": "Sour celery", "date": "2026-11-20", "family": "acid-adjusted-juice", "ingredients": [ { "item": "celery-juice", "amount": "500 g" }, { "item": "citric-acid", "amount": "30 g" } ], "method": [ { "do": "stir" } ], "yield": "530 g", "measured": { "ph": 2.4 }, "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" } }"""));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5033");
        Assert.NotEqual("measured", result.Profiles.Of(result.Book.Preps[0]).Get(Fact.Ph).From);
    }

    private static (CheckResult Result, LotCheck Lot) Lot(string properties)
    {
        var result = Books.Check(
            ("sweet-cream.prep.json", """{ "name": "Sweet cream", "family": "cream", "ingredients": [ { "item": "double-cream", "amount": "500 g" }, { "item": "white-sugar", "amount": "40 g" } ], "method": [ { "do": "stir" } ], "yield": "540 g", "keep": { "at": "4 °C", "in": "jug", "for": "3 d" }, "declares": { "allergens": ["milk"] } }"""),
            ("fridge.stock.json", $$"""{ "on": "2026-11-25", "lots": [ { "item": "sweet-cream", {{properties}}, "amount": "300 g", "at": "4 °C" } ] }"""));
        return (result, LotCheck.Of(result.Book.Stocks[0].Lots[0], result.Book.Stocks[0], Verdicts.Of(result)));
    }
}
