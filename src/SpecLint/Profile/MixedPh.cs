using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// Bounds of a pH that cannot be computed: a mixture is no sourer than its sourest part and no less sour than its least sour
/// one, so that a juice low in acid stays one when it is written in two lines or mixed with another. It clears nothing.
/// </summary>
internal static class MixedPh
{
    private static readonly Limit MainShare = Limits.Of("main-part-share");

    /// <summary>The bounds; <paramref name="open"/> where parts whose pH is known do not make up nearly all of it.</summary>
    /// <param name="profile">The preparation.</param>
    /// <param name="open">The open fact.</param>
    public static FactValue Of(RecipeProfile profile, FactValue open)
    {
        double known = 0, weighted = 0, low = double.PositiveInfinity, high = double.NegativeInfinity;
        string from = "";
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is not { } material) continue;

            // Water, sugar and spirit bring no acid and hold none: they change the pH of a juice little.
            if (IsNeutral(material))
            {
                known += part.Grams.Typical;
                continue;
            }

            if (double.IsNaN(material.Ph.Typical)) continue;
            if (from.Length == 0) from = material.Id;
            known += part.Grams.Typical;
            weighted += part.Grams.Typical;
            low = Math.Min(low, material.Ph.Low);
            high = Math.Max(high, material.Ph.High);
        }

        if (from.Length == 0 || known < MainShare.Value / 100 * profile.InputMass) return open;
        double value = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Mix && part.IsWeighed && part.Material is { } material && !IsNeutral(material) && !double.IsNaN(material.Ph.Typical)) value += part.Grams.Typical * material.Ph.Typical / weighted;
        }

        return new FactValue(value, low, high, from, null);
    }

    private static bool IsNeutral(Material material)
    {
        double neutral = material.Of(Component.Water) + material.Of(Component.Ethanol);
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) neutral += material.Of(c);
        return double.IsNaN(material.Ph.Typical) && (material.Unknown & ~Unknowns.Caffeine) == Unknowns.None && neutral > 0.999;
    }
}
