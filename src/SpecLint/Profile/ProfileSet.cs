using System.Collections.Concurrent;
using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>The profiles of all recipes of a book.</summary>
public sealed class ProfileSet
{
    private readonly LinkedBook book;
    private readonly Dictionary<Recipe, RecipeProfile> profiles = [];
    private readonly ConcurrentDictionary<string, Material> materials = new(StringComparer.Ordinal);

    private ProfileSet(LinkedBook book) => this.book = book;

    /// <summary>The book.</summary>
    public LinkedBook Book => book;

    /// <summary>The profile of a recipe of the book.</summary>
    public RecipeProfile Of(Recipe recipe) => profiles[recipe];

    /// <summary>The material of an item; <see langword="null"/> where the id resolves to nothing.</summary>
    public Material? MaterialOf(string id)
    {
        if (materials.TryGetValue(id, out var known)) return known;
        var item = book.Resolve(id);
        return item is null ? null : MaterialOf(item);
    }

    /// <summary>
    /// The profile of a part, if it was made before that of the whole. In a cycle one member is without: that ends every
    /// walk through the tree.
    /// </summary>
    internal RecipeProfile? TryBefore(Recipe part, RecipeProfile whole) =>
        profiles.TryGetValue(part, out var profile) && profile.Wave < whole.Wave ? profile : null;

    internal Material MaterialOf(Item item)
    {
        if (materials.TryGetValue(item.Id, out var known)) return known;
        var made = item.File switch
        {
            Ingredient when item.IsBuiltIn => BuiltInMaterials.Of(item),
            Ingredient own => MaterialBuilder.Of(Catalogue.Inheritance.Flatten(own, FindIngredient)),
            Recipe recipe when profiles.TryGetValue(recipe, out var profile) => item.ByProduct is null ? profile.Material : profile.ByProductMaterial(item.ByProduct),
            _ => Nothing(item.Id, "it is part of a cycle"),
        };
        return materials.GetOrAdd(item.Id, made);
    }

    internal static Material Nothing(string id, string because) =>
        new(id, Mix.PureWater, [], 1, MaterialState.Liquid) { Unknown = Unknowns.Composition, UnknownBecause = $"the composition of {id} is not known: {because}" };

    internal static ProfileSet Of(LinkedBook book, int threads)
    {
        var set = new ProfileSet(book);

        // Preparations in waves: each wave uses only those before it, so a wave runs on all threads.
        var depth = new Dictionary<Prep, int>(book.Preps.Count);
        var waves = new List<List<Prep>>();
        foreach (var prep in book.OrderOfUse)
        {
            int level = 0;
            foreach (var line in prep.Ingredients)
            {
                if (line.Item.IsGiven && book.Resolve(line.Item.Value)?.File is Prep part && depth.TryGetValue(part, out int below)) level = Math.Max(level, below + 1);
            }

            depth[prep] = level;
            while (waves.Count <= level) waves.Add([]);
            waves[level].Add(prep);
        }

        for (int w = 0; w < waves.Count; w++)
        {
            var wave = waves[w];
            int level = w;
            var made = new RecipeProfile[wave.Count];
            Workers.For(wave.Count, threads, i => made[i] = new RecipeProfile(wave[i], set, level));
            for (int i = 0; i < made.Length; i++) set.profiles[wave[i]] = made[i];
        }

        var drinks = new RecipeProfile[book.Drinks.Count];
        Workers.For(drinks.Length, threads, i => drinks[i] = new RecipeProfile(book.Drinks[i], set, waves.Count));
        for (int i = 0; i < drinks.Length; i++) set.profiles[book.Drinks[i]] = drinks[i];
        return set;
    }

    private Ingredient? FindIngredient(string id) => book.Resolve(id)?.File as Ingredient;

    /// <summary>Materials of the catalogue, made once a process: they do not hang on the bar.</summary>
    private static class BuiltInMaterials
    {
        private static readonly ConcurrentDictionary<string, Material> Made = new(StringComparer.Ordinal);

        public static Material Of(Item item) => Made.GetOrAdd(item.Id, _ => MaterialBuilder.Of((Ingredient)item.File));
    }
}
