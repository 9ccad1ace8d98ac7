namespace SpecLint.Science;

/// <summary>Activity of ions in water and in water with ethanol.</summary>
[Source(
    "Grenthe, Plyasunov & Spahiu, Modelling in Aquatic Chemistry, NEA 1997, ch. IX, specific ion interaction theory; Malmberg & "
        + "Maryott, Dielectric constant of water from 0 to 100 °C, J. Res. NBS 56:1, 1956")]
public static class Electrolyte
{
    /// <summary>Lowest temperature of the constants, °C.</summary>
    public const double LowestCelsius = 0;

    /// <summary>Highest temperature of the constants, °C.</summary>
    public const double HighestCelsius = 50;

    /// <summary>Highest share of ethanol in the solvent that the shift of the constants was measured to, kg/kg of water and ethanol.</summary>
    public const double MostEthanol = 0.5;

    internal const double Ln10 = 2.302585092994045684;

    internal const double GasConstant = 8.314462618;

    // Ionic product of water at 25 °C, molal; ΔH and ΔCp chosen so that 0 to 50 °C agree with the table of Harned and Owen.
    private const double LnKw25 = -13.995 * Ln10;
    private const double WaterEnthalpy = 55815 / GasConstant;
    private const double WaterHeatCapacity = -224.6 / GasConstant;

    /// <summary>
    /// Debye–Hückel slope A (base 10, molal): 1.82483·10⁶ √ρ / (εT)^1.5, with ε of water
    /// 87.740 − 0.40008 t + 9.398·10⁻⁴ t² − 1.410·10⁻⁶ t³, lowered by ethanol by the factor 1 − 0.7125 w − 0.07 w².
    /// Null outside 0 to 50 °C or above 50 % of ethanol by mass in the solvent.
    /// </summary>
    /// <param name="t">Temperature.</param>
    /// <param name="ethanol">Share of ethanol in water and ethanol by mass.</param>
    [Source(
        "Malmberg & Maryott, J. Res. NBS 56:1, 1956, eq. 1; Åkerlöf, Dielectric constants of some organic solvent–water mixtures, J. "
            + "Am. Chem. Soc. 54:4125, 1932, table of ethanol (from memory)")]
    public static double? DebyeHuckelSlope(Celsius t, MassFraction ethanol) =>
        Covers(t) && ethanol.Value is >= 0 and <= MostEthanol ? Slope(t.Value, ethanol.Value) : null;

    /// <summary>
    /// Rise of every pKa by ethanol: 1.751 w + 1.62 w³, w the share of ethanol in water and ethanol by mass, concentrations per
    /// kilogram of that solvent. One curve for all acids and steps: at 12 % vol the measured shifts of lactic and of both steps
    /// of succinic acid lie within 0.03 of it. Null above w = 0.5.
    /// </summary>
    /// <param name="ethanol">Share of ethanol in water and ethanol by mass.</param>
    [Source(
        "Prenesti, Berto, Toso & Daniele, Acid-base chemistry of white wine, Sci. World J. 249041, 2012, table 4 (12 % vol); Grunwald & "
            + "Berkowitz, J. Am. Chem. Soc. 73:4939, 1951 (acetic acid, 20 to 50 % w/w, from memory)")]
    public static double? PkaShift(MassFraction ethanol) =>
        ethanol.Value is >= 0 and <= MostEthanol ? Shift(ethanol.Value) : null;

    /// <summary>
    /// Activity coefficient of an ion by the Debye–Hückel term of the specific ion interaction theory: log₁₀ γ = −A z² √I/(1 + 1.5 √I).
    /// What a medium adds, ε m of each counter-ion, stands in <see cref="AcidData"/>.
    /// Null for an ionic strength below 0 or above <see cref="AcidBase.MostIonicStrength"/> and outside 0 to 50 °C.
    /// </summary>
    /// <param name="charge">Charge number of the ion.</param>
    /// <param name="ionicStrength">Ionic strength.</param>
    /// <param name="t">Temperature.</param>
    public static double? ActivityCoefficient(int charge, MolesPerKilogramWater ionicStrength, Celsius t) =>
        Covers(t) && ionicStrength.Value is >= 0 and <= AcidBase.MostIonicStrength
            ? Math.Exp(-Ln10 * Slope(t.Value, 0) * charge * charge * DebyeHuckel(ionicStrength.Value))
            : null;

    /// <summary>pK of water at zero ionic strength, molal: 13.995 at 25 °C. Null outside 0 to 50 °C.</summary>
    /// <param name="t">Temperature.</param>
    [Source("Harned & Owen, The Physical Chemistry of Electrolytic Solutions, 3rd ed. 1958, ch. 15, ionic product of water (from memory)")]
    public static double? PkWater(Celsius t) => Covers(t) ? -LnKw(t) / Ln10 : null;

    internal static bool Covers(Celsius t) => t.Value is >= LowestCelsius and <= HighestCelsius;

    /// <summary>ε of the hydrogen ion with chloride, kg/mol (NEA 1992 and 2005).</summary>
    internal const double HydrogenChloride = 0.12;

    internal static double DebyeHuckel(double ionicStrength)
    {
        var root = Math.Sqrt(ionicStrength);
        return root / (1 + 1.5 * root);
    }

    /// <summary>10ˣ: by its series for the small exponents that interactions have in drinks.</summary>
    internal static double PowerOfTen(double x)
    {
        var y = x * Ln10;
        return y is > -0.1 and < 0.1 ? 1 + y * (1 + y * (0.5 + y * (1.0 / 6 + y * (1.0 / 24 + y * (1.0 / 120 + y * (1.0 / 720)))))) : Math.Exp(y);
    }

    internal static double Slope(double celsius, double ethanol)
    {
        var epsilon = (87.740 + celsius * (-0.40008 + celsius * (9.398e-4 - celsius * 1.410e-6))) * (1 - ethanol * (0.7125 + 0.07 * ethanol));
        var fromFour = celsius - 4;
        var density = (1 - 6e-6 * fromFour * fromFour) * (1 - 0.165 * ethanol);
        var product = epsilon * (celsius + Celsius.ZeroInKelvin);
        return 1.82483e6 * Math.Sqrt(density / product) / product;
    }

    internal static double Shift(double ethanol) => ethanol * (1.751 + 1.62 * ethanol * ethanol);

    internal static double LnKw(Celsius t)
    {
        var (u, v) = Terms(t.Kelvin);
        return LnKw25 + WaterEnthalpy * u + WaterHeatCapacity * v;
    }

    // ln K(T) − ln K(298.15 K).
    internal static double VanTHoff(double enthalpy, double heatCapacity, Celsius t)
    {
        var (u, v) = Terms(t.Kelvin);
        return (enthalpy * u + heatCapacity * v) / GasConstant;
    }

    internal static (double Enthalpy, double HeatCapacity) Terms(double kelvin)
    {
        const double T0 = 298.15;
        return (1 / T0 - 1 / kelvin, T0 / kelvin - 1 + Math.Log(kelvin / T0));
    }
}
