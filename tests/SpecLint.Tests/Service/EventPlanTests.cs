using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Service;

/// <summary>A plan for 120 guests on the demo book, held against arithmetic by hand.</summary>
public sealed class EventPlanTests
{
    private static readonly CalendarDate Day = CalendarDate.Of(2026, 12, 12)!.Value;

    private static readonly Lazy<Verdicts> Demo = new(() => Verdicts.Of(Checker.Check(new BookInput(
        [.. Directory.EnumerateFiles(Repository.At("src", "SpecLint.Tool", "Demo"))
            .Select(f => new SourceFile(Path.GetFileName(f), File.ReadAllBytes(f)))], Books.On))));

    private static EventPlan Plan(EventRequest? request = null, IReadOnlyList<Stock>? stocks = null)
    {
        var verdicts = Demo.Value;
        var plan = EventPlan.Of(
            verdicts, verdicts.Profiles.Book.Menus.Single(m => m.Id == "evening"),
            request ?? new EventRequest(120, Day) { DrinksEach = 2.5 }, stocks ?? [], out string why);
        Assert.True(plan is not null, why);
        return plan!;
    }

    /// <summary>The covers of the menu come to 206; 120 guests have 300 drinks.</summary>
    [Theory]
    [InlineData("low-tide", 44)] // 300 × 30/206 = 43.7
    [InlineData("marsh-martini", 21)] // 300 × 14/206 = 20.4
    [InlineData("estuary-spritz", 35)] // 300 × 24/206 = 34.95
    [InlineData("sea-aster", 12)] // 300 × 8/206 = 11.7
    public void Serves_are_shared_by_the_covers(string drink, int serves) => Assert.Equal(serves, Plan().Serves.Single(s => s.Drink.Id == drink).Count);

    [Theory]
    [InlineData("lido-brut", 3465, 5, 0)] // 35 spritzes of 90 mL are 3150 mL, with a tenth more 3465: 4.6 bottles of 750 mL
    [InlineData("soda-water", 4422, 1, 0)] // 33 × 90 + 35 × 30 = 4020 mL, 4422 with the reserve: one tray of 4.8 l
    [InlineData("saltpan-aged-rum", 3630, 6, 1)] // 18 × 50 + 1400 + 1000 = 3300 mL, 3630: 5.2 bottles of 700 mL, one case
    [InlineData("marisma-fino", 297, 1, 0)] // 12 × 22.5 = 270 mL
    public void Bottles_and_cases_are_counted(string item, double millilitres, int bottles, int cases)
    {
        var buy = Plan().Purchases.Single(p => p.Id == item);
        Assert.Equal(millilitres, buy.Amount, 0);
        Assert.Equal((bottles, cases), (buy.Count, buy.Cases));
    }

    [Fact]
    public void Fruit_pieces_and_money_are_counted()
    {
        var plan = Plan();

        // 33 of 20 mL, 18 of 25 mL: 1110 mL of lemon juice, 1221 with the reserve, at 44 mL a lemon 28; 48 lemons cost 17.00.
        var lemon = plan.Purchases.Single(p => p.Id == "lemon-juice");
        Assert.Equal(28, lemon.Count);
        Assert.Equal(9.92m, Math.Round(lemon.Cost!.Value, 2));

        // 44 sprigs, 48.4 with the reserve: 49, from bunches of 30 of which four fifths and more can be used.
        var dill = plan.Purchases.Single(p => p.Id == "dill");
        Assert.Equal((49d, Dimension.Count, 2, 2.40m), (dill.Amount, dill.Dimension, dill.Count, dill.Cost!.Value));

        // 18 of the martinis from the freezer with one olive each, 19.8 with the reserve.
        Assert.Equal(20, plan.Purchases.Single(p => p.Id == "lanzada-olive").Amount);
    }

    [Fact]
    public void Ice_is_for_mixing_and_for_the_glass()
    {
        // Shaken and served without ice: 200 g, a quarter more for what melts: 250 g a serve.
        Assert.Equal(44 * 250, Plan().Serves.Single(s => s.Drink.Id == "low-tide").Ice, 6);

        // Built in its glass: 180 g and a quarter.
        Assert.Equal(35 * 225, Plan().Serves.Single(s => s.Drink.Id == "estuary-spritz").Ice, 6);
    }

    [Fact]
    public void Long_steps_begin_days_before_and_parts_before_what_needs_them()
    {
        var plan = Plan();

        // Ready two hours before six o'clock. Three days of fermenting and half an hour of work: half past three, three days before.
        var tepache = plan.Tasks.Single(t => t.Make.Prep.Id == "pineapple-tepache");
        Assert.Equal(("2026-12-09", 15.5), (tepache.StartDay.ToString(), tepache.StartHour));

        // 36.5 hours before four o'clock is half past three in the night: it is begun the evening before, at half past seven at the latest.
        var shrub = plan.Tasks.Single(t => t.Make.Prep.Id == "blackcurrant-shrub");
        Assert.Equal("2026-12-10", shrub.StartDay.ToString());
        Assert.InRange(shrub.StartHour, 18, 19.5);

        foreach (var task in plan.Tasks)
        {
            Assert.InRange(task.StartHour, 10, 19.5);
            Assert.True(task.StartDay <= Day && task.ReadyDay <= Day);
            foreach (var line in task.Make.Prep.Ingredients)
            {
                var part = plan.Tasks.FirstOrDefault(t => t.Make.Prep.Id == line.Item.Or(""));
                if (part is null) continue;
                double ready = (24 * part.StartDay.DayNumber) + part.StartHour + part.Hours, begins = (24 * task.StartDay.DayNumber) + task.StartHour;
                Assert.True(ready <= begins + 1e-6, $"{part.Make.Prep.Id} is ready after {task.Make.Prep.Id} begins");
            }
        }
    }

    /// <summary>
    /// Half an hour of work each: by hand, six things make three hours. The day and the day before hold no more of what keeps, and no two
    /// things are begun at once.
    /// </summary>
    [Fact]
    public void Work_is_spread_over_days_as_far_as_things_keep()
    {
        var plan = Plan();
        foreach (var day in plan.Tasks.GroupBy(t => t.StartDay))
        {
            var movable = day.Where(t => t.Earliest is { } earliest && earliest < t.StartDay && t.Warning.Length == 0).ToList();
            Assert.True(day.Count() <= 6 || movable.Count == 0, $"{day.Key}: {string.Join(", ", movable.Select(t => t.Make.Prep.Id))} could be begun earlier");
            double[] starts = [.. day.Select(t => t.StartHour).Order()];
            Assert.All(starts.Zip(starts.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 0.5 - 1e-6));
        }

        // The syrup keeps fourteen days and is made before; the juice keeps one and is pressed on the day.
        Assert.True(plan.Tasks.Single(t => t.Make.Prep.Id == "heather-honey-syrup").StartDay < Day);
        Assert.Equal(Day, plan.Tasks.Single(t => t.Make.Prep.Id == "pressed-pineapple").StartDay);
    }

    [Fact]
    public void What_would_be_past_on_the_day_says_so()
    {
        // The juice keeps a day, and its pulp is dried the night before.
        var pressed = Plan().Tasks.Single(t => t.Make.Prep.Id == "pressed-celery");
        Assert.Contains("would be past on the day", pressed.Warning, StringComparison.Ordinal);
        Assert.All(Plan().Tasks.Where(t => t.Earliest is { } earliest && t.StartDay < earliest), t => Assert.NotEqual("", t.Warning));
    }

    [Fact]
    public void Shares_can_be_set_and_stock_is_used_up()
    {
        // 60 % of 300 is 180; the rest of the menu shares 120 by 176 covers, the spritz 24 of them: 16.4.
        var set = Plan(new EventRequest(120, Day) { DrinksEach = 2.5, Shares = new Dictionary<string, double> { ["low-tide"] = 60 } });
        Assert.Equal(180, set.Serves.Single(s => s.Drink.Id == "low-tide").Count);
        Assert.Equal(17, set.Serves.Single(s => s.Drink.Id == "estuary-spritz").Count);
        Assert.True(Plan(null, Demo.Value.Profiles.Book.Stocks).Purchases.Sum(p => p.Amount) < Plan().Purchases.Sum(p => p.Amount));

        var verdicts = Demo.Value;
        var menu = verdicts.Profiles.Book.Menus.Single(m => m.Id == "evening");
        Assert.Null(EventPlan.Of(
            verdicts,
            menu,
            new EventRequest(10, Day) { Shares = new Dictionary<string, double> { ["low-tide"] = 70, ["breaker"] = 40 } },
            [],
            out string over));
        Assert.Contains("more than 100 %", over, StringComparison.Ordinal);
        Assert.Null(EventPlan.Of(
            verdicts, menu, new EventRequest(10, Day) { Shares = new Dictionary<string, double> { ["no-such"] = 10 } }, [],
            out string unknown));
        Assert.Contains("no-such", unknown, StringComparison.Ordinal);
    }
}
