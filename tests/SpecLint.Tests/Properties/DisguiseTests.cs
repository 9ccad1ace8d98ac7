using System.Text.Json.Nodes;
using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Disguise: an own file that is <c>like</c> an item, a preparation that holds it alone, a line in the garnish instead of the mix
/// never hide an allergen, or a hazard of the rules of hazards.
/// </summary>
public sealed class DisguiseTests
{
    [Fact]
    public void No_disguise_hides_an_allergen_or_a_hazard() => PropertyRun.Holds(PropertyRun.Cases(1200), Disguise, one =>
    {
        var hidden = one.Book.Copy();
        if (!one.Step!.Apply(hidden)) return null;
        CheckResult open = one.Book.Check(), dressed = hidden.Check();
        foreach (var recipe in open.Book.Recipes)
        {
            if (dressed.Book.Recipes.FirstOrDefault(r => r.Source.Path == recipe.Source.Path) is not { } same) continue;
            var had = AllergensOf(open, recipe);
            var has = AllergensOf(dressed, same);
            if (had.Except(has).FirstOrDefault() is { } lost) return $"{recipe.Id} holds {lost}, and in disguise it does not";
        }

        HarmOf before = new(open), after = new(dressed);
        foreach (string rule in before.All.Select(f => f.Of.Rule).Distinct().Order(StringComparer.Ordinal))
        {
            if (rule[2] == '6' && after.HighestOf(rule) < before.HighestOf(rule)) return $"{rule} had {before.HighestOf(rule)} and in disguise has {after.HighestOf(rule)}";
        }

        return null;
    });

    private static HashSet<string> AllergensOf(CheckResult result, Recipe recipe)
    {
        var allergens = result.Profiles.Of(recipe).Allergens;
        return [.. allergens.Contained(result.Book.Settings), .. allergens.Possible(result.Book.Settings)];
    }

    private static PropertyStep? Disguise(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(random, [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal) || p.EndsWith(".drink.json", StringComparison.Ordinal))]);
        if (path.Length == 0) return null;
        int line = random.Next(8);
        return random.Next(2) switch
        {
            0 => PropertySteps.Wrap(path, line),
            _ => Like(path, line),
        };
    }

    private static PropertyStep Like(string path, int line) => new($"{path}: line {line + 1} by an own file", book =>
    {
        if (book[path]?["ingredients"] is not JsonArray lines || lines.Count == 0 || lines[line % lines.Count] is not JsonObject one) return false;
        if (one["item"] is not JsonValue item || !item.TryGetValue(out string? id) || book[$"{id}.prep.json"] is not null || BuiltInCatalogue.FindItem(id) is null && book[$"{id}.ingredient.json"] is null) return false;
        book.Put("house-thing.ingredient.json", new JsonObject { ["name"] = "House thing", ["like"] = id });
        one["item"] = "house-thing";
        return true;
    });
}
