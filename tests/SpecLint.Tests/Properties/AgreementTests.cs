using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Agreement: for every item, the label, the line check, the scaled recipe and the profile never allow what check forbids; and no two harm
/// findings are one to a baseline.
/// </summary>
public sealed class AgreementTests
{
    [Fact]
    public void No_verb_allows_what_check_forbids() => PropertyRun.Holds(PropertyRun.Cases(2500), null, one => Violation(one.Book));

    private static string? Violation(PropertyBook book)
    {
        book = book.Copy();
        Serve(book);
        var result = book.Check();

        // A baseline that takes one in must not put another aside.
        if (result.Findings.Flat()
            .Where(f => f.Rule.Safety && f.Caution is not null && f.Level >= Level.Warning)
            .GroupBy(f => f.Fingerprint)
            .FirstOrDefault(g => g.Count() > 1) is { } twins)
            return $"{twins.First().Subject}: two findings of {twins.First().Rule.Id} have one "
                + $"fingerprint\n{string.Join('\n', twins.Select(f => $"  {f.Path}: {f.Message}"))}";
        var verdicts = Verdicts.Of(result);
        var menu = result.Book.Menus.FirstOrDefault(m => m.Id == "all-of-it");
        var evening = menu is null ? null : LineCheck.Of(verdicts, menu, result.Book.Stocks);
        foreach (var recipe in result.Book.Recipes)
        {
            var harm = HarmIn(result, recipe).ToList();
            string? wrong = recipe is Prep prep ? Label(verdicts, prep, harm, evening) : Served(evening, recipe.Id, harm);
            wrong ??= Judged(verdicts, recipe, harm) ?? Scaled(verdicts, recipe, harm) ?? Profiled(verdicts, recipe, harm);
            if (wrong is not null) return $"{recipe.Id}: {wrong}\n{string.Join('\n', harm.Select(f => $"  {f.Level} {f.Rule.Id} {f.Subject}: {f.Message}"))}";
        }

        return evening is null ? null : Lots(result, evening);
    }

    /// <summary>A menu of all drinks, and a lot of every preparation made today.</summary>
    private static void Serve(PropertyBook book)
    {
        static string IdOf(string path) => path[(path.LastIndexOf('/') + 1)..path.IndexOf('.', StringComparison.Ordinal)];
        var drinks = book.Paths.Where(p => p.EndsWith(".drink.json", StringComparison.Ordinal)).Select(IdOf);
        var preps = book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal)).Select(IdOf);
        var made = PropertyBook.Of("", [
            ("all-of-it.menu.json", $$"""{ "name": "All of it", "drinks": [ {{string.Join(", ", drinks.Select(d => $$"""{ "drink": "{{d}}", "covers": 3 }"""))}} ] }"""),
            ("made-today.stock.json", $$"""{ "on": "2026-11-25", "lots": [ {{string.Join(", ", preps.Select(p => $$"""{ "item": "{{p}}", "made": "2026-11-25", "at": "4 °C", "amount": "500 g" }"""))}} ] }""")])!;
        foreach (string path in new[] { "all-of-it.menu.json", "made-today.stock.json" })
            book.Put(path, (System.Text.Json.Nodes.JsonObject)made[path]!.DeepClone());
    }

    /// <summary>Open harm findings on a recipe and on what goes into it, found without the code under test.</summary>
    private static IEnumerable<Finding> HarmIn(CheckResult result, BookFile file)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        Reach(file);
        return result.Findings.Flat()
            .Where(f => (f.Rule.Safety || f.Rule.LeavesHarmUnknown) && f.Level >= Level.Warning && reached.Contains(f.Place.File.Path));

        void Reach(BookFile next)
        {
            if (!reached.Add(next.Source.Path)) return;
            if (next is Ingredient { Like.IsGiven: true } own && result.Book.Resolve(own.Like.Value)?.File is { } like) Reach(like);
            if (next is not Recipe recipe) return;
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (line.Item.IsGiven && result.Book.Resolve(line.Item.Value)?.File is { } part) Reach(part);
            }
        }
    }

    /// <summary>
    /// The verdict is what the findings come to, neither more nor less: its answer, and the days and the cold of a preparation, each by what is
    /// written or by a rule that is named.
    /// </summary>
    private static string? Judged(Verdicts verdicts, Recipe recipe, List<Finding> harm)
    {
        var verdict = verdicts.Of(recipe);
        var answer = harm.Exists(f => f.Level == Level.Error) ? Readiness.No : harm.Count > 0 ? Readiness.If : Readiness.Ready;
        if (verdict.Answer != answer) return $"its verdict is {verdict.Answer}, its findings come to {answer}";
        if (verdict.IsForbidden != harm.Exists(Forbids)) return "its verdict and its findings do not agree on whether it must not be used";
        if (recipe is not Prep prep) return null;
        bool closed = harm.Exists(Forbids);
        if (double.IsNaN(verdict.Days) != closed) return $"its verdict gives it {verdict.Days} d";
        double asked = Storage.Celsius(prep, verdicts.Profiles.Book.Settings), stated = Storage.LeastDays(prep);
        if (verdict.StorageCelsius > asked) return $"it is kept at {asked} °C, and its verdict says {verdict.StorageCelsius} °C";
        if (verdict.StorageCelsius < asked && asked <= 5) return $"it is kept cold at {asked} °C, and its verdict says {verdict.StorageCelsius} °C";
        if (closed) return null;
        if (verdict.Days > stated) return $"its recipe keeps it {stated} d, its verdict {verdict.Days} d";
        if ((verdict.DaysFrom == "its recipe") != (verdict.Days == stated)) return $"its verdict gives it {verdict.Days} d by {verdict.DaysFrom}, its recipe {stated} d";
        if (verdict.Life.IsKnown && verdict.Days > verdict.Life.Value + 1e-6) return $"its verdict gives it {verdict.Days} d, the rules {verdict.Life.Value} d";
        if (double.IsFinite(verdict.Days) && verdict.DaysFrom.Length == 0) return $"its verdict gives it {verdict.Days} d by nothing";
        return verdict.DaysFrom.StartsWith("SL5", StringComparison.Ordinal)
            && verdict.DaysFrom != "SL5019"
            && !harm.Exists(f => f.Rule.Id == verdict.DaysFrom && f.Place.File.Path == prep.Source.Path && f.AllowedDays == verdict.Days)
            ? $"its verdict gives it {verdict.Days} d by {verdict.DaysFrom}, which allows no such time"
            : null;
    }

    private static bool Forbids(Finding finding) => finding.Level == Level.Error && finding.AllowedDays is null;

    private static string? Label(Verdicts verdicts, Prep prep, List<Finding> harm, LineCheck? evening)
    {
        var label = LotLabel.OfMade(verdicts, [(prep, Books.On)], null)[0];
        var page = new StringWriter();
        LabelPage.Write(page, [label], SpecLint.Catalogue.LabelStock.Find("a4")!, DisplayUnits.Metric);
        string text = page.ToString();
        if (harm.Exists(f => f.Level == Level.Error) != label.HasOpenFinding) return "its label ends with a finding where there is none, or the other way round";
        if (harm.Exists(Forbids))
        {
            if (label.Lot.UseBy is { } day) return $"its label says use by {day}";
            if (text.Contains("Use by", StringComparison.Ordinal) || text.Contains("Keep at", StringComparison.Ordinal))
                return "its label says until when or how to keep it";
            if (!text.Contains("DO NOT USE", StringComparison.Ordinal)) return "its label does not say DO NOT USE";
        }
        else if (harm.Count > 0 && label.Lot.Readiness == Readiness.Ready)
        {
            return "its label says that it is ready";
        }

        // What is kept cold because it needs it is not ready before somebody takes its temperature.
        if (label.Lot.Readiness == Readiness.Ready
            && prep.Keep is { At: { IsGiven: true, Value: { Dimension: global::SpecLint.Reading.Dimension.Temperature, BaseHigh: > -10 and <= 8 } } }
            && verdicts.Profiles.Of(prep).Keeping is { HoldsPerishable: true, IsDried: false, Verdict: not KeepingVerdict.NotControlled })
            return "its label says that it is ready, and nobody took its temperature";

        // Nor is a label held back of which nobody says anything.
        var profile = verdicts.Profiles.Of(prep);
        if (harm.Count == 0
            && label.Lot.Readiness != Readiness.Ready
            && profile.Keeping is { HoldsPerishable: false }
            && !prep.Family.OrNone().Ferments
            && prep.Target is not { Ph.IsGiven: true }
            && prep.Keep is { At: { IsGiven: true, Value: { Dimension: global::SpecLint.Reading.Dimension.Temperature, Base: > 8 } } })
            return $"its label says {label.Lot.Readiness}, and check says nothing: {string.Join("; ", label.Lot.Reasons.Concat(label.Lot.Conditions))}";

        double most = harm.Where(f => f.Place.File.Path == prep.Source.Path && f.AllowedDays is not null)
            .Select(f => f.AllowedDays!.Value)
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min();
        if (label.Lot.UseBy is { } last && last.DaysSince(Books.On) + 1 > Math.Max(1, Math.Ceiling(most)))
            return $"its label says use by {last}, {most} d are allowed";
        var verdict = verdicts.Of(prep);
        if (label.Lot.UseBy is { } by && by.DaysSince(Books.On) + 1 != Math.Max(1, Math.Ceiling(verdict.Days)))
            return $"its label says use by {by}, the verdict {verdict.Days} d";
        var task = evening?.Make.FirstOrDefault(m => m.Prep.Id == prep.Id);
        if (task is not null && harm.Exists(Forbids)) return "the line check asks to make it";
        if (task is not null && task.LastsUntil != label.Lot.UseBy) return $"the make list says {task.LastsUntil}, its label {label.Lot.UseBy}";
        return null;
    }

    private static string? Served(LineCheck? evening, string id, List<Finding> harm)
    {
        if (evening?.Drinks.FirstOrDefault(d => d.Id == id) is not { } drink) return null;
        if (harm.Exists(f => f.Level == Level.Error) && drink.Readiness != Readiness.No) return $"the line check answers {drink.Readiness}";
        return harm.Count > 0 && drink.Readiness == Readiness.Ready ? "the line check says that it can be served" : null;
    }

    private static string? Scaled(Verdicts verdicts, Recipe recipe, List<Finding> harm)
    {
        if (!harm.Exists(f => f.Level == Level.Error)) return null;
        var plan = ScalePlan.Of(verdicts, recipe, recipe is Drink ? new ScaleRequest { Serves = 10 } : new ScaleRequest { Grams = 700 }, out _);
        if (plan is null) return null;
        var text = new StringWriter();
        ScaleReport.WriteText(text, plan, DisplayUnits.Metric, colour: false);
        string first = plan.Lines.Count > 0 ? $"\n  {plan.Lines[0].Item} " : "\n  makes ";
        string top = text.ToString().Split(first)[0];
        if (harm.Exists(Forbids))
            return !top.Contains("DO NOT USE", StringComparison.Ordinal)
                ? "scale does not say at the top that it must not be used"
                : double.IsNaN(plan.Days) ? null : $"scale keeps it {plan.Days} d";
        return top.Contains("PUT RIGHT FIRST", StringComparison.Ordinal) ? null : "scale does not say at the top what is wrong";
    }

    private static string? Profiled(Verdicts verdicts, Recipe recipe, List<Finding> harm)
    {
        var verdict = verdicts.Of(recipe);
        var life = verdict.Life;
        if (recipe is Drink && double.IsNaN(verdict.Days) != harm.Exists(Forbids)) return $"its verdict gives the drink {verdict.Days} d";
        if (harm.Exists(Forbids)) return life.IsKnown ? $"its profile keeps it {life.Value} d" : null;
        double most = harm.Where(f => f.Place.File.Path == recipe.Source.Path && f.AllowedDays is not null)
            .Select(f => f.AllowedDays!.Value)
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min();
        return life.IsKnown && life.Value > most ? $"its profile keeps it {life.Value} d, {most} d are allowed" : null;
    }

    private static string? Lots(CheckResult result, LineCheck evening)
    {
        // Nor is a lot refused of which no stock file and no recipe says anything.
        bool isQuiet = !result.Findings.Flat()
            .Any(f => f.Rule.Safety && f.Level >= Level.Note && result.Book.Stocks.Any(s => s.Source.Path == f.Place.File.Path));
        foreach (var lot in evening.Lots)
        {
            var found = result.Findings.Flat().Where(f => f.Rule.Safety && f.Place.File.Path == lot.Stock.Source.Path
                && f.Place.Span.Start >= lot.Lot.Span.Start && f.Place.Span.End <= lot.Lot.Span.End).ToList();
            if (found.Exists(Forbids) && lot.Readiness != Readiness.No)
                return $"the lot of {lot.Id} is {lot.Readiness}: {string.Join("; ", found.Select(f => f.Message))}";
            if (isQuiet
                && lot is { Readiness: Readiness.No, Item: not null, Verdict: null or { Answer: Readiness.Ready, AllowedDays: null } })
                return $"the lot of {lot.Id} is refused, and check says nothing: {string.Join("; ", lot.Reasons)}";
            if (isQuiet && IsInOrder(lot, result) && lot.Readiness != Readiness.Ready)
                return $"the lot of {lot.Id} is {lot.Readiness}, and nothing is wrong with it: {string.Join("; ", lot.Reasons.Concat(lot.Conditions))}";
            if (found.Exists(f => f.Level >= Level.Warning) && lot.Readiness == Readiness.Ready)
                return $"the lot of {lot.Id} is ready: {string.Join("; ", found.Select(f => f.Message))}";
        }

        return null;
    }

    /// <summary>
    /// Whether a lot of a preparation whose verdict says nothing was made on a known day no longer ago than it keeps, stands as cold as its
    /// recipe asks, of which no reading is asked and none is given.
    /// </summary>
    private static bool IsInOrder(LotCheck lot, CheckResult result) =>
        lot is { Verdict: { Answer: Readiness.Ready } verdict, Item: { ByProduct: null, File: Prep prep }, Lot: { Made.IsGiven: true, UseBy.IsGiven: false, Measured: null } written }
            && lot.Stock.On.IsGiven
            && written.Frozen.Count == 0
            && written.MadeFrom.Count == 0
            && written.At is { IsGiven: true, Value: { Dimension: global::SpecLint.Reading.Dimension.Temperature, BaseHigh: <= 4 and > -10 } at }
            && !(at.BaseHigh > Storage.Celsius(prep, result.Book.Settings) + 0.5)
            && written.Made.Value.DaysSince(result.Book.On) <= 0
            && result.Book.On.DaysSince(written.Made.Value) < Math.Min(verdict.Days, 7)
            && !prep.Family.OrNone().Ferments
            && prep.Target is not { Ph.IsGiven: true }
            && prep.Target is not { Brix.IsGiven: true };
}
