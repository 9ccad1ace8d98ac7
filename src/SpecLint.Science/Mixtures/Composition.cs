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
        // Every model asks this first: no branch for each mass, and sums that do not wait for each other. NaN and ∞ show in the total.
        double first = 0, second = 0, least = 0, leastOfSecond = 0;
        var i = 0;
        for (; i + 1 < grams.Length; i += 2)
        {
            var (a, b) = (grams[i], grams[i + 1]);
            first += a;
            second += b;
            least = a < least ? a : least;
            leastOfSecond = b < leastOfSecond ? b : leastOfSecond;
        }

        if (i < grams.Length)
        {
            first += grams[i];
            least = grams[i] < least ? grams[i] : least;
        }

        total = first + second;
        if (least < 0 || leastOfSecond < 0)
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
