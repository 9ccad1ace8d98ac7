using System.Text.Json.Nodes;
using SpecLint.Findings;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Worse conditions, rung by rung over every limit: on a ladder of storage times, temperatures, amounts, acids, heats and ages, from
/// mild to severe, no harm finding goes and no level falls from one rung to the next. A comparison that is turned around speaks on
/// one side of its limit and is silent on the other, so that some ladder falls.
/// </summary>
public sealed class LadderTests
{
    private static readonly string[] Times = ["12 h", "1 d", "2 d", "4 d", "7 d", "8 d", "15 d", "40 d", "400 d"];
    private static readonly string[] Temperatures = ["2 °C", "5 °C", "7 °C", "9 °C", "20 °C", "26 °C", "30 °C"];
    private static readonly double[] Amounts = [0.01, 0.03, 0.1, 0.2, 0.4, 0.7, 1, 1.5, 2.5, 5, 10, 30, 100];
    private static readonly double[] Acids = [1, 0.5, 0.2, 0.05, 0.01];
    private static readonly double[] Heats = [1, 0.9, 0.8, 0.7, 0.6];
    private static readonly double[] Shorter = [1, 0.5, 0.2, 0.05, 0.01];
    private static readonly double[] Longer = [0.1, 0.5, 1, 2, 5, 20];
    private static readonly double[] Acidities = [3, 3.5, 3.9, 4.1, 4.3, 4.5, 4.7, 5.2, 6.5];
    private static readonly double[] Activities = [0.5, 0.7, 0.82, 0.84, 0.86, 0.89, 0.91, 0.93, 0.96, 0.99];
    private static readonly double[] Strengths = [70, 45, 38, 30, 24, 19, 15, 10, 4, 1];
    private static readonly double[] Pressures = [0.5, 1.2, 2, 3, 4.5, 7, 10, 14];
    private static readonly string[] Ages = ["2026-11-25", "2026-11-22", "2026-11-19", "2026-11-18", "2026-11-15", "2026-11-05", "2026-09-01"];

    /// <summary>Rungs close below, at and above each limit of the table that has a unit, from the least to the largest.</summary>
    private static double[][] Around(string unit, double from, double to) =>
        [.. global::SpecLint.Catalogue.Limits.All
            .Where(l => l.Unit == unit && l.Value > from && l.Value * 1.02 < to)
            .Select(l => l.Value)
            .Distinct()
            .Order()
            .Select(v => new[] { Math.Round(v * 0.98, 4), v, Math.Round(v * 1.02, 4) })];

    private static readonly double[][] AroundDays = Around("d", 0, 1000), AroundHours = Around("h", 0, 1000), AroundCelsius = Around("°C", 1, 40);
    private static readonly double[][] AroundPh = Around("pH", 2, 8), AroundActivity = Around("1", 0.5, 1), AroundStrength = Around("% v/v", 1, 80);

    private static readonly string[] Labels = ["2026-11-25", "2026-11-27", "2026-11-30", "2026-12-02", "2026-12-05", "2026-12-25", "2027-06-01", "2028-06-01"];

    /// <summary>Rungs of a ladder, each made on a book.</summary>
    private sealed record Ladder(string Words, string Path, IReadOnlyList<Func<PropertyBook, bool>> Rungs, string? Part = null)
    {
        /// <summary>
        /// Whether it is about what keeps: of the rules of keeping, but for those of a reading against what it is of, to which another may
        /// be nearer.
        /// </summary>
        public bool IsOfReading { get; init; }

        /// <summary>Whether it gets cooler, which is no worse where the heat itself is the hazard (SL6015).</summary>
        public bool IsCooler { get; init; }

        /// <summary>The one rule that it is about; <see langword="null"/> where it is about all.</summary>
        public string? Only { get; init; }
    }

    /// <summary>A lot that is made from one of a later day contradicts itself; an older source takes that away.</summary>
    private static bool IsNoContradiction(global::SpecLint.Findings.Finding finding) =>
        finding.Rule.Id != "SL5037" || finding.Answer == global::SpecLint.Findings.Answer.Broken;

    private static readonly HashSet<string> AgainstReadings = ["SL5003", "SL5004", "SL5015", "SL5038", "SL5040"];

    [Fact]
    public void No_rung_of_worse_conditions_removes_or_lowers_a_harm_finding() =>
        PropertyRun.Holds(PropertyRun.Cases(400, 20_000), (random, book) => Choose(random, book) is { } l ? AsStep(l) : null, one =>
    {
        var ladder = Ladders(one.Book).Find(l => l.Words == one.Step!.Words);
        if (ladder is null) return null;
        if (one.IsSeed && one.Unlike(one.Book.Check()) is { } unlike) return unlike;
        HarmOf? before = null;
        bool? wasAlcoholic = null;
        for (int i = 0; i < ladder.Rungs.Count; i++)
        {
            var rung = one.Book.Copy();
            if (!ladder.Rungs[i](rung)) continue;
            var result = rung.Check();

            // A reading that cannot be shows nothing.
            if (ladder.IsOfReading && result.Findings.Flat().Any(static f => f.Rule.Id is "SL5004" or "SL5038")) continue;
            var harm = new HarmOf(
                result,
                ladder.IsCooler
                    ? static f => f.Rule.Id != "SL6015"
                    : ladder.Only is { } only
                        ? f => f.Rule.Id == only
                        : ladder.IsOfReading
                            ? f => f.Rule.Id[2] == '5' && !AgainstReadings.Contains(f.Rule.Id)
                            : ladder.Part is { } part ? f => KnowledgeTests.IsAbout(f, ladder.Path, part) : IsNoContradiction);

            // From 1.2 % vol another law speaks of the drink.
            bool? isAlcoholic = result.Book.Recipes.FirstOrDefault(r => r.Source.Path == ladder.Path) is { } recipe
                && result.Profiles.Of(recipe).Get(Fact.Abv) is { IsKnown: true } abv
                ? abv.Value > 1.2
                : null;
            bool sameLaw = isAlcoholic == wasAlcoholic;
            wasAlcoholic = isAlcoholic;
            if (before is not null
                && (ladder.Part is null || sameLaw)
                && (HarmOf.Lost(before, harm, orAnother: true)
                    ?? (ladder.Part is null ? HarmOf.Lowered(before, harm) : HarmOf.LoweredByRule(before, harm))) is { } wrong)
                return $"rung {i + 1}: {wrong}";
            before = harm;
        }

        return null;
    });

    private static PropertyStep AsStep(Ladder ladder) => new(ladder.Words, static _ => true) { Path = ladder.Path };

    private static Ladder? Choose(Random random, PropertyBook book)
    {
        var all = Ladders(book);
        return all.Count == 0 ? null : all[random.Next(all.Count)];
    }

    private static List<Ladder> Ladders(PropertyBook book)
    {
        var all = new List<Ladder>();
        foreach (string path in book.Paths)
        {
            if (path.EndsWith(".prep.json", StringComparison.Ordinal) && !KnowledgeTests.IsHeldAgainst(book, path))
            {
                if (book[path]!["keep"] is JsonObject keep)
                {
                    if (keep["for"] is not null)
                    {
                        foreach (double[] near in AroundDays)
                            all.Add(new Ladder(
                                $"{path}: longer around {Words(near[1], " d")}", path,
                                [.. near.Select(v => PropertySteps.Keep(path, "for", Words(v, " d")).Apply)]));
                        foreach (double[] near in AroundHours)
                            all.Add(new Ladder(
                                $"{path}: longer around {Words(near[1], " h")}", path,
                                [.. near.Select(v => PropertySteps.Keep(path, "for", Words(v, " h")).Apply)]));
                    }

                    if (keep["at"] is not null)
                    {
                        foreach (double[] near in AroundCelsius)
                            all.Add(new Ladder(
                                $"{path}: warmer around {Words(near[1], " °C")}", path,
                                [.. near.Select(v => PropertySteps.Keep(path, "at", Words(v, " °C")).Apply)]));
                    }

                    if (keep["for"] is not null)
                        all.Add(new Ladder(
                            $"{path}: longer and longer", path, [.. Times.Select(t => PropertySteps.Keep(path, "for", t).Apply)]));
                    if (keep["at"] is not null)
                        all.Add(new Ladder(
                            $"{path}: warmer and warmer", path, [.. Temperatures.Select(t => PropertySteps.Keep(path, "at", t).Apply)]));
                }

                if (book[path]!["measured"] is null)
                    all.Add(new Ladder(
                        $"{path}: less and less acid", path, [.. Acids.Select(f => KnowledgeTests.WeakerAcid(path, f).Apply)]));
            }

            // Another method voids a reading; that the old one comes back would be no rung.
            if (path.EndsWith(".prep.json", StringComparison.Ordinal) && book[path]!["measured"] is null && book[path]!["method"] is JsonArray steps)
            {
                for (int i = 0; i < Math.Min(steps.Count, 6); i++)
                {
                    int at = i;
                    all.Add(new Ladder(
                        $"{path}: step {at + 1} less and less hot", path,
                        [.. Heats.Select(f => KnowledgeTests.LessHeat(path, at, false, f).Apply)])
                    { IsCooler = true });
                    all.Add(new Ladder(
                        $"{path}: step {at + 1} shorter and shorter", path,
                        [.. Shorter.Select(f => KnowledgeTests.LessHeat(path, at, true, f).Apply)]));
                    all.Add(new Ladder(
                        $"{path}: step {at + 1} cools slower and slower", path,
                        [.. Longer.Select(f => KnowledgeTests.SlowerCooling(path, at, f).Apply)]));
                }
            }

            if (book[path]!["measured"] is JsonObject && !KnowledgeTests.IsHeldAgainst(book, path))
            {
                foreach (double[] near in AroundPh) all.Add(OfReading(path, "ph", near));
                foreach (double[] near in AroundActivity) all.Add(OfReading(path, "waterActivity", near));
                all.Add(OfReading(path, "ph", Acidities));
                all.Add(OfReading(path, "waterActivity", Activities));
            }

            if (path.EndsWith(".ingredient.json", StringComparison.Ordinal))
            {
                // A solid with less spirit in it is drier, and needs less.
                if (book[path]!["strength"] is not null && book[path]!["state"]?.ToString() != "solid")
                    all.Add(new Ladder(
                        $"{path}: weaker and weaker",
                        path,
                        [.. Strengths.Select(v => (Func<PropertyBook, bool>)(b => b[path]?["strength"] is not null
                            && Put(b[path], "strength", Words(v, " % vol"))))])
                    { IsOfReading = true });
                all.Add(new Ladder($"{path}: needs cold", path, [b => Put(b[path], "keepsCold", false), b => b[path]!.Remove("keepsCold")]));
            }

            if (book[path]!["target"] is JsonObject target && target["pressure"] is not null)
                all.Add(new Ladder(
                    $"{path}: more and more pressure",
                    path,
                    [.. Pressures.Select(v => (Func<PropertyBook, bool>)(b => Put(
                        b[path]?["target"] as JsonObject, "pressure", Words(v, " bar"))))]));
            if (path.EndsWith(".prep.json", StringComparison.Ordinal) || path.EndsWith(".drink.json", StringComparison.Ordinal))
            {
                foreach (string id in KnowledgeTests.LinesOf(book, path)
                    .Select(l => l["item"])
                    .OfType<JsonValue>()
                    .Select(v => v.TryGetValue(out string? id) ? id : "")
                    .Where(id => id.Length > 0)
                    .Distinct())
                {
                    all.Add(new Ladder($"{path}: more and more {id}", path, [.. Amounts.Select(f => (Func<PropertyBook, bool>)(b =>
                        KnowledgeTests.LinesOf(b, path)
                            .Find(l => l["item"] is JsonValue v && v.TryGetValue(out string? item) && item == id) is { } same
                            && PropertySteps.ScaleLine(same, f)))], id));
                }
            }

            if (path.EndsWith(".stock.json", StringComparison.Ordinal) && book[path]!["lots"] is JsonArray lots)
            {
                for (int i = 0; i < Math.Min(lots.Count, 6); i++)
                {
                    int at = i;
                    all.Add(new Ladder(
                        $"{path}: lot {at + 1} older and older",
                        path,
                        [.. Ages.Select(d => (Func<PropertyBook, bool>)(b => OfLot(b, path, at) is { } lot
                            && lot["frozen"] is null
                            && lot["madeFrom"] is null
                            && Set(lot, lot["made"] is null ? "opened" : "made", d)))]));

                    // What is made from a lot is held against that lot's day.
                    if (!lots.Any(l => l?["madeFrom"] is not null))
                        all.Add(new Ladder(
                            $"{path}: lot {at + 1} labelled later and later",
                            path,
                            [.. Labels.Select(d => (Func<PropertyBook, bool>)(b => OfLot(b, path, at) is { } lot
                                && Set(lot, "useBy", d)))])
                        { Only = "SL5008" });
                    all.Add(new Ladder(
                        $"{path}: lot {at + 1} warmer and warmer",
                        path,
                        [.. Temperatures.Select(t => (Func<PropertyBook, bool>)(b => OfLot(b, path, at) is { } lot
                            && Set(lot, "at", t)))]));
                    all.Add(new Ladder(
                        $"{path}: lot {at + 1} less and less acid",
                        path,
                        [.. Acidities.Select(v => (Func<PropertyBook, bool>)(b => (OfLot(b, path, at)?["measured"] as JsonObject)?["ph"] is not null
                            && Put((JsonObject)OfLot(b, path, at)!["measured"]!, "ph", v)))])
                    { IsOfReading = true });
                }
            }
        }

        return all;
    }

    /// <summary>A reading of a preparation, from what shows that nothing grows to what shows that it may.</summary>
    private static Ladder OfReading(string path, string name, double[] rungs) =>
        new(
            $"{path}: measured.{name} higher, from {Words(rungs[0], "")} to {Words(rungs[^1], "")}",
            path,
            [.. rungs.Select(v => (Func<PropertyBook, bool>)(b => (b[path]?["measured"] as JsonObject)?[name] is not null
                && Put((JsonObject)b[path]!["measured"]!, name, v)))])
        { IsOfReading = true };

    private static string Words(double value, string unit) => value.ToString(System.Globalization.CultureInfo.InvariantCulture) + unit;

    private static bool Put(JsonObject? map, string name, JsonNode value)
    {
        if (map is null) return false;
        map[name] = value;
        return true;
    }

    private static JsonObject? OfLot(PropertyBook book, string path, int at) =>
        book[path]?["lots"] is JsonArray lots && at < lots.Count ? lots[at] as JsonObject : null;

    private static bool Set(JsonObject map, string name, string value)
    {
        if (map[name] is null) return false;
        map[name] = value;
        return true;
    }
}
