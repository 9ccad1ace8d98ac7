using System.Text.Json;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>What a search found, as text and as JSON.</summary>
internal static class FindReport
{
    /// <summary>Writes it as text, at 80 columns; lines end with LF.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="found">What was found, the best first.</param>
    /// <param name="model">Name of what it is compared with; empty where nothing is.</param>
    /// <param name="colour">Whether to colour.</param>
    public static void WriteText(TextWriter to, IReadOnlyList<FoundItem> found, string model, bool colour)
    {
        var text = new TextTable(to, colour);
        foreach (var item in found)
        {
            string called = item.Called.Length == 0 ? "" : $", also called {item.Called}";
            text.Heading($"{item.Item.Id}  {item.Name}{called}");
            string from = item.Item.IsBuiltIn ? "catalogue" : item.Item.File.Source.Path;
            text.Wrapped($"{item.Kind}; {Figures(item.MakeUp)}; {Allergens(item)}; {from}", "  ", "  ");
            if (item.Differs.Count > 0) text.Wrapped($"against {model}: {string.Join(", ", item.Differs)}", "  ", "    ");
        }
    }

    /// <summary>Writes it as JSON, in % vol and g.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="found">What was found, the best first.</param>
    /// <param name="model">Id of what it is compared with; empty where nothing is.</param>
    public static void WriteJson(Stream to, IReadOnlyList<FoundItem> found, string model)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteGiven("against", model);
            json.WriteStartArray("found");
            foreach (var item in found)
            {
                json.WriteStartObject();
                json.WriteString("id", JsonOutput.WellFormed(item.Item.Id));
                json.WriteString("name", JsonOutput.WellFormed(item.Name));
                json.WriteGiven("called", item.Called);
                json.WriteString("kind", item.Kind);
                json.WriteString("from", item.Item.IsBuiltIn ? "catalogue" : "book");
                json.WriteString("file", JsonOutput.WellFormed(item.Item.File.Source.Path));
                json.WriteString("per", item.MakeUp.IsSolid ? "100 g" : "100 mL");
                json.WriteFinite("strength", item.MakeUp.Strength);
                json.WriteFinite("sugar", item.MakeUp.Sugar);
                json.WriteFinite("acid", item.MakeUp.Acid);
                LineCheckReport.Texts(json, "allergens", item.Allergens);
                json.WriteBoolean("allergensKnown", item.AllergensKnown);
                LineCheckReport.Texts(json, "differs", item.Differs);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static string Figures(MakeUp of)
    {
        var figures = new List<string>();
        if (!of.IsSolid) figures.Add(double.IsNaN(of.Strength) ? "strength not known" : $"{Say.Number(of.Strength, 1)} % vol");
        figures.Add(double.IsNaN(of.Sugar) ? "sugar not known" : $"sugar {Say.Number(of.Sugar, 1)}");
        figures.Add(double.IsNaN(of.Acid) ? "acid not known" : $"acid {Say.Number(of.Acid, 1)}");
        return $"{string.Join(", ", figures)} g/100 {(of.IsSolid ? "g" : "mL")}";
    }

    private static string Allergens(FoundItem item) => (item.Allergens.Count, item.AllergensKnown) switch
    {
        ( > 0, true) => $"contains {Say.List(item.Allergens)}",
        ( > 0, false) => $"contains {Say.List(item.Allergens)}; others are not known",
        (_, true) => "no allergen known of",
        _ => "allergens not known",
    };
}
