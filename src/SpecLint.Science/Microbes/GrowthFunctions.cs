namespace SpecLint.Science;

/// <summary>
/// The shapes that published growth models are made of: each gives the growth rate under one factor as a share of the rate
/// under its best value, or as the model's paper has it. All are 0 where the model has no growth; all are plain formulas, and the
/// range they hold in is that of the <see cref="GrowthModel"/> that uses them.
/// </summary>
[Source("Ross & Dalgaard, Secondary models, in McKellar & Lu (ed.), Modeling Microbial Responses in Food, 2004, ch. 3")]
public static class GrowthFunctions
{
    /// <summary>
    /// Cardinal-parameter function of order n: (x−max)(x−min)ⁿ / ((opt−min)ⁿ⁻¹ [(opt−min)(x−opt) − (opt−max)((n−1)opt + min − n x)]);
    /// 1 at the optimum, 0 at and beyond min and max. n = 2 for temperature and water activity, n = 1 for pH.
    /// Null when min &lt; opt &lt; max does not hold, or n is neither 1 nor 2.
    /// </summary>
    /// <param name="order">1 or 2.</param>
    /// <param name="x">The factor: °C, pH or water activity.</param>
    /// <param name="min">Least value with growth.</param>
    /// <param name="opt">Value of the fastest growth.</param>
    /// <param name="max">Greatest value with growth.</param>
    [Source("Rosso, Lobry, Bajard & Flandrois, Appl. Environ. Microbiol. 61:610, 1995, CTMI and CPM")]
    public static double? Cardinal(int order, double x, double min, double opt, double max)
    {
        if (order is not (1 or 2) || !(min < opt && opt < max) || double.IsNaN(x))
            return null;
        if (x <= min || x >= max)
            return 0;
        var power = order == 1 ? x - min : (x - min) * (x - min);
        var scale = order == 1 ? 1 : opt - min;
        return (x - max) * power / (scale * ((opt - min) * (x - opt) - (opt - max) * ((order - 1) * opt + min - order * x)));
    }

    /// <summary>Gamma factor of temperature: ((T − Tmin)/(Tref − Tmin))², 0 below Tmin. Above 1 over the reference. Null when reference ≤ min.</summary>
    /// <param name="x">Temperature, °C.</param>
    /// <param name="min">Tmin, °C.</param>
    /// <param name="reference">Temperature of the reference rate, °C.</param>
    [Source("Ratkowsky et al., J. Bacteriol. 149:1, 1982; Zwietering, de Wit & Notermans, Int. J. Food Microbiol. 30:55, 1996, gamma concept")]
    public static double? SquareRoot(double x, double min, double reference) =>
        !(min < reference) || double.IsNaN(x) ? null : x <= min ? 0 : Square((x - min) / (reference - min));

    /// <summary>Gamma factor, linear: (x − min)/(opt − min), 0 below min. Null when opt ≤ min.</summary>
    /// <param name="x">The factor.</param>
    /// <param name="min">Least value with growth.</param>
    /// <param name="opt">Value of the full rate.</param>
    [Source("Zwietering, de Wit & Notermans, Int. J. Food Microbiol. 30:55, 1996, gamma concept, water activity")]
    public static double? Linear(double x, double min, double opt) =>
        !(min < opt) || double.IsNaN(x) ? null : x <= min ? 0 : (x - min) / (opt - min);

    /// <summary>pH factor 1 − 10^(pHmin − pH), 0 below pHmin.</summary>
    /// <param name="ph">pH.</param>
    /// <param name="min">pHmin.</param>
    [Source("Presser, Ratkowsky & Ross, Appl. Environ. Microbiol. 63:2355, 1997; as used by Mejlholm & Dalgaard 2009")]
    public static double? HydrogenIon(double ph, double min) =>
        double.IsNaN(ph) || double.IsNaN(min) ? null : ph <= min ? 0 : 1 - Math.Pow(10, min - ph);

    /// <summary>Rate (b (T − Tmin)(1 − exp(c (T − Tmax))))², 0 outside Tmin to Tmax.</summary>
    /// <param name="x">Temperature, °C.</param>
    /// <param name="b">Slope, h^−½ K⁻¹.</param>
    /// <param name="c">Curvature below Tmax, 1/K.</param>
    /// <param name="min">Tmin, °C.</param>
    /// <param name="max">Tmax, °C.</param>
    [Source("Ratkowsky et al., J. Bacteriol. 154:1222, 1983, extended square-root model")]
    public static double? ExtendedSquareRoot(double x, double b, double c, double min, double max) =>
        !(min < max) || double.IsNaN(x) ? null : x <= min || x >= max ? 0 : Square(b * (x - min) * (1 - Math.Exp(c * (x - max))));

    /// <summary>
    /// Interaction of factors near the limits of growth: ψ = Σ φᵢ / (2 Πⱼ≠ᵢ (1 − φⱼ)). Infinite (no growth) when a φ reaches 1.
    /// Null when a φ is negative or not a number.
    /// </summary>
    /// <param name="phi">φ of each factor: 0 at its optimum, 1 at its limit.</param>
    [Source("Le Marc et al., Int. J. Food Microbiol. 73:219, 2002, eq. of ψ and ξ")]
    public static double? Psi(ReadOnlySpan<double> phi)
    {
        double psi = 0;
        for (var i = 0; i < phi.Length; i++)
        {
            if (!(phi[i] >= 0))
                return null;
            double product = 2;
            for (var j = 0; j < phi.Length; j++)
            {
                if (j != i)
                    product *= 1 - phi[j];
            }

            if (phi[i] >= 1 || product <= 0)
                return double.PositiveInfinity;
            psi += phi[i] / product;
        }

        return psi;
    }

    /// <summary>ξ of ψ: 1 to ψ = 0.5, then 2 (1 − ψ), 0 from ψ = 1. Null for a ψ that is no number.</summary>
    /// <param name="psi">ψ.</param>
    [Source("Le Marc et al., Int. J. Food Microbiol. 73:219, 2002, eq. of ψ and ξ")]
    public static double? Xi(double psi) => double.IsNaN(psi) ? null : psi <= 0.5 ? 1 : psi >= 1 ? 0 : 2 * (1 - psi);

    private static double Square(double x) => x * x;
}
