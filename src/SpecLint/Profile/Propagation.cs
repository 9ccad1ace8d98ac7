using System.Numerics;
using System.Runtime.CompilerServices;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Works out several results with their slopes by the masses whose bits are set; <see cref="double.NaN"/> is an open one.</summary>
internal delegate void GradientEvaluator(ReadOnlySpan<double> grams, ulong wanted, Span<double> results, Gradient slopes);

/// <summary>Works out one result with its slopes by the masses whose bits are set; <see cref="double.NaN"/> is an open one.</summary>
internal delegate double SlopeEvaluator(ReadOnlySpan<double> grams, ulong wanted, Span<double> slopes);

/// <summary>
/// First-order propagation of uncertainty (JCGM 100:2008, 5.1): each result's gradient by the masses, times the change
/// of the masses for one standard uncertainty of each input. Ranges of food are lopsided, so that each input is two half
/// normals; mean, variance and third moment of the sum give the ends of the range by the expansion of Cornish and Fisher
/// (E. A. Cornish, R. A. Fisher, Moments and cumulants in the specification of distributions, 1938, first term).
/// Where a result bends (pH, water activity, freezing), <see cref="Through"/> works it out again at the two ends.
/// </summary>
internal static class Propagation
{
    /// <summary>Standard deviations to each side that hold about 95 %.</summary>
    public const double Coverage = 1.96;

    private const double RelativeStep = 1e-5;

    /// <summary>Results with the ends of the range that holds about 95 %.</summary>
    /// <param name="mix">The composition.</param>
    /// <param name="evaluate">The results with their slopes.</param>
    /// <param name="values">Receives the results.</param>
    /// <param name="low">Receives the low ends, at most the results.</param>
    /// <param name="high">Receives the high ends, at least the results.</param>
    [SkipLocalsInit]
    public static void Run(Mix mix, GradientEvaluator evaluate, Span<double> values, Span<double> low, Span<double> high)
    {
        int n = values.Length;
        var inputs = mix.Inputs;
        ulong varying = 0;
        foreach (ref readonly var input in inputs) varying |= input.Input.Changes.Touches;

        // Slopes of all results by one component stand together, several of them in one vector of the processor.
        int lanes = Gradient.LanesOf(n);
        Span<Vector<double>> gradient = stackalloc Vector<double>[Components.Count * lanes];
        var slopes = new Gradient(gradient, lanes);
        for (ulong left = varying; left != 0; left &= left - 1) slopes.Row(LowestBit(left)).Clear();
        evaluate(mix.Grams, varying, values, slopes);

        Span<int> rows = stackalloc int[Components.Count];
        Span<double> changes = stackalloc double[Components.Count];
        Span<Moments> moments = stackalloc Moments[lanes];
        moments.Clear();
        foreach (ref readonly var variation in inputs)
        {
            int count = 0;
            var masses = variation.Input.Changes.Values;
            for (ulong touched = variation.Input.Changes.Touches; touched != 0; touched &= touched - 1, count++)
            {
                rows[count] = LowestBit(touched) * lanes;
                changes[count] = masses[count] * variation.Scale;
            }

            var of = new InputMoments(variation.Input.Up, variation.Input.Down);
            Vector<double> mean = new(of.Mean), variance = new(of.Variance), third = new(of.Third);
            for (int l = 0; l < moments.Length; l++)
            {
                var slope = Vector<double>.Zero;
                for (int i = 0; i < count; i++) slope += gradient[rows[i] + l] * new Vector<double>(changes[i]);
                moments[l].Add(slope, mean, variance, third);
            }
        }

        for (int r = 0; r < n; r++)
        {
            ref readonly var of = ref moments[r / Vector<double>.Count];
            int lane = r % Vector<double>.Count;
            double mean = of.Mean[lane], deviation = Math.Sqrt(Math.Max(0, of.Variance[lane]));
            double skew = deviation > 0 ? of.Third[lane] / (deviation * deviation * deviation) : 0;
            double shift = (((Coverage * Coverage) - 1) * skew / 6) * deviation;
            low[r] = Math.Min(values[r], values[r] + mean - (Coverage * deviation) + shift);
            high[r] = Math.Max(values[r], values[r] + mean + (Coverage * deviation) + shift);
        }
    }

    /// <summary>
    /// One result that is not linear enough for its slope to tell its ends: the slopes only tell which inputs move together, and
    /// how far (the most probable point of first-order reliability, A. M. Hasofer and N. C. Lind, J. Eng. Mech. Div. 100 (1974) 111);
    /// the result itself is worked out at these two compositions, so that an end is a value the model gives.
    /// </summary>
    /// <param name="mix">The composition.</param>
    /// <param name="evaluate">The result.</param>
    /// <param name="slopes">The result with its slopes, where the model has them cheaper than by differences.</param>
    /// <returns>The value with its ends; an end is NaN where it lies outside the range of the model.</returns>
    public static Estimate Through(Mix mix, Solving.Measure evaluate, SlopeEvaluator? slopes = null)
    {
        Span<double> gradient = stackalloc double[Components.Count];
        Span<double> up = stackalloc double[Components.Count], down = stackalloc double[Components.Count];
        gradient.Clear();
        up.Clear();
        down.Clear();
        var inputs = mix.Inputs;
        ulong varying = 0;
        foreach (ref readonly var input in inputs) varying |= input.Input.Changes.Touches;
        var grams = mix.Grams;
        double value = slopes is null ? Differences(grams, varying, evaluate, gradient) : slopes(grams, varying, gradient);
        if (double.IsNaN(value)) return new Estimate(value, value, value);

        double upward = 0, downward = 0;
        foreach (ref readonly var variation in inputs)
        {
            double slope = 0;
            var changes = variation.Input.Changes.Values;
            int at = 0;
            for (ulong touched = variation.Input.Changes.Touches; touched != 0; touched &= touched - 1)
                slope += gradient[LowestBit(touched)] * changes[at++] * variation.Scale;

            // To raise the result an input goes up where its slope is positive, else down; each as far as its share of the variance.
            double rise = slope >= 0 ? variation.Input.Up : variation.Input.Down, fall = slope >= 0 ? variation.Input.Down : variation.Input.Up;
            upward += slope * rise * slope * rise;
            downward += slope * fall * slope * fall;
            at = 0;
            for (ulong touched = variation.Input.Changes.Touches; touched != 0; touched &= touched - 1)
            {
                int c = LowestBit(touched);
                double change = slope * changes[at++] * variation.Scale;
                up[c] += change * rise * rise;
                down[c] -= change * fall * fall;
            }
        }

        double high = End(grams, up, upward, evaluate), low = End(grams, down, downward, evaluate);
        return new Estimate(value, double.IsNaN(low) ? low : Math.Min(value, low), double.IsNaN(high) ? high : Math.Max(value, high));
    }

    /// <summary>
    /// A result, and its slopes by small differences of the masses. What bends is what is dissolved in water: the differences are small
    /// beside the liquid, of which oil may hold little.
    /// </summary>
    private static double Differences(ReadOnlySpan<double> grams, ulong varying, Solving.Measure evaluate, Span<double> gradient)
    {
        Span<double> moved = stackalloc double[Components.Count];
        grams.CopyTo(moved);
        double value = evaluate(moved), step = Math.Max(Liquid(grams), 1e-9) * RelativeStep;
        if (double.IsNaN(value)) return value;
        for (; varying != 0; varying &= varying - 1)
        {
            int c = LowestBit(varying);
            moved[c] = grams[c] + step;
            double result = evaluate(moved);
            moved[c] = grams[c];
            gradient[c] = double.IsNaN(result) ? 0 : (result - value) / step;
        }

        return value;
    }

    /// <summary>Mass of water, ethanol and what is dissolved, g.</summary>
    private static double Liquid(ReadOnlySpan<double> grams)
    {
        double sum = grams[(int)Component.OtherDissolved];
        for (var c = Component.Water; c <= Components.LastSolute; c++) sum += grams[(int)c];
        return sum;
    }

    private static double End(ReadOnlySpan<double> grams, ReadOnlySpan<double> direction, double variance, Solving.Measure evaluate)
    {
        Span<double> moved = stackalloc double[Components.Count];
        double factor = variance > 0 ? Coverage / Math.Sqrt(variance) : 0;
        for (int c = 0; c < moved.Length; c++) moved[c] = Math.Max(0, grams[c] + (factor * direction[c]));
        return evaluate(moved);
    }

    /// <summary>Number of the lowest bit that is set.</summary>
    internal static int LowestBit(ulong bits)
    {
#if NET
        return BitOperations.TrailingZeroCount(bits);
#else
        int bit = 0;
        for (; (bits & 1) == 0; bits >>= 1) bit++;
        return bit;
#endif
    }

    /// <summary>
    /// Mean, variance and third central moment of an input of two half normals, in powers of its unit: those of a result with a slope are these
    /// times the slope, its square and its cube.
    /// </summary>
    private readonly struct InputMoments
    {
        /// <summary>Mean of the positive half of a standard normal, counted over the whole: 1/√(2π).</summary>
        private const double HalfNormalMean = 0.398942280401;

        /// <summary>Third moment of the positive half: 2/√(2π).</summary>
        private const double HalfNormalThird = 0.797884560803;

        /// <param name="up">Standard uncertainty upward.</param>
        /// <param name="down">Standard uncertainty downward.</param>
        public InputMoments(double up, double down)
        {
            Mean = (up - down) * HalfNormalMean;
            double second = ((up * up) + (down * down)) / 2;
            Variance = second - (Mean * Mean);
            Third = (((up * up * up) - (down * down * down)) * HalfNormalThird) - (3 * Mean * second) + (2 * Mean * Mean * Mean);
        }

        public double Mean { get; }

        public double Variance { get; }

        public double Third { get; }
    }

    /// <summary>Mean, variance and third central moment of sums of independent inputs, of several results at once.</summary>
    private struct Moments
    {
        public Vector<double> Mean;
        public Vector<double> Variance;
        public Vector<double> Third;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Add(Vector<double> slope, Vector<double> mean, Vector<double> variance, Vector<double> third)
        {
            var square = slope * slope;
            Mean += slope * mean;
            Variance += square * variance;
            Third += square * slope * third;
        }
    }
}
