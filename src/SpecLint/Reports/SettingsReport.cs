using System.Text.Json;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules;

namespace SpecLint.Reports;

/// <summary>Every effective value of a book's settings, and where it came from.</summary>
internal static class SettingsReport
{
    private const string Default = "default";

    /// <summary>Collects the settings.</summary>
    /// <param name="settings">Settings of the book.</param>
    /// <param name="defaultFiles">Patterns of files to read where the bar gives none.</param>
    /// <param name="defaultLeaveOut">Patterns of files that are always left out.</param>
    /// <param name="on">The date of the run.</param>
    public static IReadOnlyList<EffectiveSetting> Collect(
        Settings settings, IReadOnlyList<string> defaultFiles, IReadOnlyList<string> defaultLeaveOut, CalendarDate on)
    {
        var all = new List<EffectiveSetting>();
        var bar = settings.Bar;
        Add("bar", bar is { Name.IsGiven: true } ? bar.Name.Value : "none", bar is { Name.IsGiven: true } ? From(bar, bar.Name.Span) : Default);
        if (settings.JurisdictionIsStated)
            Add(
                "jurisdictions",
                $"{string.Join(", ", settings.StatedJurisdictions)} (law of {string.Join(", ", settings.Jurisdictions)})",
                From(bar!, bar!.Jurisdictions[0].Span));
        else
            Add("jurisdictions", $"none stated: the strictest of {string.Join(", ", settings.Jurisdictions)}", Default);
        AddPatterns("files", bar?.Files ?? [], defaultFiles, replaces: true);
        AddPatterns("leaveOut", bar?.LeaveOut ?? [], defaultLeaveOut, replaces: false);
        AddQuantity("tools.scale", bar?.Scale);
        AddQuantity("tools.jigger", bar?.Jigger);
        AddQuantity("tools.fridge", bar?.Fridge);
        AddQuantity("tools.freezer", bar?.Freezer);
        if (bar is not null)
        {
            foreach (var meter in bar.Meters.Values.OrderBy(m => m.Id, StringComparer.Ordinal))
            {
                string value = string.Join(", ", new[]
                {
                    meter.Ph.IsGiven ? $"pH ±{Say.Number(meter.Ph.Value)}" : null,
                    meter.Brix.IsGiven ? $"°Bx ±{Say.Number(meter.Brix.Value)}" : null,
                    meter.Calibrated.IsGiven ? $"calibrated {meter.Calibrated.Value}" : null,
                }.OfType<string>());
                Add($"tools.meters.{meter.Id}", value, From(bar, meter.Span));
            }

            foreach (var glass in bar.Glasses.Values.OrderBy(g => g.Id, StringComparer.Ordinal))
                Add($"glasses.{glass.Id}", $"brim {Amount(glass.Brim)}, wash line {Amount(glass.WashLine)}", From(bar, glass.Span));
            foreach (var vessel in bar.Vessels.Values.OrderBy(v => v.Id, StringComparer.Ordinal))
                Add($"vessels.{vessel.Id}", $"capacity {Amount(vessel.Capacity)}, rating {Amount(vessel.Rating)}", From(bar, vessel.Span));
            foreach (var limit in bar.Limits.OrderBy(l => l.Key, StringComparer.Ordinal)) AddQuantity($"limits.{limit.Key}", limit.Value);
            foreach (var schema in bar.Schemas.OrderBy(s => s.Key, StringComparer.Ordinal))
                Add($"schemas.{schema.Key}", schema.Value.Value, From(bar, schema.Value.Span));
            if (bar.AsOf.IsGiven) Add("asOf", bar.AsOf.Value.ToString(), From(bar, bar.AsOf.Span));
            if (bar.Asks.Count > 0) Add("asks", string.Join(", ", bar.Asks.Select(a => a.Value)), From(bar, bar.Asks[0].Span));
        }

        AddMeasures(Measures.For(bar?.Measures));
        foreach (var rule in RuleRegistry.All)
        {
            var info = rule.Info;
            if (settings.LevelOf(info.Id) is not { } set || bar is null) Add($"rules.{info.Id}", ReportWords.Of(info.Level), Default);
            else Add($"rules.{info.Id}", LevelOf(info, set, on), From(bar, bar.Rules[info.Id].Span));
        }

        return all;

        void Add(string name, string value, string from) => all.Add(new EffectiveSetting(name, value, from));

        void AddQuantity(string name, Given<Quantity>? given)
        {
            if (given is { IsGiven: true } quantity) Add(name, Amount(quantity), From(bar!, quantity.Span));
            else Add(name, "not given", Default);
        }

        void AddPatterns(string name, IReadOnlyList<Given<string>> given, IReadOnlyList<string> defaults, bool replaces)
        {
            if (given.Count == 0 || !replaces) Add(name, string.Join(", ", defaults), Default);
            if (given.Count > 0) Add(name, string.Join(", ", given.Select(g => g.Value)), From(bar!, given[0].Span));
        }

        void AddMeasures(Measures measures)
        {
            foreach (var unit in measures.Words.Select(w => w.Unit)
                .Where(u => u.System == UnitSystem.Trade)
                .Distinct()
                .OrderBy(u => u.Name, StringComparer.Ordinal))
            {
                string from = Default;
                foreach (var own in bar?.Measures ?? new Dictionary<string, Given<Quantity>>())
                {
                    if (measures.TryFind(own.Key.AsSpan(), out var word) && word.Unit.Name == unit.Name) from = From(bar!, own.Value.Span);
                }

                Add($"measures.{unit.Name}", Say.Range(unit.Factor, unit.Low, unit.High, UnitWordOf(unit.Dimension)), from);
            }
        }
    }

    /// <summary>The level in force, with its reason; and one that is set without effect.</summary>
    private static string LevelOf(RuleInfo rule, RuleLevel set, CalendarDate on)
    {
        if (!set.Holds(rule.Safety, rule.Level, on))
            return $"{ReportWords.Of(rule.Level)} (`{ReportWords.Of(set.Level)}` has no effect: it {set.Missing(on)})";
        string until = set.Until.IsGiven ? $" until {set.Until.Value}" : "", because = set.Because.IsGiven ? $" because: {set.Because.Value}" : "";
        return ReportWords.Of(set.Level) + until + because;
    }

    /// <summary>Writes the settings as text.</summary>
    public static void WriteText(TextWriter to, IReadOnlyList<EffectiveSetting> settings)
    {
        var text = new TextTable(to, colour: false);
        foreach (var setting in settings)
            text.Row(setting.Name, 32, $"{setting.Value} [{setting.From}]");
    }

    /// <summary>Writes the settings as JSON: a list of name, value and origin.</summary>
    public static void WriteJson(Stream to, IReadOnlyList<EffectiveSetting> settings)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartArray();
        foreach (var setting in settings)
        {
            json.WriteStartObject();
            json.WriteString("name", JsonOutput.WellFormed(setting.Name));
            json.WriteString("value", JsonOutput.WellFormed(setting.Value));
            json.WriteString("from", JsonOutput.WellFormed(setting.From));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Flush();
        JsonReport.WriteLineEnd(to);
    }

    private static string From(Bar bar, TextSpan span) => $"{bar.Source.Path}:{bar.Source.PositionOf(span.Start).Line}";

    private static string Amount(Given<Quantity> given) => given.IsGiven
        ? Say.Range(given.Value.Value, given.Value.Low, given.Value.High, given.Value.Unit.Name)
        : "not given";

    private static string UnitWordOf(Dimension dimension) => dimension switch
    {
        Dimension.Volume => "mL",
        Dimension.Mass => "g",
        _ => "",
    };
}
