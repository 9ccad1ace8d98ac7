using System.Runtime.CompilerServices;
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
    [SkipLocalsInit]
    public static void Run(Mix mix, Evaluator evaluate, Span<double> values, Span<double> low, Span<double> high)
    {
        int n = values.Length;
        Span<double> grams = stackalloc double[Components.Count];
        mix.Grams.CopyTo(grams);
        evaluate(grams, values);
        double step = Math.Max(mix.Total, 1e-9) * RelativeStep;
        var inputs = mix.Inputs;
        ulong varying = 0;
        foreach (ref readonly var input in inputs) varying |= input.Input.Touches;

        // Slopes of all results by one component stand together.
        Span<double> gradient = stackalloc double[Components.Count * MostResults];
        for (int c = 0; varying != 0; c++, varying >>= 1)
        {
            if ((varying & 1) == 0) continue;
            double was = grams[c];
            grams[c] = was + step;
            var slopes = gradient.Slice(c * MostResults, n);
            evaluate(grams, slopes);
            grams[c] = was;
            for (int r = 0; r < slopes.Length; r++) slopes[r] = (slopes[r] - values[r]) / step;
        }

        Span<Moments> moments = stackalloc Moments[MostResults];
        moments = moments.Slice(0, n);
        moments.Clear();
        Span<double> slope = stackalloc double[MostResults];
        slope = slope.Slice(0, n);
        foreach (ref readonly var variation in inputs)
        {
            slope.Clear();
            ulong touched = variation.Input.Touches;
            double[] perGram = variation.Input.PerGram;
            for (int c = 0; touched != 0; c++, touched >>= 1)
            {
                if ((touched & 1) == 0) continue;
                double change = perGram[c] * variation.Scale;
                var slopes = gradient.Slice(c * MostResults, n);
                for (int r = 0; r < slope.Length && r < slopes.Length; r++) slope[r] += slopes[r] * change;
            }

            double up = variation.Input.Up, down = variation.Input.Down;
            for (int r = 0; r < slope.Length && r < moments.Length; r++) moments[r].Add(slope[r], up, down);
        }

        for (int r = 0; r < n; r++)
        {
            var (mean, variance, third) = moments[r];
            double deviation = Math.Sqrt(Math.Max(0, variance));
            double skew = deviation > 0 ? third / (deviation * deviation * deviation) : 0;
            double shift = (((Coverage * Coverage) - 1) * skew / 6) * deviation;
            low[r] = Math.Min(values[r], values[r] + mean - (Coverage * deviation) + shift);
            high[r] = Math.Max(values[r], values[r] + mean + (Coverage * deviation) + shift);
        }
    }

    /// <summary>Mean, variance and third central moment of a sum of independent inputs.</summary>
    private record struct Moments(double Mean, double Variance, double Third)
    {
        public void Add(double slope, double up, double down)
        {
            double rise = slope >= 0 ? slope * up : -slope * down;
            double fall = slope >= 0 ? slope * down : -slope * up;
            double m1 = (rise - fall) * HalfNormalMean;
            double m2 = ((rise * rise) + (fall * fall)) / 2;
            double m3 = ((rise * rise * rise) - (fall * fall * fall)) * HalfNormalThird;
            Mean += m1;
            Variance += m2 - (m1 * m1);
            Third += m3 - (3 * m1 * m2) + (2 * m1 * m1 * m1);
        }
    }
}
