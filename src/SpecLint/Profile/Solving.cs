using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Solves for the amount of some parts that brings a recipe to a target.</summary>
internal static class Solving
{
    private const double Most = 12;
    private const double WaterDensity = 0.9982;

    /// <summary>A number of a composition; NaN where it cannot be had.</summary>
    internal delegate double Measure(ReadOnlySpan<double> grams);

    /// <summary>g per 100 mL.</summary>
    public static readonly Measure SugarPerVolume = static grams => 100 * SugarOf(grams) / VolumeOf(grams);

    /// <summary>g per 100 g.</summary>
    public static readonly Measure SugarByMass = static grams => 100 * SugarOf(grams) / MassOf(grams);

    /// <summary>Titratable to pH 8.1 as anhydrous citric acid, g per 100 mL.</summary>
    public static readonly Measure AcidPerVolume = static grams => 100 * Titratable(grams) / VolumeOf(grams);

    /// <summary>Titratable to pH 8.1 as anhydrous citric acid, g per 100 g.</summary>
    public static readonly Measure AcidByMass = static grams => 100 * Titratable(grams) / MassOf(grams);

    /// <summary>% vol.</summary>
    public static readonly Measure Strength = static grams => Mixture.Abv(grams)?.Percent ?? double.NaN;

    /// <summary>°Brix.</summary>
    public static readonly Measure Brix = static grams => Mixture.Brix(grams)?.Value ?? double.NaN;

    /// <summary>Salt as NaCl, g per 100 mL.</summary>
    public static readonly Measure SaltPerVolume = static grams => 100 * SaltOf(grams) / VolumeOf(grams);

    /// <summary>Salt as NaCl, g per 100 g.</summary>
    public static readonly Measure SaltByMass = static grams => 100 * SaltOf(grams) / MassOf(grams);

    /// <summary>mL.</summary>
    public static readonly Measure Volume = static grams => VolumeOf(grams);

    /// <summary>
    /// What the parts that vary are to be multiplied by; NaN where nothing between 0 and 12 does it. A drink keeps its
    /// dilution in per cent of the mix.
    /// </summary>
    /// <param name="profile">The recipe.</param>
    /// <param name="varies">Which parts.</param>
    /// <param name="measure">The number to reach.</param>
    /// <param name="target">Its target.</param>
    public static double Factor(RecipeProfile profile, Func<Part, bool> varies, Measure measure, double target)
    {
        var varied = new double[Components.Count];
        foreach (var part in profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed || part.Material is null || !varies(part)) continue;
            for (int c = 0; c < varied.Length; c++) varied[c] += part.Material.PerGram[c] * part.Grams.Typical;
        }

        var trial = new double[Components.Count];
        double At(double k) => measure(Compose(profile, varied, k - 1, trial)) - target;

        // From one on outward, so that the nearest answer is taken.
        double here = At(1);
        if (double.IsNaN(here)) return double.NaN;
        if (here == 0) return 1;
        double down = Bracket(At, here, 1, 0.75), up = Bracket(At, here, 1, 1.35);
        if (double.IsNaN(down)) return up;
        if (double.IsNaN(up)) return down;
        return 1 - down <= up - 1 ? down : up;
    }

    /// <summary>A number of the recipe with some parts multiplied.</summary>
    public static double With(RecipeProfile profile, Func<Part, bool> varies, double factor, Measure measure)
    {
        var varied = new double[Components.Count];
        foreach (var part in profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed || part.Material is null || !varies(part)) continue;
            for (int c = 0; c < varied.Length; c++) varied[c] += part.Material.PerGram[c] * part.Grams.Typical;
        }

        return measure(Compose(profile, varied, factor - 1, new double[Components.Count]));
    }

    /// <summary>Sugars, g.</summary>
    public static double SugarOf(ReadOnlySpan<double> grams)
    {
        double sugar = 0;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugar += grams[(int)c];
        return sugar;
    }

    /// <summary>Titratable acidity to pH 8.1 as anhydrous citric acid, g; NaN where it cannot be had.</summary>
    public static double Titratable(ReadOnlySpan<double> grams) =>
        AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)?.Value ?? double.NaN;

    /// <summary>Organic acids and phosphoric acid, g.</summary>
    public static double AcidsOf(ReadOnlySpan<double> grams)
    {
        double acid = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) acid += grams[(int)c];
        return acid;
    }

    /// <summary>Salt as NaCl, g.</summary>
    public static double SaltOf(ReadOnlySpan<double> grams) => grams[(int)Component.SodiumChloride] + (grams[(int)Component.Sodium] * 2.542);

    /// <summary>Mass, g.</summary>
    public static double MassOf(ReadOnlySpan<double> grams)
    {
        double sum = 0;
        foreach (double g in grams) sum += g;
        return sum;
    }

    /// <summary>Volume at 20 °C, mL; NaN where it cannot be had.</summary>
    public static double VolumeOf(ReadOnlySpan<double> grams) => Mixture.Volume(grams, Celsius.Reference)?.Value ?? double.NaN;

    private static double[] Compose(RecipeProfile profile, double[] varied, double more, double[] trial)
    {
        profile.Grams.CopyTo(trial);
        for (int c = 0; c < trial.Length; c++) trial[c] = Math.Max(0, trial[c] + (more * varied[c]));
        if (profile.Chill is { } chill && !double.IsNaN(profile.InputVolume))
        {
            var mix = new double[Components.Count];
            profile.MixGrams.CopyTo(mix);
            for (int c = 0; c < mix.Length; c++) mix[c] = Math.Max(0, mix[c] + (more * varied[c]));
            double change = VolumeOf(mix) - profile.InputVolume;
            if (!double.IsNaN(change)) trial[(int)Component.Water] = Math.Max(0, trial[(int)Component.Water] + (chill.Ratio.Typical * change * WaterDensity));
        }

        return trial;
    }

    private static double Bracket(Func<double, double> at, double here, double from, double step)
    {
        double last = from, value = here;
        for (int i = 0; i < 24; i++)
        {
            double next = last * step;
            if (next < 0.02) next = 0;
            if (next > Most) return double.NaN;
            double there = at(next);
            if (double.IsNaN(there)) return double.NaN;
            if (Math.Sign(there) != Math.Sign(value)) return Halve(at, last, next, value);
            if (next == 0) return double.NaN;
            last = next;
            value = there;
        }

        return double.NaN;
    }

    private static double Halve(Func<double, double> at, double a, double b, double valueA)
    {
        for (int i = 0; i < 50; i++)
        {
            double middle = (a + b) / 2, value = at(middle);
            if (Math.Sign(value) == Math.Sign(valueA)) a = middle;
            else b = middle;
        }

        return (a + b) / 2;
    }
}
