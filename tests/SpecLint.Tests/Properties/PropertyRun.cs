using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SpecLint.Findings;

namespace SpecLint.Tests.Properties;

/// <summary>A case: a book, and the step that the property is about (none where it is about the book alone).</summary>
/// <param name="Book">The book.</param>
/// <param name="Step">The step; <see langword="null"/> where there is none.</param>
internal sealed record PropertyCase(PropertyBook Book, PropertyStep? Step)
{
    /// <summary>Whether the book is a seed as it is.</summary>
    public bool IsSeed { get; init; }

    /// <summary>
    /// The first harm finding that the seed must have and has not, or that it has and its page or its record does not show, in words;
    /// <see langword="null"/> where all is as it must be, or the seed is changed.
    /// </summary>
    public string? Unlike(CheckResult of)
    {
        if (!IsSeed) return null;
        var found = of.Findings.Flat().ToList();
        if (Book.IsWhole && found.Find(f => f.Rule.Safety && !Book.Expected.Any(e => e.Rule == f.Rule.Id)) is { } surplus)
            return $"the page of the seed shows no {surplus.Rule.Id}, and it has it as {surplus.Level}";
        foreach (var (rule, level) in Book.Expected)
        {
            Level? highest = found.Where(f => f.Rule.Id == rule).Max(f => (Level?)f.Level);
            if (highest is null || (level > Level.None && highest != level))
                return $"the seed must have {rule}{(level > Level.None ? $" as {level}" : "")}, and has "
                    + $"{(highest is null ? "not" : $"it as {highest}")}";
        }

        // A page marks each finding: on which file, and how many.
        string[] places = [.. found.Where(f => f.Rule.Safety).Select(f => $"{f.Rule.Id} on {f.Place.File.Path}").Order(StringComparer.Ordinal)];
        return Book.Places is { } marked && !marked.SequenceEqual(places)
            ? $"the page of the seed marks {string.Join(", ", marked)}, and it has {string.Join(", ", places)}"
            : SeedRecord.Difference(Book, of);
    }
}

/// <summary>
/// Tries a property on many generated books. The cases hang on the seed alone, so that a failure can be had again; a failing
/// book is cut down while it fails, and printed.
/// </summary>
internal static class PropertyRun
{
    /// <summary>The seed of every run; <c>SPECLINT_SEED</c> sets another.</summary>
    public static int Seed { get; } = int.TryParse(
        Environment.GetEnvironmentVariable("SPECLINT_SEED"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int seed)
        ? seed
        : 20261125;

    /// <summary>The first case; <c>SPECLINT_FIRST</c> sets another, for one case again or for a long run in parts.</summary>
    private static int First { get; } = int.TryParse(
        Environment.GetEnvironmentVariable("SPECLINT_FIRST"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int first)
        ? first
        : 0;

    /// <summary>How many cases: as given in the short run, 100,000 in the long one unless said; <c>SPECLINT_CASES</c> sets another number.</summary>
    public static int Cases(int shortRun, int longRun = 100_000) =>
        int.TryParse(
            Environment.GetEnvironmentVariable("SPECLINT_CASES"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int cases)
            ? cases
            : LongRun.Cases(shortRun, longRun);

    /// <summary>Tries a property.</summary>
    /// <param name="cases">How many cases.</param>
    /// <param name="stepOf">The step of a case, from its book; <see langword="null"/> where the property is about the book alone.</param>
    /// <param name="violation">What is wrong with a case; <see langword="null"/> where it holds.</param>
    public static void Holds(int cases, Func<Random, PropertyBook, PropertyStep?>? stepOf, Func<PropertyCase, string?> violation)
    {
        var failed = new SortedDictionary<int, string>();
        var seeds = Seeds();
        Parallel.For(First, First + cases, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, (i, state) =>
        {
            if (failed.Count >= Most) state.Break();
            var made = Make(i, seeds, stepOf);
            if (made is null || violation(made) is not { } wrong) return;
            made = Shrink(made, violation, ref wrong);
            lock (failed) failed[i] = $"case {i} of seed {Seed}, from "
                + $"{made.Book.Name}{(made.Step is null ? "" : $"; step: {made.Step.Words}")}\n{wrong}\n{made.Book}\n";
        });
        if (failed.Count == 0) return;
        var text = new StringBuilder($"{failed.Count} or more of {cases} cases fail.\n\n");
        foreach (string one in failed.Values.Take(Most)) text.AppendLine(one);
        Assert.Fail(text.ToString());
    }

    /// <summary>Failures that are worked out and printed, at most.</summary>
    private static int Most { get; } = int.TryParse(
        Environment.GetEnvironmentVariable("SPECLINT_FAILURES"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int most)
        ? most
        : 3;

    /// <summary>The book of a case.</summary>
    public static PropertyBook BookOf(int i) => BookOf(RandomOf(i), PropertySeeds.All, out _);

    /// <summary>The seeds of a run: all of them, unless <c>SPECLINT_SEEDS</c> names some, parted by <c>|</c>.</summary>
    private static IReadOnlyList<PropertyBook> Seeds()
    {
        string[] names = (Environment.GetEnvironmentVariable("SPECLINT_SEEDS") ?? "").Split('|', StringSplitOptions.RemoveEmptyEntries);
        return names.Length == 0 ? PropertySeeds.All : [.. PropertySeeds.All.Where(s => names.Contains(s.Name))];
    }

    private static Random RandomOf(int i) => new(unchecked((Seed * 1_000_003) + i));

    /// <summary>One case in four is a seed as it is.</summary>
    private static PropertyBook BookOf(Random random, IReadOnlyList<PropertyBook> seeds, out bool isSeed)
    {
        var book = seeds[random.Next(seeds.Count)].Copy();
        isSeed = random.Next(4) == 0;
        if (isSeed) return book;
        foreach (var step in PropertySteps.Any(random, book)) step.Apply(book);
        return book;
    }

    private static PropertyCase? Make(int i, IReadOnlyList<PropertyBook> seeds, Func<Random, PropertyBook, PropertyStep?>? stepOf)
    {
        var random = RandomOf(i);
        var book = BookOf(random, seeds, out bool isSeed);
        if (stepOf is null) return new PropertyCase(book, null) { IsSeed = isSeed };
        return stepOf(random, book) is { } last ? new PropertyCase(book, last) { IsSeed = isSeed } : null;
    }

    /// <summary>Takes out files, properties and items one by one as long as the case fails.</summary>
    private static PropertyCase Shrink(PropertyCase failing, Func<PropertyCase, string?> violation, ref string wrong)
    {
        string first = wrong;
        for (bool smaller = true; smaller;)
        {
            smaller = false;
            foreach (string path in failing.Book.Paths.ToList())
            {
                var without = failing.Book.Copy();
                without.Remove(path);
                if (path != "bar.json" && Try(without)) continue;
                for (int at = 0; failing.Book[path] is { } file && at < Places(file).Count; at++)
                {
                    var less = failing.Book.Copy();
                    Places(less[path]!)[at].Remove();
                    if (Try(less)) at--;
                }
            }

            bool Try(PropertyBook book)
            {
                var one = failing with { Book = book, IsSeed = false };
                string? now;
                try
                {
                    now = violation(one);
                }
                catch (InvalidOperationException)
                {
                    return false;
                }

                // Another violation would tell of another cause.
                if (now is null || now != first) return false;
                failing = one;
                smaller = true;
                found = now;
                return true;
            }
        }

        wrong = found ?? wrong;
        return failing;
    }

    [ThreadStatic]
    private static string? found;

    private static List<(string Words, Action Remove)> Places(JsonObject file)
    {
        var places = new List<(string, Action)>();
        Walk(file);
        return places;

        void Walk(JsonNode node)
        {
            if (node is JsonObject map)
            {
                foreach (var (name, value) in map.ToList())
                {
                    places.Add((name, () => map.Remove(name)));
                    if (value is JsonObject or JsonArray) Walk(value);
                }
            }
            else if (node is JsonArray list)
            {
                for (int i = 0; i < list.Count; i++)
                {
                    var item = list[i];
                    places.Add((i.ToString(CultureInfo.InvariantCulture), () => list.Remove(item)));
                    if (item is JsonObject or JsonArray) Walk(item);
                }
            }
        }
    }
}
