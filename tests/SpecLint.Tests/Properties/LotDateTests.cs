using System.Text.Json.Nodes;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Agreement on dates: the last day of a lot is the day it was made and the days that the verdict on its recipe gives, without those in
/// the freezer, reckoned here by themselves; a day on its label can only be earlier. One that is past is never ready and has a finding,
/// one that is not past is not refused for its age.
/// </summary>
public sealed class LotDateTests
{
    private const string Path = "dated.stock.json";

    [Fact]
    public void A_lot_lasts_as_long_as_the_verdict_on_its_recipe_says() => PropertyRun.Holds(PropertyRun.Cases(300, 20_000), Date, one =>
    {
        var book = one.Book.Copy();
        return one.Step!.Apply(book) ? Violation(book) : null;
    });

    /// <summary>Puts a lot of a preparation in stock.</summary>
    private static PropertyStep? Date(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(random, [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal))]);
        if (path.Length == 0) return null;
        string id = path[(path.LastIndexOf('/') + 1)..path.IndexOf('.', StringComparison.Ordinal)];
        int age = PropertySteps.Pick(random, [0, 1, 2, 3, 6, 7, 8, 13, 29, 90]);
        var lot = new JsonObject { ["item"] = id, ["lot"] = "L1", ["made"] = Day(-age), ["amount"] = "500 g" };
        if ((string?)book[path]!["keep"]?["at"] is { } at) lot["at"] = at;
        int frozen = random.Next(3), into = random.Next(age + 1), label = random.Next(5);
        if (frozen == 1 && age > into)
            lot["frozen"] = new JsonArray(new JsonObject
            {
                ["from"] = Day(into - age),
                ["to"] = Day(into - age + 1 + random.Next(age - into)),
            });
        if (label < 3) lot["useBy"] = Day(PropertySteps.Pick(random, [-2, -1, 0, 1, 2, 5, 20, 200]));
        return new PropertyStep($"a lot in stock: {lot.ToJsonString()}", b =>
        {
            b.Put(Path, new JsonObject { ["on"] = Day(0), ["lots"] = new JsonArray(lot.DeepClone()) });
            return true;
        });
    }

    private static string Day(int fromToday) => Books.On.AddDays(fromToday).ToString();

    private static string? Violation(PropertyBook book)
    {
        var result = book.Check();
        if (result.Book.Stocks.FirstOrDefault(s => s.Source.Path == Path) is not { Lots.Count: 1 } stock) return null;
        var lot = stock.Lots[0];
        if (result.Book.Resolve(lot.Item.Value) is not { File: Prep prep, ByProduct: null }) return null;
        var verdicts = Verdicts.Of(result);
        var verdict = verdicts.Of(prep);
        var of = LotCheck.Of(lot, stock, verdicts);
        if (verdict.IsForbidden)
            return of.Readiness != Readiness.No
                ? $"it is {of.Readiness}, and its recipe must not be used"
                : of.UseBy is { } none ? $"it has the last day {none}, and must not be used" : null;

        // Past the time of the trade, a note is enough.
        var found = result.Findings.Flat()
            .Where(f => f.Place.File.Path == Path && f.Rule.Safety && (f.Level >= Level.Warning || f.Rule.Id == "SL9015"))
            .ToList();
        CalendarDate? last = LastDay(lot, verdict.Days), label = lot.UseBy.IsGiven ? lot.UseBy.Value : null;
        var first = last is null || label < last ? label : last;
        bool perishes = result.Profiles.Of(prep).Keeping is { HoldsPerishable: true, IsDried: false, Verdict: not KeepingVerdict.NotControlled };
        if (of.Readiness != Readiness.No && of.UseBy != first)
            return $"its last day is {of.UseBy}; the verdict gives it {verdict.Days} d ({verdict.DaysFrom}), so that is {first}";
        if (first < Books.On
            && (of.Readiness == Readiness.Ready
                || (perishes && (of.Readiness == Readiness.If || (found.Count == 0 && verdict.AllowedDays is null)))))
            return $"its last day was {first}, it is {of.Readiness}, and check says {string.Join(", ", found.Select(f => f.Rule.Id))}";
        if (!(first < Books.On) && found.Count == 0 && verdict.Answer == Readiness.Ready && of.Readiness == Readiness.No)
            return $"its last day is {first}, and it is refused: {string.Join("; ", of.Reasons)}";

        // A label beyond what the trade does is its writer's; beyond the date mark of food that needs cold (Food Code 3-501.17) it is not.
        return perishes && label > last && label.Value.DaysSince(lot.Made.Value) >= 7 && lot.Frozen.Count == 0 && found.Count == 0
            ? $"its label says {label}, by its recipe its last day is {last}, and nothing is said of it"
            : null;
    }

    /// <summary>The day on which the last of the days ends, with the day made as the first and no day counted that began in the freezer.</summary>
    private static CalendarDate? LastDay(Lot lot, double days)
    {
        if (double.IsInfinity(days) || days > 3000) return null;
        var day = new DateTime(2000, 1, 1).AddDays(lot.Made.Value.DaysSince(CalendarDate.Of(2000, 1, 1)!.Value));
        var frozen = lot.Frozen.Select(t => (From: day.AddDays(t.From.DaysSince(lot.Made.Value)), To: day.AddDays(t.To!.Value.DaysSince(lot.Made.Value))))
            .ToList();
        int left = Math.Max(1, (int)Math.Ceiling(Math.Round(days, 5)));
        for (; ; day = day.AddDays(1))
        {
            if (!frozen.Any(f => f.From <= day && day < f.To) && --left == 0) return CalendarDate.Of(day.Year, day.Month, day.Day);
        }
    }
}
