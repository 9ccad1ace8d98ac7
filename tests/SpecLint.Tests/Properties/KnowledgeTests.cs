using System.Text.Json.Nodes;
using SpecLint.Findings;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Less knowledge: taking out a reading, a value, a yield, a temperature, a time, a vessel or an ingredient's file never takes a
/// harm finding away unless another takes its place on the same recipe. Worse conditions: longer, warmer, less acid or an
/// older lot never take one away, unless another of its level stands on the recipe (a shelf in the room speaks for the days on
/// it), nor lower the highest level of a recipe.
/// </summary>
public sealed class KnowledgeTests
{
    private static readonly string[] Warmer = ["4 °C", "5 °C", "8 °C", "12 °C", "20 °C", "25 °C", "30 °C"];
    private static readonly string[] Longer = ["1 d", "2 d", "3 d", "5 d", "7 d", "8 d", "14 d", "30 d", "90 d", "365 d"];

    [Fact]
    public void Less_knowledge_never_removes_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1500), Forget, one =>
    {
        var known = one.Book.Copy();
        var forgotten = one.Book.Copy();
        if (!one.Step!.Apply(forgotten)) return null;
        var after = forgotten.Check();
        var first = known.Check();
        if (one.Unlike(first) is { } unlike) return unlike;
        HarmOf before = new(first), now = new(after);

        // An item that is not there is an error where it is named, and forbids all that is made of it.
        return one.Step.Touches is ["file"] && now.HasNewError(before)
            ? null
            : HarmOf.Lost(before, now, subject => after.Book.Files.Any(f => f.Id == subject), goes: (subject, rule) =>
            Excuse.All.Any(e => e.Rule == rule && e.Words.Any(one.Step.Touches.Contains) && e.If(new Forgotten(after, one.Step.Path, subject))));
    });

    [Fact]
    public void Worse_conditions_never_remove_or_lower_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1500), Worsen, one =>
    {
        var worse = one.Book.Copy();
        if (!one.Step!.Apply(worse)) return null;
        var first = one.Book.Check();
        if (one.Unlike(first) is { } unlike) return unlike;
        var then = worse.Check();

        // Acid outside of the model gives no pH, and what is not known is judged as the worst: less of it comes into the model.
        if (one.Step.Touches is ["acid"] && !Ph(first, one.Step.Path) && Ph(then, one.Step.Path)) return null;

        // A tenth of a vinegar brings a tenth of its sulphite: less acid is held against what keeps and harms, not against what is declared.
        bool isAcid = one.Step.Touches is ["acid"];

        // More of a part is worse for what is found about that part.
        string? part = one.Step.Touches is ["more", var id] ? id : null;
        // A reading is of the recipe before a change of the method: it no longer stands against the amounts, and clears nothing.
        var voided = then.Findings.Flat().Where(static f => f.Rule.Id == "SL5033").Select(static f => f.Subject).ToHashSet(StringComparer.Ordinal);
        HarmOf before = new(
            first,
            f => !(f.Rule.Id is "SL5004" or "SL5038" && voided.Contains(f.Subject))
                && (part is not null
                    ? IsAbout(f, one.Step.Path, part)
                    : isAcid ? f.Rule.Id[2] != '7' : one.Step.Touches is not ["cooler"] || f.Rule.Id != "SL6015")), after = new(then);
        return HarmOf.Lost(before, after, orAnother: true) ?? (part is null ? HarmOf.Lowered(before, after) : HarmOf.LoweredByRule(before, after));

        static bool Ph(CheckResult result, string path) =>
            result.Book.Preps.FirstOrDefault(p => p.Source.Path == path) is { } soured
                && result.Profiles.Of(soured).Get(global::SpecLint.Vocabulary.Fact.Ph).IsKnown;
    });

    /// <summary>
    /// Rules of which more of the part is not the worse: a ferment with too little salt (SL5028), too little of a preservative (SL5024),
    /// and caffeine together with alcohol, which more coffee thins out of the law (SL6020).
    /// </summary>
    private static readonly string[] NotMoreIsWorse = ["SL5028", "SL5024", "SL6020"];

    /// <summary>Whether a finding stands on a line of a part.</summary>
    internal static bool IsAbout(Finding finding, string path, string part) =>
        !NotMoreIsWorse.Contains(finding.Rule.Id)
            && finding.Place.File.Path == path
            && (finding.Path.StartsWith($"ingredients[{part}", StringComparison.Ordinal)
                || finding.Path.StartsWith($"garnish[{part}", StringComparison.Ordinal));

    private static PropertyStep? Forget(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(random, [.. book.Paths.Where(p => p != "bar.json")]);
        if (path.Length == 0) return null;
        if (path.EndsWith(".ingredient.json", StringComparison.Ordinal) && random.Next(2) == 0) return new PropertyStep($"{path} is not there", b =>
        {
            b.Remove(path);
            return true;
        })
        { Path = path, Touches = ["file"] };
        var places = new List<string[]>();
        Walk(book[path]!, []);
        return places.Count == 0 ? null : Without(path, places[random.Next(places.Count)]);

        void Walk(JsonNode node, string[] way)
        {
            if (node is JsonArray list)
            {
                for (int i = 0; i < list.Count; i++)
                {
                    if (list[i] is { } item) Walk(item, [.. way, i.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
                }
            }
            else if (node is JsonObject map)
            {
                foreach (var (name, value) in map)
                {
                    string[] here = [.. way, name];

                    // A text that is no glass may name the hazard itself: without it there is none.
                    if (name == "glass"
                        && value is JsonValue word
                        && !(word.TryGetValue(out string? glass) && global::SpecLint.Vocabulary.GlassType.Of(glass).IsKnown))
                        continue;
                    if (name is "measured" or "ph" or "brix" or "abv" or "waterActivity" or "meter" or "mass" or "volume" or "yield"
                        or "at" or "to" or "for" or "until"
                        or "vessel" or "in" or "into" or "for" or "glass" or "strength" or "composition" or "quinine" or "keepsCold"
                        or "made" or "opened" or "on" or "density"
                        or "life" or "keep" or "sealed" or "allergens" or "contains" or "pressure") places.Add(here);
                    if (value is not null) Walk(value, here);
                }
            }
        }
    }

    private static PropertyStep Without(string path, string[] way) => new PropertyStep($"{path}: no {string.Join('.', way)}", book =>
    {
        JsonNode? node = book[path];
        foreach (string name in way.SkipLast(1))
            node = node is JsonArray list
                ? (int.Parse(name, System.Globalization.CultureInfo.InvariantCulture) is var i && i < list.Count ? list[i] : null)
                : (node as JsonObject)?[name];
        return node is JsonObject map && map.Remove(way[^1]);
    })
    { Path = path, Touches = way };

    private static PropertyStep? Worsen(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(
            random,
            [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal)
                || p.EndsWith(".drink.json", StringComparison.Ordinal)
                || p.EndsWith(".stock.json", StringComparison.Ordinal))]);
        if (path.Length == 0) return null;
        if (path.EndsWith(".stock.json", StringComparison.Ordinal)) return LotWorse(path, random.Next(8), random.Next(2) == 0, 1 + random.Next(20));

        // A part or a lot is held against what the recipe claims: a longer or warmer claim takes that away, and is judged by itself.
        bool held = IsHeldAgainst(book, path);
        bool prep = path.EndsWith(".prep.json", StringComparison.Ordinal);
        switch (random.Next(6))
        {
            case 0 when prep && !held: return Worse(path, "for", Longer, 1 + random.Next(4));
            case 1 when prep && !held: return Worse(path, "at", Warmer, 1 + random.Next(4));
            case 2 when prep: return WeakerAcid(path, PropertySteps.Pick(random, [0.9, 0.5, 0.1]));
            case 3 or 0 when prep: return LessHeat(path, random.Next(8), random.Next(2) == 0, PropertySteps.Pick(random, [0.8, 0.5, 0.1]));
            case 4 or 1 when prep: return SlowerCooling(path, random.Next(8), PropertySteps.Pick(random, [1.5, 3, 10]));
            default: return More(path, random.Next(8), PropertySteps.Pick(random, [1.2, 2, 5, 20]), book);
        }
    }

    internal static bool IsHeldAgainst(PropertyBook book, string path)
    {
        string id = path[(path.LastIndexOf('/') + 1)..path.IndexOf('.', StringComparison.Ordinal)];
        return book.Paths.Any(p => p.EndsWith(".stock.json", StringComparison.Ordinal)
            || (p != path && PropertySteps.References(book[p]!).Any(r => r.Id == id)));
    }

    /// <summary>A step further on a ladder of values, from the one that the recipe states; a value beside the ladder stays.</summary>
    private static PropertyStep Worse(string path, string name, string[] ladder, int steps) => new($"{path}: keep.{name} {steps} steps on", book =>
    {
        if (book[path]?["keep"] is not JsonObject keep || keep[name] is not JsonValue value || !value.TryGetValue(out string? text)) return false;
        int at = Array.IndexOf(ladder, text);
        if (at < 0 || at == ladder.Length - 1) return false;
        keep[name] = ladder[Math.Min(ladder.Length - 1, at + steps)];
        return true;
    });

    internal static PropertyStep WeakerAcid(string path, double factor) =>
        new PropertyStep($"{path}: acids times {factor.ToString(System.Globalization.CultureInfo.InvariantCulture)}", book =>
    {
        if (book[path] is not { } file || file["measured"] is not null) return false;
        bool any = false;
        foreach (var (line, id) in PropertySteps.References(file).ToList())
        {
            if (id.EndsWith("-acid", StringComparison.Ordinal) || id.EndsWith("vinegar", StringComparison.Ordinal))
                any |= PropertySteps.ScaleLine(line, factor);
        }

        return any;
    })
        { Path = path, Touches = ["acid"] };

    /// <summary>More of the part in a line.</summary>
    private static PropertyStep? More(string path, int line, double factor, PropertyBook book)
    {
        var all = LinesOf(book, path);
        if (all.Count == 0 || all[line % all.Count]["item"] is not JsonValue item || !item.TryGetValue(out string? id)) return null;
        return new PropertyStep($"{path}: {id} times {factor.ToString(System.Globalization.CultureInfo.InvariantCulture)}", b =>
            LinesOf(b, path).Find(l => (string?)l["item"] == id) is { } same && PropertySteps.ScaleLine(same, factor))
        { Path = path, Touches = ["more", id] };
    }

    internal static List<JsonObject> LinesOf(PropertyBook book, string path) =>
        [.. new[] { "ingredients", "garnish" }.SelectMany(list => book[path]?[list] as JsonArray ?? []).OfType<JsonObject>()];

    /// <summary>A step that heats, less hot or for a shorter time; one that only warms is worse when it is longer.</summary>
    internal static PropertyStep LessHeat(
        string path, int step, bool shorter, double factor) =>
            new PropertyStep($"{path}: step {step + 1} {(shorter ? "shorter" : "less hot")}", book =>
    {
        if (StepOf(book, path, step) is not { } one || Number(one, "to", " °C") is not { } heat || heat < 57) return false;

        // What food with water in it does not reach shows nothing; a little less of it may be meant.
        if (heat > 130) return false;

        // A reading that says of which recipe it is counts no longer when the recipe is another.
        if (book[path]?["measured"]?["of"] is not null) return false;
        if (shorter) return PropertySteps.ScaleText(one, "for", factor);
        one["to"] = $"{Math.Max(20, Math.Round(heat * factor)).ToString(System.Globalization.CultureInfo.InvariantCulture)} °C";
        return true;
    })
            { Touches = ["cooler"] };

    /// <summary>A step that cools, slower.</summary>
    internal static PropertyStep SlowerCooling(string path, int step, double factor) => new($"{path}: step {step + 1} cools slower", book =>
        StepOf(book, path, step) is { } one
            && one["do"] is JsonValue verb
            && verb.TryGetValue(out string? does)
            && does is "chill" or "cool"
            && PropertySteps.ScaleText(one, "for", factor));

    private static JsonObject? StepOf(PropertyBook book, string path, int step) =>
        book[path]?["method"] is JsonArray steps && steps.Count > 0 ? steps[step % steps.Count] as JsonObject : null;

    private static double? Number(JsonObject of, string name, string unit) =>
        of[name] is JsonValue value
            && value.TryGetValue(out string? text)
            && text.EndsWith(unit, StringComparison.Ordinal)
            && double.TryParse(text[..^unit.Length], System.Globalization.CultureInfo.InvariantCulture, out double number)
            ? number
            : null;

    private static PropertyStep LotWorse(string path, int lot, bool older, int by) =>
        new($"{path}: lot {lot + 1} {(older ? $"{by} d older" : $"{by} K warmer")}", book =>
    {
        if (book[path]?["lots"] is not JsonArray lots || lots.Count == 0 || lots[lot % lots.Count] is not JsonObject one) return false;
        string name = older ? one["made"] is null ? "opened" : "made" : "at";
        if (one[name] is not JsonValue value || !value.TryGetValue(out string? text)) return false;
        if (older)
        {
            if (global::SpecLint.Reading.CalendarDate.Parse(text) is not { } day || one["frozen"] is not null || one["madeFrom"] is not null) return false;
            one[name] = day.AddDays(-by).ToString();
            return true;
        }

        if (!text.EndsWith(" °C", StringComparison.Ordinal)
            || !double.TryParse(text[..^3], System.Globalization.CultureInfo.InvariantCulture, out double celsius))
            return false;
        one[name] = $"{(celsius + by).ToString(System.Globalization.CultureInfo.InvariantCulture)} °C";
        return true;
    });
}
