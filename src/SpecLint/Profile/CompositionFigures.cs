using System.Numerics;
using System.Runtime.InteropServices;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// The figures that follow from masses and volume, with their slopes. Most are a sum of masses, each by a constant, over the volume: such a sum
/// has constant slopes, which are taken from the models once. What is left is the volume and °Brix, whose slopes <see cref="Mixture"/> gives.
/// </summary>
internal static class CompositionFigures
{
    /// <summary>Places of the figures: mL; % vol; g per 100 mL or 100 g (sugar to salt); g/mL; g; kcal; %; 1.</summary>
    public const int Volume = 0, Abv = 1, Sugar = 2, Acid = 3, Analysed = 4, Density = 5, Salt = 6, Ethanol = 7, Energy = 8, Brix = 9, Ratio = 10, Count = 11;

    // Row c holds by how much a gram of component c raises the sum behind each figure; rows are padded to whole vectors.
    private static readonly double[] Raises = MakeRaises();

    /// <summary>All figures of a liquid.</summary>
    public static readonly GradientEvaluator OfLiquid = EvaluateLiquid;

    /// <summary>All figures of a solid: those over the volume are per 100 g, those of a liquid alone are NaN.</summary>
    public static readonly GradientEvaluator OfSolid = EvaluateSolid;

    private const double EthanolVolume = 1 / FoodEnergyModel.EthanolGramsPerMillilitre;

    /// <summary>One figure of a liquid with its range.</summary>
    /// <param name="mix">The liquid.</param>
    /// <param name="figure">Place of the figure.</param>
    public static Estimate OfLiquidOne(Mix mix, int figure)
    {
        Span<double> v = stackalloc double[Count], low = stackalloc double[Count], high = stackalloc double[Count];
        Propagation.Run(mix, OfLiquid, v, low, high);
        return new Estimate(v[figure], low[figure], high[figure]);
    }

    private static void EvaluateLiquid(ReadOnlySpan<double> grams, ulong wanted, Span<double> r, Gradient slopes)
    {
        Span<double> byVolume = stackalloc double[Components.Count], byBrix = stackalloc double[Components.Count];
        var measures = Mixture.MeasureWithSlopes(grams, wanted, byVolume, byBrix);
        double volume = measures?.Volume.Value ?? double.NaN;
        Evaluate(grams, r, volume);
        double total = 0;
        foreach (double g in grams) total += g;
        r[Volume] = volume;
        r[Abv] = measures?.Abv.Percent ?? double.NaN;
        r[Density] = total / volume;
        r[Brix] = measures?.Brix?.Value ?? double.NaN;
        SetSlopes(r, volume, byVolume, wanted, slopes);
        if (measures?.Brix is not null) slopes.Fill(Brix, wanted, byBrix);
    }

    private static void EvaluateSolid(ReadOnlySpan<double> grams, ulong wanted, Span<double> r, Gradient slopes)
    {
        double total = 0;
        foreach (double g in grams) total += g;
        Evaluate(grams, r, total);
        r[Volume] = r[Abv] = r[Density] = r[Brix] = double.NaN;
        Span<double> byTotal = stackalloc double[Components.Count];
        byTotal.Fill(1);
        SetSlopes(r, total, byTotal, wanted, slopes);
    }

    /// <summary>Figures that are alike per 100 mL of a liquid and per 100 g of a solid.</summary>
    private static void Evaluate(ReadOnlySpan<double> grams, Span<double> r, double basis)
    {
        double sugar = Solving.SugarOf(grams), titratable = TitratableOf(grams);
        r[Sugar] = 100 * sugar / basis;
        r[Acid] = 100 * titratable / basis;
        r[Analysed] = 100 * (Solving.AcidsOf(grams) - grams[(int)Component.Phosphoric]) / basis;
        r[Salt] = 100 * Solving.SaltOf(grams) / basis;
        r[Ethanol] = grams[(int)Component.Ethanol];
        r[Energy] = FoodEnergyModel.Of(grams)?.Kilocalories ?? double.NaN;
        r[Ratio] = titratable > 1e-9 ? sugar / titratable : double.NaN;
    }

    /// <summary>Titratable acidity as anhydrous citric acid, g; negative above the end point, so that what the acid may come to is seen there too.</summary>
    private static double TitratableOf(ReadOnlySpan<double> grams) =>
        (AcidBase.Equivalents(grams, Titration.JuiceEndPoint) ?? double.NaN) * Titration.GramsPerEquivalent(TitrationBasis.CitricAnhydrous);

    /// <summary>A figure f s/b, of a sum s over a basis b, moves with a mass by (f s′ − r b′)/b.</summary>
    private static void SetSlopes(ReadOnlySpan<double> r, double basis, ReadOnlySpan<double> byBasis, ulong wanted, Gradient slopes)
    {
        int lanes = slopes.Lanes;
        Span<Vector<double>> bySum = stackalloc Vector<double>[lanes], byOwn = stackalloc Vector<double>[lanes];
        bySum.Clear();
        byOwn.Clear();
        Span<double> factor = MemoryMarshal.Cast<Vector<double>, double>(bySum), share = MemoryMarshal.Cast<Vector<double>, double>(byOwn);
        foreach (int figure in (ReadOnlySpan<int>)[Abv, Sugar, Acid, Analysed, Salt, Density])
        {
            factor[figure] = (figure == Density ? 1 : 100) / basis;
            share[figure] = r[figure] / basis;
        }

        factor[Ethanol] = factor[Energy] = 1;
        share[Volume] = -1;
        double sugar = r[Sugar] * basis / 100, titratable = r[Acid] * basis / 100;
        for (; wanted != 0; wanted &= wanted - 1)
        {
            int c = Propagation.LowestBit(wanted);
            var raises = Raises.AsSpan(c * lanes * Vector<double>.Count, lanes * Vector<double>.Count);
            var sums = MemoryMarshal.Cast<double, Vector<double>>(raises);
            var row = slopes.Row(c);
            var basisMoves = new Vector<double>(byBasis[c]);
            for (int l = 0; l < row.Length; l++) row[l] = (bySum[l] * sums[l]) - (byOwn[l] * basisMoves);
            slopes.Of(c)[Ratio] = titratable > 1e-9 ? (raises[Sugar] - (sugar / titratable * raises[Acid])) / titratable : double.NaN;
        }
    }

    private static double[] MakeRaises()
    {
        int width = Gradient.LanesOf(Count) * Vector<double>.Count;
        var raises = new double[Components.Count * width];
        Span<double> one = stackalloc double[Components.Count];
        for (int c = 0; c < Components.Count; c++)
        {
            one.Clear();
            one[c] = 1;
            var row = raises.AsSpan(c * width, width);
            row[Abv] = one[(int)Component.Ethanol] * EthanolVolume;
            row[Sugar] = Solving.SugarOf(one);
            row[Acid] = TitratableOf(one);
            row[Analysed] = Solving.AcidsOf(one) - one[(int)Component.Phosphoric];
            row[Density] = 1;
            row[Salt] = Solving.SaltOf(one);
            row[Ethanol] = one[(int)Component.Ethanol];
            row[Energy] = FoodEnergyModel.Of(one)?.Kilocalories ?? 0;
        }

        return raises;
    }
}
