using System.Text.Json;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>A recipe at another size, as text and as JSON.</summary>
internal static class ScaleReport
{
    private const int LabelColumns = 28;
    private const int ValueColumns = 16;

    /// <summary>Writes the plan as text, at 80 columns; lines end with LF.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="colour">Whether to colour.</param>
    public static void WriteText(TextWriter to, ScalePlan plan, DisplayUnits units, bool colour)
    {
        var text = new TextTable(to, colour);
        bool drink = plan.Recipe is Drink;
        string size = double.IsNaN(plan.Serves) ? "" : $", {Say.Number(plan.Serves, 1)} {(drink ? "serves" : "portions")}";
        text.Heading($"{plan.Recipe.Name.Or(plan.Recipe.Id)} ({ReportWords.Of(plan.Recipe.Kind)} {plan.Recipe.Id}), "
            + $"times {Say.Number(plan.Factor)}{size}");
        foreach (string reason in plan.Verdict.Reasons)
            text.Wrapped(units.Spoken($"{(plan.Verdict.IsForbidden ? LabelPage.DoNotUse : "PUT RIGHT FIRST")}: {reason}."), "  ", "    ");
        foreach (string condition in plan.Verdict.Conditions) text.Wrapped(units.Spoken($"First: {condition}."), "  ", "    ");
        if (drink)
            text.Wrapped(
                plan.Poured
                    ? "A batch that is poured as it is, with the water that ice would have added."
                    : "A batch without ice or water: each drink is finished to order as its spec says.",
                "  ",
                "  ");
        foreach (var line in plan.Lines) text.Row(line.Item, LabelColumns, AmountOf(line, units), ValueColumns, Beside(line, units));
        if (plan.Water > 0)
        {
            text.Row("water, for dilution", LabelColumns, units.Volume(plan.Water), ValueColumns,
                $"ice would add {units.Volume(plan.WaterRange.Low)} to {units.Volume(plan.WaterRange.High)}");
        }

        string made = double.IsNaN(plan.Volume) ? (double.IsNaN(plan.Mass) ? "not known" : units.Mass(plan.Mass)) : units.Volume(plan.Volume);
        text.Row("makes", LabelColumns, made, ValueColumns, double.IsNaN(plan.VolumeEach) ? "" : $"{units.Volume(plan.VolumeEach)} of it a drink");
        if (plan.AtTheGlass.Count > 0)
        {
            text.Heading("At each glass");
            foreach (var line in plan.AtTheGlass)
                text.Row(
                    line.Item.Or("?"), LabelColumns, line.Amount.IsGiven ? Written(line.Amount.Value, units) : "", ValueColumns,
                    RoleOf(line));
        }

        if (plan.Facts.Count > 0)
        {
            text.Heading("What rounding to the tools changes");
            foreach (var fact in plan.Facts)
            {
                string now = WordOf(fact.Fact, fact.Rounded, plan.IsSolid, units);
                string was = WordOf(fact.Fact, fact.Exact, plan.IsSolid, units);
                text.Row(
                    fact.Fact == Fact.MixVolume ? "volume" : ProfileReport.LabelOf(fact.Fact), LabelColumns, now, ValueColumns,
                    now == was ? "as exact" : $"exact: {was}");
            }
        }

        text.Heading("Keeping");
        if (plan.Container is { } container)
        {
            string many = container.Count == 1 ? "" : $"{container.Count} × ";
            text.Row(
                "goes into",
                LabelColumns,
                many + (container.IsOfTheBar ? container.Name : units.Spoken(container.Name)),
                ValueColumns,
                $"leaves {Say.Number(container.Headspace, 0)} % of room{(container.IsOfTheBar ? "" : "; a common size")}");
        }

        text.Row("keeps", LabelColumns, Keeps(plan));
        foreach (string remark in plan.Remarks) text.Wrapped(units.Spoken(remark), "  - ", "    ");
    }

    /// <summary>Writes the plan as JSON, in mL, g and °C.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="plan">The plan.</param>
    public static void WriteJson(Stream to, ScalePlan plan)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("id", JsonOutput.WellFormed(plan.Recipe.Id));
            json.WriteString("kind", ReportWords.KeyOf(plan.Recipe.Kind));
            json.WriteString("file", JsonOutput.WellFormed(plan.Recipe.Source.Path));
            json.WriteFinite("factor", plan.Factor);
            json.WriteFinite("serves", plan.Serves);
            json.WriteBoolean("poured", plan.Poured);
            json.WriteString("answer", LineCheckReport.KeyOf(plan.Verdict.Answer));
            LineCheckReport.Texts(json, "because", [.. plan.Verdict.Reasons]);
            LineCheckReport.Texts(json, "first", [.. plan.Verdict.Conditions]);
            json.WriteStartArray("lines");
            foreach (var line in plan.Lines)
            {
                json.WriteStartObject();
                json.WriteString("item", JsonOutput.WellFormed(line.Item));
                json.WriteFinite("amount", line.Rounded);
                json.WriteFinite("exact", line.Exact);
                json.WriteString("unit", UnitOf(line));
                json.WriteFinite("grams", line.Grams);
                json.WriteString("before", line.Before);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (plan.Water > 0)
            {
                json.WriteStartObject("water");
                json.WriteFinite("amount", plan.Water);
                json.WriteFinite("low", plan.WaterRange.Low);
                json.WriteFinite("high", plan.WaterRange.High);
                json.WriteString("unit", "mL");
                json.WriteEndObject();
            }

            json.WriteStartArray("atTheGlass");
            foreach (var line in plan.AtTheGlass)
            {
                json.WriteStartObject();
                json.WriteString("item", JsonOutput.WellFormed(line.Item.Or("")));
                if (line.Amount.IsGiven) json.WriteString("amount", Rounding.Words(line.Amount.Value.Base, line.Amount.Value));
                json.WriteString("role", RoleOf(line));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteFinite("volume", plan.Volume);
            json.WriteFinite("mass", plan.Mass);
            json.WriteFinite("volumeEach", plan.VolumeEach);
            json.WriteStartObject("facts");
            foreach (var fact in plan.Facts)
            {
                json.WriteStartObject(FactNames.Name(fact.Fact));
                json.WriteFinite("exact", fact.Exact.Value);
                json.WriteFinite("value", fact.Rounded.Value);
                json.WriteFinite("low", fact.Rounded.Low);
                json.WriteFinite("high", fact.Rounded.High);
                json.WriteString("unit", FactNames.Unit(fact.Fact, plan.IsSolid));
                json.WriteEndObject();
            }

            json.WriteEndObject();
            if (plan.Container is { } container)
            {
                json.WriteStartObject("container");
                json.WriteString("name", JsonOutput.WellFormed(container.Name));
                json.WriteFinite("capacity", container.Capacity);
                json.WriteNumber("count", container.Count);
                json.WriteFinite("headspacePercent", container.Headspace);
                json.WriteEndObject();
            }

            json.WriteStartObject("keeps");
            if (!double.IsNaN(plan.Days))
            {
                json.WriteFinite("days", plan.Days);
                json.WriteString("from", JsonOutput.WellFormed(plan.Life.IsKnown && plan.Days == plan.Life.Value ? plan.Life.From : "its recipe"));
                json.WriteFinite("statedDays", plan.StatedDays);
            }

            json.WriteEndObject();
            json.WriteStartArray("remarks");
            foreach (string remark in plan.Remarks) json.WriteStringValue(JsonOutput.WellFormed(remark));
            json.WriteEndArray();
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static string AmountOf(ScalePlanLine line, DisplayUnits units) => line.Dimension switch
    {
        Dimension.Volume => units.Pour(line.Rounded),
        Dimension.Mass => units.Mass(line.Rounded),
        _ => $"{Say.Number(line.Rounded, 0)} {line.Unit}",
    };

    private static string UnitOf(ScalePlanLine line) => line.Dimension switch { Dimension.Volume => "mL", Dimension.Mass => "g", _ => line.Unit };

    private static string Beside(ScalePlanLine line, DisplayUnits units)
    {
        string weighs = line.Dimension == Dimension.Mass || double.IsNaN(line.Grams) ? "" : $"{Say.Number(line.Grams, line.Grams < 100 ? 1 : 0)} g; ";
        return weighs + $"from {units.Spoken(line.Before)}";
    }

    private static string Written(Quantity amount, DisplayUnits units) =>
        amount.Dimension == Dimension.Volume && amount.Unit.System == UnitSystem.Metric
            ? units.Volume(amount.Base)
            : Rounding.Words(amount.Base, amount);

    private static string RoleOf(Line line) => line.Role switch
    {
        LineRole.Garnish => "garnish",
        LineRole.Rim => "rim",
        LineRole.Top or LineRole.Part => "top",
        LineRole.Rinse => "rinse",
        LineRole.Float => "float",
        LineRole.Muddle => "muddle",
        LineRole.Wash => "wash",
        _ => "fining",
    };

    private static string WordOf(Fact fact, FactValue value, bool solid, DisplayUnits units) =>
        fact == Fact.MixVolume ? units.Volume(value.Value)
        : fact == Fact.Ph ? Say.Number(value.Value, 2)
        : units.With(value.Value, Say.Unit(fact, solid));

    private static string Keeps(ScalePlan plan)
    {
        if (plan.Verdict.IsForbidden) return "not at all until check finds nothing against it";
        if (double.IsNaN(plan.Days)) return "no part of it and no rule sets an end";
        string from = plan.Life.IsKnown && plan.Life.Value < plan.StatedDays
            ? $"by the rules of keeping ({plan.Life.From}); its recipe says {Days(plan.StatedDays)}"
            : double.IsNaN(plan.StatedDays) ? $"by the rules of keeping ({plan.Life.From})" : "by its recipe";
        return $"at most {Days(plan.Days)}, the day made counted, {from}";
    }

    private static string Days(double days) => days == 1 ? "1 day" : $"{Say.Number(days, 1)} days";
}
