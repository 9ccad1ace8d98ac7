using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>
/// What recipes come to, and what ingredients are made of. As JSON one object an item, in a list unless one item alone
/// is asked for (schema <c>profile</c>); as text a table for people.
/// </summary>
internal static class ProfileReport
{
    private const int LabelColumns = 30;
    private const int ValueColumns = 20;

    /// <summary>Writes profiles as JSON.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="items">Items of the book or the catalogue, in the order in which they are shown.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="single">Whether to write the first item alone, not a list.</param>
    public static void WriteJson(Stream to, IReadOnlyList<Item> items, Verdicts verdicts, bool single)
    {
        var profiles = verdicts.Profiles;
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        if (!single) json.WriteStartArray();
        foreach (var item in items)
        {
            switch (item.File)
            {
                case Recipe recipe: WriteRecipe(json, recipe, verdicts); break;
                case Ingredient ingredient: WriteIngredient(json, item.Id, Inherit(ingredient, item, profiles)); break;
            }

            json.PassOn();
        }

        if (!single) json.WriteEndArray();
        json.Flush();
        JsonReport.WriteLineEnd(to);
    }

    /// <summary>Writes profiles as text; lines end with LF on every system.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="items">Items of the book or the catalogue, in the order in which they are shown.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="colour">Whether to colour.</param>
    public static void WriteText(TextWriter to, IReadOnlyList<Item> items, Verdicts verdicts, DisplayUnits units, bool colour)
    {
        var profiles = verdicts.Profiles;
        var text = new TextTable(to, colour);
        for (int i = 0; i < items.Count; i++)
        {
            if (i > 0) text.Line("");
            switch (items[i].File)
            {
                case Recipe recipe: WriteRecipe(text, recipe, verdicts, units); break;
                case Ingredient ingredient: WriteIngredient(text, items[i], Inherit(ingredient, items[i], profiles), units); break;
            }
        }
    }

    /// <summary>A fact; of its life the verdict has the last word.</summary>
    internal static FactValue ValueOf(
        Fact fact, RecipeProfile profile, Verdicts verdicts) => fact == Fact.Life ? verdicts.Of(profile.Recipe).Life : profile.Get(fact);

    internal static Ingredient Inherit(Ingredient ingredient, Item item, ProfileSet profiles) =>
        item.IsBuiltIn ? ingredient : Inheritance.Flatten(ingredient, id => profiles.Book.Resolve(id)?.File as Ingredient);

    private static void WriteRecipe(Utf8JsonWriter json, Recipe recipe, Verdicts verdicts)
    {
        var profiles = verdicts.Profiles;
        var profile = profiles.Of(recipe);
        json.WriteStartObject();
        json.WriteString("id", JsonOutput.WellFormed(recipe.Id));
        json.WriteString("kind", ReportWords.KeyOf(recipe.Kind));
        json.WriteString("file", JsonOutput.WellFormed(recipe.Source.Path));
        json.WriteStartObject("facts");
        for (int i = 0; i < FactNames.Count; i++)
        {
            var value = ValueOf((Fact)i, profile, verdicts);
            if (!IsShown(value)) continue;
            json.WriteStartObject(FactNames.Name((Fact)i));
            json.WriteFinite("value", value.Value);
            json.WriteFinite("low", value.Low);
            json.WriteFinite("high", value.High);
            json.WriteString("unit", FactUnits.Code((Fact)i, profile.IsSolid, profiles.Book.Settings));
            json.WriteString("from", JsonOutput.WellFormed(value.From));
            if (value.IsOutsideTestedRange) json.WriteBoolean("outsideTestedRange", true);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("open");
        for (int i = 0; i < FactNames.Count; i++)
        {
            var value = ValueOf((Fact)i, profile, verdicts);
            if (!IsShown(value)) json.WriteString(FactNames.Name((Fact)i), JsonOutput.WellFormed(ReasonOf(value)));
        }

        json.WriteEndObject();
        WriteAllergens(json, profile.Allergens, profiles.Book.Settings);
        json.WriteEndObject();
    }

    private static void WriteAllergens(Utf8JsonWriter json, AllergenProfile allergens, Settings settings)
    {
        json.WriteStartObject("allergens");
        WriteTexts(json, "contains", allergens.Contained(settings));
        WriteTexts(json, "mayContain", allergens.Possible(settings));
        WriteTexts(json, "notKnownOf", NotKnownOf(allergens));
        json.WriteStartArray("origins");
        foreach (var origin in allergens.Origins)
        {
            json.WriteStartObject();
            json.WriteString("allergen", JsonOutput.WellFormed(origin.Token));
            json.WriteBoolean("certain", origin.Certain);
            WriteTexts(json, "through", origin.Through);
            WriteTexts(json, "exemptIn", origin.ExemptIn);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteIngredient(Utf8JsonWriter json, string id, Ingredient ingredient)
    {
        json.WriteStartObject();
        json.WriteString("id", JsonOutput.WellFormed(id));
        json.WriteString("kind", "ingredient");
        json.WriteString("file", JsonOutput.WellFormed(ingredient.Source.Path));
        json.WriteGiven("name", ingredient.Name.Or(""));
        json.WriteGiven("ingredientKind", ingredient.IngredientKind.OrNone().Id);
        json.WriteGiven("like", ingredient.Like.Or(""));
        json.WriteString("per", BasisOf(ingredient));
        json.WriteStartObject("values");
        foreach (var pair in ingredient.Values.OrderBy(v => v.Key, StringComparer.Ordinal))
        {
            var (scale, unit) = UnitOf(pair.Value.Dimension);
            json.WriteStartObject(JsonOutput.WellFormed(pair.Key));
            json.WriteFinite("value", pair.Value.Typical * scale);
            json.WriteFinite("low", pair.Value.Low * scale);
            json.WriteFinite("high", pair.Value.High * scale);
            json.WriteString("unit", unit);
            json.WriteString("mark", ReportWords.Of(pair.Value.Mark));
            json.WriteGiven("source", pair.Value.Source);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("open");
        foreach (var pair in ingredient.Open.OrderBy(v => v.Key, StringComparer.Ordinal))
            json.WriteString(JsonOutput.WellFormed(pair.Key), JsonOutput.WellFormed(pair.Value));
        if (ingredient.Allergens is not { SaysWhatItContains: true }) json.WriteString("allergens", "no statement of allergens is given");
        json.WriteEndObject();
        if (ingredient.Allergens is { } allergens)
        {
            json.WriteStartObject("allergens");
            WriteTexts(json, "contains", allergens.Contains);
            WriteTexts(json, "mayContain", allergens.MayContain);
            json.WriteStartArray("exempt");
            foreach (var exemption in allergens.Exempt)
            {
                json.WriteStartObject();
                json.WriteString("allergen", JsonOutput.WellFormed(exemption.Allergen));
                WriteTexts(json, "in", exemption.In);
                json.WriteGiven("because", exemption.Because);
                json.WriteGiven("source", exemption.Source);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("mark", ReportWords.Of(allergens.Mark));
            json.WriteGiven("source", allergens.Source);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts) json.WriteStringValue(JsonOutput.WellFormed(text));
        json.WriteEndArray();
    }

    private static void WriteRecipe(TextTable text, Recipe recipe, Verdicts verdicts, DisplayUnits units)
    {
        var profiles = verdicts.Profiles;
        var profile = profiles.Of(recipe);
        text.Heading($"{recipe.Name.Or(recipe.Id)} ({ReportWords.Of(recipe.Kind)} {recipe.Id})");
        text.Wrapped(recipe.Source.Path, "  ", "  ");
        var verdict = verdicts.Of(recipe);
        if (verdict.Answer == Readiness.No)
            text.Wrapped(
                $"{(verdict.IsForbidden ? LabelPage.DoNotUse : "Put right first, see check")}: "
                    + $"{Verdict.RulesOf(verdict.Forbidding.Concat(verdict.Shortening))}.",
                "  ",
                "  ");
        string basis = recipe is Drink
            ? "Contents as served; alcohol and energy a serve"
            : profile.IsSolid ? "Contents per 100 g, as made" : "Contents as made; alcohol and energy per 100 mL";
        text.Wrapped(basis + ". The range holds about 95 %.", "  ", "  ");
        var open = new List<(string Label, string Reason)>();
        for (int i = 0; i < FactNames.Count; i++)
        {
            var fact = (Fact)i;
            var value = ValueOf(fact, profile, verdicts);
            if (!IsShown(value))
            {
                if (IsMeant(fact, recipe) && (fact != Fact.Cost || !profiles.Prices.IsEmpty)) open.Add((LabelOf(fact), ReasonOf(value)));
                continue;
            }

            string unit = FactUnits.Words(fact, profile.IsSolid, profiles.Book.Settings);
            string range = units.Ends(value.Value, value.Low, value.High, unit, " to ");
            string from = value.From is "computed" or "" ? "" : $"  ({value.From})";
            text.Row(LabelOf(fact), LabelColumns, units.With(value.Value, unit), ValueColumns, range + from);
        }

        foreach (var (label, reason) in open) text.Row(label, LabelColumns, "open: " + reason);
        if (StandIn.Of(profile, profiles) is { } pair) text.Row("stands in", LabelColumns, StandInWords.Of(pair));
        var settings = profiles.Book.Settings;
        var allergens = profile.Allergens;
        text.Row("allergens", LabelColumns, WithOrigins(allergens, allergens.Contained(settings), certain: true, "none known of"));
        var possible = allergens.Possible(settings);
        if (possible.Count > 0) text.Row("may contain", LabelColumns, WithOrigins(allergens, possible, certain: false, ""));
        var notKnown = NotKnownOf(allergens);
        if (notKnown.Count > 0) text.Row("allergens not known of", LabelColumns, Say.List(notKnown));
    }

    private static void WriteIngredient(TextTable text, Item item, Ingredient ingredient, DisplayUnits units)
    {
        text.Heading($"{ingredient.Name.Or(item.Id)} (ingredient {item.Id})");
        text.Wrapped(item.IsBuiltIn ? "In the built-in catalogue" : ingredient.Source.Path, "  ", "  ");
        text.Wrapped($"Contents per {BasisOf(ingredient)}. The range holds about 95 %.", "  ", "  ");
        foreach (var pair in ingredient.Values.OrderBy(v => v.Key, StringComparer.Ordinal))
        {
            var value = pair.Value;
            var (scale, ucum) = UnitOf(value.Dimension);
            string unit = WordOf(ucum);
            text.Row(
                pair.Key, LabelColumns, units.With(value.Typical * scale, unit), ValueColumns,
                units.Ends(value.Typical * scale, value.Low * scale, value.High * scale, unit, " to "));
            text.Wrapped($"{ReportWords.Of(value.Mark)}{(value.Source is null ? "" : ": " + value.Source)}", "      ", "      ");
        }

        foreach (var pair in ingredient.Open.OrderBy(v => v.Key, StringComparer.Ordinal)) text.Row(pair.Key, LabelColumns, "open: " + pair.Value);
        if (ingredient.Allergens is not { SaysWhatItContains: true } allergens)
        {
            text.Row("allergens", LabelColumns, "not known");
            return;
        }

        text.Row("allergens", LabelColumns, allergens.Contains.Count == 0 ? "none known of" : Say.List(allergens.Contains));
        if (allergens.MayContain.Count > 0) text.Row("may contain", LabelColumns, Say.List(allergens.MayContain));
        foreach (var exemption in allergens.Exempt)
            text.Wrapped(
                $"{exemption.Allergen} is exempt in "
                    + $"{Say.List(exemption.In)}{(exemption.Because is null ? "" : ": " + exemption.Because)}"
                    + $"{(exemption.Source is null ? "" : $" ({exemption.Source})")}",
                "      ",
                "      ");
        text.Wrapped($"{ReportWords.Of(allergens.Mark)}{(allergens.Source is null ? "" : ": " + allergens.Source)}", "      ", "      ");
    }

    internal static string WithOrigins(AllergenProfile allergens, IReadOnlyList<string> tokens, bool certain, string none)
    {
        if (tokens.Count == 0) return none;
        return string.Join("; ", tokens.Select(token =>
        {
            var ways = allergens.Origins
                .Where(o => o.Token == token && o.Certain == certain)
                .Select(o => string.Join(" > ", o.Through)).Distinct().ToList();
            return $"{token} (from {Say.List(ways)})";
        }));
    }

    internal static List<string> NotKnownOf(AllergenProfile allergens) =>
        [.. allergens.Unknown.Select(u => u.Through[u.Through.Count - 1]).Distinct().OrderBy(id => id, StringComparer.Ordinal)];

    /// <summary>Whether a fact has a finite value: a model that runs out of its range must not print as a number.</summary>
    internal static bool IsShown(FactValue value) => value.IsKnown && !double.IsNaN(value.Value) && !double.IsInfinity(value.Value);

    internal static string ReasonOf(FactValue value) => value.OpenBecause ?? "it cannot be worked out";

    /// <summary>Whether a fact belongs to this kind of recipe: an open fact that could never be had says nothing to a reader.</summary>
    internal static bool IsMeant(Fact fact, Recipe recipe) => recipe is Drink
        ? fact is not Fact.Life
        : fact is not (Fact.MixAbv or Fact.MixSugar or Fact.MixAcid or Fact.MixPh or Fact.Dilution or Fact.ServedVolume or Fact.Temperature);

    internal static string BasisOf(Ingredient ingredient) => ingredient.PerHundredMillilitres.Or(false) ? "100 mL" : "100 g";

    /// <summary>The unit in UCUM, and the factor from the base unit to it.</summary>
    internal static (double Scale, string Unit) UnitOf(Dimension dimension) => dimension switch
    {
        Dimension.Volume => (1, "mL"),
        Dimension.Mass => (1, "g"),
        Dimension.Temperature => (1, "Cel"),
        Dimension.Duration => (1.0 / 86400, "d"),
        Dimension.PercentByMass => (1, "%{w/w}"),
        Dimension.PercentMassInVolume => (1, "g/dL"),
        Dimension.PercentByVolume or Dimension.Proof => (1, "%{vol}"),
        Dimension.PercentOfUnknownBasis => (1, "%"),
        Dimension.Density => (1, "g/mL"),
        Dimension.Pressure => (1, "bar"),
        Dimension.Energy => (1, "kcal"),
        Dimension.Brix => (1, "%{brix}"),
        _ => (1, "1"),
    };

    internal static string WordOf(string ucum) => ucum switch
    {
        "Cel" => "°C",
        "%{w/w}" => "% w/w",
        "%{vol}" => "% vol",
        "%{brix}" => "°Bx",
        "g/dL" => "g/100 mL",
        "1" => "",
        _ => ucum,
    };

    internal static string LabelOf(Fact fact) => fact switch
    {
        Fact.MixVolume => "volume before ice",
        Fact.Dilution => "dilution",
        Fact.ServedVolume => "volume in the glass",
        Fact.Abv => "strength",
        Fact.Sugar => "sugar",
        Fact.Brix => "dissolved solids (Brix)",
        Fact.Acid => "acid, as citric",
        Fact.AcidAnalysed => "acids, sum of those present",
        Fact.SugarAcidRatio => "sugar to acid",
        Fact.Ph => "pH",
        Fact.WaterActivity => "water activity",
        Fact.Density => "density",
        Fact.Salt => "salt",
        Fact.Temperature => "temperature served",
        Fact.FreezingPoint => "first ice at",
        Fact.Alcohol => "alcohol",
        Fact.Energy => "energy",
        Fact.Life => "keeps, from made",
        Fact.MixAbv => "strength before dilution",
        Fact.MixSugar => "sugar before dilution",
        Fact.MixAcid => "acid before dilution",
        Fact.MixPh => "pH before dilution",
        Fact.Cost => "cost",
        _ => FactNames.Name(fact),
    };
}
