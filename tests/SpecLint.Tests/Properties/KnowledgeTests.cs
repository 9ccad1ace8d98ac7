using System.Text.Json.Nodes;

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

    [OpenProperty]
    public void Less_knowledge_never_removes_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1500), Forget, one =>
    {
        var known = one.Book.Copy();
        var forgotten = one.Book.Copy();
        if (!one.Step!.Apply(forgotten)) return null;
        var after = forgotten.Check();
        return HarmOf.Lost(new HarmOf(known.Check()), new HarmOf(after), subject => after.Book.Files.Any(f => f.Id == subject));
    });

    [OpenProperty]
    public void Worse_conditions_never_remove_or_lower_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1500), Worsen, one =>
    {
        var worse = one.Book.Copy();
        if (!one.Step!.Apply(worse)) return null;
        HarmOf before = new(one.Book.Check()), after = new(worse.Check());
        return HarmOf.Lost(before, after, orAnother: true) ?? HarmOf.Lowered(before, after);
    });

    private static PropertyStep? Forget(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(random, [.. book.Paths.Where(p => p != "bar.json")]);
        if (path.Length == 0) return null;
        if (path.EndsWith(".ingredient.json", StringComparison.Ordinal) && random.Next(2) == 0) return new PropertyStep($"{path} is not there", b =>
        {
            b.Remove(path);
            return true;
        });
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
                    if (name is "measured" or "ph" or "brix" or "abv" or "waterActivity" or "meter" or "mass" or "volume" or "yield" or "at" or "to" or "for" or "until"
                        or "vessel" or "in" or "into" or "for" or "glass" or "strength" or "composition" or "quinine" or "keepsCold" or "made" or "opened" or "on" or "density"
                        or "life" or "keep" or "sealed" or "allergens" or "contains" or "pressure") places.Add(here);
                    if (value is not null) Walk(value, here);
                }
            }
        }
    }

    private static PropertyStep Without(string path, string[] way) => new($"{path}: no {string.Join('.', way)}", book =>
    {
        JsonNode? node = book[path];
        foreach (string name in way.SkipLast(1)) node = node is JsonArray list ? (int.Parse(name, System.Globalization.CultureInfo.InvariantCulture) is var i && i < list.Count ? list[i] : null) : (node as JsonObject)?[name];
        return node is JsonObject map && map.Remove(way[^1]);
    });

    private static PropertyStep? Worsen(Random random, PropertyBook book)
    {
        // A part or a lot is held against what the recipe claims: a longer claim takes that away, and is judged by itself.
        var preps = book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal) && !IsHeldAgainst(book, p)).ToList();
        var stocks = book.Paths.Where(p => p.EndsWith(".stock.json", StringComparison.Ordinal)).ToList();
        string path = PropertySteps.Pick(random, [.. preps, .. stocks]);
        if (path.Length == 0) return null;
        if (path.EndsWith(".stock.json", StringComparison.Ordinal)) return LotWorse(path, random.Next(8), random.Next(2) == 0, 1 + random.Next(20));
        return random.Next(3) switch
        {
            0 => Worse(path, "for", Longer, 1 + random.Next(4)),
            1 => Worse(path, "at", Warmer, 1 + random.Next(4)),
            _ => WeakerAcid(path, PropertySteps.Pick(random, [0.9, 0.5, 0.1])),
        };
    }

    private static bool IsHeldAgainst(PropertyBook book, string path)
    {
        string id = path[(path.LastIndexOf('/') + 1)..path.IndexOf('.', StringComparison.Ordinal)];
        return book.Paths.Any(p => p.EndsWith(".stock.json", StringComparison.Ordinal) || (p != path && PropertySteps.References(book[p]!).Any(r => r.Id == id)));
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

    private static PropertyStep WeakerAcid(string path, double factor) => new($"{path}: acids times {factor.ToString(System.Globalization.CultureInfo.InvariantCulture)}", book =>
    {
        if (book[path] is not { } file || file["measured"] is not null) return false;
        bool any = false;
        foreach (var (line, id) in PropertySteps.References(file).ToList())
        {
            if (id.EndsWith("-acid", StringComparison.Ordinal) || id.EndsWith("vinegar", StringComparison.Ordinal)) any |= PropertySteps.ScaleLine(line, factor);
        }

        return any;
    });

    private static PropertyStep LotWorse(string path, int lot, bool older, int by) => new($"{path}: lot {lot + 1} {(older ? $"{by} d older" : $"{by} K warmer")}", book =>
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

        if (!text.EndsWith(" °C", StringComparison.Ordinal) || !double.TryParse(text[..^3], System.Globalization.CultureInfo.InvariantCulture, out double celsius)) return false;
        one[name] = $"{(celsius + by).ToString(System.Globalization.CultureInfo.InvariantCulture)} °C";
        return true;
    });
}
