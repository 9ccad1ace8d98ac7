namespace SpecLint.Science;

/// <summary>Carbon dioxide in a liquid in volumes of gas (0 °C, 1 atm) per volume of liquid; one volume is 1.977 g/L.</summary>
/// <param name="Value">L/L.</param>
public readonly record struct GasVolumes(double Value)
{
    /// <summary>Mass of one volume a litre, g.</summary>
    public const double GramsPerLitrePerVolume = 1.977;

    /// <summary>The same in g/L.</summary>
    public double GramsPerLitre => Value * GramsPerLitrePerVolume;
}

/// <summary>What a closed live ferment comes to when its residual sugar is gone.</summary>
/// <param name="AddedVolumes">Carbon dioxide made, volumes per volume of liquid.</param>
/// <param name="AddedAbv">Ethanol made.</param>
/// <param name="AbsolutePressure">Pressure of carbon dioxide in the closed vessel, bar absolute, headspace counted.</param>
/// <param name="GaugePressure">The same over the air outside (1.013 bar), plus the air that was shut in: what a gauge shows, bar.</param>
public readonly record struct LiveFerment(GasVolumes AddedVolumes, AlcoholByVolume AddedAbv, Bar AbsolutePressure, Bar GaugePressure);

/// <summary>
/// Carbon dioxide in drinks by Henry's law: c = k<sub>w</sub>(t) φ(P, t) P (0.86 − 0.01 A)/0.86 (1 − 0.00144 S), c in g/L, P the pressure of carbon
/// dioxide in bar absolute, A the strength in % vol, S the sugar in g/L. Valid for 0 to 40 °C, A up to 15, S up to 150, P up to 10 bar; null outside.
/// </summary>
[Source(Water)]
[Source(Wine)]
public static class Carbonation
{
    private const string Water =
        "J. J. Carroll, J. D. Slupsky and A. E. Mather, The solubility of carbon dioxide in water at low pressure, J. Phys. Chem. Ref. Data 20 (1991) 1201: "
        + "ln(H/MPa) = −6.8346 + 12817/T − 3.7668e6/T² + 2.997e8/T³";

    private const string Wine = "Regulation (EEC) No 2676/90, 1990, ch. 37 (OIV): c = 1.951e-5 P (0.86 − 0.01 A)(1 − 0.00144 S), its "
        + "factors for strength and sugar";

    private const string Stoichiometry = "C6H12O6 → 2 C2H5OH + 2 CO2: 0.4886 g CO2 and 0.5114 g ethanol a gram of hexose; 0.5143 and "
        + "0.5384 a gram of disaccharide, by molar masses";

    /// <summary>Highest strength, % vol.</summary>
    public const double HighestPercent = 15;

    /// <summary>Highest sugar, g/L.</summary>
    public const double HighestSugar = 150;

    /// <summary>Highest pressure of carbon dioxide, bar absolute.</summary>
    public const double HighestBar = 10;

    /// <summary>Highest temperature, °C.</summary>
    public const double HighestCelsius = 40;

    /// <summary>Pressure of the air outside, bar.</summary>
    public const double Atmosphere = 1.01325;

    /// <summary>Error in drinks with ethanol and sugar.</summary>
    public static ModelError DrinkError =>
        new(
            new(0),
            0.07,
            Zero: 0,
            "1",
            1,
            6,
            "rms deviation from a carbonation chart for beer, 0 to 26 °C; champagne of Liger-Belair 2017 within 3 %");

    /// <summary>Carbon dioxide dissolved in a liquid at a pressure.</summary>
    /// <param name="pressure">Pressure of carbon dioxide over the liquid, 0 to 10 bar absolute.</param>
    /// <param name="t">Temperature, 0 to 40 °C.</param>
    /// <param name="abv">Strength, to 15 % vol.</param>
    /// <param name="sugar">Sugar, to 150 g/L.</param>
    /// <returns>Volumes of gas per volume of liquid; null outside the range.</returns>
    [Source(Water)]
    [Source(Wine)]
    public static GasVolumes? Volumes(Bar pressure, Celsius t, AlcoholByVolume abv, GramsPerLitre sugar) =>
        InRange(t, abv, sugar) && pressure.Value is >= 0 and <= HighestBar
            ? new(GramsDissolved(pressure.Value, t.Value, Factor(abv, sugar)) / GasVolumes.GramsPerLitrePerVolume)
            : null;

    /// <summary>Pressure that keeps so much carbon dioxide in a liquid, by bisection over <see cref="Volumes"/>.</summary>
    /// <param name="volumes">Volumes of gas per volume of liquid.</param>
    /// <param name="t">Temperature, 0 to 40 °C.</param>
    /// <param name="abv">Strength, to 15 % vol.</param>
    /// <param name="sugar">Sugar, to 150 g/L.</param>
    /// <returns>
    /// Pressure of carbon dioxide, bar absolute (take off 1.013 bar for a gauge on a vessel flushed of air); null outside the range or
    /// above 10 bar.
    /// </returns>
    [Source(Water)]
    [Source(Wine)]
    public static Bar? Pressure(GasVolumes volumes, Celsius t, AlcoholByVolume abv, GramsPerLitre sugar)
    {
        if (!InRange(t, abv, sugar) || !(volumes.Value >= 0))
            return null;
        var factor = Factor(abv, sugar);
        return PressureOf(volumes.GramsPerLitre, t.Value, factor, 0) is var bar and <= HighestBar ? new(bar) : null;
    }

    /// <summary>
    /// Pressure of a bottle that ferments on after it was closed, when all fermentable sugar (sucrose, glucose, fructose, maltose) is gone.
    /// A live ferment in a closed vessel can burst it; the figure explains a risk and clears nothing.
    /// </summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g; carbon dioxide already dissolved counts.</param>
    /// <param name="t">Temperature of the vessel, 0 to 40 °C.</param>
    /// <param name="headspace">Share of the vessel that is gas, 0 to below 1.</param>
    /// <returns>The end of the ferment; null outside the range or above 10 bar, which no bottle of a bar is made for.</returns>
    [Source(Stoichiometry)]
    [Source(Water)]
    [Source(Wine)]
    public static LiveFerment? OfLiveFerment(ReadOnlySpan<double> grams, Celsius t, double headspace = 0)
    {
        if (headspace is not (>= 0 and < 1) || Mixture.Volume(grams, Celsius.Reference) is not { Value: > 0 } volume || Mixture.Abv(grams) is not { } before)
            return null;
        var litres = volume.Value / 1000;
        var hexose = grams.Of(Component.Glucose) + grams.Of(Component.Fructose);
        var disaccharide = grams.Of(Component.Sucrose) + grams.Of(Component.Maltose);
        var gas = ((hexose * 2 * 44.0095 / 180.156) + (disaccharide * 4 * 44.0095 / 342.297)) / litres;
        var ethanol = ((hexose * 2 * 46.0684 / 180.156) + (disaccharide * 4 * 46.0684 / 342.297)) / litres;
        var added = new AlcoholByVolume(ethanol / EthanolWater.PureRhoAt20);
        var abv = new AlcoholByVolume(before.Value + added.Value);
        // Lactose and starch sugars stay.
        var sugar = new GramsPerLitre((grams.Of(Component.Lactose) + grams.Of(Component.Dextrin)) / litres);
        if (!InRange(t, abv, sugar))
            return null;
        var total = gas + (grams.Of(Component.CarbonDioxide) / litres);
        var bar = PressureOf(total, t.Value, Factor(abv, sugar), headspace / (1 - headspace));
        if (!(bar <= HighestBar))
            return null;
        // Air shut in at 1 atm and 20 °C stays beside the gas where there is a headspace.
        var air = headspace > 0 ? Atmosphere * t.Kelvin / 293.15 : 0;
        return new(new(gas / GasVolumes.GramsPerLitrePerVolume), added, new(bar), new(Math.Max(0, bar + air - Atmosphere)));
    }

    // g/L dissolved plus g in the headspace per litre of liquid, solved for the pressure; +∞ above the range.
    private static double PressureOf(double gramsPerLitre, double t, double factor, double gasPerLiquid)
    {
        double low = 0, high = HighestBar * 1.0001;
        if (gramsPerLitre > Held(high, t, factor, gasPerLiquid))
            return double.PositiveInfinity;
        for (var i = 0; i < 45; i++)
        {
            var bar = (low + high) / 2;
            if (Held(bar, t, factor, gasPerLiquid) < gramsPerLitre)
                low = bar;
            else
                high = bar;
        }

        return (low + high) / 2;
    }

    private static double Held(double bar, double t, double factor, double gasPerLiquid)
    {
        var held = GramsDissolved(bar, t, factor);
        if (gasPerLiquid > 0)
        {
            // Real gas by the second virial coefficient: n/V = P/(RT + BP).
            var rt = 83.14462 * (t + Celsius.ZeroInKelvin);
            held += gasPerLiquid * bar / (rt + (Virial(t) * bar)) * 1000 * 44.0095;
        }

        return held;
    }

    private static double GramsDissolved(double bar, double t, double factor)
    {
        var kelvin = t + Celsius.ZeroInKelvin;
        var inverse = 1 / kelvin;
        var henry = 10 * Math.Exp(-6.8346 + (inverse * (12817 + (inverse * (-3.7668e6 + (inverse * 2.997e8))))));
        var fugacity = bar * Math.Exp(Virial(t) * bar / (83.14462 * kelvin));
        var x = fugacity / henry;
        return x / (1 - x) * SugarWater.WaterRho(t) / 18.0153 * 44.0095 * factor;
    }

    // Second virial coefficient of carbon dioxide, cm³/mol: −149.7 at 0 °C, −123.6 at 25 °C, −110 at 40 °C (Dymond and Smith 1980, from memory).
    private static double Virial(double t) => -149.7 + (1.16 * t) - (0.0042 * t * t);

    private static double Factor(AlcoholByVolume abv, GramsPerLitre sugar) => (0.86 - (0.01 * abv.Percent)) / 0.86 * (1 - (0.00144 * sugar.Value));

    private static bool InRange(Celsius t, AlcoholByVolume abv, GramsPerLitre sugar) =>
        t.Value is >= 0 and <= HighestCelsius && abv.Percent is >= 0 and <= HighestPercent + 1e-9 && sugar.Value is >= 0 and <= HighestSugar;
}
