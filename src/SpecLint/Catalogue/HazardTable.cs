using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>How much of a substance a plant part holds.</summary>
/// <param name="Substance">The substance.</param>
/// <param name="Low">Low end, mg/g.</param>
/// <param name="Typical">Typical, mg/g.</param>
/// <param name="High">High end, mg/g.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record HazardContent(string Substance, double Low, double Typical, double High, TableText Source);

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
    FixedList<string> Jurisdictions, string Control, double Limit, string Unit,
    TableText About, TableText AppliesTo, TableText When, Level Level, TableText Correction, TableText Source)
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
/// <param name="Heat">Whether heat answers it: a food that is poisonous raw and harmless cooked.</param>
internal sealed record HazardAsk(string What, FixedList<string> Answers, FixedList<string> Refuses, Level Level, bool Heat);

/// <summary>
/// An ingredient, substance, vessel or process that can hurt: a row of a table that stays open. A run looks for the names of all, and
/// asks for the rules of the few that it finds.
/// </summary>
internal sealed class Hazard
{
    private readonly TableValue row;
    private FixedList<HazardRule>? rules;
    private FixedList<HazardContent>? contents;

    /// <param name="row">A row of <c>hazards.json</c> or <c>poisons.json</c>.</param>
    /// <param name="neverFood">Whether it is of the table of poisons, whose rows all have one rule.</param>
    public Hazard(TableValue row, bool neverFood)
    {
        this.row = row;
        Id = row.Text("id");
        Name = row.Text("name");
        Kind = neverFood ? "toxic plant" : row.Text("kind");
        Harm = row.TextLater("hazard");
        Names = row.Texts(neverFood ? "names" : "aliases");
        IsDeadly = neverFood && row.Flag("deadly");
        IsNamedInProse = neverFood ? IsDeadly : row.Flag("namedInProse");
        Asks = !neverFood && row.TryGet("asks", out var asks) ? HazardTable.AskOf(asks) : null;
        if (neverFood) (rules, contents) = ([HazardTable.NeverFood(row)], []);
    }

    /// <summary>Its id in the table.</summary>
    public string Id { get; }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Botanical, toxic plant, substance, additive, vessel, process or food.</summary>
    public string Kind { get; }

    /// <summary>What it does; empty where the table does not say.</summary>
    public TableText Harm { get; }

    /// <summary>The rules about it.</summary>
    public FixedList<HazardRule> Rules => rules ??= HazardTable.RulesOf(row);

    /// <summary>What it holds.</summary>
    public FixedList<HazardContent> Contents => contents ??= HazardTable.ContentsOf(row);

    /// <summary>Other names: scientific, English, of the trade.</summary>
    public FixedList<string> Names { get; }

    /// <summary>Whether a little of it kills or maims.</summary>
    public bool IsDeadly { get; }

    /// <summary>Whether it is looked for in notes, methods and menus too, not only among the ingredients.</summary>
    public bool IsNamedInProse { get; }

    /// <summary>Whether it is a food additive: it hurts over a limit, which a rule of its own holds.</summary>
    public bool IsAdditive => Kind == "additive";

    /// <summary>What its line has to say; <see langword="null"/> where nothing is asked.</summary>
    public HazardAsk? Asks { get; }

    /// <summary>Words of the only foods that it is made for: meat and cheese, for curing salt; empty for what is not of that sort.</summary>
    public FixedList<string> CuresOnly => row.Texts("curesOnly");

    /// <summary>Codes of the additive on a label: <c>E 250</c>.</summary>
    public FixedList<string> Codes => row.Texts("codes");

    /// <summary>Whether it is a plant or fungus that is never food.</summary>
    public bool IsPoison => Kind == "toxic plant";

    /// <summary>Whether it is no food at all: a solvent, fuel or cleaning agent.</summary>
    public bool IsNotFood => Rules.Any(static r => r.Control == "not food");
}

/// <summary>The table of hazards.</summary>
internal static class HazardTable
{
    private static readonly Lazy<Dictionary<string, Hazard>> ById = new(Load);
    private static readonly FixedList<string> Everywhere = ["any"];
    private static readonly TableText GarnishOrInfusion = new("garnish or infusion"), GrownAsFood = new("use a plant that is grown and sold as food");

    /// <summary>All hazards, in the order of the tables.</summary>
    public static IReadOnlyCollection<Hazard> All => ById.Value.Values;

    /// <summary>The hazard of an id; <see langword="null"/> where the table has none.</summary>
    public static Hazard? Find(string id) => ById.Value.TryGetValue(id, out var hazard) ? hazard : null;

    private static Dictionary<string, Hazard> Load()
    {
        var table = new Dictionary<string, Hazard>(512, StringComparer.Ordinal);
        foreach (var row in Tables.Rows(Tables.Open("hazards"))) Add(new Hazard(row, neverFood: false));
        foreach (var row in Tables.Rows(Tables.Open("poisons"))) Add(new Hazard(row, neverFood: true));
        return table;

        void Add(Hazard hazard) => table.Add(hazard.Id, hazard);
    }

    /// <summary>The one rule about a plant of the table of poisons; what is only recalled gives at most a warning.</summary>
    internal static HazardRule NeverFood(TableValue row) => new(
        Everywhere, "never", double.NaN, "", GarnishOrInfusion, TableText.Empty, TableText.Empty, row.Mark() == Mark.Memory
            ? Level.Warning
            : Level.Error, GrownAsFood, row.TextLater("source"));

    /// <summary>What the line of a hazard has to say.</summary>
    internal static HazardAsk AskOf(TableValue asks) =>
        new(
            asks.Text("what"), asks.Texts("answers"), asks.Texts("refuses"),
            Settings.TryLevel(asks.Text("level"), out var asked) ? asked : Level.Warning, asks.Flag("heat"));

    /// <summary>The rules of a row of the table of hazards.</summary>
    internal static FixedList<HazardRule> RulesOf(TableValue row) => [.. Elements(row, "rules").Select(RuleOf)];

    /// <summary>What a hazard of that table holds, as far as figures are known.</summary>
    internal static FixedList<HazardContent> ContentsOf(TableValue row) =>
        [.. Elements(row, "content").Select(ContentOf).Where(static c => !double.IsNaN(c.High))];

    private static TableItems Elements(TableValue row, string name) => row.TryGet(name, out var list) && list.IsList ? list.Items : default;

    private static HazardContent ContentOf(TableValue row) =>
        new(row.Text("substance"), row.Number("lowMgPerG"), row.Number("typicalMgPerG"), row.Number("highMgPerG"), row.TextLater("source"));

    private static HazardRule RuleOf(TableValue row)
    {
        bool limited = row.TryGet("limit", out var limit);
        var level = Settings.TryLevel(row.Text("level"), out var named) ? named : Level.Warning;

        // What is only recalled gives at most a warning.
        if (row.Mark() == Mark.Memory && level == Level.Error) level = Level.Warning;
        return new HazardRule(
            row.RepeatedTexts("jurisdictions"), row.Text("control"), limited ? limit.Number("value") : double.NaN, limited ? limit.Text("unit") : "",
            row.TextLater("about"), row.TextLater("appliesTo"), row.TextLater("when"), level, row.TextLater("correction"), row.TextLater("source"));
    }
}
