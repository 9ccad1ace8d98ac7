using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>What one product in a recipe may contain, and no list of the recipe says.</summary>
/// <param name="Leaf">Id of the product.</param>
/// <param name="IsOwn">Whether the bar wrote it down itself, from the label.</param>
/// <param name="IsBottle">Whether it is a liqueur or bitters, of which makers differ less than of a food.</param>
/// <param name="Found">The allergens, in the order of the lines.</param>
internal sealed record PossibleAllergens(string Leaf, bool IsOwn, bool IsBottle, List<FoundAllergen> Found)
{
    /// <summary>
    /// The products whose possible allergens are worth a word, each once. The catalogue's "may" speaks of a type, of which the
    /// bar's bottle is one. It is asked of compound products, whose makers differ in what they put in. Of the drinks that
    /// the trade knows by type (wine fined with egg or milk, a bitter liqueur of secret herbs) it stays in the profile alone,
    /// and so do sulphites, which are listed from an amount on; unless the product is named after the allergen.
    /// </summary>
    public static List<PossibleAllergens> Of(RecipeContext context, FixedList<Reading.Given<string>> declared)
    {
        var all = new List<PossibleAllergens>();
        foreach (var one in context.Profile.Allergens.Found)
        {
            if (one.Presence != Presence.Possible
                || AllergenTable.Covers(declared, one.Token)
                || AllergenWords.SaysMay(context.Recipe, one.Token))
                continue;
            string leaf = one.Origin.Through[one.Origin.Through.Count - 1];
            var ingredient = context.Profiles.MaterialOf(leaf)?.Ingredient;
            bool own = context.Book.Resolve(leaf) is { IsBuiltIn: false } && ingredient?.Allergens?.Mark == Mark.House;
            bool named = leaf.StartsWith(one.Token, StringComparison.Ordinal);
            var kind = ingredient?.IngredientKind.OrNone() ?? ItemKind.None;
            if (!own && !named && (one.Token == "sulphites" || !IsCompound(kind, ingredient))) continue;
            int known = all.FindIndex(p => p.Leaf == leaf);
            if (known >= 0) all[known].Found.Add(one);
            else all.Add(new PossibleAllergens(leaf, own, !own && !named && (kind.IsLiqueur || kind.IsBitters), [one]));
        }

        return all;
    }

    /// <summary>Whether a kind of product is put together by its maker from things that its name does not tell.</summary>
    private static bool IsCompound(ItemKind kind, Ingredient? ingredient)
    {
        // Of liqueurs and bitters those built on dairy, chocolate or nuts; the herbs of the others are the maker's secret.
        if (kind.IsLiqueur || kind.IsBitters)
            return ingredient?.Allergens is { } statement && (HoldsRich(statement.Contains) || HoldsRich(statement.MayContain));
        return !kind.GivesStrength;
    }

    private static bool HoldsRich(FixedList<string> tokens)
    {
        foreach (string token in tokens)
        {
            if (token is "milk" or "egg" or "soybean" or "peanut" or "sesame" or "almond" or "hazelnut" or "pistachio") return true;
        }

        return false;
    }
}
