using System.Text;
using System.Text.Json;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>
/// A line check as SARIF 2.1.0 (OASIS, 2020): a result for each drink that cannot be served, each thing to do first, each lot
/// to throw away, and each thing to make or to get. Their fingerprints leave out amounts and days, so that a result is known
/// again while a bottle empties.
/// </summary>
internal static class LineCheckSarif
{
    private static readonly (string Id, string Name, string Title, Level Level)[] Kinds =
    [
        ("linecheck/cannot-be-served", "CannotBeServed", "A drink of the menu cannot be served as it is written.", Level.Error),
        ("linecheck/do-first", "DoFirst", "A drink of the menu can be served once something is done.", Level.Warning),
        ("linecheck/throw-away", "ThrowAway", "A lot is to be thrown away.", Level.Warning),
        ("linecheck/make", "Make", "Something is to be made before service.", Level.Note),
        ("linecheck/get", "Get", "Something bought is to be got or looked for.", Level.Note),
    ];

    /// <summary>Writes the log. Volumes and temperatures are metric.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="check">The check.</param>
    /// <param name="version">Version of the product.</param>
    /// <param name="pathPrefix">The way from the root of the repository to the root of the book, with <c>/</c> at its end;
    /// empty where they are one.</param>
    public static void Write(Stream to, LineCheck check, string version, string pathPrefix)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", SarifReport.Schema);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            WriteTool(json, version);
            json.WriteStartObject("automationDetails");
            json.WriteString("id", $"speclint-linecheck/{JsonOutput.Address(pathPrefix + check.Menu.Id)}/");
            json.WriteEndObject();
            json.WriteStartArray("invocations");
            json.WriteStartObject();
            json.WriteBoolean("executionSuccessful", true);
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteStartObject("originalUriBaseIds");
            json.WriteStartObject(SarifReport.Base);
            SarifReport.WriteMessage(json, "description", "The root of the repository.");
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
            new Results(json, pathPrefix).Write(check);
            json.WriteEndArray();
            json.WriteStartObject("properties");
            json.WriteString("menu", JsonOutput.WellFormed(check.Menu.Id));
            json.WriteString("on", check.On.ToString());
            json.WriteString("caution", LineCheckReport.Caution);
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static void WriteTool(Utf8JsonWriter json, string version)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "SpecLint");
        json.WriteString("semanticVersion", version);
        json.WriteString("language", "en");
        json.WriteStartArray("rules");
        foreach (var (id, name, title, level) in Kinds)
        {
            json.WriteStartObject();
            json.WriteString("id", id);
            json.WriteString("name", name);
            SarifReport.WriteMessage(json, "shortDescription", title);
            SarifReport.WriteMessage(json, "fullDescription", title);
            SarifReport.WriteMessage(json, "help", $"{title} {LineCheckReport.Caution}");
            json.WriteStartObject("defaultConfiguration");
            json.WriteString("level", ReportWords.Of(level));
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private sealed class Results(Utf8JsonWriter json, string pathPrefix)
    {
        private readonly Dictionary<string, int> seen = new(StringComparer.Ordinal);

        public void Write(LineCheck check)
        {
            string menu = check.Menu.Id;
            foreach (var drink in check.Drinks)
            {
                var place = check.Menu.At(drink.Entry.Span);
                string subject = $"{menu}/{drink.Id}", name = drink.Name.Length == 0 ? $"Drink {drink.Entry.Number}" : drink.Name;
                foreach (string reason in drink.Reasons) Result(0, place, subject, reason, $"{name} cannot be served: {reason}.");
                foreach (string condition in drink.Conditions)
                    Result(1, place, subject, condition, $"{name} can be served if this is done first: {condition}.");
            }

            foreach (var lot in check.ThrowAway)
                Result(
                    2, lot.Stock.At(lot.Lot.Span), LineCheckReport.NameOf(lot), lot.From?.ToString() ?? "",
                    $"Throw away {LineCheckReport.NameOf(lot)}: {string.Join("; ", lot.Reasons)}.");
            foreach (var task in check.Make)
            {
                string makes = double.IsNaN(task.MakesMillilitres)
                    ? DisplayUnits.Metric.Mass(task.Makes)
                    : DisplayUnits.Metric.Volume(task.MakesMillilitres);
                string until = task.LastsUntil is { } last ? $", use by {last}" : "";
                Result(
                    3,
                    task.Prep.Head,
                    $"{menu}/{task.Prep.Id}",
                    "",
                    $"Make {task.Prep.Id}: {LineCheckReport.TimesOf(task.Times)}, {makes}{until}; for {Say.List(task.For)}.");
            }

            foreach (var (id, grams, use) in check.Get)
                Result(
                    4,
                    check.Menu.Head,
                    $"{menu}/{id}",
                    "",
                    $"Get or look for {id}{(grams > 0 ? ", " + LineCheckReport.AmountOf(check, id, grams, DisplayUnits.Metric) : "")}, "
                        + $"for {Say.List(use)}.");
        }

        private void Result(int kind, Place place, string subject, string what, string message)
        {
            var (id, _, _, level) = Kinds[kind];
            json.WriteStartObject();
            json.WriteString("ruleId", id);
            json.WriteNumber("ruleIndex", kind);
            json.WriteString("kind", "fail");
            json.WriteString("level", ReportWords.Of(level));
            SarifReport.WriteMessage(json, "message", message);
            json.WriteStartArray("locations");
            json.WriteStartObject();
            SarifReport.WritePhysical(json, place, pathPrefix);
            json.WriteStartArray("logicalLocations");
            json.WriteStartObject();
            json.WriteString("fullyQualifiedName", JsonOutput.WellFormed(subject));
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndArray();
            string key = kind == 2 ? what : WithoutNumbers(what);
            string same = $"{id} {subject} {key}";
            seen.TryGetValue(same, out int before);
            seen[same] = before + 1;
            json.WriteStartObject("partialFingerprints");
            json.WriteString(
                Fingerprints.Name,
                Fingerprints.Of(id, subject, key, before == 0 ? "" : before.ToString(System.Globalization.CultureInfo.InvariantCulture)));
            json.WriteEndObject();
            json.WriteEndObject();
        }
    }

    /// <summary>A text with a mark for every number and the unit behind it.</summary>
    internal static string WithoutNumbers(string text)
    {
        var kept = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length;)
        {
            bool startsNumber = text[i] is >= '0' and <= '9' && (i == 0 || !(char.IsLetter(text[i - 1]) || text[i - 1] is '-' or '_'));
            if (!startsNumber)
            {
                kept.Append(text[i++]);
                continue;
            }

            while (i < text.Length && (text[i] is >= '0' and <= '9' or '.' or '-')) i++;
            kept.Append('#');
            foreach (string unit in new[] { " ml", " mL", " l", " g", " kg", " min", " h", " days" })
            {
                if (string.CompareOrdinal(text, i, unit, 0, unit.Length) != 0
                    || (i + unit.Length < text.Length && char.IsLetterOrDigit(text[i + unit.Length])))
                    continue;
                i += unit.Length;
                break;
            }
        }

        return kept.ToString();
    }
}
