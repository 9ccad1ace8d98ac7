using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>A line check as text and as JSON.</summary>
internal static class LineCheckReport
{
    private const int LabelColumns = 28;

    /// <summary>Writes the check as text, at 80 columns; lines end with LF.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="check">The check.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="colour">Whether to colour.</param>
    /// <param name="aside">Harm findings that are put aside.</param>
    public static void WriteText(TextWriter to, LineCheck check, DisplayUnits units, bool colour, HarmAside? aside = null)
    {
        var text = new TextTable(to, colour);
        text.Heading($"{check.Menu.Name.Or(check.Menu.Id)}, {check.On}");
        text.Wrapped(Summary(check), "  ", "  ");
        Group(text, check, Readiness.No, "Cannot be served", units);
        Group(text, check, Readiness.If, "Can be served if", units);
        Group(text, check, Readiness.Ready, "Can be served", units);
        WriteMaking(text, check, units);
        if (check.Get.Count > 0)
        {
            text.Line("");
            text.Heading("To get or to look for");
            foreach (var (id, grams, use) in check.Get)
                text.Row(id, LabelColumns, $"{(grams > 0 ? AmountOf(check, id, grams, units) + " " : "")}for {Say.List(use)}");
        }

        var away = check.ThrowAway.ToList();
        if (away.Count > 0)
        {
            text.Line("");
            text.Heading("To throw away");
            foreach (var lot in away) text.Row(NameOf(lot), LabelColumns, units.Spoken(string.Join("; ", lot.Reasons)));
        }

        WriteLots(text, check, units);
        WriteAllergens(text, check);
        text.Line("");
        if (aside is { Sentence.Length: > 0 }) text.Wrapped(aside.Sentence, "", "");
        text.Wrapped(Caution, "", "");
    }

    /// <summary>What every report of this kind ends with.</summary>
    internal const string Caution =
        "This is a check of what is written down, not of what is in the bottle. The food-safety plan of the house, the local food code "
            + "and the people who answer for them decide; ask each guest about allergies, whatever a table says.";

    /// <summary>Writes the check as JSON, masses in g, volumes in mL.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="check">The check.</param>
    /// <param name="aside">Harm findings that are put aside.</param>
    public static void WriteJson(Stream to, LineCheck check, HarmAside? aside = null)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("menu", JsonOutput.WellFormed(check.Menu.Id));
            json.WriteString("on", check.On.ToString());
            json.WriteStartObject("counts");
            json.WriteNumber("ready", Count(check, Readiness.Ready));
            json.WriteNumber("if", Count(check, Readiness.If));
            json.WriteNumber("no", Count(check, Readiness.No));
            json.WriteEndObject();
            aside?.Write(json, "harmPutAside");
            json.WriteStartArray("drinks");
            foreach (var drink in check.Drinks)
            {
                json.WriteStartObject();
                json.WriteString("id", JsonOutput.WellFormed(drink.Id));
                json.WriteString("name", JsonOutput.WellFormed(drink.Name));
                json.WriteString("answer", KeyOf(drink.Readiness));
                json.WriteFinite("covers", drink.Covers);
                json.WriteFinite("coversReady", drink.CoversReady);
                Texts(json, "because", drink.Reasons);
                Texts(json, "first", drink.Conditions);
                Texts(json, "lookFor", drink.LookFor);
                json.WriteStartObject("allergens");
                Texts(json, "contains", drink.Contains);
                Texts(json, "mayContain", drink.MayContain);
                Texts(json, "notKnownOf", drink.NotKnownOf);
                json.WriteEndObject();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("make");
            foreach (var task in check.Make)
            {
                json.WriteStartObject();
                json.WriteString("id", JsonOutput.WellFormed(task.Prep.Id));
                json.WriteFinite("times", task.Times);
                json.WriteFinite("grams", task.Makes);
                json.WriteFinite("millilitres", task.MakesMillilitres);
                json.WriteFinite("shortGrams", task.Short);
                json.WriteFinite("hours", task.Hours);
                if (task.LastsUntil is { } until) json.WriteString("useBy", until.ToString());
                Texts(json, "for", task.For);
                json.WriteStartArray("credits");
                foreach (var (id, grams) in task.Credits)
                {
                    json.WriteStartObject();
                    json.WriteString("id", JsonOutput.WellFormed(id));
                    json.WriteFinite("grams", grams);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("lines");
                foreach (var line in task.Lines)
                {
                    json.WriteStartObject();
                    json.WriteString("item", JsonOutput.WellFormed(line.Item));
                    json.WriteFinite("amount", line.Rounded);
                    json.WriteString("unit", line.Dimension switch { Dimension.Volume => "mL", Dimension.Mass => "g", _ => line.Unit });
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("get");
            foreach (var (id, grams, use) in check.Get)
            {
                json.WriteStartObject();
                json.WriteString("id", JsonOutput.WellFormed(id));
                if (grams > 0) json.WriteFinite("grams", grams);
                Texts(json, "for", use);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("lots");
            foreach (var lot in check.Lots)
            {
                json.WriteStartObject();
                json.WriteString("item", JsonOutput.WellFormed(lot.Id));
                json.WriteGiven("lot", lot.Lot.LotCode.Or(""));
                json.WriteString("file", JsonOutput.WellFormed(lot.Stock.Source.Path));
                json.WriteNumber("line", lot.Stock.At(lot.Lot.Span).Start.Line);
                json.WriteString("answer", KeyOf(lot.Readiness));
                if (lot.From is { } from) json.WriteString(lot.Lot.Made.IsGiven ? "made" : "opened", from.ToString());
                if (lot.UseBy is { } last) json.WriteString("useBy", last.ToString());
                json.WriteGiven("useByFrom", lot.UseByFrom);
                json.WriteFinite("grams", lot.Grams);
                json.WriteBoolean("throwAway", lot.ThrowAway);
                Texts(json, "because", lot.Reasons);
                Texts(json, "first", lot.Conditions);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("caution", Caution);
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    /// <summary>How many drinks can be served, in a sentence.</summary>
    internal static string Summary(LineCheck check)
    {
        int all = check.Drinks.Count, ready = Count(check, Readiness.Ready),
            conditional = Count(check, Readiness.If), no = Count(check, Readiness.No);
        if (all == 0) return "The menu has no drink.";
        if (ready == all) return all == 1 ? "The drink can be served." : $"All {all} drinks can be served.";
        var parts = new List<string> { $"{ready} can be served" };
        if (conditional > 0) parts.Add($"{conditional} if something is done first");
        if (no > 0) parts.Add($"{no} cannot");
        return $"Of {Say.Count(all, "drink")}, {Say.List(parts)}.";
    }

    /// <summary>Number of drinks with an answer.</summary>
    internal static int Count(LineCheck check, Readiness readiness) => check.Drinks.Count(d => d.Readiness == readiness);

    internal static string KeyOf(Readiness readiness) => readiness switch { Readiness.Ready => "ready", Readiness.If => "if", _ => "no" };

    internal static string NameOf(LotCheck lot) => lot.Lot.LotCode.IsGiven ? $"{lot.Id} {lot.Lot.LotCode.Value}" : lot.Id;

    internal static string AmountOf(LineCheck check, string id, double grams, DisplayUnits units) =>
        check.Profiles.Book.Resolve(id) is { } item ? units.Spoken(check.AmountOf(item, grams)) : $"{Say.Number(grams, 0)} g";

    /// <summary>By-products of a task that something else takes, in words.</summary>
    internal static string CreditsOf(
        LineCheck check, MakeTask task, DisplayUnits units) =>
            Say.List([.. task.Credits.Select(c => $"{AmountOf(check, c.Id, c.Grams, units)} {c.Id} that is needed")]);

    /// <summary>The name of an item as its file gives it, else its id.</summary>
    internal static string NameOf(LineCheck check, string id) =>
        check.Profiles.Book.Resolve(id) is { ByProduct: null } item ? item.File.Name.Or(id) : id.Replace('-', ' ');

    internal static string TimesOf(double times) => times == 1 ? "once the recipe" : $"{Say.Number(times, 2)} × the recipe";

    internal static string LineOf(ScalePlanLine line, DisplayUnits units) => line.Dimension switch
    {
        Dimension.Volume => units.Pour(line.Rounded),
        Dimension.Mass => units.Mass(line.Rounded),
        _ => $"{Say.Number(line.Rounded, 0)} {line.Unit}",
    };

    /// <summary>Writes a list of texts.</summary>
    internal static void Texts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts) json.WriteStringValue(JsonOutput.WellFormed(text));
        json.WriteEndArray();
    }

    private static void Group(TextTable text, LineCheck check, Readiness readiness, string heading, DisplayUnits units)
    {
        if (Count(check, readiness) == 0) return;
        text.Line("");
        text.Heading(heading);
        foreach (var drink in check.Drinks)
        {
            if (drink.Readiness != readiness) continue;
            string covers = drink.Covers == 0 ? "no covers given" : drink.CoversReady < drink.Covers
                ? $"ready for {Say.Number(drink.CoversReady, 0)} of {Say.Number(drink.Covers, 0)} covers" : $"{Say.Number(drink.Covers, 0)} covers";
            text.Wrapped($"{drink.Name} ({drink.Id}), {covers}", "  ", "    ");
            foreach (string reason in drink.Reasons) text.Wrapped(units.Spoken(reason), "    - ", "      ");
            foreach (string condition in drink.Conditions) text.Wrapped(units.Spoken(condition), "    - ", "      ");
            if (drink.LookFor.Count > 0) text.Wrapped(units.Spoken($"look for {Say.List(drink.LookFor)}"), "    - ", "      ");
        }
    }

    private static void WriteMaking(TextTable text, LineCheck check, DisplayUnits units)
    {
        if (check.Make.Count == 0) return;
        text.Line("");
        text.Heading("To make today, in this order");
        foreach (var task in check.Make)
        {
            string makes = double.IsNaN(task.MakesMillilitres) ? units.Mass(task.Makes) : units.Volume(task.MakesMillilitres);
            string until = task.LastsUntil is { } last ? $", use by {last}" : "";
            text.Wrapped(
                $"{task.Prep.Name.Or(task.Prep.Id)} ({task.Prep.Id}): {TimesOf(task.Times)}, {makes}{until}; for {Say.List(task.For)}",
                "  ", "    ");
            text.Wrapped(string.Join(", ", task.Lines.Select(l => $"{l.Item} {LineOf(l, units)}")), "    ", "    ");
            if (task.Credits.Count > 0) text.Wrapped($"leaves {CreditsOf(check, task, units)}", "    ", "    ");
        }
    }

    private static void WriteLots(TextTable text, LineCheck check, DisplayUnits units)
    {
        if (check.Lots.Count == 0) return;
        text.Line("");
        text.Heading("Lots by use-by");
        foreach (var lot in check.Lots.OrderBy(l => l.UseBy?.DayNumber ?? int.MaxValue).ThenBy(l => l.Id, StringComparer.Ordinal))
        {
            string last = lot.UseBy?.ToString() ?? "no end";
            string at = lot.Lot.At.IsGiven ? $", at {units.Temperature(lot.Lot.At.Value.Base)}" : "";
            string from = lot.UseByFrom.Length > 0 ? $" ({lot.UseByFrom})" : "";
            string state = lot.Readiness switch
            {
                Readiness.Ready => "",
                Readiness.If => "; first: " + units.Spoken(string.Join("; ", lot.Conditions)),
                _ => "; not to be used",
            };
            string left = double.IsNaN(lot.Grams) ? "amount not known" : AmountOf(check, lot.Id, lot.Grams, units);
            text.Row(NameOf(lot), LabelColumns, last, 12, left + at + from + state);
        }
    }

    private static void WriteAllergens(TextTable text, LineCheck check)
    {
        text.Line("");
        text.Heading("Allergens, for the team");
        if (check.Allergens.Count > 0)
        {
            // One column an allergen, under a letter: names would not fit 80 columns.
            var letters = check.Allergens.Select((a, i) => (Letter: i < 26 ? ((char)('A' + i)).ToString() : "+", Name: a)).ToList();
            text.Wrapped(
                "● contains, ○ may contain, ? something is not known. " + string.Join(", ", letters.Select(l => $"{l.Letter} {l.Name}")),
                "  ",
                "    ");
            text.Line("  " + new string(' ', 26) + string.Join(" ", letters.Select(l => l.Letter)));
            foreach (var drink in check.Drinks)
            {
                if (drink.Drink is null) continue;
                string marks = string.Join(
                    " ",
                    check.Allergens.Select(a => drink.Contains.Contains(a)
                        ? "●"
                        : drink.MayContain.Contains(a) ? "○" : drink.NotKnownOf.Count > 0 ? "?" : "·"));
                text.Row(drink.Id, LabelColumns, marks);
            }
        }
        else
        {
            text.Wrapped("None is known of in any drink of the menu.", "  ", "  ");
        }

        var unknown = check.Drinks.SelectMany(d => d.NotKnownOf).Distinct().OrderBy(i => i, StringComparer.Ordinal).ToList();
        if (unknown.Count > 0) text.Wrapped($"Not known of {Say.List(unknown)}: ask the supplier, and tell the guest.", "  ", "  ");
    }
}
