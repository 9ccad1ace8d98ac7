using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Labels;

/// <summary>The kinds of claim that are held against what is in a drink.</summary>
internal enum ClaimKind
{
    None,
    Vegan,
    Vegetarian,
    GlutenFree,
    DairyFree,
    LactoseFree,
    AlcoholFree,
    NonAlcoholic,
    DeAlcoholised,
    LowAlcohol,
    SugarFree,
    LowSugar,
    NoAddedSugar,
}

/// <summary>What became of a claim.</summary>
/// <param name="Answer">Broken or not shown.</param>
/// <param name="Because">Why, as the second half of a sentence.</param>
/// <param name="Source">The law or practice.</param>
/// <param name="Cap">The highest level that the source bears.</param>
/// <param name="Culprit">The ingredient that breaks it, if one does.</param>
/// <param name="Evidence">Facts and limits.</param>
internal sealed record ClaimVerdict(Answer Answer, string Because, string Source, Level? Cap, TreeLeaf? Culprit, IReadOnlyList<Evidence> Evidence);

/// <summary>Holds claims against the tree and the facts of a recipe.</summary>
internal static class Claims
{
    private static readonly LabelRule VeganLaw = LabellingTable.Of("vegan-claim");
    private static readonly LabelRule VegetarianLaw = LabellingTable.Of("vegetarian-claim");
    private static readonly LabelRule GlutenLaw = LabellingTable.Of("gluten-free-claim");
    private static readonly LabelRule DairyLaw = LabellingTable.Of("dairy-free-claim");
    private static readonly Limit ClaimStrength = Limits.Of("claims-strength");
    private static readonly Limit SugarFree = Limits.Of("sugar-free-claim");
    private static readonly Limit LowSugars = Limits.Of("low-sugars-claim");
    private static readonly Limit Lactose = Limits.Of("lactose-free-claim");
    private static readonly Limit[] AlcoholFree = [.. AlcoholLimits.Free.Select(Limits.Of)];
    private static readonly Limit[] AlcoholFreeBeer = [.. AlcoholLimits.FreeBeer.Select(Limits.Of)];
    private static readonly Limit[] NonAlcoholic = [.. AlcoholLimits.NonAlcoholic.Select(Limits.Of)];
    private static readonly Limit[] DeAlcoholised = [.. AlcoholLimits.DeAlcoholised.Select(Limits.Of)];
    private static readonly Limit[] LowAlcohol = [.. AlcoholLimits.Low.Select(Limits.Of)];
    private static readonly Limit AlcoholFreeElsewhere = Limits.Of("alcohol-free-elsewhere");
    private static readonly Limit NoAlcohol = Limits.Of("guard-no-alcohol");
    private static readonly string[] GlutenTokens = ["wheat", "barley", "rye", "oats"];

    /// <summary>The kind of a claim as written; <see cref="ClaimKind.None"/> where it is none that can be held against anything.</summary>
    public static ClaimKind KindOf(string claim) => BuiltInCatalogue.Slug(claim) switch
    {
        "vegan" or "plant-based" => ClaimKind.Vegan,
        "vegetarian" => ClaimKind.Vegetarian,
        "gluten-free" or "no-gluten" => ClaimKind.GlutenFree,
        "dairy-free" or "milk-free" or "no-dairy" => ClaimKind.DairyFree,
        "lactose-free" => ClaimKind.LactoseFree,
        "alcohol-free" or "no-alcohol" or "zero-proof" or "zero-alcohol" or "zero" or "0-0" or "without-alcohol" or "alcohol-less" or "alkoholfrei" or "alcoholvrij" or "sans-alcool" or "analcolico" or "sin-alcohol" => ClaimKind.AlcoholFree,
        "non-alcoholic" or "nonalcoholic" or "mocktail" or "virgin" or "temperance" => ClaimKind.NonAlcoholic,
        "de-alcoholised" or "de-alcoholized" or "dealcoholised" or "dealcoholized" => ClaimKind.DeAlcoholised,
        "low-alcohol" or "low-abv" or "low-proof" => ClaimKind.LowAlcohol,
        "sugar-free" or "no-sugar" or "zero-sugar" => ClaimKind.SugarFree,
        "low-sugar" or "low-sugars" or "low-in-sugar" => ClaimKind.LowSugar,
        "no-added-sugar" or "no-added-sugars" or "unsweetened" => ClaimKind.NoAddedSugar,
        _ => ClaimKind.None,
    };

    /// <summary>What became of a claim; <see langword="null"/> where it holds, or nothing can be said.</summary>
    public static ClaimVerdict? Judge(ClaimKind kind, RecipeProfile profile, Settings settings) => kind switch
    {
        ClaimKind.Vegan => Origin(profile, VeganLaw, vegan: true),
        ClaimKind.Vegetarian => Origin(profile, VegetarianLaw, vegan: false),
        ClaimKind.GlutenFree => Without(profile, GlutenTokens, GlutenLaw, "gluten"),
        ClaimKind.DairyFree => Without(profile, ["milk"], DairyLaw, "milk"),
        ClaimKind.LactoseFree => LactoseFree(profile),
        ClaimKind.AlcoholFree => Strength(profile, settings, IsBeer(profile) ? [.. AlcoholFree, .. AlcoholFreeBeer] : AlcoholFree, AlcoholFreeElsewhere, "alcohol-free"),
        ClaimKind.NonAlcoholic => Strength(profile, settings, NonAlcoholic, AlcoholFreeElsewhere, "non-alcoholic"),
        ClaimKind.DeAlcoholised => Strength(profile, settings, DeAlcoholised, null, "de-alcoholised"),
        ClaimKind.LowAlcohol => Strength(profile, settings, LowAlcohol, null, "low alcohol"),
        ClaimKind.SugarFree => Sugar(profile, settings, SugarFree),
        ClaimKind.LowSugar => Sugar(profile, settings, LowSugars),
        ClaimKind.NoAddedSugar => NoSugarAdded(profile, settings),
        _ => null,
    };

    private static ClaimVerdict? Origin(RecipeProfile profile, LabelRule law, bool vegan)
    {
        TreeLeaf? open = null;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            switch (leaf.Ingredient.Animal.Or("none"))
            {
                case "none":
                    break;
                case "unknown":
                    if (vegan) open ??= leaf;
                    break;
                case "milk" or "egg" or "honey" when !vegan:
                    break;
                case var origin:
                    return new ClaimVerdict(Answer.Broken, $"`{Last(leaf)}` comes from {Beast(origin)}{Via(leaf)}", law.Source, law.LevelCap, leaf, [Proof.Of("animal", origin)]);
            }
        }

        return open is { } unknown
            ? new ClaimVerdict(Answer.NotShown, $"whether `{Last(unknown)}` is fined with egg, milk or fish is not known{Via(unknown)}", law.Source, Level.Warning, unknown, [Proof.Of("animal", "unknown")])
            : null;
    }

    private static ClaimVerdict? Without(RecipeProfile profile, string[] tokens, LabelRule law, string what)
    {
        AllergenOrigin? open = null;
        foreach (var origin in profile.Allergens.Origins)
        {
            if (Array.IndexOf(tokens, origin.Token) < 0) continue;
            if (origin.Certain && origin.Token != "oats")
                return new ClaimVerdict(Answer.Broken, $"{origin.Token} comes in {AllergenWords.Way(origin)}", law.Source, law.LevelCap, LeafOf(profile, origin), [Proof.Of("comes in", string.Join(" > ", origin.Through))]);
            open ??= origin;
        }

        return open is null
            ? null
            : new ClaimVerdict(Answer.NotShown, $"{open.Token} may come in {AllergenWords.Way(open)}, so that it is not shown to hold no {what}", law.Source, Level.Warning, LeafOf(profile, open), [Proof.Of("may come in", string.Join(" > ", open.Through))]);
    }

    private static ClaimVerdict? LactoseFree(RecipeProfile profile)
    {
        double mass = profile.Mass;
        double lactose = profile.Grams[(int)Component.Lactose];
        if (mass <= 0 || 100 * lactose / mass <= Lactose.Value) return null;
        double share = 100 * lactose / mass;
        return new ClaimVerdict(
            Answer.Broken, $"it holds {Say.Number(share)} g of lactose in 100 g, over {Say.Number(Lactose.Value)} g", Lactose.Source, Lactose.LevelCap, null, [Proof.Of("lactose", share, "g/(100.g)"), Proof.Of(Lactose)]);
    }

    private static ClaimVerdict? Strength(RecipeProfile profile, Settings settings, Limit[] limits, Limit? elsewhere, string words)
    {
        Limit? strictest = null;
        foreach (var limit in limits)
        {
            if (Applies(limit, settings) && (strictest is null || limit.Value < strictest.Value)) strictest = limit;
        }

        if (elsewhere is not null && strictest is null && elsewhere.AppliesIn(settings)) strictest = elsewhere;
        if (strictest is null) return null;

        // Without a known dilution the strength before it is the most that it can be.
        var fact = Fact.Abv;
        var abv = profile.Get(Fact.Abv);
        if (!abv.IsKnown)
        {
            fact = Fact.MixAbv;
            abv = profile.Get(Fact.MixAbv);
        }

        // Where nothing is allowed, the trace of a ripe fruit is nothing.
        if (strictest.Value <= 0 && abv.IsKnown && abv.Value < NoAlcohol.Value) return null;
        var stand = Check.AtMost(abv, strictest.Value);
        if (stand == Stand.Holds || !abv.IsKnown || (stand == Stand.NotShown && fact == Fact.MixAbv)) return null;
        string because = stand == Stand.Broken
            ? $"it comes to {Say.Fact(fact, abv)}, over the {Say.Number(strictest.Value)} % vol that \"{words}\" allows"
            : $"it comes to {Say.Fact(fact, abv)}, which is not shown to stay within the {Say.Number(strictest.Value)} % vol that \"{words}\" allows";
        return new ClaimVerdict(stand == Stand.Broken ? Answer.Broken : Answer.NotShown, because, strictest.Source, stand == Stand.Broken ? strictest.LevelCap : Level.Warning, Strongest(profile), [Proof.Of(fact, abv), Proof.Of(strictest)]);
    }

    private static ClaimVerdict? Sugar(RecipeProfile profile, Settings settings, Limit limit)
    {
        if (!limit.AppliesIn(settings)) return null;
        if (OverClaimStrength(profile) is { } barred) return barred;
        var sugar = profile.Get(Fact.Sugar);
        if (!sugar.IsKnown || sugar.Low <= limit.Value) return null;
        return new ClaimVerdict(
            Answer.Broken, $"it holds {Say.Fact(Fact.Sugar, sugar, profile.IsSolid)} of sugar, over the {Say.Number(limit.Value)} g that the words allow", limit.Source, limit.LevelCap, null, [Proof.Of(Fact.Sugar, sugar), Proof.Of(limit)]);
    }

    private static ClaimVerdict? NoSugarAdded(RecipeProfile profile, Settings settings)
    {
        if (!SugarFree.AppliesIn(settings)) return null;
        if (OverClaimStrength(profile) is { } barred) return barred;
        var added = RecipeTree.First(profile, i => i.IngredientKind.OrNone() is { Sweetens: true } or { IsLiqueur: true } && i.Values.Any(v => v.Key.StartsWith("sugars.", StringComparison.Ordinal) && v.Value.Typical > 0));
        return added is { } leaf
            ? new ClaimVerdict(Answer.Broken, $"`{Last(leaf)}` sweetens it{Via(leaf)}", SugarFree.Source, SugarFree.LevelCap, leaf, [Proof.Of(SugarFree)])
            : null;
    }

    private static ClaimVerdict? OverClaimStrength(RecipeProfile profile)
    {
        var abv = profile.Get(Fact.Abv);
        return abv.IsKnown && abv.Low > ClaimStrength.Value
            ? new ClaimVerdict(Answer.Broken, $"at {Say.Fact(Fact.Abv, abv)} it is over the {Say.Number(ClaimStrength.Value)} % vol above which no such claim may be made", ClaimStrength.Source, ClaimStrength.LevelCap, null, [Proof.Of(Fact.Abv, abv), Proof.Of(ClaimStrength)])
            : null;
    }

    private static bool Applies(Limit limit, Settings settings)
    {
        if (!settings.JurisdictionIsStated) return true;
        foreach (string jurisdiction in limit.Jurisdictions)
        {
            if (settings.AppliesIn(jurisdiction) || settings.StatedJurisdictions.Contains(jurisdiction)) return true;
        }

        return false;
    }

    /// <summary>Whether all alcohol in it comes with beer, for which some countries have figures of their own.</summary>
    private static bool IsBeer(RecipeProfile profile)
    {
        bool beer = false;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (leaf.Ingredient.IngredientKind.OrNone().IsBeer) beer = true;
            else if (leaf.Ingredient.Values.TryGetValue("strength", out var strength) && strength.Typical > 0) return false;
        }

        return beer;
    }

    private static TreeLeaf? Strongest(RecipeProfile profile)
    {
        TreeLeaf? most = null;
        double strength = 0;
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (!leaf.Ingredient.Values.TryGetValue("strength", out var value) || value.Typical <= strength) continue;
            strength = value.Typical;
            most = leaf;
        }

        return most;
    }

    private static TreeLeaf? LeafOf(RecipeProfile profile, AllergenOrigin origin)
    {
        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (leaf.Part == origin.Part && Last(leaf) == origin.Through[origin.Through.Count - 1]) return leaf;
        }

        return null;
    }

    private static string Last(TreeLeaf leaf) => leaf.Through[leaf.Through.Count - 1];

    private static string Via(TreeLeaf leaf) => leaf.Through.Count == 1 ? "" : $" (by way of {string.Join(" and ", leaf.Through.Take(leaf.Through.Count - 1).Select(i => $"`{i}`"))})";

    private static string Beast(string origin) => origin switch
    {
        "milk" => "milk",
        "egg" => "egg",
        "honey" => "bees",
        "insect" => "insects",
        "gelatine" => "gelatine of animals",
        "meat" => "meat",
        _ => origin,
    };
}
