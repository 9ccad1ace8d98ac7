using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Why a preparation needs cold unless its pH or water activity shows otherwise; the worse, the later.</summary>
internal enum Perishable
{
    /// <summary>Nothing in it does.</summary>
    None,

    /// <summary>A plant part: fruit, herb, vegetable, flower, brewed coffee or tea, a dried plant in water.</summary>
    Plant,

    /// <summary>Juice or purée.</summary>
    Juice,

    /// <summary>Cut melon, cut tomato, cut leaves or sprouts: controlled by name in Food Code 1-201.10.</summary>
    ListedPlant,

    /// <summary>Nut, coconut or pulse.</summary>
    NutOrPulse,

    /// <summary>Milk and what is made of it.</summary>
    Dairy,

    /// <summary>Egg.</summary>
    Egg,
}

/// <summary>
/// Tells which parts of a preparation need cold (time and temperature control, US Food Code 1-201.10). What nothing tells of is
/// taken as food that needs it: a part of the bar's own whose file does not say `keepsCold` needs cold where it is moist. That
/// a dry good needs none ends when water reaches it: steeped, boiled or blended it is a plant food in water.
/// </summary>
internal static class Perishables
{
    /// <summary>g of water in a gram from which a part is moist.</summary>
    private const double Moist = 0.3;

    /// <summary>g of ethanol in a gram from which a part is kept by its spirit (20 % vol).</summary>
    private const double Spirited = 0.16;

    /// <summary>g of water in a gram from which a syrup is thin: one of 65 °Brix holds less.</summary>
    private const double ThinSyrup = 0.4;

    /// <summary>g of dry matter beside sugar in a gram from which a syrup feeds what grows.</summary>
    private const double BesideSugar = 0.005;

    private static readonly Limit LowAcid = Limits.Of("acidified-ph");
    private static readonly Limit OpenPh = Limits.Of("table-b-ph");
    private static readonly Limit WetShare = Limits.Of("guard-wet-share");
    private static readonly Limit SyrupSolids = Limits.Of("guard-spice-in-syrup");

    /// <summary>Whether the Food Code names such food as controlled (raw or heated animal food, cut melon, tomato, leaves, sprouts).</summary>
    public static bool IsListed(Perishable what) => what is Perishable.ListedPlant or Perishable.Dairy or Perishable.Egg;

    /// <summary>What a part is in its preparation: in itself, or because water has reached it.</summary>
    public static Perishable In(Part part, RecipeProfile profile)
    {
        if (part.Material is not { } material) return Perishable.None;
        var what = Of(material);
        return what == Perishable.None && DryIn(part, profile) is var dry and not Perishable.None && IsWetted(part, profile) ? dry : what;
    }

    /// <summary>
    /// Whether a dry part counts only because water has reached it: what it gives off in the water, nobody knows. One that was moist before
    /// gives off what its composition says.
    /// </summary>
    public static bool IsExtracted(Part part, RecipeProfile profile) =>
        part.Material is { } material
        && !(material.Of(Component.Water) > Moist)
        && Of(material) == Perishable.None
        && DryIn(part, profile) != Perishable.None
        && IsWetted(part, profile);

    /// <summary>What a dry good becomes in water, also one of those that a dry preparation is mixed of (a blend of tea, a mushroom powder).</summary>
    private static Perishable DryIn(Part part, RecipeProfile profile)
    {
        if (part.Item?.File is not Prep blend) return OfDry(part.Material!);
        var worst = Perishable.None;
        if (part.Item.ByProduct is not null || profile.Set.TryBefore(blend, profile) is not { IsSolid: true } inner) return worst;
        foreach (var (ingredient, _) in inner.Leaves)
        {
            if (profile.Set.MaterialOf(ingredient.Id) is { } leaf) worst = Worse(worst, OfDry(leaf));
        }

        return worst;
    }

    /// <summary>What a catalogue ingredient or one of the bar is in itself.</summary>
    public static Perishable Of(Material material) => material.Perishable;

    /// <summary>The same, worked out; the material keeps it. A kind that its file gives it does not make it less than what it takes after.</summary>
    internal static Perishable OfItself(Material material)
    {
        if (material.Ingredient is not { } ingredient) return Perishable.None;
        var what = OfKind(ingredient, material, material.Kind);
        if (!material.IsOwn) return what;
        foreach (var other in material.TakesAfter) what = Worse(what, OfKind(ingredient, material, other.IngredientKind.OrNone()));
        if (what != Perishable.None
            || material.State != MaterialState.Liquid
            || !IsNamedByItsSource(material.Kind)
            || ingredient.KeepsCold.IsGiven)
            return what;

        // Brine, colour or water of something: what it is of needs cold, and so may it.
        if (material.Kind.IsSalt && !ingredient.Values.ContainsKey("salt")) return Perishable.Plant;
        foreach (var of in Namesakes.InWords(ingredient)) what = Worse(what, OfKind(ingredient, material, of.IngredientKind.OrNone()));
        return what;
    }

    private static Perishable Worse(Perishable one, Perishable other) => one > other ? one : other;

    /// <summary>Kinds whose names say what they were drawn from, and that no maker has made to keep.</summary>
    private static bool IsNamedByItsSource(ItemKind kind) => !kind.IsBottled && !kind.Sweetens && !kind.IsAcid && !kind.IsFat && !kind.IsBoughtReady;

    private static Perishable OfKind(Ingredient ingredient, Material material, ItemKind kind)
    {
        string animal = ingredient.Animal.Or("none");
        bool cold = NeedsCold(ingredient, material, kind);
        if (kind.IsDairy) return Perishable.Dairy;
        if (kind.IsEgg) return Perishable.Egg;
        if (kind.IsPlantMilk || kind.IsNut) return Perishable.NutOrPulse;
        if (kind.IsSyrup && ingredient.KeepsCold.Or(true))
            return OfAnimal(
                animal,
                HoldsNut(ingredient)
                    ? Perishable.NutOrPulse
                    : IsLowAcidVegetable(ingredient, material) ? Perishable.Juice : Perishable.None);
        if (!cold) return Perishable.None;
        if (kind.IsFat && animal == "milk") return Perishable.Dairy;
        if (kind.Foams) return Perishable.NutOrPulse;
        if (kind.IsPerishablePlant) return KeepingTables.IsListedPlant(ingredient, cutOnly: false) ? Perishable.ListedPlant : Perishable.Plant;
        if (kind.IsJuice || kind.IsPuree)
            return KeepingTables.IsListedPlant(ingredient, cutOnly: true)
                ? Perishable.ListedPlant
                : HoldsNut(ingredient) ? Perishable.NutOrPulse : Perishable.Juice;
        return kind.IsPerishableBrew || !kind.IsKnown || IsSaidToNeedCold(ingredient, material, kind)
            ? OfAnimal(animal, HoldsNut(ingredient) ? Perishable.NutOrPulse : Perishable.Plant)
            : Perishable.None;
    }

    /// <summary>
    /// Whether a file of the bar's own says that it needs cold, of whatever kind it is, and nothing shows it to be dry; of a fat, water enough
    /// says it. A wine or liqueur that is kept cold for its taste is kept by its spirit.
    /// </summary>
    private static bool IsSaidToNeedCold(Ingredient ingredient, Material material, ItemKind kind)
    {
        if (!material.IsOwn || kind.IsBottled) return false;
        bool wet = material.Of(Component.Water) > Moist;
        return ingredient.KeepsCold.Or(kind.IsFat && wet)
            && (wet || (material.Unknown & (Unknowns.Composition | Unknowns.Water)) != 0 || SaysNothing(ingredient));
    }

    /// <summary>
    /// Whether a syrup of the vegetable kind needs cold: thin, too little acid to hold what grows, and with more than sugar in it to feed it. The
    /// catalogue says which of its own do; of the bar's own nobody has to.
    /// </summary>
    private static bool IsLowAcidVegetable(Ingredient syrup, Material material)
    {
        if (!(syrup.KeepsCold.Or(material.IsOwn) && (syrup.Values.TryGetValue("ph", out var ph) ? ph.Low > LowAcid.Value : material.IsOwn))) return false;
        double sugar = 0, water = material.Of(Component.Water);
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugar += material.Of(c);
        return water > ThinSyrup && 1 - water - sugar > BesideSugar;
    }

    /// <summary>What a dry good becomes in water.</summary>
    private static Perishable OfDry(Material material)
    {
        if (material.Ingredient is not { } ingredient || material.State == MaterialState.Liquid) return Perishable.None;
        string animal = ingredient.Animal.Or("none");
        var kind = material.Kind;
        if (kind.PerishesWet) return OfAnimal(animal, HoldsNut(ingredient) ? Perishable.NutOrPulse : Perishable.Plant);
        if (kind.IsSeed) return Perishable.NutOrPulse;
        if (kind.IsGum && KeepingTables.IsStarch(ingredient)) return Perishable.Plant;

        // What a foaming agent of the bar's own is made of (chickpea water, protein, an extract), no file says.
        if (kind.Foams)
            return OfAnimal(
                animal,
                Phrases.Has(ingredient.Id, "protein") || (material.IsOwn && SaysNothing(ingredient) && !ingredient.KeepsCold.IsGiven)
                    ? Perishable.NutOrPulse
                    : Perishable.None);

        // A sour powder of the bar's own may be an acid, sumac or dried fruit: what is in it, no file says.
        bool isUnknown = kind.IsUnspecified || !kind.IsKnown || (kind.IsAcid && material.IsOwn && SaysNothing(ingredient));
        return isUnknown && !ingredient.KeepsCold.IsGiven ? OfAnimal(animal, Perishable.Plant) : Perishable.None;
    }

    private static Perishable OfAnimal(string animal, Perishable otherwise) => animal switch
    {
        "milk" => Perishable.Dairy,
        "egg" => Perishable.Egg,
        _ => otherwise,
    };

    /// <summary>Whether the rest of the preparation is wet: enough water for what is steeped or boiled in it to feed what grows.</summary>
    private static bool IsWetted(Part part, RecipeProfile profile)
    {
        if (profile.IsSolid) return false;
        double water = 0, solids = 0, acids = 0, all = 0;
        foreach (var other in profile.Parts)
        {
            if (other.Phase == PartPhase.Beside || other.Material is not { } material || material == part.Material) continue;

            // Water that nobody has weighed is water.
            if (!other.IsWeighed) return true;
            all += other.Grams.Typical;
            water += other.Grams.Typical * material.Of(Component.Water);
            for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) solids += other.Grams.Typical * material.Of(c);
            for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) acids += other.Grams.Typical * material.Of(c);
        }

        if (!(all > 0) || water < WetShare.Value / 100 * all) return false;

        // A spice in a syrup flavours it; in water it is steeped like tea. Less acid makes no syrup of it.
        return !IsSpice(part, profile) || solids < SyrupSolids.Value / 100 * (all - acids);
    }

    /// <summary>Whether it is a spice, or a blend of which every plant is one.</summary>
    private static bool IsSpice(Part part, RecipeProfile profile) =>
        part.Item?.File is Prep ? !RecipeTree.AnyIn(part, profile, static m => !m.Kind.IsSpice && OfDry(m) != Perishable.None) : part.Material!.Kind.IsSpice;

    /// <summary>
    /// Whether it needs cold by its file; where the file does not say, whether it is moist. A juice that is not shown to be sour needs it
    /// whatever its file says: what a maker has heated in its pack is open in a bar.
    /// </summary>
    private static bool NeedsCold(Ingredient ingredient, Material material, ItemKind kind)
    {
        bool moist = material.Of(Component.Ethanol) < Spirited
            && (material.Of(Component.Water) > Moist
                || (material.State != MaterialState.Powder && IsPerhapsMoist(ingredient, material, kind)));
        if (!ingredient.KeepsCold.IsGiven) return moist;
        return ingredient.KeepsCold.Value || (moist && (kind.IsJuice || kind.IsPuree) && !(material.Ph.High <= OpenPh.Value));
    }

    /// <summary>Whether nothing says how moist it is, and it may be.</summary>
    private static bool IsPerhapsMoist(Ingredient ingredient, Material material, ItemKind kind) =>
        (material.Unknown & (Unknowns.Composition | Unknowns.Water)) != 0
            || (material.IsOwn
                && SaysNothing(ingredient)
                && (kind.IsFreshPlant || material.State == MaterialState.Liquid || (kind.IsFat && ingredient.Animal.Or("none") == "milk")));

    /// <summary>Whether its file tells nothing of what is in it, so that it may be as moist as any of its kind.</summary>
    private static bool SaysNothing(Ingredient ingredient)
    {
        foreach (string key in ingredient.Values.Keys)
        {
            if (key is "water" or "solids" or "strength" or "salt"
                || key.StartsWith("sugars.", StringComparison.Ordinal)
                || key.StartsWith("acids.", StringComparison.Ordinal))
                return false;
        }

        return true;
    }

    private static bool HoldsNut(Ingredient ingredient)
    {
        if (ingredient.Allergens is not { } allergens) return false;
        foreach (string token in allergens.Contains)
        {
            if (token is "almond" or "hazelnut" or "walnut" or "cashew" or "pecan" or "brazil-nut" or "pistachio" or "macadamia"
                or "pine-nut" or "coconut" or "peanut" or "soybean")
                return true;
        }

        return false;
    }
}
