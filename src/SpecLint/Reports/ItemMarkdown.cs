using System.Text;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Science;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>What an item comes to, as Markdown (CommonMark with the tables of GitHub) for an editor.</summary>
public static class ItemMarkdown
{
    /// <summary>An item: its name, what it is, its figures, its allergens, and what forbids its use.</summary>
    /// <param name="item">The item.</param>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="verdicts">The verdicts of the checked book; <see langword="null"/> while it is being checked.</param>
    /// <param name="units">Units of volume and temperature.</param>
    public static string Of(Item item, ProfileSet profiles, Verdicts? verdicts, DisplayUnits units)
    {
        var text = new StringBuilder();
        if (item.ByProduct is not null)
        {
            Heading(text, item.Id, "by-product", item.Id);
            text.Append($"What is left of making {Escape(item.File.Name.Or(item.File.Id))} (`{Code(item.File.Id)}`).\n");
        }
        else if (item.File is Recipe recipe)
        {
            Heading(text, recipe.Name.Or(recipe.Id), recipe is Drink ? "drink" : "preparation", recipe.Id);
            Add(text, recipe, profiles, verdicts, units);
        }
        else if (item.File is Ingredient own)
        {
            Heading(text, own.Name.Or(item.Id), item.IsBuiltIn ? "in the built-in catalogue" : "ingredient", item.Id);
            Add(text, ProfileReport.Inherit(own, item, profiles), units);
        }

        return text.ToString();
    }

    /// <summary>A line of a recipe: how much it is, and what is in it.</summary>
    public static string Amount(Part part)
    {
        var says = new List<string>();
        if (!double.IsNaN(part.Millilitres))
            says.Add($"{DisplayUnits.Metric.Volume(part.Millilitres)} ({DisplayUnits.UnitedStates.Volume(part.Millilitres)})");
        if (part.IsWeighed) says.Add(Say.Range(part.Grams.Typical, part.Grams.Low, part.Grams.High, "g"));
        if (says.Count == 0) return "How much it weighs is not known.\n";
        string text = string.Join("; ", says) + "\n";
        if (!part.IsWeighed || part.Material is not { } material) return text;
        var held = new List<string>();
        Hold("alcohol", material.Of(Component.Ethanol), Unknowns.Strength);
        Hold("sugar", Solving.SugarOf(material.PerGram), Unknowns.Sugar);
        Hold("acid, as citric", Solving.Titratable(material.PerGram), Unknowns.Acid);
        Hold("salt", Solving.SaltOf(material.PerGram), Unknowns.None);
        return held.Count == 0 ? text : $"{text}\nIn it: {string.Join(", ", held)}.\n";

        void Hold(string what, double share, Unknowns needs)
        {
            const double Least = 0.05;
            if ((material.Unknown & (needs | Unknowns.Composition)) != 0) return;
            double grams = share * part.Grams.Typical;
            if (grams >= Least) held.Add($"{Say.Number(grams, 1)} g {what}");
        }
    }

    /// <summary>A lot in stock: what it is of, and its last day.</summary>
    public static string Lot(Lot lot, ProfileSet profiles)
    {
        string name = lot.Item.IsGiven
            ? profiles.Book.Resolve(lot.Item.Value)?.File.Name.Or(lot.Item.Value) ?? lot.Item.Value
            : "an item that is not named";
        var life = LotLife.Of(lot, profiles);
        string last = life.Last is { } end ? $"its last day is {end.Day} ({Escape(end.Why)})" : "nothing sets its last day";
        return $"**Lot of {Escape(name)}**{(lot.LotCode.IsGiven ? $" {Escape(lot.LotCode.Value)}" : "")}: {last}.\n\n";
    }

    /// <summary>Text of a file so that it is nothing but text in Markdown.</summary>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (char c in DisplayText.Escape(text))
        {
            if (c is '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '<' or '>' or '(' or ')' or '#' or '+' or '!' or '|' or '~'
                or '&')
                escaped.Append('\\');
            escaped.Append(c is '\n' or '\r' ? ' ' : c);
        }

        return escaped.ToString();
    }

    private static void Heading(StringBuilder text, string name, string what, string id) =>
        text.Append($"**{Escape(name)}** ({what}, `{Code(id)}`)\n\n");

    private static string Code(string text) => DisplayText.Escape(text).Replace('`', '\'');

    private static void Add(StringBuilder text, Recipe recipe, ProfileSet profiles, Verdicts? verdicts, DisplayUnits units)
    {
        var profile = profiles.Of(recipe);
        if (verdicts is null) text.Append("The book is still being checked.\n\n");
        else if (verdicts.Of(recipe).Forbidding is { Count: > 0 } forbidding)
            text.Append($"**Do not use it**: {string.Join(", ", forbidding.Select(f => f.Rule.Id).Distinct())}. "
                + $"{Escape(forbidding[0].Message)}\n\n");
        text.Append("| | | 95 % of cases |\n|---|---|---|\n");
        for (int i = 0; i < FactNames.Count; i++)
        {
            var fact = (Fact)i;
            if (fact == Fact.Life && verdicts is null) continue;
            var value = verdicts is null ? profile.Get(fact) : ProfileReport.ValueOf(fact, profile, verdicts);
            if (!ProfileReport.IsShown(value)) continue;
            string unit = Say.Unit(fact, profile.IsSolid);
            string from = value.From is "computed" or "" ? "" : $" ({Escape(value.From)})";
            text.Append($"| {ProfileReport.LabelOf(fact)} | {units.With(value.Value, unit)} | "
                + $"{units.Ends(value.Value, value.Low, value.High, unit)}{from} |\n");
        }

        var allergens = profile.Allergens;
        var contained = allergens.Contained(profiles.Book.Settings);
        text.Append("\nAllergens: "
            + $"{(contained.Count == 0 ? "none known of" : Escape(ProfileReport.WithOrigins(allergens, contained, certain: true, "")))}");
        var possible = allergens.Possible(profiles.Book.Settings);
        if (possible.Count > 0) text.Append($"; may contain {Escape(Say.List(possible))}");
        var notKnown = ProfileReport.NotKnownOf(allergens);
        if (notKnown.Count > 0) text.Append($"; not known of {Escape(Say.List(notKnown))}");
        text.Append(".\n");
    }

    private static void Add(StringBuilder text, Ingredient ingredient, DisplayUnits units)
    {
        if (ingredient.IngredientKind.IsGiven)
            text.Append($"{Escape(ingredient.IngredientKind.Value.Id)}; contents per {ProfileReport.BasisOf(ingredient)}\n\n");
        text.Append("| | | 95 % of cases | source |\n|---|---|---|---|\n");
        foreach (var pair in ingredient.Values.OrderBy(v => v.Key, StringComparer.Ordinal))
        {
            var value = pair.Value;
            var (scale, ucum) = ProfileReport.UnitOf(value.Dimension);
            string unit = ProfileReport.WordOf(ucum);
            text.Append($"| {Escape(pair.Key)} | {units.With(value.Typical * scale, unit)} | "
                + $"{units.Ends(value.Typical * scale, value.Low * scale, value.High * scale, unit)} | "
                + $"{Escape(ReportWords.Of(value.Mark))}{(value.Source is null ? "" : ": " + Escape(value.Source))} |\n");
        }

        string allergens = ingredient.Allergens is not { SaysWhatItContains: true } statement ? "not known"
            : statement.Contains.Count == 0 ? "none known of" : Escape(Say.List(statement.Contains));
        text.Append($"\nAllergens: {allergens}.\n");
        if (ingredient.Aliases.Count > 0)
            text.Append($"\nAlso called {Escape(Say.List([.. ingredient.Aliases.Where(a => a.IsGiven).Select(a => a.Value)]))}.\n");
    }
}
