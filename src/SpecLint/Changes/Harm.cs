using SpecLint.Book;

namespace SpecLint.Changes;

/// <summary>An allergen or a hazard that a recipe has after a change and had not before.</summary>
/// <param name="Recipe">Id of the recipe.</param>
/// <param name="What">The allergen's token or the hazard's id.</param>
/// <param name="IsAllergen">Whether it is an allergen.</param>
internal sealed record Harm(string Recipe, string What, bool IsAllergen)
{
    /// <summary>What recipes have after a change and had not before, through all their preparations.</summary>
    public static List<Harm> Added(CheckResult before, CheckResult after) => Added(Of(before, static _ => true), after, static _ => true);

    /// <summary>What recipes have, by id.</summary>
    /// <param name="result">The check of the book.</param>
    /// <param name="isMeant">The recipes that are looked at.</param>
    public static Dictionary<string, HashSet<(string What, bool IsAllergen)>> Of(CheckResult result, Func<Recipe, bool> isMeant)
    {
        var known = new Dictionary<string, HashSet<(string, bool)>>(StringComparer.Ordinal);
        foreach (var recipe in result.Book.Recipes.Where(isMeant))
        {
            if (!known.ContainsKey(recipe.Id)) known.Add(recipe.Id, [.. Of(result, recipe)]);
        }

        return known;
    }

    /// <summary>What recipes have after a change and had not before.</summary>
    /// <param name="known">What they had; those without an entry are new.</param>
    /// <param name="after">The check after.</param>
    /// <param name="isMeant">The recipes that are looked at.</param>
    public static List<Harm> Added(Dictionary<string, HashSet<(string What, bool IsAllergen)>> known, CheckResult after, Func<Recipe, bool> isMeant)
    {
        var added = new List<Harm>();
        foreach (var recipe in after.Book.Recipes.Where(isMeant))
        {
            if (!known.TryGetValue(recipe.Id, out var had)) continue;
            foreach (var (what, isAllergen) in Of(after, recipe))
            {
                if (had.Add((what, isAllergen))) added.Add(new Harm(recipe.Id, what, isAllergen));
            }
        }

        return added;
    }

    /// <inheritdoc/>
    public override string ToString() => $"the {(IsAllergen ? "allergen" : "hazard")} {What} in {Recipe}";

    private static IEnumerable<(string What, bool IsAllergen)> Of(CheckResult result, Recipe recipe)
    {
        var profile = result.Profiles.Of(recipe);
        foreach (var origin in profile.Allergens.Origins) yield return (origin.Token, true);
        foreach (var load in profile.HazardLoads)
        {
            if (!load.Hazard.IsAdditive) yield return (load.Hazard.Id, false);
        }
    }
}
