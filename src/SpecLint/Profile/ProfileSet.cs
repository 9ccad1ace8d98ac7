using System.Collections.Concurrent;
using SpecLint.Book;
using SpecLint.Linking;

namespace SpecLint.Profile;

/// <summary>The profiles of all recipes of a book.</summary>
public sealed partial class ProfileSet
{
    /// <summary>
    /// How many preparations may stand one in another. A bar has three or four; what is made through more is taken as not
    /// known (SL9025), so that no book, however deep, costs more than its lines, or more of the stack than there is.
    /// </summary>
    public const int DeepestNesting = 100;

    private readonly LinkedBook book;
    private readonly Dictionary<Prep, RecipeProfile> preps;
    private readonly Dictionary<Drink, int> drinkNumbers;
    private RecipeProfile?[] drinks;
    private (bool IsKnown, long? Key)[] partsKeys;
    private readonly ConcurrentDictionary<string, Material> materials;
    private readonly HashSet<Prep> tooDeep;

    /// <summary>Drinks come after all preparations.</summary>
    private const int WaveOfDrinks = int.MaxValue;

    private PriceBook? prices;

    private ProfileSet(LinkedBook book)
    {
        this.book = book;
        preps = new Dictionary<Prep, RecipeProfile>(book.Preps.Count);
        drinks = new RecipeProfile?[book.Drinks.Count];
        partsKeys = new (bool, long?)[drinks.Length];
        drinkNumbers = new Dictionary<Drink, int>(drinks.Length);
        materials = new ConcurrentDictionary<string, Material>(StringComparer.Ordinal);
        tooDeep = [];
        NumberDrinks();
    }

    /// <summary>The book.</summary>
    public LinkedBook Book => book;

    /// <summary>What the bar pays.</summary>
    public PriceBook Prices
    {
        get
        {
            BookReads.Note(BookReads.AllOf(FileKind.Prices));
            return Volatile.Read(ref prices) ?? Interlocked.CompareExchange(ref prices, new PriceBook(book), null) ?? prices!;
        }
    }

    /// <summary>The profile of a recipe of the book; that of a drink, which no other needs, is made when it is first asked for.</summary>
    public RecipeProfile Of(Recipe recipe)
    {
        BookReads.Note(BookReadKind.Item, recipe.Id);
        if (triedProfile is { } its && ReferenceEquals(its.Recipe, recipe)) return its;
        if (recipe is not Drink drink) return preps[(Prep)recipe];
        int number = drinkNumbers[drink];
        ref var place = ref drinks[number];
        if (Volatile.Read(ref place) is { } known) return known;

        // Two threads may both make it; one of the two is kept.
        var made = new RecipeProfile(drink, this, WaveOfDrinks);
        if (!partsKeys[number].IsKnown) partsKeys[number] = (true, PartsKey.Of(made));
        return Interlocked.CompareExchange(ref place, made, null) ?? made;
    }

    /// <summary>See <see cref="PartsKey"/>: what is held of a drink whose profile is not.</summary>
    internal long? PartsKeyOf(Drink drink)
    {
        BookReads.Note(BookReadKind.Item, drink.Id);
        int number = drinkNumbers[drink];
        if (!partsKeys[number].IsKnown) partsKeys[number] = (true, PartsKey.Of(Of(drink)));
        return partsKeys[number].Key;
    }

    /// <summary>The lines of a drink, resolved and weighed, without the rest of its profile where that is not held.</summary>
    internal FixedList<Part> PartsOf(Drink drink)
    {
        BookReads.Note(BookReadKind.Item, drink.Id);
        return Volatile.Read(ref drinks[drinkNumbers[drink]])?.Parts ?? Weighing.PartsOf(drink, this);
    }

    /// <summary>
    /// The profile of a drink for one check alone: one that is held already, else one that nobody else is given, in a room that the
    /// next one takes over.
    /// </summary>
    internal RecipeProfile Passing(Drink drink, ProfileRoom room)
    {
        BookReads.Note(BookReadKind.Item, drink.Id);
        int number = drinkNumbers[drink];
        if (Volatile.Read(ref drinks[number]) is { } known) return known;
        var made = new RecipeProfile(drink, this, WaveOfDrinks, room);
        if (!partsKeys[number].IsKnown) partsKeys[number] = (true, PartsKey.Of(made));
        return made;
    }

    /// <summary>
    /// Lets go of the profile of a drink that has been checked. No other recipe is made of it, so that hardly anything asks for it
    /// again (a menu, a batch of it); for that it is made anew, and the same.
    /// </summary>
    internal void Forget(Drink drink) => Volatile.Write(ref drinks[drinkNumbers[drink]], null);

    /// <summary>Whether a preparation has a part that is made through more than <see cref="DeepestNesting"/> preparations, and so is not known.</summary>
    public bool IsTooDeep(Prep prep) => tooDeep.Contains(prep);

    /// <summary>The material of an item; <see langword="null"/> where the id resolves to nothing.</summary>
    public Material? MaterialOf(string id)
    {
        var item = book.Resolve(id);
        return item is null ? null : MaterialOf(item);
    }

    /// <summary>
    /// The profile of a part, if it was made before that of the whole. In a cycle one member is without: that ends every
    /// walk through the tree.
    /// </summary>
    internal RecipeProfile? TryBefore(Recipe part, RecipeProfile whole) =>
        part is Prep prep && preps.TryGetValue(prep, out var profile) && profile.Wave < whole.Wave ? profile : null;

    /// <summary>The material of a part of a recipe. A drink is no part: two drinks that name each other would never end.</summary>
    internal Material MaterialOfPart(Item item) => item.File is Drink ? Nothing(item.Id, "it is a drink, not a preparation") : MaterialOf(item);

    internal Material MaterialOf(Item item)
    {
        // Not among the others: an item of the catalogue may have the id of a file of the book that hides it.
        if (item.IsBuiltIn) return BuiltInMaterials.Of(item);
        if (tried is not null && item.File == tried) return triedMaterial ??= MaterialOfTried(item);
        BookReads.Note(BookReadKind.Item, item.Id);
        if (materials.TryGetValue(item.Id, out var known)) return known;
        var made = item.File switch
        {
            Ingredient own => MaterialBuilder.Of(Catalogue.Inheritance.Flatten(own, FindIngredient), isBuiltIn: false),
            Drink drink => Of(drink).Material,
            Prep prep when preps.TryGetValue(prep, out var profile) => item.ByProduct is null ? profile.Material : profile.ByProductMaterial(item.ByProduct),
            Prep deep when tooDeep.Contains(deep) || !book.HasCycles =>
                Nothing(item.Id, $"it is made through more than {DeepestNesting} preparations, one in another"),
            _ => Nothing(item.Id, "it is part of a cycle"),
        };
        return materials.GetOrAdd(item.Id, made);
    }

    internal static Material Nothing(string id, string because) =>
        new(id, Mix.OnlyWater(), [], 1, MaterialState.Liquid)
        {
            Unknown = Unknowns.Composition,
            UnknownBecause = $"the composition of {id} is not known: {because}",
        };

    internal static ProfileSet Of(LinkedBook book, int threads)
    {
        var set = new ProfileSet(book);
        set.MakePreps(threads);
        return set;
    }

    /// <summary>
    /// Follows a book that changed: what is touched by the change is forgotten, and made anew as from a book read afresh.
    /// </summary>
    /// <param name="changes">The files that changed.</param>
    /// <param name="touched">Recipes and ingredients that changed or are made of what changed, as they are now.</param>
    /// <param name="ids">Their ids, those of before the change included.</param>
    /// <param name="threads">Number of threads; 0 takes one a processor.</param>
    internal void Renew(IReadOnlyCollection<FileChange> changes, IReadOnlyCollection<BookFile> touched, IEnumerable<string> ids, int threads)
    {
        foreach (string id in ids) materials.TryRemove(id, out _);
        if (changes.Any(c => (c.Old ?? c.New) is PriceList)) prices = null;
        foreach (var change in changes)
        {
            if (change.Old is Prep prep) preps.Remove(prep);
        }

        if (changes.Any(c => (c.Old is Drink || c.New is Drink) && !c.IsInPlace))
        {
            var known = drinkNumbers.ToDictionary(d => d.Key, d => (drinks[d.Value], partsKeys[d.Value]));
            drinks = new RecipeProfile?[book.Drinks.Count];
            partsKeys = new (bool, long?)[drinks.Length];
            NumberDrinks();
            foreach (var drink in drinkNumbers)
            {
                if (known.TryGetValue(drink.Key, out var its)) (drinks[drink.Value], partsKeys[drink.Value]) = its;
            }
        }
        else
        {
            foreach (var change in changes)
            {
                if (change.Old is not Drink old) continue;
                drinkNumbers.Add((Drink)change.New!, drinkNumbers[old]);
                drinkNumbers.Remove(old);
            }
        }

        foreach (var file in touched)
        {
            if (file is Prep prep) preps.Remove(prep);
            if (file is not Drink drink) continue;
            drinks[drinkNumbers[drink]] = null;
            partsKeys[drinkNumbers[drink]] = default;
        }

        // How deep preparations stand in one another is settled by preparations alone.
        if (!touched.Any(f => f is Prep) && !changes.Any(c => c.Old is Prep)) return;
        tooDeep.Clear();
        MakePreps(threads);
    }

    private void NumberDrinks()
    {
        drinkNumbers.Clear();
        for (int i = 0; i < drinks.Length; i++) drinkNumbers.Add(book.Drinks[i], i);
    }

    /// <summary>Makes the profiles of the preparations that have none.</summary>
    private void MakePreps(int threads)
    {
        // Preparations in waves: each wave uses only those before it, so a wave runs on all threads.
        var depth = new Dictionary<Prep, int>(book.Preps.Count);
        var waves = new List<List<Prep>>();
        foreach (var prep in book.OrderOfUse)
        {
            int level = 0;
            foreach (var line in prep.Ingredients)
            {
                if (line.Item.IsGiven && book.Resolve(line.Item.Value)?.File is Prep part && depth.TryGetValue(part, out int below))
                    level = Math.Max(level, below + 1);
            }

            // What stands in the last wave with its own part does not find it there.
            if (level > DeepestNesting) tooDeep.Add(prep);
            level = Math.Min(level, DeepestNesting);
            depth[prep] = level;
            if (preps.ContainsKey(prep)) continue;
            while (waves.Count <= level) waves.Add([]);
            waves[level].Add(prep);
        }

        for (int w = 0; w < waves.Count; w++)
        {
            var wave = waves[w];
            int level = w;
            var made = new RecipeProfile[wave.Count];
            Workers.For(wave.Count, threads, i => made[i] = new RecipeProfile(wave[i], this, level));
            for (int i = 0; i < made.Length; i++) preps[wave[i]] = made[i];
        }
    }

    private Ingredient? FindIngredient(string id) => book.Resolve(id)?.File as Ingredient;

    /// <summary>Materials of the catalogue, made once a process: they do not hang on the bar.</summary>
    private static class BuiltInMaterials
    {
        private static readonly ConcurrentDictionary<string, Material> Made = new(StringComparer.Ordinal);

        public static Material Of(Item item) =>
            Made.TryGetValue(item.Id, out var known) ? known : Made.GetOrAdd(item.Id, MaterialBuilder.Of((Ingredient)item.File, item.IsBuiltIn));
    }
}
