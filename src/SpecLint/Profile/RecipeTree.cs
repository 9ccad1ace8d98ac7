using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>An ingredient in the tree of a recipe.</summary>
/// <param name="Part">The line of the recipe that brings it.</param>
/// <param name="Ingredient">The ingredient, with what it inherits.</param>
/// <param name="Below">Ids from the part of the line's preparation to the ingredient; empty where the line is the ingredient.</param>
internal readonly record struct TreeLeaf(Part Part, Ingredient Ingredient, FixedList<string> Below)
{
    /// <summary>Ids from the line's item to the ingredient, both included.</summary>
    public FixedList<string> Through => [Part.Item!.Id, .. Below];
}

/// <summary>
/// Walks the tree of a recipe down to what is bought. A preparation that comes in by many ways is gone through once: the ways
/// double with each level, the preparations do not.
/// </summary>
internal static class RecipeTree
{
    /// <summary>The ingredients that each line brings, in the order of the lines; each once a line, with the first way by which it comes.</summary>
    public static FixedList<TreeLeaf> Of(RecipeProfile profile) => profile.Tree;

    /// <summary>The same, worked out.</summary>
    internal static FixedList<TreeLeaf> LeavesByLine(RecipeProfile profile)
    {
        int count = 0;
        foreach (var part in profile.Parts) count += LeavesIn(part, profile);
        var leaves = new TreeLeaf[count];
        int at = 0;
        foreach (var part in profile.Parts)
        {
            switch (part.Item?.File)
            {
                case Ingredient ingredient:
                    leaves[at++] = new TreeLeaf(part, part.Material?.Ingredient ?? ingredient, []);
                    break;
                case Recipe recipe when profile.Set.TryBefore(recipe, profile) is { } inner:
                    foreach (var leaf in inner.Leaves) leaves[at++] = new TreeLeaf(part, leaf.Ingredient, leaf.Through);
                    break;
            }
        }

        return leaves;
    }

    private static int LeavesIn(Part part, RecipeProfile profile) => part.Item?.File switch
    {
        Ingredient => 1,
        Recipe recipe => profile.Set.TryBefore(recipe, profile)?.Leaves.Count ?? 0,
        _ => 0,
    };

    /// <summary>
    /// Whether a part is such, or something that its preparation is made of: a layer that holds nothing else hides neither what kind
    /// of thing it is nor what may be in it.
    /// </summary>
    public static bool AnyIn(Part part, RecipeProfile profile, Func<Material, bool> isSuch)
    {
        if (part.Material is not { } material) return false;
        if (part.Item?.File is not Recipe recipe || profile.Set.TryBefore(recipe, profile) is not { } inner) return isSuch(material);
        foreach (var (ingredient, _) in inner.Leaves)
        {
            if (profile.Set.MaterialOf(ingredient.Id) is { } leaf && isSuch(leaf)) return true;
        }

        return isSuch(material);
    }

    /// <summary>The first ingredient of the tree that is such.</summary>
    public static TreeLeaf? First(RecipeProfile profile, Func<Ingredient, bool> isSuch)
    {
        foreach (var leaf in Of(profile))
        {
            if (isSuch(leaf.Ingredient)) return leaf;
        }

        return null;
    }

    /// <summary>The first ingredient that is such and comes in by a way on which nothing stops it.</summary>
    /// <param name="profile">The recipe.</param>
    /// <param name="isSuch">Which ingredients.</param>
    /// <param name="stops">The preparations that stop it: heat in them has changed what they hold.</param>
    public static TreeLeaf? First(RecipeProfile profile, Func<Ingredient, bool> isSuch, Func<Recipe, bool> stops)
    {
        var seen = new HashSet<RecipeProfile>();
        var way = new List<string>();
        foreach (var part in profile.Parts)
        {
            way.Clear();
            if (Find(profile, part) is { } ingredient) return new TreeLeaf(part, ingredient, [.. way.Skip(1)]);
        }

        return null;

        Ingredient? Find(RecipeProfile whole, Part part)
        {
            if (part.Item is null) return null;
            way.Add(part.Item.Id);
            if (part.Item.File is Ingredient leaf)
            {
                var flat = part.Material?.Ingredient ?? leaf;
                if (isSuch(flat)) return flat;
            }
            else if (part.Item.File is Recipe recipe && !stops(recipe) && whole.Set.TryBefore(recipe, whole) is { } inner && seen.Add(inner))
            {
                foreach (var below in inner.Parts)
                {
                    if (Find(inner, below) is { } found) return found;
                }
            }

            way.RemoveAt(way.Count - 1);
            return null;
        }
    }

    /// <summary>What a recipe is made of in the end: each ingredient once, in the order of the lines, with the first way to it.</summary>
    internal static FixedList<(Ingredient Ingredient, FixedList<string> Through)> LeavesOf(RecipeProfile profile)
    {
        var leaves = new List<(Ingredient, FixedList<string>)>(profile.Parts.Count);
        var known = new HashSet<Ingredient>();
        foreach (var leaf in Of(profile))
        {
            if (known.Add(leaf.Ingredient)) leaves.Add((leaf.Ingredient, leaf.Through));
        }

        return FixedList.Of(leaves);
    }
}
