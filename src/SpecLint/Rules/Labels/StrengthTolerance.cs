using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>How far a declared strength may be from the true one: by jurisdiction and by what is in the bottle.</summary>
internal static class StrengthTolerance
{
    private static readonly Limit Spirits = Limits.Of("strength-tolerance");
    private static readonly Limit Macerated = Limits.Of("strength-tolerance-macerated");
    private static readonly Limit Beer = Limits.Of("strength-tolerance-beer");
    private static readonly Limit StrongBeerCider = Limits.Of("strength-tolerance-strong-beer-cider");
    private static readonly Limit Wine = Limits.Of("strength-tolerance-wine");
    private static readonly Limit SparklingWine = Limits.Of("strength-tolerance-sparkling-liqueur-wine");
    private static readonly Limit Us = Limits.Of("strength-tolerance-us");
    private static readonly Limit UsWine = Limits.Of("strength-tolerance-us-wine");
    private static readonly Limit UsWineStrong = Limits.Of("strength-tolerance-us-wine-strong");
    private static readonly Limit Anz = Limits.Of("strength-tolerance-anz");
    private static readonly Limit AnzBeer = Limits.Of("strength-tolerance-anz-beer");
    private static readonly Limit AnzWine = Limits.Of("strength-tolerance-anz-wine");
    private static readonly Limit Unknown = Limits.Of("strength-tolerance-unknown");

    /// <summary>Ids of all limits.</summary>
    public static readonly string[] Ids =
    [
        "strength-tolerance", "strength-tolerance-macerated", "strength-tolerance-beer", "strength-tolerance-strong-beer-cider",
        "strength-tolerance-wine", "strength-tolerance-sparkling-liqueur-wine", "strength-tolerance-us", "strength-tolerance-us-wine",
        "strength-tolerance-us-wine-strong", "strength-tolerance-anz", "strength-tolerance-anz-beer", "strength-tolerance-anz-wine",
        "strength-tolerance-unknown",
    ];

    /// <summary>The strictest that applies; where the bar's country has none that is known, that of no law.</summary>
    public static Limit For(RecipeContext context)
    {
        string kind = KindOf(context.Profile);
        double strength = context.Fact(Fact.Abv).Value;
        Limit? strictest = null;
        Take(kind switch
        {
            "macerated" => Macerated,
            "beer" => strength > 5.5 ? StrongBeerCider : Beer,
            "cider" => StrongBeerCider,
            "wine" => Wine,
            "sparkling-wine" or "fortified-wine" => SparklingWine,
            _ => Spirits,
        });
        Take(kind is "wine" or "sparkling-wine" or "fortified-wine" or "cider" ? strength > 14 ? UsWineStrong : UsWine : Us);
        Take(kind switch { "beer" or "cider" => AnzBeer, "wine" or "sparkling-wine" or "fortified-wine" => AnzWine, _ => Anz });
        return strictest ?? Unknown;

        void Take(Limit limit)
        {
            if (limit.AppliesIn(context.Settings) && (strictest is null || limit.Value < strictest.Value)) strictest = limit;
        }
    }

    /// <summary>
    /// What is in the bottle, as the law sorts it: the kind of drink where all alcohol comes with one (beer, cider, wine), fruit or
    /// plant parts that stay in it, else a mixed drink, which counts with the spirits.
    /// </summary>
    private static string KindOf(RecipeProfile profile)
    {
        string? kind = null;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Mix
                && profile.Recipe is Prep
                && part.Material is { State: MaterialState.Solid } solid
                && solid.Kind.IsBotanical)
                return "macerated";
        }

        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (!leaf.Ingredient.Values.TryGetValue("strength", out var value) || value.Typical <= 0) continue;
            string own = leaf.Ingredient.IngredientKind.OrNone().Id;
            if (kind is not null && kind != own) return "";
            kind = own;
        }

        return kind ?? "";
    }
}
