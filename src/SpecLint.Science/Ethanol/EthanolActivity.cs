namespace SpecLint.Science;

/// <summary>
/// Excess free energy of ethanol and water: G<sup>E</sup>/RT = x(1 − x) Σ<sub>k</sub> a<sub>k</sub>(T) (2x − 1)<sup>k</sup>,
/// x the mole fraction of ethanol, a<sub>k</sub> = α<sub>k</sub> + β<sub>k</sub>τ + γ<sub>k</sub>τ², τ = 298.15 K/T − 1.
/// From it the activity of water and the heat of mixing. Fitted to total pressures at 30 and 50 °C, to the freezing curve, and to the heat of
/// mixing at 25 °C. Valid for −20 to 50 °C where the mixture is liquid; null outside.
/// </summary>
[Source(Data)]
public static class EthanolActivity
{
    private const string Data =
        "Redlich–Kister form; total pressures of ethanol–water at 30 and 50 °C (Wichterle, Linek and Hála, Vapor–Liquid "
        + "Equilibrium Data Bibliography, Balcazar-Ortiz et al. 1979), "
        + "freezing points (CRC Handbook, 102nd ed. 2021), heat of mixing at 25 °C (J. A. Larkin, J. Chem. Thermodyn. 7 (1975) 137, from memory); own fit";

    private const double MolarWater = 18.0153;
    private const double MolarEthanol = 46.0684;
    private const double GasConstant = 8.314462;

    /// <summary>Error of the activity of water.</summary>
    public static ModelError Error =>
        new(
            new(0.0003),
            0.035,
            Zero: 1,
            "1",
            0.5,
            1,
            "freezing points from 1 to 30 % by mass: rms 3.3 % of what the activity is under 1, largest 4.8 %; total pressures at 30 "
                + "and 50 °C within 0.9 %");

    /// <summary>Activity of water in ethanol and water.</summary>
    /// <param name="ethanol">Mass fraction of ethanol, 0 to 1.</param>
    /// <param name="t">Temperature, −20 to 50 °C.</param>
    /// <returns>Water activity; null outside the range.</returns>
    [Source(Data)]
    public static WaterActivity? OfWater(MassFraction ethanol, Celsius t) =>
        ethanol.Value is >= 0 and <= 1 && t.Value is >= -20 and <= 50 ? new(Math.Exp(LogActivityOfWater(ethanol.Value, t.Kelvin))) : null;

    /// <summary>Molar enthalpy of mixing ethanol and water; negative: heat is given off.</summary>
    /// <param name="ethanol">Mass fraction of ethanol, 0 to 1.</param>
    /// <param name="t">Temperature, 0 to 50 °C.</param>
    /// <returns>J per mole of mixture; null outside the range.</returns>
    [Source(Data)]
    public static double? MixingEnthalpy(MassFraction ethanol, Celsius t) =>
        ethanol.Value is >= 0 and <= 1 && t.Value is >= 0 and <= 50 ? MolarEnthalpy(MoleFraction(ethanol.Value), t.Kelvin) : null;

    /// <summary>ln of the activity of water; the caller keeps to the range. −∞ for pure ethanol.</summary>
    internal static double LogActivityOfWater(double p, double kelvin)
    {
        if (p <= 0)
            return 0;
        if (p >= 1)
            return double.NegativeInfinity;
        var x = MoleFraction(p);
        var tau = (298.15 / kelvin) - 1;
        var z = (2 * x) - 1;
        double g = 0, slope = 0, power = 1, before = 0;
        for (var k = 0; k < 5; k++)
        {
            var a = Alpha[k] + (tau * (Beta[k] + (tau * Gamma[k])));
            g += a * power;
            slope += a * 2 * k * before;
            before = power;
            power *= z;
        }

        var product = x * (1 - x);
        // ln γ(water) = g − x dg/dx with g = x(1 − x) Σ
        return Math.Log(1 - x) + (product * g) - (x * (((1 - (2 * x)) * g) + (product * slope)));
    }

    /// <summary>Heat that grams of ethanol and water give off when they mix at a temperature (J, positive); the caller keeps to the range.</summary>
    internal static double HeatGivenOff(double ethanolGrams, double waterGrams, double kelvin)
    {
        var moles = (ethanolGrams / MolarEthanol) + (waterGrams / MolarWater);
        return moles > 0 ? -moles * MolarEnthalpy(ethanolGrams / MolarEthanol / moles, kelvin) : 0;
    }

    // H = −R T² d(G/RT)/dT
    private static double MolarEnthalpy(double x, double kelvin)
    {
        var ratio = 298.15 / kelvin;
        var tau = ratio - 1;
        var z = (2 * x) - 1;
        double sum = 0, power = 1;
        for (var k = 0; k < 5; k++)
        {
            sum += (Beta[k] + (2 * tau * Gamma[k])) * power;
            power *= z;
        }

        return GasConstant * 298.15 * x * (1 - x) * sum;
    }

    private static double MoleFraction(double p) => p / MolarEthanol / ((p / MolarEthanol) + ((1 - p) / MolarWater));

    private static ReadOnlySpan<double> Alpha => [1.1914797029, -0.3096849447, -0.0500680288, 0.1064066170, 0.0317637911];

    private static ReadOnlySpan<double> Beta => [-0.5102235421, 0.7090967488, -2.2845099845, 1.2117667499, 0.1873046579];

    private static ReadOnlySpan<double> Gamma => [0.2956813779, 2.3230647617, -1.9133709344, -15.4092233727, -26.0256273142];
}
