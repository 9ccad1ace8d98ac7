using System.Text.Json;
using SpecLint.Changes;

namespace SpecLint.Reports;

/// <summary>An adjusted recipe, and what could take the place of an item: as text and as JSON.</summary>
internal static class AdjustReport
{
    private const int LabelColumns = 24;

    /// <summary>Writes an adjustment as text, at 80 columns; lines end with LF.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="adjustment">What.</param>
    /// <param name="colour">Whether to colour.</param>
    /// <param name="units">Units of volume and temperature; metric where none are given.</param>
    public static void WriteText(TextWriter to, Adjustment adjustment, bool colour, DisplayUnits? units = null)
    {
        units ??= DisplayUnits.Metric;
        var text = new TextTable(to, colour);
        text.Heading($"{adjustment.Recipe.Name.Or(adjustment.Recipe.Id)} ({ReportWords.Of(adjustment.Recipe.Kind)} {adjustment.Recipe.Id})");
        WriteBody(text, adjustment, units);
        text.Line("");
        bool any = false;
        foreach (var change in adjustment.Comparison.Recipes)
        {
            any = true;
            ComparisonReport.WriteRecipe(text, change, units);
            text.Line("");
        }

        if (!any) text.Wrapped("Nothing else changes.", "", "");
        WriteHarm(text, adjustment, units);
    }

    /// <summary>Writes substitutes as text, the best first.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="substitutes">What was found.</param>
    /// <param name="without">Id of the item that ran out.</param>
    /// <param name="colour">Whether to colour.</param>
    /// <param name="units">Units of volume and temperature; metric where none are given.</param>
    public static void WriteText(TextWriter to, IReadOnlyList<Substitute> substitutes, string without, bool colour, DisplayUnits? units = null)
    {
        units ??= DisplayUnits.Metric;
        var text = new TextTable(to, colour);
        for (int i = 0; i < substitutes.Count; i++)
        {
            var substitute = substitutes[i];
            text.Heading($"{i + 1}. {substitute.Name} ({substitute.Item.Id}), {Words(substitute.Availability)}");
            text.Wrapped(
                substitute.Differs.Count == 0
                    ? $"strength, sugar and acid as in {without}"
                    : $"against {without}: {string.Join(", ", substitute.Differs)}",
                "  ",
                "    ");
            WriteBody(text, substitute.Adjustment, units);
            var own = substitute.Adjustment.Comparison.Recipes.FirstOrDefault(r => r.Id == substitute.Adjustment.Recipe.Id);
            if (own is { AllergensGained.Count: > 0 }) text.Row("allergens gained", LabelColumns, Say.List(own.AllergensGained));
            if (own is { AllergensLost.Count: > 0 }) text.Row("allergens lost", LabelColumns, Say.List(own.AllergensLost));
            WriteHarm(text, substitute.Adjustment, units);
            text.Line("");
        }
    }

    /// <summary>Writes an adjustment as one JSON object.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="adjustment">What.</param>
    public static void WriteJson(Stream to, Adjustment adjustment)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            WriteBody(json, adjustment);
            json.WriteStartArray("recipes");
            foreach (var change in adjustment.Comparison.Recipes) ComparisonReport.WriteRecipe(json, change);
            json.WriteEndArray();
            using var diff = new StringWriter { NewLine = "\n" };
            UnifiedDiff.Write(diff, adjustment.Recipe.Source.Path, adjustment.Recipe.Source, adjustment.File);
            json.WriteString("diff", JsonOutput.WellFormed(diff.ToString()));
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    /// <summary>Writes substitutes as one JSON object.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="substitutes">What was found, the best first.</param>
    /// <param name="without">Id of the item that ran out.</param>
    public static void WriteJson(Stream to, IReadOnlyList<Substitute> substitutes, string without)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("without", JsonOutput.WellFormed(without));
            json.WriteStartArray("substitutes");
            foreach (var substitute in substitutes)
            {
                json.WriteStartObject();
                json.WriteString("use", JsonOutput.WellFormed(substitute.Item.Id));
                json.WriteString("name", JsonOutput.WellFormed(substitute.Name));
                json.WriteString("from", substitute.Availability switch
                {
                    Availability.InStock => "stock",
                    Availability.InBook => "book",
                    _ => "catalogue",
                });
                LineCheckReport.Texts(json, "differs", substitute.Differs);
                WriteBody(json, substitute.Adjustment);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static void WriteBody(TextTable text, Adjustment adjustment, DisplayUnits units)
    {
        foreach (var figure in adjustment.Figures)
        {
            string asked = Asked(figure, units);
            string after = units.Range(figure.After.Value, figure.After.Low, figure.After.High, figure.Unit);
            string before = figure.Before.IsKnown && Say.Number(figure.Before.Value) != Say.Number(figure.After.Value)
                ? $", before {units.Range(figure.Before.Value, figure.Before.Low, figure.Before.High, figure.Unit)}"
                : "";
            text.Row(
                figure.Name,
                LabelColumns,
                figure.After.IsKnown
                    ? $"{asked}: {(figure.IsReached ? "yes" : "no")}, {after}{before}"
                    : $"{asked}: not known, {figure.After.OpenBecause}");
            if (figure.InTheWay.Length > 0) text.Row("  in the way", LabelColumns, units.Sentence(figure.InTheWay));
        }

        if (adjustment.Like is { } like)
        {
            if (adjustment.LikeBefore is { } before && adjustment.IsChanged) text.Row("before", LabelColumns, StandInWords.Of(before));
            text.Row("stands in", LabelColumns, StandInWords.Of(like));
            if (adjustment.LikeInTheWay.Length > 0) text.Row("  in the way", LabelColumns, adjustment.LikeInTheWay);
        }

        foreach (var line in adjustment.Lines)
        {
            string amount = (line.ItemBefore, line.IsChanged) switch
            {
                ("", _) => $"add {line.After}",
                (_, false) => line.After + (line.MayChange ? "" : ", stays"),
                _ when line.Item != line.ItemBefore => $"{line.After} instead of {line.Before} {line.ItemBefore}",
                _ => $"{line.Before} becomes {line.After}",
            };
            text.Row(line.Item, LabelColumns, units.Sentence(amount));
        }

        foreach (string remark in adjustment.Remarks) text.Wrapped(remark, "  ", "  ");
    }

    private static void WriteHarm(TextTable text, Adjustment adjustment, DisplayUnits units)
    {
        foreach (string harm in adjustment.Harm) text.Row("brings", LabelColumns, units.Sentence(harm));
    }

    private static void WriteBody(Utf8JsonWriter json, Adjustment adjustment)
    {
        json.WriteString("id", JsonOutput.WellFormed(adjustment.Recipe.Id));
        json.WriteString("file", JsonOutput.WellFormed(adjustment.Recipe.Source.Path));
        json.WriteBoolean("reached", adjustment.IsReached);
        json.WriteBoolean("changed", adjustment.IsChanged);
        json.WriteStartArray("targets");
        foreach (var figure in adjustment.Figures)
        {
            json.WriteStartObject();
            json.WriteString("name", figure.Name);
            json.WriteString("unit", figure.Unit);
            json.WriteFinite("low", figure.Low);
            json.WriteFinite("high", figure.High);
            ComparisonReport.WriteValue(json, "before", figure.Before);
            ComparisonReport.WriteValue(json, "after", figure.After);
            json.WriteBoolean("reached", figure.IsReached);
            json.WriteGiven("inTheWay", figure.InTheWay);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (adjustment.Like is { } like)
        {
            json.WriteStartObject("like");
            json.WriteString("id", JsonOutput.WellFormed(like.Name));
            json.WriteBoolean("holds", like.Holds);
            json.WriteString("words", JsonOutput.WellFormed(StandInWords.Of(like)));
            json.WriteGiven("inTheWay", adjustment.LikeInTheWay);
            json.WriteEndObject();
        }

        json.WriteStartArray("lines");
        foreach (var line in adjustment.Lines)
        {
            json.WriteStartObject();
            json.WriteString("item", JsonOutput.WellFormed(line.Item));
            json.WriteGiven("itemBefore", line.ItemBefore);
            json.WriteGiven("before", line.Before);
            json.WriteString("after", JsonOutput.WellFormed(line.After));
            json.WriteBoolean("mayChange", line.MayChange);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        LineCheckReport.Texts(json, "harm", adjustment.Harm);
    }

    private static string Asked(AdjustedFigure figure, DisplayUnits units) =>
        Math.Abs(figure.Low - figure.High) < 1e-9
            ? units.With(figure.Low, figure.Unit)
            : $"{units.With(figure.Low, figure.Unit)} to {units.With(figure.High, figure.Unit)}";

    private static string Words(Availability where) => where switch
    {
        Availability.InStock => "in stock",
        Availability.InBook => "in the book, not in stock",
        _ => "in the catalogue, to be bought",
    };
}
