namespace SpecLint.Science;

internal static class Polynomial
{
    /// <summary>c₀ + c₁x + c₂x² … by Horner's scheme.</summary>
    public static double At(ReadOnlySpan<double> c, double x)
    {
        var sum = 0.0;
        for (var i = c.Length - 1; i >= 0; i--)
            sum = (sum * x) + c[i];
        return sum;
    }

    /// <summary>The same with its derivative.</summary>
    public static double At(ReadOnlySpan<double> c, double x, out double slope)
    {
        var sum = 0.0;
        slope = 0;
        for (var i = c.Length - 1; i >= 0; i--)
        {
            slope = (slope * x) + sum;
            sum = (sum * x) + c[i];
        }

        return sum;
    }
}
