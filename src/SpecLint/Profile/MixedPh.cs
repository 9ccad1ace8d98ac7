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
        double known = 0, weighted = 0, value = 0, low = double.PositiveInfinity, high = double.NegativeInfinity;
        string from = "";
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is not { } material) continue;

            // Water, sugar and spirit bring no acid and hold none: they change the pH of a juice little. An acid by itself makes nothing less
            // sour; how much more, the bounds do not say.
            if (RaisesNoPh(material))
            {
                known += part.Grams.Typical;
                continue;
            }

            var ph = PhOf(part, profile);
            if (double.IsNaN(ph.Typical)) continue;
            if (from.Length == 0) from = material.Id;
            known += part.Grams.Typical;
            weighted += part.Grams.Typical;
            value += part.Grams.Typical * ph.Typical;
            low = Math.Min(low, ph.Low);
            high = Math.Max(high, ph.High);
        }

        if (from.Length == 0 || known < MainShare.Value / 100 * profile.InputMass) return open;
        return new FactValue(value / weighted, low, high, from, null);
    }

    /// <summary>The pH of a part: of its file or its reading, else the bounds that its own parts give it; NaN where nothing does.</summary>
    private static Trace PhOf(Part part, RecipeProfile profile)
    {
        var own = part.Material!.Ph;
        return double.IsNaN(own.Typical)
            && part.Item is { ByProduct: null, File: Book.Prep inner }
            && profile.Set.TryBefore(inner, profile) is { IsSolid: false, Keeping.Ph: { IsKnown: true } bounds }
            ? new Trace(bounds.Value, bounds.Low, bounds.High)
            : own;
    }

    private static bool RaisesNoPh(Material material)
    {
        double neutral = material.Of(Component.Water) + material.Of(Component.Ethanol);
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) neutral += material.Of(c);
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) neutral += material.Of(c);
        return double.IsNaN(material.Ph.Typical) && (material.Unknown & ~Unknowns.Caffeine) == Unknowns.None && neutral > 0.999;
    }
}
