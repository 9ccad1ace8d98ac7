using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>How a drink is chilled and diluted.</summary>
public enum TechniqueKind
{
    /// <summary>Not known: the recipe has no method and no style that tells.</summary>
    Unknown,

    /// <summary>No ice touches it.</summary>
    NoIce,

    /// <summary>Shaken with ice.</summary>
    Shaken,

    /// <summary>Stirred with ice and strained.</summary>
    Stirred,

    /// <summary>Built on ice in the glass.</summary>
    Built,

    /// <summary>Thrown between vessels over ice.</summary>
    Thrown,

    /// <summary>Blended with ice.</summary>
    Blended,

    /// <summary>Swizzled with crushed ice.</summary>
    Swizzled,
}

/// <summary>Reads the technique off a method.</summary>
internal static class Techniques
{
    private static readonly HashSet<string> StrainVerbs = new(StringComparer.Ordinal)
    {
        "strain", "fine-strain", "double-strain", "filter", "sieve", "press", "squeeze", "spin", "centrifuge", "clarify", "rack", "decant", "skim",
    };

    private static readonly HashSet<string> BoilVerbs = new(StringComparer.Ordinal)
    {
        "boil", "simmer", "reduce", "evaporate", "cook-down",
    };

    private static readonly HashSet<string> DryVerbs = new(StringComparer.Ordinal) { "dry", "dehydrate" };

    private static readonly HashSet<string> TopVerbs = new(StringComparer.Ordinal) { "top", "top-up", "lengthen", "charge-glass" };

    private static readonly HashSet<string> FloatVerbs = new(StringComparer.Ordinal) { "float", "layer" };

    /// <summary>Whether a verb takes solids out.</summary>
    public static bool Strains(string verb) => StrainVerbs.Contains(verb);

    /// <summary>Whether a verb drives off water.</summary>
    public static bool BoilsDown(string verb) => BoilVerbs.Contains(verb);

    /// <summary>Whether a verb dries.</summary>
    public static bool Dries(string verb) => DryVerbs.Contains(verb);

    /// <summary>Whether a verb adds after the technique.</summary>
    public static bool Tops(string verb) => TopVerbs.Contains(verb) || FloatVerbs.Contains(verb);

    /// <summary>Whether a method has a step of such a verb.</summary>
    public static bool Has(Recipe recipe, Func<string, bool> verb)
    {
        foreach (var step in recipe.Method)
        {
            if (step.Do.IsGiven && verb(step.Do.Value)) return true;
        }

        return false;
    }

    /// <summary>The technique of a drink, with the step that decides it.</summary>
    public static (TechniqueKind Kind, Step? Step) Of(Drink drink)
    {
        Step? iced = null;
        var kind = TechniqueKind.NoIce;
        bool anyIce = false;
        foreach (var step in drink.Method)
        {
            if (!step.Do.IsGiven) continue;
            bool none = step.Ice.IsGiven && step.Ice.Value is "none" or "no ice" or "without";
            if (step.Ice.IsGiven && !none) anyIce = true;
            var found = step.Do.Value switch
            {
                "shake" or "hard-shake" or "wet-shake" => TechniqueKind.Shaken,
                "whip" or "whip-shake" => TechniqueKind.Shaken,
                "stir" or "stir-down" => TechniqueKind.Stirred,
                "throw" => TechniqueKind.Thrown,
                "blend" or "flash-blend" => TechniqueKind.Blended,
                "swizzle" => TechniqueKind.Swizzled,
                _ => TechniqueKind.NoIce,
            };
            if (found == TechniqueKind.NoIce || none) continue;

            // The first chilling step is the one that dilutes; a stir of sugar and bitters is not one.
            if (kind == TechniqueKind.NoIce && (found != TechniqueKind.Stirred || !IsDissolving(step)))
            {
                kind = found;
                iced = step;
            }
        }

        if (kind != TechniqueKind.NoIce)
        {
            // A built drink that is given a stir in its glass stays a built one.
            if (kind == TechniqueKind.Stirred && !iced!.Ice.IsGiven && BuildsFirst(drink)) return anyIce ? (TechniqueKind.Built, iced) : (TechniqueKind.NoIce, null);
            return (kind, iced);
        }

        foreach (var step in drink.Method)
        {
            if (step.Do.IsGiven && step.Do.Value is "build" or "pour" or "add-ice" or "ice" && step.Ice.IsGiven) return (TechniqueKind.Built, step);
        }

        if (anyIce) return (TechniqueKind.Built, null);
        return drink.Method.Count > 0 ? (TechniqueKind.NoIce, null) : (OfStyle(drink.Style.Or("")), null);
    }

    private static bool IsDissolving(Step step) => step.Until.IsGiven && step.Until.Value.IndexOf("dissol", StringComparison.OrdinalIgnoreCase) >= 0;

    private static bool BuildsFirst(Drink drink)
    {
        foreach (var step in drink.Method)
        {
            if (step.Do.IsGiven && step.Do.Value == "build") return true;
        }

        return false;
    }

    private static TechniqueKind OfStyle(string style)
    {
        if (style.StartsWith("shaken", StringComparison.Ordinal) || style.EndsWith("sour", StringComparison.Ordinal) || style is "flip" or "creamy" or "fizz") return TechniqueKind.Shaken;
        if (style.StartsWith("stirred", StringComparison.Ordinal)) return TechniqueKind.Stirred;
        if (style is "blended" or "frozen") return TechniqueKind.Blended;
        if (style is "hot" or "freezer" or "carbonated") return TechniqueKind.NoIce;
        return style.StartsWith("built", StringComparison.Ordinal) || style is "highball" or "old-fashioned" or "collins" or "rickey" or "spritz" ? TechniqueKind.Built : TechniqueKind.Unknown;
    }
}
