using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>A part that can hurt, and how much of it a recipe holds through its whole tree.</summary>
/// <param name="Hazard">What it is.</param>
/// <param name="Part">The line of the recipe that brings it.</param>
/// <param name="Id">Id of the item itself.</param>
/// <param name="Grams">Its mass in the whole recipe, g; NaN where it cannot be had.</param>
/// <param name="Strained">
/// Whether it is strained out somewhere on the way, so that only a part of it is in the drink. What was left of straining counts as holding
/// all of it.
/// </param>
/// <param name="Direct">Whether it is a line of the recipe itself.</param>
internal sealed record HazardLoad(Hazard Hazard, Part Part, string Id, double Grams, bool Strained, bool Direct)
{
    /// <summary>How many own files may take after one another before nothing more is looked for.</summary>
    private const int DeepestLike = 16;

    /// <summary>Whether it lies beside the drink whole: what is grated or weighed over it is drunk with it, a stick or a whole bean is not.</summary>
    public bool IsLeftBeside => Direct && Part.Phase == PartPhase.Beside
        && Part.Line.Amount is not { IsGiven: true, Value.Dimension: Reading.Dimension.Mass or Reading.Dimension.Volume }
        && Part.Material is not { State: MaterialState.Powder };

    /// <summary>What is hazardous in a recipe.</summary>
    public static FixedList<HazardLoad> Of(RecipeProfile profile, ProfileSet set)
    {
        List<HazardLoad>? loads = null;
        foreach (var part in profile.Parts)
        {
            bool strained = part.Phase == PartPhase.TakenOut;
            if (part.Item?.File is Prep inner)
            {
                if (set.TryBefore(inner, profile) is not { } innerProfile) continue;
                foreach (var load in innerProfile.HazardTotals)
                {
                    // How much of it a by-product keeps, nobody knows: at most all of it.
                    double whole = part.Item.ByProduct is not { } left
                        ? innerProfile.Mass
                        : left.Amount is { IsGiven: true, Value.Dimension: Reading.Dimension.Mass } ? left.Amount.Value.Base : double.NaN;
                    double share = whole > 0 ? part.Grams.Typical / whole : double.NaN;
                    (loads ??= []).Add(load with
                    {
                        Part = part,
                        Grams = load.Grams * share,
                        Strained = strained
                        || (part.Item.ByProduct is null && load.Strained),
                        Direct = false
                    });
                }
            }
            else if (HazardOf(part, set) is { } hazard)
            {
                (loads ??= []).Add(new HazardLoad(hazard, part, part.Item?.Id ?? NameOf(part.Line), part.Grams.Typical, strained, true));
            }
        }

        return loads is null ? [] : FixedList.Of(loads);
    }

    /// <summary>
    /// The loads of all lines together, each thing once: what is strained out, and what cannot be weighed, stand apart. A recipe
    /// that takes this one in goes over these, not over every way by which a thing comes in.
    /// </summary>
    /// <param name="loads">The loads of lines.</param>
    /// <param name="byHazard">Whether things of one hazard count as one, whatever they are called: nutmeg, mace and a file that is like either.</param>
    public static FixedList<HazardLoad> Together(FixedList<HazardLoad> loads, bool byHazard = false)
    {
        if (loads.Count < 2) return loads;
        var all = new List<HazardLoad>(loads.Count);
        var places = new Dictionary<(Hazard, string, bool, bool), int>();
        foreach (var load in loads)
        {
            var key = (load.Hazard, byHazard ? "" : load.Id, load.Strained, double.IsNaN(load.Grams));
            if (places.TryGetValue(key, out int at))
            {
                all[at] = all[at] with { Grams = all[at].Grams + load.Grams };
                continue;
            }

            places.Add(key, all.Count);
            all.Add(load);
        }

        return FixedList.Of(all);
    }

    /// <summary>
    /// The hazard of an ingredient. One of the catalogue names its own. One of the bar has that of its file, of what it is
    /// like, or of what it is called: a poison under any kind, a hazardous plant where it is sold as the plant (what a maker
    /// bottles is within the law of its maker). What resolves to nothing has that of its words.
    /// </summary>
    private static Hazard? HazardOf(Part part, ProfileSet set)
    {
        if (part.Item is null) return InWords(NameOf(part.Line), IsPlantOrPoison);
        return part.Material is { } material ? HazardOf(part.Item, material, set) : null;
    }

    /// <summary>The hazard of an ingredient that no line has to hold.</summary>
    public static Hazard? HazardOf(Item item, Material material, ProfileSet set)
    {
        if (material.Ingredient is not { } ingredient) return null;
        if (item.IsBuiltIn) return material.Hazard;
        if (OfNames(ingredient, static h => h.IsPoison) is { } poison) return poison;
        if (material.Hazard is { } stated) return stated;
        return OfLike(ingredient, set, 0)
            ?? OfNames(
                ingredient, material.Kind.IsBottled ? static h => h.IsNamedInProse || h.IsNotFood || h.Kind == "process" : IsPlantOrPoison)
            ?? CuringSalts.Of(ingredient);
    }

    /// <summary>The hazard of what an ingredient takes after, by its id or by what that is called.</summary>
    private static Hazard? OfLike(Ingredient ingredient, ProfileSet set, int depth)
    {
        if (!ingredient.Like.IsGiven || depth == DeepestLike) return null;
        if (HazardTable.Find(ingredient.Like.Value) is { } byId) return byId;
        if (set.Book.Resolve(ingredient.Like.Value)?.File is not Ingredient parent) return InWords(ingredient.Like.Value, IsPlantOrPoison);
        return (parent.Hazard.IsGiven ? HazardTable.Find(parent.Hazard.Value) : null)
            ?? OfNames(parent, IsPlantOrPoison)
            ?? CuringSalts.Of(parent)
            ?? OfLike(parent, set, depth + 1);
    }

    private static bool IsPlantOrPoison(Hazard hazard) =>
        hazard.IsPoison || hazard.IsNamedInProse || hazard.Asks is not null || hazard.IsNotFood || hazard.Kind is "botanical" or "process";

    private static Hazard? OfNames(Ingredient ingredient, Func<Hazard, bool> isSuch)
    {
        if (InWords(ingredient.Id, isSuch) is { } byId) return byId;
        if (ingredient.Name.IsGiven && InWords(ingredient.Name.Value, isSuch) is { } byName) return byName;
        foreach (var alias in ingredient.Aliases)
        {
            if (alias.IsGiven && InWords(alias.Value, isSuch) is { } byAlias) return byAlias;
        }

        return null;
    }

    private static Hazard? InWords(string text, Func<Hazard, bool> isSuch) => HazardNames.InName(text, isSuch)?.Hazard;

    private static string NameOf(Line line) => line.Item.IsGiven ? line.Item.Value : line.ItemText.Or("");
}
