using SpecLint.Findings;
using SpecLint.Tests.OfficialDrinks;
using SpecLint.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tests.Published;

/// <summary>
/// Drinks that were published and drunk, without their styles: every error and warning on them was judged by hand
/// (<c>judged.csv</c>: true, debatable, false), and at most one drink in fifty gets one that is false.
/// </summary>
public sealed class PublishedDrinksTests(ITestOutputHelper output)
{
    private static readonly List<CheckResult> Results = [.. PublishedDrinks.Lists.Prepend(OfficialBook.WithoutStyles).Select(Checker.Check)];

    private static readonly List<(string Drink, string Rule, string Judgement)> Judged =
        [.. Csv.Read(Repository.At("tests", "SpecLint.Tests", "Published", "judged.csv")).Select(r => (r[0], r[1], r[3]))];

    [Fact]
    public void Most_drinks_of_the_lists_are_understood()
    {
        int drinks = Results.Sum(r => r.Book.Drinks.Count);
        Assert.True(drinks > 640, $"{drinks} drinks");
    }

    [Fact]
    public void Every_error_and_warning_is_judged_and_one_drink_in_fifty_at_most_gets_a_false_one()
    {
        var found = Results.SelectMany(r => r.Findings.Flat()).Where(f => f.Level >= Level.Warning).ToList();
        var judged = Judged.Select(j => (j.Drink, j.Rule)).Distinct().ToHashSet();
        var notJudged = found.Where(f => !judged.Contains((f.Subject, f.Rule.Id)))
            .Select(f => $"{f.Subject},{f.Rule.Id},{f.Level.ToString().ToLowerInvariant()}: {f.Message}")
            .ToList();
        Assert.True(notJudged.Count == 0, $"{notJudged.Count} to be judged:\n{string.Join("\n", notJudged)}");
        var present = found.Select(f => (f.Subject, f.Rule.Id)).ToHashSet();
        Assert.Equal([], judged.Where(j => !present.Contains(j)).Select(j => $"{j.Drink} {j.Rule} is no longer found: take it out of the list"));

        int drinks = Results.Sum(r => r.Book.Drinks.Count);
        var wrong = Judged.Where(j => j.Judgement == "false").Select(j => j.Drink).Distinct().Count();
        var open = Judged.Where(j => j.Judgement == "debatable").Select(j => j.Drink).Distinct().Count();
        output.WriteLine($"{drinks} drinks, {found.Count} errors and warnings; false on {wrong} drinks, debatable on {open}");
        output.WriteLine($"notes of balance: {string.Join(", ", Results.SelectMany(r => r.Findings.Flat()).Where(f => f.Level == Level.Note && f.Rule.Id.StartsWith("SL3", StringComparison.Ordinal)).GroupBy(f => f.Rule.Id).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count()}"))}");
        Assert.True(wrong * 50 <= drinks, $"{wrong} of {drinks} drinks get a false error or warning");
        Assert.True((wrong + open) * 50 <= drinks, $"{wrong + open} of {drinks} drinks get a false or debatable error or warning");
    }
}
