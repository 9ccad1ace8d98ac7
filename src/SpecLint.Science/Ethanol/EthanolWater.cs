namespace SpecLint.Science;

/// <summary>
/// Density and strength of mixtures of ethanol and water by the general formula of the international alcoholometric tables.
/// <para>
/// ρ(p, t) = A₁ + Σ A<sub>k</sub> p<sup>k−1</sup> + Σ B<sub>k</sub> (t − 20)<sup>k</sup>
/// + Σ<sub>i</sub> Σ<sub>k</sub> C<sub>i,k</sub> p<sup>k</sup> (t − 20)<sup>i</sup>, ρ in kg/m³, p the mass fraction of ethanol, t in °C.
/// </para>
/// Valid for −20 to 40 °C and 0 to 100 % by mass; outside it every member answers null. Below the freezing point of a mixture
/// the formula describes the supercooled liquid.
/// </summary>
[Source(Formula)]
public static class EthanolWater
{
    private const string Formula = "OIML, International Recommendation R 22: International alcoholometric tables, 1975, general formula and coefficients";

    /// <summary>Lowest temperature of the formula, °C.</summary>
    public const double LowestCelsius = -20;

    /// <summary>Highest temperature of the formula, °C.</summary>
    public const double HighestCelsius = 40;

    /// <summary>Density of pure ethanol at 20 °C by the formula, kg/m³.</summary>
    public const double PureDensityAt20 = 789.2393;

    /// <summary>Error of the density: largest deviation from the handbook tables at 20 °C, which print 0.1 kg/m³.</summary>
    public static ModelError DensityError =>
        new(new(0.09), 0, Zero: 998.2, "kg/m3", 789, 999, "rms deviation from the aqueous-solution table of the CRC Handbook, 102nd ed. 2021, at 20 °C");

    /// <summary>Error of a strength worked out from a density: that of the density, divided by the slope of the curve.</summary>
    public static ModelError StrengthError => new(new(0.0001), 0, Zero: 0, "1", 0, 1, "0.01 % vol: round trip and coefficients of the formula");

    private static ReadOnlySpan<double> A =>
    [
        998.20123, -192.9769495, 389.1238958, -1668.103923,
        13522.15441, -88292.78388, 306287.4042, -613838.1234,
        747017.2998, -547846.1354, 223446.0334, -39032.85426,
    ];

    private static ReadOnlySpan<double> B =>
    [
        -0.20618513, -0.0052682542, 3.6130013e-05, -3.8957702e-07,
        7.169354e-09, -9.9739231e-11,
    ];

    private static ReadOnlySpan<double> C1 =>
    [
        0.1693443461530087, -10.46914743455169, 71.96353469546523, -704.7478054272792,
        3924.090430035045, -12101.64659068747, 22486.46550400788, -26055.62982188164,
        18523.73922069467, -7420.201433430137, 1285.617841998974,
    ];

    private static ReadOnlySpan<double> C2 =>
    [
        -0.0119301300505701, 0.2517399633803461, -2.170575700536993, 13.53034988843029,
        -50.29988758547014, 109.635566657757, -142.2753946421155, 108.043594285623,
        -44.14153236817392, 7.442971530188783,
    ];

    private static ReadOnlySpan<double> C3 =>
    [
        -0.0006802995733503803, 0.01876837790289664, -0.2002561813734156, 1.02299296671922,
        -2.895696483903638, 4.810060584300675, -4.672147440794683, 2.458043105903461,
        -0.5411227621436812,
    ];

    private static ReadOnlySpan<double> C4 =>
    [
        4.075376675622027e-06, -8.76305857347111e-06, 6.515031360099368e-06, -1.51578483698721e-06,
    ];

    private static ReadOnlySpan<double> C5 =>
    [
        -2.788074354782409e-08, 1.345612883493354e-08,
    ];

    /// <summary>Density of a mixture of ethanol and water.</summary>
    /// <param name="ethanol">Mass fraction of ethanol, 0 to 1.</param>
    /// <param name="t">Temperature, −20 to 40 °C.</param>
    /// <returns>kg/m³; null outside the range.</returns>
    [Source(Formula)]
    public static KilogramsPerCubicMetre? Density(MassFraction ethanol, Celsius t) =>
        InRange(ethanol, t) ? new(Rho(ethanol.Value, t.Value)) : null;

    /// <summary>Strength by volume at 20 °C of a mixture given by mass: p ρ(p, 20 °C) / ρ(1, 20 °C).</summary>
    /// <param name="ethanol">Mass fraction of ethanol, 0 to 1.</param>
    /// <returns>Strength by volume; null outside 0 to 1.</returns>
    [Source(Formula)]
    public static AlcoholByVolume? AbvOf(MassFraction ethanol) =>
        ethanol.Value is >= 0 and <= 1 ? new(Abv(ethanol.Value)) : null;

    /// <summary>Mass fraction of ethanol of a mixture of the given strength at 20 °C, by a bracketed root of <see cref="AbvOf"/>.</summary>
    /// <param name="abv">Strength by volume, 0 to 1.</param>
    /// <returns>Mass fraction; null outside 0 to 1.</returns>
    [Source(Formula)]
    public static MassFraction? MassFractionOf(AlcoholByVolume abv)
    {
        if (abv.Value is not (>= 0 and <= 1))
            return null;
        // Newton steps inside a bracket that only shrinks: abv rises with mass fraction over the whole range.
        double low = 0, high = 1, p = abv.Value * (0.793 + (0.207 * abv.Value));
        var pure = PureRhoAt20;
        for (var i = 0; i < 60 && high - low > 1e-15; i++)
        {
            var rho = Polynomial.At(A, p, out var slope);
            var miss = (p * rho / pure) - abv.Value;
            if (Math.Abs(miss) < 1e-14)
                break;
            if (miss > 0)
                high = p;
            else
                low = p;
            var next = p - (miss * pure / (rho + (p * slope)));
            p = next > low && next < high ? next : (low + high) / 2;
        }

        return new(p);
    }

    /// <summary>Strength at 20 °C of a mixture of ethanol and water whose density was taken at a temperature.</summary>
    /// <param name="density">Density at <paramref name="t"/>, kg/m³.</param>
    /// <param name="t">Temperature of the density, −20 to 40 °C.</param>
    /// <returns>Strength; null when the density is none that a mixture has at that temperature.</returns>
    [Source(Formula)]
    public static AlcoholByVolume? AbvOfDensity(KilogramsPerCubicMetre density, Celsius t) =>
        MassFractionOfDensity(density, t) is { } p ? AbvOf(p) : null;

    /// <summary>Mass fraction of ethanol of a mixture whose density was taken at a temperature, by bisection.</summary>
    /// <param name="density">Density at <paramref name="t"/>, kg/m³.</param>
    /// <param name="t">Temperature of the density, −20 to 40 °C.</param>
    /// <returns>Mass fraction; null when the density is none that a mixture has at that temperature.</returns>
    [Source(Formula)]
    public static MassFraction? MassFractionOfDensity(KilogramsPerCubicMetre density, Celsius t)
    {
        if (!InRange(new(0), t))
            return null;
        double low = 0, high = 1;
        // A reading of pure water or pure ethanol may miss the end of the curve by its last digit.
        const double lastDigit = 0.005;
        if (!(density.Value <= Rho(low, t.Value) + lastDigit && density.Value >= Rho(high, t.Value) - lastDigit))
            return null;
        for (var i = 0; i < 52; i++)
        {
            var p = (low + high) / 2;
            if (Rho(p, t.Value) > density.Value)
                low = p;
            else
                high = p;
        }

        return new((low + high) / 2);
    }

    /// <summary>
    /// Contraction when ethanol and water of one temperature are mixed: the share of the sum of the two volumes that is lost.
    /// </summary>
    /// <param name="ethanol">Mass fraction of ethanol of the mixture, 0 to 1.</param>
    /// <param name="t">Temperature, −20 to 40 °C.</param>
    /// <returns>Share of the volumes' sum, 0 to about 0.036; null outside the range.</returns>
    [Source(Formula)]
    public static double? Contraction(MassFraction ethanol, Celsius t)
    {
        if (!InRange(ethanol, t))
            return null;
        var p = ethanol.Value;
        var apart = (p / Rho(1, t.Value)) + ((1 - p) / Rho(0, t.Value));
        return 1 - (1 / Rho(p, t.Value) / apart);
    }

    /// <summary>
    /// Volume and strength of two mixtures of ethanol and water poured together, all at 20 °C.
    /// </summary>
    /// <param name="volume1">Volume of the first, mL at 20 °C.</param>
    /// <param name="abv1">Its strength.</param>
    /// <param name="volume2">Volume of the second, mL at 20 °C.</param>
    /// <param name="abv2">Its strength.</param>
    /// <returns>Volume and strength at 20 °C; null for a strength outside 0 to 1 or no volume at all.</returns>
    [Source(Formula)]
    public static (Millilitres Volume, AlcoholByVolume Abv)? Mix(Millilitres volume1, AlcoholByVolume abv1, Millilitres volume2, AlcoholByVolume abv2)
    {
        if (MassFractionOf(abv1) is not { } p1 || MassFractionOf(abv2) is not { } p2 || !(volume1.Value >= 0 && volume2.Value >= 0))
            return null;
        var m1 = volume1.Value * Rho(p1.Value, 20) / 1000;
        var m2 = volume2.Value * Rho(p2.Value, 20) / 1000;
        if (!(m1 + m2 > 0) || double.IsInfinity(m1 + m2))
            return null;
        var p = ((m1 * p1.Value) + (m2 * p2.Value)) / (m1 + m2);
        return (new((m1 + m2) / Rho(p, 20) * 1000), new(Abv(p)));
    }

    /// <summary>Density of pure ethanol at 20 °C as the formula gives it, to the last digit; kg/m³.</summary>
    internal static readonly double PureRhoAt20 = Rho(1, 20);

    /// <summary>The formula itself; the caller keeps to the range.</summary>
    internal static double Rho(double p, double t)
    {
        if (t == 20)
            return Polynomial.At(A, p);
        var d = t - 20;
        // Powers of d gathered into one Horner scheme: each brings its own polynomial in p.
        var sum = B[5];
        sum = (sum * d) + B[4] + (p * Polynomial.At(C5, p));
        sum = (sum * d) + B[3] + (p * Polynomial.At(C4, p));
        sum = (sum * d) + B[2] + (p * Polynomial.At(C3, p));
        sum = (sum * d) + B[1] + (p * Polynomial.At(C2, p));
        sum = (sum * d) + B[0] + (p * Polynomial.At(C1, p));
        return (sum * d) + Polynomial.At(A, p);
    }

    /// <summary>Density at 20 °C with its slope by the mass fraction; the caller keeps to the range.</summary>
    internal static double RhoAt20(double p, out double slope) => Polynomial.At(A, p, out slope);

    private static double Abv(double p) => p * Rho(p, 20) / PureRhoAt20;

    private static bool InRange(MassFraction ethanol, Celsius t) =>
        ethanol.Value is >= 0 and <= 1 && t.Value is >= LowestCelsius and <= HighestCelsius;
}
