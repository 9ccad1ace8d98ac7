using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Works out several results of a composition at once; <see cref="double.NaN"/> is an open one.</summary>
internal delegate void Evaluator(ReadOnlySpan<double> grams, Span<double> results);

/// <summary>
/// First-order propagation of uncertainty (JCGM 100:2008, 5.1): each result's gradient by the masses, times the change
/// of the masses for one standard uncertainty of each input. Ranges of food are lopsided, so that each input is two half
/// normals; mean, variance and third moment of the sum give the ends of the range by the expansion of Cornish and Fisher
/// (E. A. Cornish, R. A. Fisher, Moments and cumulants in the specification of distributions, 1938, first term).
/// </summary>
internal static class Propagation
{
    /// <summary>Standard deviations to each side that hold about 95 %.</summary>
    public const double Coverage = 1.96;

    private const double RelativeStep = 1e-5;

    /// <summary>Mean of the positive half of a standard normal, counted over the whole: 1/√(2π).</summary>
    private const double HalfNormalMean = 0.398942280401;

    /// <summary>Third moment of the positive half: 2/√(2π).</summary>
    private const double HalfNormalThird = 0.797884560803;
    private const int MostResults = 12;

    /// <summary>Results with the ends of the range that holds about 95 %.</summary>
    /// <param name="mix">The composition.</param>
    /// <param name="evaluate">The results.</param>
    /// <param name="values">Receives the results.</param>
    /// <param name="low">Receives the low ends, at most the results.</param>
    /// <param name="high">Receives the high ends, at least the results.</param>
    public static void Run(Mix mix, Evaluator evaluate, Span<double> values, Span<double> low, Span<double> high)
    {
        int n = values.Length;
        Span<double> grams = stackalloc double[Components.Count];
        mix.Grams.CopyTo(grams);
        evaluate(grams, values);
        double step = Math.Max(mix.Total, 1e-9) * RelativeStep;
        Span<double> gradient = stackalloc double[Components.Count * MostResults];
        Span<double> shifted = stackalloc double[MostResults];
        shifted = shifted.Slice(0, n);
        for (int c = 0; c < Components.Count; c++)
        {
            if (!Varies(mix, c)) continue;
            double was = grams[c];
            grams[c] = was + step;
            evaluate(grams, shifted);
            grams[c] = was;
            for (int r = 0; r < n; r++) gradient[(r * Components.Count) + c] = (shifted[r] - values[r]) / step;
        }

        for (int r = 0; r < n; r++)
        {
            var slopes = gradient.Slice(r * Components.Count, Components.Count);
            double mean = 0, variance = 0, third = 0;
            foreach (var (input, change) in mix.Inputs)
            {
                double slope = 0;
                for (int c = 0; c < Components.Count; c++)
                {
                    if (change[c] != 0) slope += slopes[c] * change[c];
                }

                double rise = slope >= 0 ? slope * input.Up : -slope * input.Down;
                double fall = slope >= 0 ? slope * input.Down : -slope * input.Up;
                double m1 = (rise - fall) * HalfNormalMean;
                double m2 = ((rise * rise) + (fall * fall)) / 2;
                double m3 = ((rise * rise * rise) - (fall * fall * fall)) * HalfNormalThird;
                mean += m1;
                variance += m2 - (m1 * m1);
                third += m3 - (3 * m1 * m2) + (2 * m1 * m1 * m1);
            }

            double deviation = Math.Sqrt(Math.Max(0, variance));
            double skew = deviation > 0 ? third / (deviation * deviation * deviation) : 0;
            double shift = (((Coverage * Coverage) - 1) * skew / 6) * deviation;
            low[r] = Math.Min(values[r], values[r] + mean - (Coverage * deviation) + shift);
            high[r] = Math.Max(values[r], values[r] + mean + (Coverage * deviation) + shift);
        }
    }

    private static bool Varies(Mix mix, int component)
    {
        foreach (var (_, change) in mix.Inputs)
        {
            if (change[component] != 0) return true;
        }

        return false;
    }
}
