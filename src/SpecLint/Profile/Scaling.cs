using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>A line of a scaled recipe.</summary>
/// <param name="Part">The line as it is.</param>
/// <param name="Exact">Its amount at the exact factor, mL, g or pieces.</param>
/// <param name="Rounded">The amount rounded to the step of the tool, mL, g or pieces.</param>
/// <param name="Text">The amount as it is written, without quotes.</param>
internal sealed record ScaledLine(Part Part, double Exact, double Rounded, string Text);

/// <summary>A recipe at another size.</summary>
/// <param name="Factor">What the amounts were multiplied by, before rounding.</param>
/// <param name="Lines">The lines that have an amount, in their order.</param>
/// <param name="Volume">mL: of a drink as served, per serve; of a preparation as made.</param>
/// <param name="Abv">Strength, % vol; NaN where open.</param>
/// <param name="Sugar">Sugar, g per 100 mL; NaN where open.</param>
/// <param name="Acid">Titratable acid, g per 100 mL; NaN where open.</param>
internal sealed record ScaledRecipe(double Factor, IReadOnlyList<ScaledLine> Lines, double Volume, double Abv, double Sugar, double Acid)
{
    /// <summary>The largest change of a line's share of the whole that rounding makes, as a share of it; lines under 2 % of the whole do not count.</summary>
    public double LargestDrift { get; internal init; }
}

/// <summary>
/// Scales a recipe to a volume. Every line keeps its ratio to every other but for the rounding to the steps of the bar's
/// tools; the factor is taken a little lower where that makes the rounded lines truer to the ratios. A drink keeps its
/// dilution in per cent of the mix.
/// </summary>
internal static class Scaling
{
    /// <summary>How far under the volume asked for the factor may go in search of true ratios; common practice, no source.</summary>
    private const double Slack = 0.06;

    private const double WaterDensity = 0.9982;

    /// <summary>Scales a drink to a volume in the glass, or a preparation to a volume made; <see langword="null"/> where its volume is open.</summary>
    /// <param name="profile">The recipe.</param>
    /// <param name="millilitres">The volume, mL; more than 0.</param>
    /// <param name="settings">Settings, for the steps of the tools.</param>
    public static ScaledRecipe? To(RecipeProfile profile, double millilitres, Settings settings)
    {
        var now = profile.Get(profile.Recipe is Drink ? Fact.ServedVolume : Fact.MixVolume);
        if (!now.IsKnown || !(now.Value > 0) || !(millilitres > 0)) return null;
        return By(profile, millilitres / now.Value, settings, millilitres < now.Value);
    }

    /// <summary>Multiplies every line; <see langword="null"/> where a line's amount cannot be read.</summary>
    /// <param name="profile">The recipe.</param>
    /// <param name="factor">The factor, more than 0.</param>
    /// <param name="settings">Settings, for the steps of the tools.</param>
    /// <param name="mayFallShort">Whether a factor up to 6 % lower may be taken for truer ratios.</param>
    public static ScaledRecipe? By(RecipeProfile profile, double factor, Settings settings, bool mayFallShort = false)
    {
        double best = factor, least = double.PositiveInfinity;
        for (int i = 0; i <= (mayFallShort ? 30 : 0); i++)
        {
            double trial = factor * (1 - (Slack * i / 30));
            double drift = Drift(profile, trial, settings) + (0.002 * i / 30);
            if (drift >= least - 1e-9) continue;
            least = drift;
            best = trial;
        }

        var lines = new List<ScaledLine>(profile.Parts.Count);
        foreach (var part in profile.Parts)
        {
            if (!part.Line.Amount.IsGiven) continue;
            var amount = part.Line.Amount.Value;
            double exact = amount.Base * best;
            double rounded = Keeps(part, amount) ? amount.Base : Rounding.ToStep(exact, amount, settings);
            lines.Add(new ScaledLine(part, exact, rounded, Rounding.Words(rounded, amount)));
        }

        double serves = profile.Recipe.ServesOrOne;
        var grams = Compose(profile, lines);
        bool open = (profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) != 0;
        double volume = Solving.VolumeOf(grams);
        return new ScaledRecipe(
            best,
            lines,
            open ? double.NaN : volume / serves,
            open ? double.NaN : Solving.Strength(grams),
            open ? double.NaN : Solving.SugarPerVolume(grams),
            open ? double.NaN : Solving.AcidPerVolume(grams))
        {
            LargestDrift = Drift(profile, best, settings),
        };
    }

    /// <summary>A garnish and a piece stay as they are.</summary>
    private static bool Keeps(Part part, Quantity amount) =>
        part.Line.Role is LineRole.Garnish or LineRole.Rim or LineRole.Rinse || amount.Dimension is not (Dimension.Volume or Dimension.Mass);

    private static double Drift(RecipeProfile profile, double factor, Settings settings)
    {
        double exactSum = 0, roundedSum = 0;
        foreach (var part in profile.Parts)
        {
            if (!Counts(part)) continue;
            var amount = part.Line.Amount.Value;
            exactSum += amount.Base * factor;
            roundedSum += Rounding.ToStep(amount.Base * factor, amount, settings);
        }

        double worst = 0;
        foreach (var part in profile.Parts)
        {
            if (!Counts(part)) continue;
            var amount = part.Line.Amount.Value;
            double share = amount.Base * factor / exactSum;
            if (share < 0.02) continue;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, settings) / roundedSum;
            worst = Math.Max(worst, Math.Abs(rounded - share) / share);
        }

        return worst;
    }

    private static bool Counts(Part part) =>
        part.Line.Amount.IsGiven && part.Phase is PartPhase.Mix or PartPhase.Top && part.Line.Amount.Value.Dimension is Dimension.Volume or Dimension.Mass;

    private static double[] Compose(RecipeProfile profile, List<ScaledLine> lines)
    {
        double[] mix = new double[Components.Count], tops = new double[Components.Count];
        foreach (var line in lines)
        {
            var part = line.Part;
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || part.Material is null || !part.IsWeighed) continue;
            double of = part.Grams.Typical * line.Rounded / part.Line.Amount.Value.Base;
            var to = part.Phase == PartPhase.Mix ? mix : tops;
            for (int c = 0; c < to.Length; c++) to[c] += part.Material.PerGram[c] * of;
        }

        if (profile.Chill is { } chill) mix[(int)Component.Water] += chill.Ratio.Typical * Solving.VolumeOf(mix) * WaterDensity;
        for (int c = 0; c < mix.Length; c++) mix[c] += tops[c];
        return mix;
    }
}
