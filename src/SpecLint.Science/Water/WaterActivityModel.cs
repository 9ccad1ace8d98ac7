namespace SpecLint.Science;

/// <summary>
/// Water activity of a composition: the product (Ross) of the activities that each solute alone gives the water.
/// Sugars, polyols and acids by Norrish, ln a<sub>w</sub> = ln X<sub>w</sub> + K X<sub>s</sub>²; sodium chloride by Pitzer's equations, up to
/// saturation (more salt is crystals and lowers a<sub>w</sub> no further); ethanol by <see cref="EthanolActivity"/>; other salts by curves of their own,
/// up to saturation too. Insoluble solids, fat, protein and fibre count for nothing, so the answer errs to the wet side.
/// <para>Valid for 0 to 40 °C and a<sub>w</sub> from 0.50; below, and without water, null: <see cref="AtMost"/> gives a bound there.</para>
/// </summary>
[Source(Norrish)]
[Source(Ross)]
[Source(Pitzer)]
public static class WaterActivityModel
{
    internal const string Norrish =
        "R. S. Norrish, An equation for the activity coefficients and equilibrium relative humidities of water in confectionery "
        + "syrups, J. Food Technol. 1 (1966) 25; "
        + "constants of Chirife, Ferro Fontán and Benmergui, J. Food Technol. 15 (1980) 59, as commonly reprinted, from memory";

    internal const string Ross = "K. D. Ross, Estimation of water activity in intermediate moisture foods, Food Technology 29(3) (1975) 26";

    internal const string Pitzer =
        "K. S. Pitzer and G. Mayorga, J. Phys. Chem. 77 (1973) 2300: NaCl β0 0.0765, β1 0.2664, Cφ 0.00127; temperature coefficients of "
            + "Silvester and Pitzer 1978, from memory";

    /// <summary>Lowest answer of the model.</summary>
    public const double Lowest = 0.50;

    private const string Saturation = "CRC Handbook, sodium chloride in water: 26.3 % by mass at 0 °C, 26.4 % at 20 °C, 27.1 % at 60 "
        + "°C, from memory, as a parabola";

    internal const double MolarWater = 18.0153;
    internal const double MolarSalt = 58.443;

    /// <summary>Error for solutions of one solute.</summary>
    public static ModelError Error =>
        new(
            new(0.0003),
            0.01,
            Zero: 1,
            "1",
            0.75,
            1,
            "rms deviation from the osmotic coefficients of Robinson and Stokes for sucrose, NaCl and glycerol to 5.5 "
                + "mol/kg; 0.003 largest");

    /// <summary>Error for mixtures.</summary>
    public static ModelError MixtureError =>
        new(
            new(0.0005),
            0.04,
            Zero: 1,
            "1",
            0.75,
            1,
            "judged: Ross's product for mixed solutes is usually quoted as within 0.01; organic salts of sodium and potassium included");

    /// <summary>Water activity of a composition.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="t">Temperature, 0 to 40 °C.</param>
    /// <returns>Water activity of 0.50 or more; null below, without water, or outside the range.</returns>
    [Source(Norrish)]
    [Source(Ross)]
    [Source(Pitzer)]
    public static WaterActivity? Of(ReadOnlySpan<double> grams, Celsius t)
    {
        if (!Composition.IsValid(grams, out _) || t.Value is not (>= 0 and <= 40) || !(grams.Of(Component.Water) > 0))
            return null;
        var aw = Math.Exp(LogActivity(grams, t.Value));
        return aw >= Lowest ? new(aw) : null;
    }

    /// <summary>
    /// An upper bound that also holds for what is too dry for the model: <see cref="Of"/> where it answers, else 0.50.
    /// </summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="t">Temperature, 0 to 40 °C.</param>
    /// <returns>Water activity that is not exceeded but by the error of the model; null outside the temperatures or for an invalid composition.</returns>
    [Source(Norrish)]
    [Source(Ross)]
    public static WaterActivity? AtMost(ReadOnlySpan<double> grams, Celsius t) =>
        Composition.IsValid(grams, out _) && t.Value is >= 0 and <= 40 ? Of(grams, t) ?? new(Lowest) : null;

    /// <summary>Water activity of a brine of sodium chloride.</summary>
    /// <param name="salt">Molality, from 0 to saturation (6.15 mol/kg at 25 °C).</param>
    /// <param name="t">Temperature, 0 to 40 °C.</param>
    /// <returns>Water activity; null outside the range.</returns>
    [Source(Pitzer)]
    public static WaterActivity? OfBrine(MolesPerKilogramWater salt, Celsius t) =>
        t.Value is >= 0 and <= 40 && salt.Value >= 0 && salt.Value <= SaturatedSalt(t.Value) ? new(Math.Exp(-Brine(salt.Value, t.Value))) : null;

    /// <summary>Molality of a saturated solution of sodium chloride.</summary>
    /// <param name="t">Temperature, 0 to 40 °C.</param>
    /// <returns>mol/kg water; null outside the range.</returns>
    [Source(Saturation)]
    public static MolesPerKilogramWater? SaturatedBrine(Celsius t) => t.Value is >= 0 and <= 40 ? new(SaturatedSalt(t.Value)) : null;

    private static double SaturatedSalt(double t) => 6.10 + (0.0005 * t) + (6.5e-5 * t * t);

    internal static double LogActivity(ReadOnlySpan<double> grams, double t)
    {
        var water = grams.Of(Component.Water);
        var sum = -new Solutes(grams, SoluteTable.Room, stackalloc double[Solutes.Room]).LogActivity(water);
        if (grams.Of(Component.SodiumChloride) is > 0 and var salt)
            sum -= Brine(Math.Min(salt / MolarSalt * 1000 / water, SaturatedSalt(t)), t);
        if (grams.Of(Component.Ethanol) is > 0 and var ethanol)
            sum += EthanolActivity.LogActivityOfWater(ethanol / (ethanol + water), t + Celsius.ZeroInKelvin);
        return sum;
    }

    /// <summary>−ln aw of a brine by Pitzer's equations.</summary>
    internal static double Brine(double molality, double t)
    {
        // Debye–Hückel slope, kg½/mol½: 0.3767 at 0 °C, 0.3915 at 25 °C, 0.402 at 40 °C (Archer and Wang 1990, from memory, as a parabola).
        var slope = 0.3767 + (5.2e-4 * t) + (2.85e-6 * t * t);
        var dt = t - 25;
        var root = Math.Sqrt(molality);
        var b0 = 0.0765 + (7.159e-4 * dt);
        var b1 = 0.2664 + (7.005e-4 * dt);
        var c = 0.00127 - (1.054e-4 * dt);
        var osmotic = 1 - (slope * root / (1 + (1.2 * root))) + (molality * (b0 + (b1 * Math.Exp(-2 * root)))) + (molality * molality * c);
        return 2 * molality * MolarWater / 1000 * osmotic;
    }

    /// <summary>Norrish's K at 25 °C, natural logarithm.</summary>
    internal static double Constant(Component component) => component switch
    {
        Component.Sucrose => -6.47,
        // Allulose: as fructose.
        Component.Glucose or Component.Fructose or Component.Allulose => -2.25,
        Component.Lactose => -10.2,
        // Maltitol: as maltose.
        Component.Maltose or Component.Maltitol => -4.54,
        Component.Glycerol => -1.16,
        Component.Sorbitol => -1.65,
        Component.Xylitol => -1.66,
        Component.Erythritol => -1.34,
        Component.Citric => -6.17,
        Component.Malic => -1.82,
        Component.Tartaric => -4.68,
        Component.Lactic => -1.59,
        // No constant was found: Raoult's law. Acetic acid has one from its freezing points.
        Component.Acetic => 1.24,
        _ => 0,
    };

    /// <summary>Molar mass of a solute, g/mol; starch oligomers as of six units, other solids as a disaccharide, so that the bound is wet.</summary>
    internal static double MolarMass(Component component) => component switch
    {
        Component.Sucrose or Component.Lactose or Component.Maltose => 342.297,
        Component.Glucose or Component.Fructose or Component.Allulose => 180.156,
        Component.Dextrin => 990.9,
        Component.Glycerol => 92.094,
        Component.Sorbitol => 182.172,
        Component.Xylitol => 152.146,
        Component.Erythritol => 122.120,
        Component.Maltitol => 344.313,
        Component.Citric => 192.124,
        Component.Malic => 134.087,
        Component.Tartaric => 150.087,
        Component.Lactic => 90.078,
        Component.Acetic => 60.052,
        Component.Phosphoric => 97.995,
        Component.Succinic => 118.088,
        Component.Ascorbic => 176.124,
        Component.Oxalic => 90.034,
        Component.Fumaric => 116.072,
        Component.Quinic => 192.167,
        Component.Gluconic => 178.140,
        Component.Benzoic => 122.123,
        Component.Sorbic => 112.128,
        Component.CarbonDioxide => 44.0095,
        _ => 342.297,
    };
}
