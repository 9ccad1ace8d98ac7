using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

/// <summary>What a preparation can give at most.</summary>
internal static class Yields
{
    /// <summary>
    /// What went in, in the yield's own unit (g or mL), with what of it can be in the liquid at most; NaN where a part is not
    /// weighed.
    /// </summary>
    public static (double All, double Liquid, string Unit) Most(RecipeContext context, Prep prep)
    {
        var yield = prep.Yield.Value;
        string unit = yield.Dimension == Dimension.Mass ? "g" : "mL";
        double all = 0, liquid = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (!part.IsWeighed || part.Material is null) return (double.NaN, double.NaN, unit);
            double high = part.Grams.High;
            all += high;
            liquid += part.Phase == PartPhase.TakenOut ? high * Soluble(part.Material) : high;
        }

        if (yield.Dimension == Dimension.Mass) return (all, liquid, unit);

        // A volume: the liquid by its own density, what is solid by that of water.
        double volume = context.Profile.InputVolume, mass = context.Profile.InputMass;
        if (double.IsNaN(volume) || mass <= 0) return (double.NaN, double.NaN, unit);
        double per = volume / mass;
        return ((liquid * per) + (all - liquid), liquid * per, unit);
    }

    /// <summary>The yield that the recipe gives, as evidence.</summary>
    public static Evidence ProofOf(RecipeContext context, Prep prep) =>
        Proof.Of("yield", prep.Yield.Value, context.At(prep.Yield.Span));

    /// <summary>Volume that is made, mL: the yield, else the sum of the parts; NaN where it cannot be had.</summary>
    public static double Volume(RecipeContext context, Prep prep)
    {
        if (prep.Yield.IsGiven && prep.Yield.Value.Dimension == Dimension.Volume) return prep.Yield.Value.Base;
        if (prep.Yield.IsGiven && prep.Yield.Value.Dimension == Dimension.Mass)
        {
            var density = context.Fact(Fact.Density);
            return density.IsKnown && density.Value > 0 ? prep.Yield.Value.Base / density.Value : double.NaN;
        }

        var volume = context.Fact(Fact.MixVolume);
        return volume.IsKnown ? volume.Value : double.NaN;
    }

    private static double Soluble(Material material)
    {
        double sum = material.Of(Component.OtherDissolved);
        for (var c = Component.Water; c <= Components.LastSolute; c++) sum += material.Of(c);
        return Math.Min(1, sum);
    }
}
