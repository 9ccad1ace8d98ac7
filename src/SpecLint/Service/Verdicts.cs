using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Rules.Keeping;

namespace SpecLint.Service;

/// <summary>
/// The one place that says of each item of a checked book whether it may be kept and served. Labels, the line check, the scaling
/// of recipes, profiles and comparisons ask here. It judges nothing itself: an open finding of a rule that guards against harm
/// decides, wherever in the tree of parts it stands.
/// </summary>
public sealed class Verdicts
{
    private static readonly Finding[] None = [];

    private readonly Dictionary<string, List<Finding>> byFile = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Verdict> known = new(StringComparer.Ordinal);

    private Verdicts(ProfileSet profiles, IEnumerable<Finding> findings)
    {
        Profiles = profiles;
        foreach (var finding in findings)
        {
            string path = finding.Place.File.Path;
            if (!byFile.TryGetValue(path, out var list)) byFile.Add(path, list = []);
            list.Add(finding);
        }
    }

    /// <summary>The profiles of the book.</summary>
    public ProfileSet Profiles { get; }

    /// <summary>The verdicts of a checked book.</summary>
    public static Verdicts Of(CheckResult result) => new(result.Profiles, result.Findings.Flat());

    /// <summary>The verdict on a recipe or an ingredient, its parts included. Not thread-safe.</summary>
    public Verdict Of(BookFile file)
    {
        if (known.TryGetValue(file.Source.Path, out var verdict)) return verdict;
        var forbidding = new List<Finding>();
        var shortening = new List<Finding>();
        var toShow = new List<Finding>();
        foreach (var finding in InTreeOf(file).Where(f => f.Rule.Safety || f.Rule.LeavesHarmUnknown))
        {
            if (finding.Level < Level.Warning) continue;
            if (finding.Level < Level.Error) toShow.Add(finding);

            // A part that is kept too long may still be fresh in what it goes into: there the lots decide, and the text asks to put it right.
            else if (finding.AllowedDays is not null) shortening.Add(finding);
            else forbidding.Add(finding);
        }

        forbidding.Sort(FindingOrder.Instance);
        shortening.Sort(FindingOrder.Instance);
        toShow.Sort(FindingOrder.Instance);
        verdict = file is Prep prep
            ? Date(prep, forbidding, shortening, toShow)
            : new Verdict(forbidding, shortening, toShow)
            {
                Days = forbidding.Count > 0 ? double.NaN : double.PositiveInfinity,
                Life = FactValue.Open(Closed(forbidding) ?? "a drink is served when it is made"),
            };
        known.Add(file.Source.Path, verdict);
        return verdict;
    }

    /// <summary>Findings in force on a file.</summary>
    internal IReadOnlyList<Finding> On(BookFile file) => byFile.TryGetValue(file.Source.Path, out var list) ? list : None;

    /// <summary>Findings in force on a lot of a stock file.</summary>
    internal IEnumerable<Finding> On(Stock stock, Lot lot) =>
        On(stock).Where(f => f.Place.Span.Start >= lot.Span.Start && f.Place.Span.End <= lot.Span.End);

    /// <summary>Findings in force on a file and on everything of the book that goes into it.</summary>
    internal IEnumerable<Finding> InTreeOf(BookFile file)
    {
        var book = Profiles.Book;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var waiting = new Stack<BookFile>([file]);
        while (waiting.Count > 0)
        {
            var next = waiting.Pop();
            if (!seen.Add(next.Source.Path)) continue;
            foreach (var finding in On(next)) yield return finding;
            if (next is Ingredient { Like.IsGiven: true } ingredient && book.Resolve(ingredient.Like.Value)?.File is { } like) waiting.Push(like);
            if (next is not Recipe recipe) continue;
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (line.Item.IsGiven && book.Resolve(line.Item.Value)?.File is { } part) waiting.Push(part);
            }
        }
    }

    private Verdict Date(Prep prep, List<Finding> forbidding, List<Finding> shortening, List<Finding> toShow)
    {
        var profile = Profiles.Of(prep);
        var life = profile.Get(Fact.Life);
        double asked = Storage.Celsius(prep, Profiles.Book.Settings), limit = StoredTooWarm.LimitOf(Profiles.Book.Settings).Value;
        bool cold = profile.Keeping is { HoldsPerishable: true, IsDried: false, Verdict: not KeepingVerdict.NotControlled };
        if (cold && asked > limit) asked = limit;
        if (Closed(forbidding) is { } why)
            return new Verdict(forbidding, shortening, toShow) { Days = double.NaN, Life = FactValue.Open(why), StorageCelsius = asked };
        var allowed = KeepingEnd.None;
        foreach (var finding in shortening.Concat(toShow))
        {
            if (finding.AllowedDays is { } days && finding.Place.File.Path == prep.Source.Path) allowed = allowed.Or(days, finding.Rule.Id, null);
        }

        var end = profile.KeepingTerms!.Least;
        if (allowed.IsSet) end = end.Or(allowed.Days, allowed.From, null);
        if (cold) end = end.Or(KeepingLife.DaysOfBase(prep, profile, Profiles.Book.Settings), "SL5019", null);
        if (end.IsSet && !(life.IsKnown && life.Value <= end.Days)) life = new FactValue(end.Days, end.Days, end.Days, end.From, null);
        double stated = Storage.LeastDays(prep);
        bool byRecipe = stated <= end.Days;
        return new Verdict(forbidding, shortening, toShow)
        {
            Days = byRecipe ? stated : end.Days,
            DaysFrom = byRecipe ? "its recipe" : end.From,
            Life = life,
            StorageCelsius = asked,
            AllowedDays = allowed.IsSet ? (allowed.Days, $"check: {allowed.From}") : null,
        };
    }

    private static string? Closed(List<Finding> forbidding) =>
        forbidding.Count == 0 ? null : $"do not use it, see check ({Verdict.RulesOf(forbidding)})";
}
