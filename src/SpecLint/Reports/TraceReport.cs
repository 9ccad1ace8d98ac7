using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>The way of a lot as text and as JSON.</summary>
internal static class TraceReport
{
    private const int LabelColumns = 28;

    /// <summary>What the report ends with.</summary>
    internal const string Caution =
        "This is what the files say. Whoever answers for food safety in the house, and the local authority, "
            + "decide what is withdrawn and who is told.";

    /// <summary>Writes the way of a lot as text, at 80 columns; lines end with LF.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="trace">The way.</param>
    /// <param name="colour">Whether to colour.</param>
    public static void WriteText(TextWriter to, LotTrace trace, bool colour)
    {
        var text = new TextTable(to, colour);
        text.Heading($"Lot {LotTrace.NameOf(trace.Lot)} of {trace.Item}, {Since(trace.Since)}");
        if (trace.Lots.Count + trace.Preps.Count + trace.Drinks.Count == 0)
            text.Wrapped("No lot, preparation or drink of the book takes from it.", "  ", "  ");
        WriteLots(text, "Lots made from it", trace.Lots.Where(l => l.Certain));
        WriteLots(text, "Lots that may hold it: they do not say which lots they were made from", trace.Lots.Where(l => !l.Certain));
        WriteRecipes(text, "Preparations that take from these lots", trace.Preps);
        WriteRecipes(text, "Drinks that take from these lots", trace.Drinks);
        text.Line("");
        text.Wrapped(Caution, "", "");
    }

    /// <summary>Writes the way of a lot as JSON.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="trace">The way.</param>
    public static void WriteJson(Stream to, LotTrace trace)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("item", JsonOutput.WellFormed(trace.Item));
            json.WriteGiven("lot", trace.Lot.LotCode.Or(""));
            if (trace.Since is { } from) json.WriteString("since", from.ToString());
            json.WriteStartArray("lots");
            foreach (var lot in trace.Lots)
            {
                json.WriteStartObject();
                json.WriteString("item", JsonOutput.WellFormed(lot.Item));
                json.WriteGiven("lot", lot.Lot.LotCode.Or(""));
                json.WriteString("file", JsonOutput.WellFormed(lot.Stock.Source.Path));
                json.WriteNumber("line", lot.Stock.At(lot.Lot.Span).Start.Line);
                if (lot.Since is { } day) json.WriteString("since", day.ToString());
                json.WriteBoolean("certain", lot.Certain);
                LineCheckReport.Texts(json, "through", lot.Through);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteRecipes(json, "preps", trace.Preps);
            WriteRecipes(json, "drinks", trace.Drinks);
            json.WriteString("caution", Caution);
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static void WriteRecipes(Utf8JsonWriter json, string name, IReadOnlyList<TracedRecipe> recipes)
    {
        json.WriteStartArray(name);
        foreach (var recipe in recipes)
        {
            json.WriteStartObject();
            json.WriteString("id", JsonOutput.WellFormed(recipe.Recipe.Id));
            if (recipe.Since is { } day) json.WriteString("since", day.ToString());
            json.WriteString("through", JsonOutput.WellFormed(recipe.Through));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Since(CalendarDate? day) => day is { } known ? $"since {known}" : "since a day that is not given";

    private static void WriteLots(TextTable text, string heading, IEnumerable<TracedLot> lots)
    {
        var list = lots.ToList();
        if (list.Count == 0) return;
        text.Line("");
        text.Heading(heading);
        foreach (var lot in list)
            text.Row(LotTrace.NameOf(lot.Lot), LabelColumns, $"{lot.Item}, {Since(lot.Since)}; through {Say.List(lot.Through, "then")}");
    }

    private static void WriteRecipes(TextTable text, string heading, IReadOnlyList<TracedRecipe> recipes)
    {
        if (recipes.Count == 0) return;
        text.Line("");
        text.Heading(heading);
        foreach (var recipe in recipes)
            text.Row(recipe.Recipe.Name.Or(recipe.Recipe.Id), LabelColumns, $"{Since(recipe.Since)}, by {recipe.Through}");
    }
}
