using System.Numerics;
using System.Runtime.InteropServices;

namespace SpecLint.Science;

internal static class Composition
{
    /// <summary>Mass of a component, g.</summary>
    public static double Of(this ReadOnlySpan<double> grams, Component component) => grams[(int)component];

    /// <summary>True when the span has a finite mass of zero or more for every component, and some mass at all.</summary>
    public static bool IsValid(ReadOnlySpan<double> grams, out double total)
    {
        total = 0;
        if (grams.Length != Components.Count)
            return false;
        // Every model asks this first: several masses at a time, and no branch for each. NaN and ∞ show in the total.
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(grams);
        // A comparison of vectors is one instruction; their minimum is a dozen, for NaN and the two zeros.
        var sums = Vector<double>.Zero;
        var negative = Vector<long>.Zero;
        for (var v = 0; v < vectors.Length; v++)
        {
            sums += vectors[v];
            negative |= Vector.LessThan(vectors[v], Vector<double>.Zero);
        }

        for (var lane = 0; lane < Vector<double>.Count; lane++)
            total += sums[lane];
        var isNegative = negative != Vector<long>.Zero;
        for (var i = vectors.Length * Vector<double>.Count; i < grams.Length; i++)
        {
            total += grams[i];
            isNegative |= grams[i] < 0;
        }

        if (isNegative)
            return false;
        // Masses whose sum or square leaves the range of a double are no mixture.
        return total is > 1e-100 and < 1e100;
    }

    /// <summary>Mass of what is dissolved in the water: sugars, polyols, acids, salts and other solids, g.</summary>
    public static double Dissolved(ReadOnlySpan<double> grams)
    {
        var sum = grams[(int)Component.OtherDissolved];
        for (var i = (int)Components.FirstSolute; i <= (int)Components.LastSolute; i++)
            sum += grams[i];
        return sum;
    }
}
