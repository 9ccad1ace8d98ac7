using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Whether a preparation is a solid: powders and pieces that stay what they are, and what no model has the volume of.</summary>
internal static class Dryness
{
    /// <summary>
    /// Share of water from which on sugar that something was strained out of is a liquid: at 20 °C a third of water dissolves two thirds of
    /// sucrose (<see cref="SugarWater"/>).
    /// </summary>
    private const double LeastJuice = 1 / 3.0;

    /// <summary>Whether what is made is a solid, of which facts are given per 100 g.</summary>
    public static bool IsSolid(Prep prep, Mix mix, FixedList<Part> parts) =>
        prep.Family.OrNone().IsDry
        || (mix.Total > 0 && !HoldsUnweighedLiquid(parts) && (AreDry(parts, mix) || Mixture.Volume(mix.Grams, Celsius.Reference) is null));

    /// <summary>Whether a liquid, or a plant full of juice, is in it that nobody weighed: what it makes of the rest is then wet.</summary>
    private static bool HoldsUnweighedLiquid(FixedList<Part> parts)
    {
        foreach (var part in parts)
        {
            if (part is { Phase: PartPhase.Mix or PartPhase.TakenOut, IsWeighed: false, Material: { } material }
                && (material.State == MaterialState.Liquid || material.Of(Component.Water) > 0.5))
                return true;
        }

        return false;
    }

    /// <summary>
    /// Powders alone stay one, also where their crystals hold water; so do pieces that are more dry matter than water. What was strained out of
    /// them left its juice: where that dissolves the sugar, it is a syrup.
    /// </summary>
    private static bool AreDry(FixedList<Part> parts, Mix mix)
    {
        bool any = false, powder = true, strained = false;
        foreach (var part in parts)
        {
            strained |= part.Phase == PartPhase.TakenOut;
            powder &= part.Phase != PartPhase.TakenOut;
            if (part.Phase != PartPhase.Mix || !part.IsWeighed) continue;
            if (part.Material?.State is not (MaterialState.Powder or MaterialState.Solid)) return false;
            powder &= part.Material.State == MaterialState.Powder;
            any = true;
        }

        return any && (powder || mix.Of(Component.Water) + mix.Of(Component.Ethanol) < (strained ? LeastJuice : 0.5) * mix.Total);
    }
}
