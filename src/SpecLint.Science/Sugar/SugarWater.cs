namespace SpecLint.Science;

/// <summary>
/// Sucrose in water: density, °Brix, concentration and refraction.
/// <para>
/// Density: ρ(w, t) = ρ<sub>w</sub>(t) + Σ<sub>k</sub> Σ<sub>i</sub> b<sub>k,i</sub> w<sup>i</sup> ((t − 20)/100)<sup>k</sup>, ρ in kg/m³,
/// w the mass fraction of sucrose, t in °C, ρ<sub>w</sub> the density of water as a ratio of polynomials.
/// Valid for 0 to 80 °C and 0 to 80 % by mass; outside it every member answers null.
/// </para>
/// </summary>
[Source(DensityFormula)]
public static class SugarWater
{
    private const string DensityFormula =
        "ICUMSA, Specification and Standard SPS-4: Densimetry and tables, 1990/1998, formula for pure sucrose solutions; "
        + "coefficients as used by S. Llano, dissertation code of a sugar crystalliser, 2005";

    private const string Refraction =
        "CRC Handbook of Chemistry and Physics, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions (Wolf 1966), sucrose, n(D, 20 °C): "
        + "fit of n − n(water) by w, w², w³, w⁴, largest deviation 0.00005";

    /// <summary>Highest mass fraction of sucrose for density and refraction.</summary>
    public const double HighestMassFraction = 0.80;

    /// <summary>Refractive index of water at 20 °C for the sodium D line.</summary>
    public const double WaterRefractiveIndex = 1.33299;

    /// <summary>Error of the density.</summary>
    public static ModelError DensityError =>
        new(
            new(0.1),
            0,
            Zero: 998.2,
            "kg/m3",
            998,
            1290,
            "rms deviation from the aqueous-solution table of the CRC Handbook, 102nd ed. 2021, at 20 °C, 2 to 60 %");

    /// <summary>Error of °Brix from a refractive index.</summary>
    public static ModelError RefractiveBrixError =>
        new(new(0.03), 0, Zero: 0, "%", 0, 80, "largest deviation from n(D) of the CRC Handbook, 102nd ed. 2021, which prints four decimals");

    private static ReadOnlySpan<double> B0 => [0, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289];

    private static ReadOnlySpan<double> B1 => [0, -46.272, -7.172, 1.1597, 5.1126, 17.5254];

    private static ReadOnlySpan<double> B2 => [0, 59.7712, 7.2491, 12.363, -35.4791];

    private static ReadOnlySpan<double> B3 => [0, -47.2207, -21.6977, 27.6301];

    private static ReadOnlySpan<double> B4 => [0, 18.3184, 12.3081];

    private static ReadOnlySpan<double> WaterNumerator => [999.83952, 16.952577, -0.0079905127, -4.6241757e-5, 1.0584601e-7, -2.8103006e-10];

    private static ReadOnlySpan<double> N => [0, 0.1429919705, 0.0529055199, 0.0203626639, -0.0026062962];

    /// <summary>Density of a solution of sucrose in water.</summary>
    /// <param name="sucrose">Mass fraction of sucrose, 0 to 0.80.</param>
    /// <param name="t">Temperature, 0 to 80 °C.</param>
    /// <returns>kg/m³; null outside the range.</returns>
    [Source(DensityFormula)]
    public static KilogramsPerCubicMetre? Density(MassFraction sucrose, Celsius t) =>
        InRange(sucrose.Value, t) ? new(Rho(sucrose.Value, t.Value)) : null;

    /// <summary>Sucrose per litre of solution at 20 °C: °Brix/100 × ρ(20 °C).</summary>
    /// <param name="brix">°Brix, 0 to 80.</param>
    /// <returns>g/L at 20 °C; null outside the range.</returns>
    [Source(DensityFormula)]
    public static GramsPerLitre? GramsPerLitre(DegreesBrix brix) =>
        InRange(brix.Value / 100, Celsius.Reference) ? new(brix.Value / 100 * Rho(brix.Value / 100, 20)) : null;

    /// <summary>°Brix of a solution of the given density at 20 °C.</summary>
    /// <param name="density">kg/m³ at 20 °C.</param>
    /// <returns>°Brix; null when no solution of 0 to 80 % has that density.</returns>
    [Source(DensityFormula)]
    public static DegreesBrix? BrixOf(KilogramsPerCubicMetre density) => BrixOf(density, Celsius.Reference);

    /// <summary>°Brix of a solution whose density was taken at a temperature, by bisection.</summary>
    /// <param name="density">kg/m³ at <paramref name="t"/>.</param>
    /// <param name="t">Temperature of the density, 0 to 80 °C.</param>
    /// <returns>°Brix; null when no solution of 0 to 80 % has that density at that temperature.</returns>
    [Source(DensityFormula)]
    public static DegreesBrix? BrixOf(KilogramsPerCubicMetre density, Celsius t)
    {
        if (!InRange(0, t))
            return null;
        double low = 0, high = HighestMassFraction;
        const double lastDigit = 0.005;
        if (!(density.Value >= Rho(low, t.Value) - lastDigit && density.Value <= Rho(high, t.Value) + lastDigit))
            return null;
        for (var i = 0; i < 50; i++)
        {
            var w = (low + high) / 2;
            if (Rho(w, t.Value) < density.Value)
                low = w;
            else
                high = w;
        }

        return new((low + high) / 2 * 100);
    }

    /// <summary>Refractive index (sodium D line) of a sucrose solution at 20 °C.</summary>
    /// <param name="brix">°Brix, 0 to 80.</param>
    /// <returns>Refractive index; null outside the range.</returns>
    [Source(Refraction)]
    public static double? RefractiveIndexOf(DegreesBrix brix) =>
        InRange(brix.Value / 100, Celsius.Reference) ? Index(brix.Value / 100) : null;

    /// <summary>°Brix that a refractometer shows for a refractive index at 20 °C.</summary>
    /// <param name="refractiveIndex">Refractive index (sodium D line) at 20 °C, 1.33299 to that of 80 °Brix.</param>
    /// <returns>°Brix; null outside the range.</returns>
    [Source(Refraction)]
    public static DegreesBrix? BrixOfRefractiveIndex(double refractiveIndex)
    {
        double low = 0, high = HighestMassFraction;
        if (!(refractiveIndex >= Index(low) - 5e-6 && refractiveIndex <= Index(high) + 5e-6))
            return null;
        for (var i = 0; i < 50; i++)
        {
            var w = (low + high) / 2;
            if (Index(w) < refractiveIndex)
                low = w;
            else
                high = w;
        }

        return new((low + high) / 2 * 100);
    }

    /// <summary>Mass fraction of sucrose of a saturated solution: see <see cref="SolubilityModel"/>.</summary>
    /// <param name="t">Temperature, 0 to 100 °C.</param>
    /// <returns>Mass fraction; null outside the range.</returns>
    [Source(SolubilityModel.SucroseSource)]
    public static MassFraction? Solubility(Celsius t) => SolubilityModel.Of(Component.Sucrose, t);

    /// <summary>Density of water of the same formula, 0 to 80 °C; kg/m³.</summary>
    internal static double WaterRho(double t) => Polynomial.At(WaterNumerator, t) / (1 + (0.016887236 * t));

    private static readonly double WaterRhoAt20 = WaterRho(20);

    internal static double Rho(double w, double t)
    {
        var excess = Polynomial.At(B0, w);
        if (t != 20)
        {
            var d = (t - 20) / 100;
            excess += d * (Polynomial.At(B1, w) + (d * (Polynomial.At(B2, w) + (d * (Polynomial.At(B3, w) + (d * Polynomial.At(B4, w)))))));
        }

        return WaterRho(t) + excess;
    }

    /// <summary>Apparent specific volume of sucrose in its water, mL/g; at vanishing sugar its limit.</summary>
    internal static double ApparentVolume(double w, double t)
    {
        var water = t == 20 ? WaterRhoAt20 : WaterRho(t);
        var d = (t - 20) / 100;
        // (ρ − ρw)/w, so that the division by a small w is done by hand: φ = (1 − (ρ − ρw)(1 − w)/(w ρw)… )/ρ.
        var slope = Over(B0, w);
        if (t != 20)
            slope += d * (Over(B1, w) + (d * (Over(B2, w) + (d * (Over(B3, w) + (d * Over(B4, w)))))));
        var rho = water + (slope * w);
        // 1/ρ = (1 − w)/ρw + w φ  ⇒  φ = 1/ρw − slope/(ρ ρw)
        return 1000 * ((1 / water) - (slope / (rho * water)));
    }

    private static double Over(ReadOnlySpan<double> b, double w) => Polynomial.At(b.Slice(1), w);

    private static double Index(double w) => WaterRefractiveIndex + Polynomial.At(N, w);

    private static bool InRange(double w, Celsius t) => w is >= 0 and <= HighestMassFraction && t.Value is >= 0 and <= 80;
}
