using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>Cases that have a rule of their own, so that the general rules are silent about them.</summary>
internal static class SpecialCases
{
    private static readonly Limit DateMark = Limits.Of("food-code-date-mark");
    private static readonly Limit LowAcidActivity = Limits.Of("low-acid-water-activity");
    private static readonly Limit OilShare = Limits.Of("guard-oil-share");

    private static readonly string[] Cultures =
        ["yeast", "scoby", "ginger bug", "ginger-bug", "kefir grain", "kefir-grain", "kefir-grains", "starter", "lees", "sourdough"];

    private static readonly string[] NotLive = ["nutritional-yeast", "nutritional yeast", "yeast-extract", "yeast extract", "dead"];

    private static readonly Limit DateMarkFrom = Limits.Of("food-code-date-mark-from");

    /// <summary>Days from which a date mark is asked.</summary>
    public static double MarkedFromDays => DateMarkFrom.Value / 24;

    /// <summary>
    /// Whether it is food low in acid without animal parts that is sealed from air and kept, or kept long: botulism's food, whatever
    /// it is called.
    /// </summary>
    public static bool IsLowAcidJuiceKept(Prep prep, KeepingState state, Settings settings) =>
        IsLowAcidJuiceKept(prep, state, settings, Storage.IsSealed(prep));

    /// <summary>The same, sealed or not.</summary>
    public static bool IsLowAcidJuiceKept(Prep prep, KeepingState state, Settings settings, bool isSealed)
    {
        if (state is not { IsLowAcid: true, IsStrong: false, Verdict: not KeepingVerdict.NotControlled }
            || state.What is not (Perishable.Juice or Perishable.Plant or Perishable.ListedPlant or Perishable.NutOrPulse)
            || (state.WaterActivity.IsKnown && state.WaterActivity.High <= LowAcidActivity.Value)
            || IsFerment(prep))
            return false;
        double days = Storage.Days(prep), celsius = Storage.Celsius(prep, settings);
        if (Storage.IsFrozen(celsius)) return false;

        // Cold and packed without air is a case of its own.
        if (Storage.IsReducedOxygen(prep) && !StoredTooWarm.IsTooWarm(celsius, settings) && !double.IsNaN(celsius)) return false;
        bool isJuice = state.What != Perishable.NutOrPulse;
        return (isSealed && !(days <= MarkedFromDays) && (isJuice || StoredTooWarm.IsTooWarm(celsius, settings)))
            || (isJuice && days > DateMark.Value);
    }

    /// <summary>
    /// Whether it is a plant part under oil: fresh, and with a layer of oil, in its own lines or in those of a preparation in it.
    /// </summary>
    public static bool IsPlantInOil(RecipeProfile profile, out Part? plant)
    {
        plant = null;
        if (profile.Keeping is { IsStrong: true }) return false;
        double oil = 0, all = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Material is null || part.Phase == PartPhase.Beside) continue;
            if (part.IsWeighed) all += part.Grams.Typical;
            if (part.Item?.File is Prep inner && profile.Set.TryBefore(inner, profile) is { } below)
            {
                if (HoldsOil(below) && part.IsWeighed) oil += part.Grams.Typical * part.Material.Of(Science.Component.Fat);
                if (FreshPlantIn(below)) plant ??= part;
            }
            else if (part.Material.Kind.IsFat)
            {
                // Oil that nobody has weighed covers what is in it.
                oil += part.IsWeighed ? part.Grams.Typical : double.PositiveInfinity;
                if (NamesPlant(part.Material)) plant ??= part;
            }
            else if (IsFreshPlant(part.Material))
            {
                plant ??= part;
            }
        }

        return plant is not null && oil > OilShare.Value / 100 * all && oil > 0;
    }

    private static bool IsFreshPlant(Material material) =>
        (IsFresh(material.Kind) || material.TakesAfter.Any(static t => IsFresh(t.IngredientKind.OrNone())))
            && Perishables.Of(material) is Perishable.Plant or Perishable.ListedPlant or Perishable.Juice;

    private static bool IsFresh(Vocabulary.ItemKind kind) => kind.IsFreshPlant || kind.IsPuree;

    /// <summary>
    /// Whether an oil of the bar's own is named by the vegetable or herb in it, and its file does not say that it needs no cold.
    /// </summary>
    internal static bool NamesPlant(Material oil) =>
        oil is { IsOwn: true, Ingredient: { KeepsCold.IsGiven: false } own }
            && Namesakes.InWords(own).Any(static e => IsHerbOrVegetable(e.IngredientKind.OrNone()));

    private static bool IsHerbOrVegetable(Vocabulary.ItemKind kind) =>
        kind is { IsFreshPlant: true, MayHoldSugar: false, IsSpice: false, IsPerishableBrew: false };

    private static bool FreshPlantIn(RecipeProfile profile) =>
        profile.Keeping is not { Verdict: KeepingVerdict.NotControlled }
            && profile.Parts.Any(p => p.Phase != PartPhase.Beside && p.Material is { } material && IsFreshPlant(material));

    private static bool HoldsOil(RecipeProfile profile) =>
        profile.Parts.Any(static p => p.Phase != PartPhase.Beside && p.Material is { Kind.IsFat: true });

    /// <summary>Whether it is milk that was curdled and strained: called so, and strained.</summary>
    public static bool IsMilkPunch(Prep prep) =>
        prep.Family.OrNone().IsMilkWash && prep.Method.Any(static s => s.Verb.Strains || s.Verb.Clarifies);

    /// <summary>Whether it ferments: called so, made so, or with yeast or a live culture in sugar that nothing has killed.</summary>
    public static bool IsFerment(Prep prep, RecipeProfile profile) => IsFerment(prep) || IsPitched(prep, profile);

    /// <summary>Whether yeast or a live culture is among its lines and nothing kills it afterwards.</summary>
    public static bool IsPitched(Prep prep, RecipeProfile profile)
    {
        var pot = Pot.Of(prep);
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !IsCulture(part) || pot.Any(part.Line, static s => s.Verb.StopsFerment)) continue;
            return true;
        }

        return false;
    }

    private static bool IsCulture(Part part)
    {
        if (part.Material is { Kind.IsLiveCulture: true } && part.Item?.File is Ingredient) return true;
        string id = part.Line.Item.Or("");
        return Phrases.HasAny(id, Cultures) && !Phrases.HasAny(id, NotLive);
    }

    /// <summary>Whether it ferments, by its family or its method.</summary>
    public static bool IsFerment(Prep prep)
    {
        if (prep.Family.OrNone().Ferments) return true;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Ferments) return true;
        }

        return false;
    }
}
