using SpecLint.Reading;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Service;

public sealed class LineCheckTests
{
    private const string Bar = """
        { "name": "The Saltmarsh Room", "jurisdictions": ["IE"],
          "tools": { "scale": "1 g", "jigger": "2.5 ml", "fridge": "4 °C", "meters": { "bench": { "ph": 0.05, "calibrated": "2026-11-25" }, "old": { "ph": 0.05, "calibrated": "2026-11-01" } } } }
        """;

    private const string Drink = """
        { "name": "Sluice", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "marsh-juice", "amount": "25 ml" }, { "item": "simple-syrup", "amount": "20 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }
        """;

    private const string Juice = """
        { "name": "Marsh juice", "family": "acid-adjusted-juice",
          "ingredients": [ { "item": "cucumber-juice", "amount": "470 g" }, { "item": "citric-acid", "amount": "30 g" } ],
          "method": [ { "do": "stir", "for": "5 min" } ], "yield": "500 g", "target": { "ph": 2.3 }, "measured": { "ph": 2.3, "on": "2026-11-25", "meter": "bench" },
          "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" } }
        """;

    private const string Bottles = """{ "item": "gin", "opened": "2026-11-20", "amount": "2 l" }, { "item": "simple-syrup", "opened": "2026-11-24", "amount": "1 l", "at": "4 °C" }""";

    private static LineCheck Check(string lots, string on = "2026-11-25", string covers = "10", string juice = Juice)
    {
        var input = Books.Input(
            ("bar.json", Bar), ("sluice.drink.json", Drink), ("marsh-juice.prep.json", juice),
            ("tonight.menu.json", $$"""{ "name": "Tonight", "drinks": [ { "drink": "sluice", "covers": {{covers}} } ] }"""),
            ("fridge.stock.json", $$"""{ "on": "2026-11-25", "lots": [ {{lots}} ] }"""));
        var day = CalendarDate.Parse(on)!.Value;
        var result = Checker.Check(input with { On = day });
        return LineCheck.Of(Verdicts.Of(result), result.Book.Menus[0], result.Book.Stocks);
    }

    private static string JuiceLot(
        string made = "2026-11-24", string amount = "1 l", string at = "4 °C", string ph = "2.3", string meter = "bench", string more = "") =>
        $$"""{ "item": "marsh-juice", "made": "{{made}}", "amount": "{{amount}}", "at": "{{at}}", "measured": { "ph": {{ph}}, "meter": "{{meter}}", "on": "2026-11-25" }{{more}} }, """ + Bottles;

    [Fact]
    public void With_all_in_the_house_it_can_be_served()
    {
        var check = Check(JuiceLot());
        var drink = Assert.Single(check.Drinks);
        Assert.Equal((Readiness.Ready, 10d), (drink.Readiness, drink.CoversReady));
        Assert.Empty(check.Make);
        Assert.Empty(check.ThrowAway);
        Assert.True(check.AllServed);
    }

    [Theory]
    [InlineData("2026-11-26", Readiness.Ready)]
    [InlineData("2026-11-27", Readiness.If)]
    public void A_lot_goes_on_the_day_after_its_last(string on, Readiness expected)
    {
        var check = Check(JuiceLot(), on);
        Assert.Equal(expected, check.Drinks[0].Readiness);
        Assert.Equal(expected == Readiness.If ? 1 : 0, check.ThrowAway.Count());
        Assert.Equal(expected == Readiness.If ? "marsh-juice" : null, check.Make.SingleOrDefault()?.Prep.Id);
    }

    [Fact]
    public void Days_in_the_freezer_do_not_count()
    {
        var check = Check(JuiceLot(made: "2026-11-10", more: """, "frozen": [ { "from": "2026-11-10", "to": "2026-11-24" } ]"""));
        Assert.Equal("2026-11-26", check.Lots[0].UseBy.ToString());
        Assert.Equal(Readiness.Ready, check.Drinks[0].Readiness);
        Assert.Contains(
            "thaw",
            Assert.Single(Check(JuiceLot(more: """, "frozen": [ { "from": "2026-11-24" } ]""")).Drinks[0].Conditions),
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_earlier_of_label_and_life_counts()
    {
        Assert.Equal("2026-11-25", Check(JuiceLot(more: """, "useBy": "2026-11-25" """)).Lots[0].UseBy.ToString());
        Assert.Equal("2026-11-26", Check(JuiceLot(more: """, "useBy": "2026-12-31" """)).Lots[0].UseBy.ToString());
    }

    [Theory]
    [InlineData("2.3", "bench", "")]
    [InlineData("2.7", "bench", "find out why")]
    [InlineData("2.3", "old", "calibrate old")]
    public void A_reading_is_held_against_the_recipe_and_its_meter(string ph, string meter, string condition)
    {
        var conditions = Check(JuiceLot(ph: ph, meter: meter)).Drinks[0].Conditions;
        if (condition.Length == 0) Assert.Empty(conditions);
        else Assert.Contains(conditions, c => c.Contains(condition, StringComparison.Ordinal));
    }

    [Fact]
    public void A_pH_asked_for_and_not_read_is_to_be_measured()
    {
        var check = Check("""{ "item": "marsh-juice", "made": "2026-11-24", "amount": "1 l", "at": "4 °C" }, """ + Bottles);
        Assert.Equal(Readiness.If, check.Drinks[0].Readiness);
        Assert.Contains("measure its pH", check.Drinks[0].Conditions[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_warm_and_is_not_shown_to_bear_it_is_thrown_away()
    {
        var check = Check(JuiceLot(at: "9 °C", ph: "5.2"));
        Assert.Equal(Readiness.No, check.Lots[0].Readiness);
        Assert.Contains("9 °C", check.Lots[0].Reasons[0], StringComparison.Ordinal);
        Assert.True(check.Lots[0].ThrowAway);
    }

    [Fact]
    public void What_is_short_is_made_and_comes_to_what_is_needed()
    {
        var check = Check(JuiceLot(amount: "100 ml"), covers: "40");
        var task = Assert.Single(check.Make);
        Assert.InRange(check.Drinks[0].CoversReady, 3, 4);
        Assert.True(task.Makes >= task.Short, $"{task.Makes} g made, {task.Short} g short");
        Assert.Equal(0, task.Times % 0.25);
        Assert.Equal("2026-11-27", task.LastsUntil.ToString());
        Assert.Contains(check.Get, g => g.Id == "cucumber-juice" && g.For.Contains("marsh-juice"));
    }

    [Fact]
    public void What_takes_days_to_make_cannot_be_served_tonight()
    {
        var check = Check(Bottles, juice: Juice.Replace("\"5 min\"", "\"2 d\"", StringComparison.Ordinal));
        Assert.Equal(Readiness.No, check.Drinks[0].Readiness);
        Assert.False(check.AllServed);
    }

    [Fact]
    public void A_lot_serves_once()
    {
        var check = Check(JuiceLot(amount: "250 ml"), covers: "10");
        Assert.Equal(Readiness.Ready, check.Drinks[0].Readiness);
        Assert.Equal(Readiness.If, Check(JuiceLot(amount: "250 ml"), covers: "11").Drinks[0].Readiness);
    }

    [Fact]
    public void A_drink_that_is_not_in_the_book_cannot_be_served()
    {
        var input = Books.Input(("tonight.menu.json", """{ "name": "Tonight", "drinks": [ { "drink": "no-such", "covers": 3 }, { "words": "?" } ] }"""));
        var result = Checker.Check(input);
        var check = LineCheck.Of(Verdicts.Of(result), result.Book.Menus[0], []);
        Assert.All(check.Drinks, d => Assert.Equal(Readiness.No, d.Readiness));
    }
}
