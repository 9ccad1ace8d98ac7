using System.Text.Json;
using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Reports;

/// <summary>What recipes cost, as text and as JSON.</summary>
public static class CostReport
{
    private const int LabelColumns = 32, ValueColumns = 22;

    /// <summary>What the figures leave out.</summary>
    public const string LeftOut = "Ice, water, labour, breakage and tax are not counted. The range holds about 95 %: pours, yields and "
        + "pieces; prices are taken as they are written.";

    /// <summary>Writes costs as text, the lines of each recipe beneath it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="recipes">The recipes.</param>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="colour">Whether to colour.</param>
    /// <param name="of">How much of each; the usual where not given.</param>
    public static void WriteText(TextWriter to, IReadOnlyList<Recipe> recipes, ProfileSet profiles, bool colour, CostBatch? of = null)
    {
        of ??= CostBatch.Usual;
        var text = new TextTable(to, colour);
        string currency = FactUnits.CurrencyOf(profiles.Book.Settings);
        foreach (var recipe in recipes)
        {
            var profile = profiles.Of(recipe);
            var cost = profile.Cost;
            decimal times = of.Factor(profile);
            text.Heading($"{recipe.Name.Or(recipe.Id)} ({ReportWords.Of(recipe.Kind)} {recipe.Id})");
            text.Row(
                of.Words(recipe), LabelColumns, cost.Whole.Times(times).Words(currency), ValueColumns,
                cost.IsKnown ? "" : "without " + string.Join("; ", cost.Open));
            if (recipe is Prep && profile.Get(Fact.Cost) is { IsKnown: true } each)
                text.Row(profile.IsSolid ? "100 g" : "100 mL", LabelColumns, Money.Of(each).Words(currency), ValueColumns, "");
            if (cost.Trimmed > 0) text.Row("of it trimmings", LabelColumns, $"{Money.Digits(cost.Trimmed * times)} {currency}", ValueColumns, "");
            foreach (var line in cost.Lines)
            {
                string amount = line.Line.Amount.IsGiven && !of.IsGiven
                    ? " " + Rounding.Words(line.Line.Amount.Value.Base, line.Line.Amount.Value)
                    : "";
                text.Row(
                    $"  {line.Line.Item.Or("?")}{amount}", LabelColumns, line.IsKnown ? line.Cost.Times(times).Words(currency) : "open",
                    ValueColumns, line.IsKnown ? line.From : line.OpenBecause);
            }

            text.Line("");
        }

        text.Wrapped(LeftOut, "", "");
    }

    /// <summary>Writes costs as one JSON object; money as text, so that no reader rounds it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="recipes">The recipes.</param>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="of">How much of each; the usual where not given.</param>
    public static void WriteJson(Stream to, IReadOnlyList<Recipe> recipes, ProfileSet profiles, CostBatch? of = null)
    {
        of ??= CostBatch.Usual;
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("currency", JsonOutput.WellFormed(FactUnits.CurrencyOf(profiles.Book.Settings)));
            json.WriteStartArray("recipes");
            foreach (var recipe in recipes)
            {
                var cost = profiles.Of(recipe).Cost;
                decimal times = of.Factor(profiles.Of(recipe));
                json.WriteStartObject();
                json.WriteString("id", JsonOutput.WellFormed(recipe.Id));
                json.WriteString("kind", ReportWords.KeyOf(recipe.Kind));
                json.WriteString("per", of.Key(recipe));
                if (of.IsGiven) json.WriteString("batch", of.Words(recipe));
                Write(json, cost.Whole.Times(times));
                json.WriteString("trimmings", Sheet.Cell(cost.Trimmed * times));
                LineCheckReport.Texts(json, "open", [.. cost.Open]);
                json.WriteStartArray("lines");
                foreach (var line in cost.Lines)
                {
                    json.WriteStartObject();
                    json.WriteString("item", JsonOutput.WellFormed(line.Line.Item.Or("")));
                    if (line.IsKnown) Write(json, line.Cost.Times(times));
                    json.WriteGiven("from", line.From);
                    json.WriteGiven("open", line.OpenBecause);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static void Write(Utf8JsonWriter json, Money money)
    {
        json.WriteString("cost", Sheet.Cell(money.Value));
        json.WriteString("low", Sheet.Cell(money.Low));
        json.WriteString("high", Sheet.Cell(money.High));
    }

    /// <summary>Serves that a cost is shared out to; 1 of a preparation.</summary>
    internal static decimal Serves(Recipe recipe) => (decimal)Math.Max(1e-6, Math.Min(1e6, recipe.ServesOrOne));
}
