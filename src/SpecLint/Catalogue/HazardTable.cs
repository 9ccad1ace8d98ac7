using System.Text.Json;
using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>How much of a substance a plant part holds.</summary>
/// <param name="Substance">The substance.</param>
/// <param name="Low">Low end, mg/g.</param>
/// <param name="Typical">Typical, mg/g.</param>
/// <param name="High">High end, mg/g.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record HazardContent(string Substance, double Low, double Typical, double High, string Source);

/// <summary>A rule of law or practice about a hazard.</summary>
/// <param name="Jurisdictions">Where it holds; <c>any</c> for everywhere.</param>
/// <param name="Control">What kind of rule: prohibited, never, limit, dose, process, contact …</param>
/// <param name="Limit">The number; NaN where there is none.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="About">What it is about, in words.</param>
/// <param name="AppliesTo">What it applies to, in words.</param>
/// <param name="When">Under which condition, in words.</param>
/// <param name="Level">The level of a finding under it.</param>
/// <param name="Correction">What to do.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record HazardRule(
    FixedList<string> Jurisdictions, string Control, double Limit, string Unit, string About, string AppliesTo, string When, Level Level, string Correction, string Source)
{
    /// <summary>Whether it applies under the settings of a bar.</summary>
    public bool AppliesIn(Settings settings)
    {
        foreach (string jurisdiction in Jurisdictions)
        {
            if (jurisdiction == "any" || settings.AppliesIn(jurisdiction)) return true;
        }

        return false;
    }
}

/// <summary>What a line that holds a hazard has to say in its note.</summary>
/// <param name="What">What to write, as the end of "Write … in the note".</param>
/// <param name="Answers">Words that answer it.</param>
/// <param name="Refuses">Words that answer it the wrong way.</param>
/// <param name="Level">The level where nothing does.</param>
internal sealed record HazardAsk(string What, FixedList<string> Answers, FixedList<string> Refuses, Level Level);

/// <summary>An ingredient, substance, vessel or process that can hurt.</summary>
/// <param name="Id">Its id in the table.</param>
/// <param name="Name">Its name.</param>
/// <param name="Kind">Botanical, toxic plant, substance, additive, vessel, process or food.</param>
/// <param name="Harm">What it does; empty where the table does not say.</param>
/// <param name="Rules">The rules about it.</param>
/// <param name="Contents">What it holds.</param>
internal sealed record Hazard(string Id, string Name, string Kind, string Harm, FixedList<HazardRule> Rules, FixedList<HazardContent> Contents)
{
    /// <summary>Other names: scientific, English, of the trade.</summary>
    public FixedList<string> Names { get; init; } = [];

    /// <summary>Whether a little of it kills or maims.</summary>
    public bool IsDeadly { get; init; }

    /// <summary>Whether it is looked for in notes, methods and menus too, not only among the ingredients.</summary>
    public bool IsNamedInProse { get; init; }

    /// <summary>Whether it is a food additive: it hurts over a limit, which a rule of its own holds.</summary>
    public bool IsAdditive => Kind == "additive";

    /// <summary>What its line has to say; <see langword="null"/> where nothing is asked.</summary>
    public HazardAsk? Asks { get; init; }

    /// <summary>Whether it is a plant or fungus that is never food.</summary>
    public bool IsPoison => Kind == "toxic plant";

    /// <summary>Whether it is no food at all: a solvent, fuel or cleaning agent.</summary>
    public bool IsNotFood => Rules.Any(static r => r.Control == "not food");
}

/// <summary>The table of hazards.</summary>
internal static class HazardTable
{
    private static readonly Lazy<Dictionary<string, Hazard>> ById = new(Load);

    /// <summary>All hazards, in the order of the tables.</summary>
    public static IReadOnlyCollection<Hazard> All => ById.Value.Values;

    /// <summary>The hazard of an id; <see langword="null"/> where the table has none.</summary>
    public static Hazard? Find(string id) => ById.Value.TryGetValue(id, out var hazard) ? hazard : null;

    private static Dictionary<string, Hazard> Load()
    {
        var table = new Dictionary<string, Hazard>(StringComparer.Ordinal);
        using var document = Tables.Open("hazards");
        foreach (var row in Tables.Rows(document))
        {
            string id = row.Text("id");
            table.Add(id, new Hazard(id, row.Text("name"), row.Text("kind"), row.Text("hazard"), [.. Elements(row, "rules").Select(RuleOf)], [.. Elements(row, "content").Select(ContentOf).Where(c => !double.IsNaN(c.High))])
            {
                Names = row.Texts("aliases"),
                IsNamedInProse = row.Flag("namedInProse"),
                Asks = row.TryGetProperty("asks", out var asks) ? new HazardAsk(asks.Text("what"), asks.Texts("answers"), asks.Texts("refuses"), Settings.TryLevel(asks.Text("level"), out var asked) ? asked : Level.Warning) : null,
            });
        }

        using var poisons = Tables.Open("poisons");
        foreach (var row in Tables.Rows(poisons))
        {
            string id = row.Text("id");
            bool deadly = row.Flag("deadly");

            // What is only recalled gives at most a warning.
            var never = new HazardRule(["any"], "never", double.NaN, "", "garnish or infusion", "", "", row.Mark() == Mark.Memory ? Level.Warning : Level.Error, "use a plant that is grown and sold as food", row.Text("source"));
            table.Add(id, new Hazard(id, row.Text("name"), "toxic plant", row.Text("hazard"), [never], []) { Names = row.Texts("names"), IsDeadly = deadly, IsNamedInProse = deadly });
        }

        return table;
    }

    private static IEnumerable<JsonElement> Elements(JsonElement row, string name) =>
        row.TryGetProperty(name, out var list) && list.ValueKind == JsonValueKind.Array ? list.EnumerateArray() : [];

    private static HazardContent ContentOf(JsonElement row) =>
        new(row.Text("substance"), row.Number("lowMgPerG"), row.Number("typicalMgPerG"), row.Number("highMgPerG"), row.Text("source"));

    private static HazardRule RuleOf(JsonElement row)
    {
        bool limited = row.TryGetProperty("limit", out var limit);
        var level = Settings.TryLevel(row.Text("level"), out var named) ? named : Level.Warning;

        // What is only recalled gives at most a warning.
        if (row.Mark() == Mark.Memory && level == Level.Error) level = Level.Warning;
        return new HazardRule(
            row.Texts("jurisdictions"), row.Text("control"), limited ? limit.Number("value") : double.NaN, limited ? limit.Text("unit") : "",
            row.Text("about"), row.Text("appliesTo"), row.Text("when"), level, row.Text("correction"), row.Text("source"));
    }
}
