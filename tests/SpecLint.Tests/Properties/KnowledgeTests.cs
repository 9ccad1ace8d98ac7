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

    /// <summary>
    /// Rules that speak of the very thing that is taken out, and of nothing that stays: a reading that contradicts the amounts,
    /// a target without a reading, a copper mug or a lead crystal that is not named any more, a claim that is not made. A bottle
    /// that does not say when it was opened says that it is closed, and a lot that does not say where it stands, where its recipe
    /// keeps it; an own file without a list of allergens has that of what it is like; the trade's life of a part that needs no cold
    /// may go. A use-by day alone is what the law asks for. Without the bag nothing is packed without air.
    /// </summary>
    private static readonly (string Rule, string[] Words)[] OfTheThing =
    [
        ("SL5004", ["measured"]), ("SL5038", ["measured"]), ("SL5015", ["target"]), ("SL6012", ["glass", "vessel", "into", "in", "keep"]), ("SL8021", ["keep"]),
        ("SL5030", ["keep"]), ("SL5008", ["opened", "at"]), ("SL5010", ["opened", "made"]), ("SL5036", ["at"]), ("SL5024", ["keep"]), ("SL5017", ["in", "keep"]), ("SL5008", ["made"]),
        ("SL9015", ["keep", "for"]), ("SL7008", ["allergens"]), ("SL7002", ["allergens"]), ("SL7004", ["allergens"]), ("SL5003", ["measured"]),
    ];

    [Fact]
    public void Less_knowledge_never_removes_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1500), Forget, one =>
    {
        var known = one.Book.Copy();
        var forgotten = one.Book.Copy();
        if (!one.Step!.Apply(forgotten)) return null;
        var after = forgotten.Check();
        HarmOf before = new(known.Check()), now = new(after);

        // An item that is not there is an error where it is named, and forbids all that is made of it.
        return one.Step.Touches.Count == 0 && now.HasNewError(before) ? null : HarmOf.Lost(before, now, subject => after.Book.Files.Any(f => f.Id == subject), goes: rule => OfTheThing.Any(t => t.Rule == rule && t.Words.Any(one.Step.Touches.Contains)));
    });

    [Fact]
    public void Worse_conditions_never_remove_or_lower_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1500), Worsen, one =>
    {
        var worse = one.Book.Copy();
        if (!one.Step!.Apply(worse)) return null;
        var first = one.Book.Check();

        // Acid outside of the model gives no pH, and what is not known is judged as the worst: less acid is then better known.
        if (one.Step.Touches.Count > 0 && first.Book.Preps.FirstOrDefault(p => p.Source.Path == one.Step.Touches[0]) is { } soured && !first.Profiles.Of(soured).Get(global::SpecLint.Vocabulary.Fact.Ph).IsKnown) return null;
        HarmOf before = new(first), after = new(worse.Check());
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

    private static PropertyStep Without(string path, string[] way) => new PropertyStep($"{path}: no {string.Join('.', way)}", book =>
    {
        JsonNode? node = book[path];
        foreach (string name in way.SkipLast(1)) node = node is JsonArray list ? (int.Parse(name, System.Globalization.CultureInfo.InvariantCulture) is var i && i < list.Count ? list[i] : null) : (node as JsonObject)?[name];
        return node is JsonObject map && map.Remove(way[^1]);
    })
    { Touches = way };

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

    private static PropertyStep WeakerAcid(string path, double factor) => new PropertyStep($"{path}: acids times {factor.ToString(System.Globalization.CultureInfo.InvariantCulture)}", book =>
    {
        if (book[path] is not { } file || file["measured"] is not null) return false;
        bool any = false;
        foreach (var (line, id) in PropertySteps.References(file).ToList())
        {
            if (id.EndsWith("-acid", StringComparison.Ordinal) || id.EndsWith("vinegar", StringComparison.Ordinal)) any |= PropertySteps.ScaleLine(line, factor);
        }

        return any;
    })
    { Touches = [path] };

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
