using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>An ingredient in the tree of a recipe.</summary>
/// <param name="Part">The line of the recipe that brings it.</param>
/// <param name="Ingredient">The ingredient, with what it inherits.</param>
/// <param name="Through">Ids from the line's item to the ingredient, both included.</param>
internal readonly record struct TreeLeaf(Part Part, Ingredient Ingredient, FixedList<string> Through);

/// <summary>Walks the tree of a recipe down to what is bought.</summary>
internal static class RecipeTree
{
    /// <summary>Every ingredient in the tree, in the order of the lines; one that comes in twice stands twice.</summary>
    public static List<TreeLeaf> Of(RecipeProfile profile)
    {
        var leaves = new List<TreeLeaf>(profile.Parts.Count);
        foreach (var part in profile.Parts) Add(leaves, profile, part, part, []);
        return leaves;
    }

    /// <summary>Whether any ingredient of the tree is such.</summary>
    public static TreeLeaf? First(RecipeProfile profile, Func<Ingredient, bool> isSuch)
    {
        foreach (var leaf in Of(profile))
        {
            if (isSuch(leaf.Ingredient)) return leaf;
        }

        return null;
    }

    private static void Add(List<TreeLeaf> leaves, RecipeProfile whole, Part part, Part top, FixedList<string> through)
    {
        if (part.Item is null) return;
        FixedList<string> way = [.. through, part.Item.Id];
        switch (part.Item.File)
        {
            case Ingredient ingredient:
                leaves.Add(new TreeLeaf(top, part.Material?.Ingredient ?? ingredient, way));
                break;
            case Recipe recipe when whole.Set.TryBefore(recipe, whole) is { } inner:
                foreach (var below in inner.Parts) Add(leaves, inner, below, top, way);
                break;
        }
    }
}
