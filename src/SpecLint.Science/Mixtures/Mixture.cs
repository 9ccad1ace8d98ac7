namespace SpecLint.Science;

/// <summary>What a liquid measures at 20 °C.</summary>
/// <param name="Volume">mL.</param>
/// <param name="Abv">Strength by volume.</param>
/// <param name="Brix">Refractometer reading; null where there is none.</param>
public readonly record struct LiquidMeasures(Millilitres Volume, AlcoholByVolume Abv, DegreesBrix? Brix);

/// <summary>
/// Volume, density, strength and °Brix of any liquid composition, by mass balance:
/// V = (m<sub>E</sub> + m<sub>W</sub>)/ρ<sub>EW</sub>(p, t) + Σ m<sub>i</sub> φ<sub>i</sub>(w, t),
/// ρ<sub>EW</sub> by <see cref="EthanolWater"/>, p the share of ethanol in ethanol and water, φ<sub>i</sub> the apparent specific volume
/// of solute i, w the share of all solutes in solutes and water. Ethanol and water alone give <see cref="EthanolWater"/> exactly;
/// sucrose and water alone give <see cref="SugarWater"/> to 0.003 kg/m³ (the difference of the two formulas for water).
/// <para>
/// Valid for 0 to 40 °C; −20 to 40 °C for ethanol and water alone; up to 80 °C without ethanol. A composition of which less than
/// a tenth is liquid (water, ethanol, glycerol, fat, lactic and acetic acid) is a solid: null, as outside the range.
/// </para>
/// </summary>
[Source(Balance)]
[Source(Handbook)]
public static partial class Mixture
{
    private const string Balance =
        "Mass balance with apparent specific volumes; OIML R 22, 1975, general formula; ICUMSA SPS-4, 1990/1998";

    private const string Handbook =
        "CRC Handbook of Chemistry and Physics, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions (Wolf 1966): densities "
            + "and n(D) at 20 °C, own fits";

    private const string Foods = "Y. Choi and M. R. Okos, Effects of temperature and composition on the thermal properties of foods, "
        + "1986, densities of pure components";

    /// <summary>Least share of liquid for a composition to have a volume as a liquid.</summary>
    public const double LeastLiquidShare = 0.10;

    /// <summary>Strength above which °Brix is no measure of solids, 0.5 % vol.</summary>
    public const double HighestAbvForBrix = 0.005;

    /// <summary>Error of the density of a mixture of known solutes; <see cref="UntoldDensityError"/> and <see cref="InterplayError"/> add to it.</summary>
    public static ModelError DensityError =>
        new(
            new(0.15),
            0.005,
            Zero: 998.2,
            "kg/m3",
            789,
            1400,
            "ethanol, sugars, acids and salts each alone in water 0.1 of the CRC Handbook, 102nd ed. 2021; adding their volumes up over "
                + "unlike solutes, judged 0.5 % of what they add to water");

    /// <summary>Further error of the density by solids that are not told apart, kg/m³, at their share in the whole by mass.</summary>
    public static ModelError UntoldDensityError =>
        new(
            new(0),
            25,
            Zero: 0,
            "kg/m3",
            0,
            1,
            "apparent volumes of sugars, polyols and organic acids in water 0.57 to 0.70 mL/g at 20 °C (CRC Handbook, 102nd ed. 2021, "
                + "own fits), of protein 0.73 and of minerals less: 0.025 mL/g about the 0.62 taken, judged");

    /// <summary>Further error of the density where ethanol and solutes meet, kg/m³, at the product of strength by volume (0 to 1) and solutes (g/L).</summary>
    public static ModelError InterplayError =>
        new(
            new(0),
            0.03,
            Zero: 0,
            "kg/m3",
            0,
            135,
            "rms difference from the sum rule of Tabarié over 5 to 45 % vol, 0 to 300 g/L sucrose 1.4 kg/m3, 6.6 at the corner, so 0.03 "
                + "a unit of the product; no measured table of the three was found");

    /// <summary>Error of a strength worked out from a composition.</summary>
    public static ModelError AbvError =>
        new(
            new(0),
            0.0014,
            Zero: 0,
            "1",
            0,
            1,
            "error of the density as an error of the volume; 0.04 % vol at 30 % vol, none without ethanol; beside much sugar to 45 % "
                + "vol alone, see the interplay");

    /// <summary>Error of the refractometer's °Brix of a mixture of known solutes; <see cref="UntoldBrixError"/> adds to it.</summary>
    public static ModelError BrixError =>
        new(
            new(0.03),
            0.005,
            Zero: 0,
            "%",
            0,
            85,
            "fit of n(D) of single solutes 0.3 % of the reading (CRC Handbook, 102nd ed. 2021); adding them up over unlike "
                + "solutes, judged 0.5 %");

    /// <summary>Further error of °Brix by solids that are not told apart, at their share in the solution, % by mass.</summary>
    public static ModelError UntoldBrixError =>
        new(
            new(0),
            0.12,
            Zero: 0,
            "%",
            0,
            100,
            "they count as sucrose; single solutes of the handbook, ethanol and the lower acids aside, count 0.82 to 1.21 of it, "
                + "protein 1.25: 12 %, judged from that");

    /// <summary>Share of a solute in itself and water to which the tables of its density and refraction reach.</summary>
    /// <param name="solute">The solute.</param>
    /// <returns>Mass fraction; 1 where a table reaches to the pure substance, or none is known to end.</returns>
    [Source(Handbook)]
    public static double HighestTestedShare(Component solute) => solute switch
    {
        Component.Lactic => 0.80,
        Component.Phosphoric => 0.40,
        _ => 1,
    };

    /// <summary>Volume of a composition.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="t">Temperature, 0 to 40 °C (see the class).</param>
    /// <returns>mL at <paramref name="t"/>; null for a solid, an empty or invalid composition, or outside the range.</returns>
    [Source(Balance)]
    [Source(Handbook)]
    [Source(Foods)]
    public static Millilitres? Volume(ReadOnlySpan<double> grams, Celsius t)
    {
        if (!Composition.IsValid(grams, out var total))
            return null;
        var water = grams.Of(Component.Water);
        var ethanol = grams.Of(Component.Ethanol);
        var liquid = water + ethanol + grams.Of(Component.Glycerol) + grams.Of(Component.Fat) + grams.Of(Component.Lactic) + grams.Of(Component.Acetic);
        if (liquid < LeastLiquidShare * total)
            return null;
        var binary = water + ethanol == total;
        var lowest = binary ? EthanolWater.LowestCelsius : 0;
        var highest = ethanol > 0 ? EthanolWater.HighestCelsius : 80;
        if (!(t.Value >= lowest && t.Value <= highest))
            return null;
        return new(VolumeInRange(grams, t.Value));
    }

    /// <summary>Density of a composition: its mass over <see cref="Volume"/>.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="t">Temperature, 0 to 40 °C (see the class).</param>
    /// <returns>kg/m³; null where <see cref="Volume"/> is.</returns>
    [Source(Balance)]
    public static KilogramsPerCubicMetre? Density(ReadOnlySpan<double> grams, Celsius t) =>
        Volume(grams, t) is { Value: > 0 } v && Composition.IsValid(grams, out var total) ? new(total / v.Value * 1000) : null;

    /// <summary>Strength: volume of the pure ethanol at 20 °C over the volume of the mixture at 20 °C.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>Strength by volume; null for a solid.</returns>
    [Source(Balance)]
    [Source("Regulation (EU) No 1169/2011, 2011, Annex XII: actual alcoholic strength by volume, at 20 °C")]
    public static AlcoholByVolume? Abv(ReadOnlySpan<double> grams) =>
        Volume(grams, Celsius.Reference) is { Value: > 0 } v ? new(AbvIn(grams, v.Value)) : null;

    private static double AbvIn(ReadOnlySpan<double> grams, double millilitres) =>
        Math.Min(1, grams.Of(Component.Ethanol) / EthanolWater.PureRhoAt20 * 1000 / millilitres);

    /// <summary>
    /// What a refractometer shows: dissolved solids as sucrose, % w/w of the liquid part. Each solute counts by its increment of the
    /// refractive index against that of sucrose (1 g of citric acid 0.88 g, of salt 1.2 g, of protein 1.25 g); insoluble solids and fat do not count.
    /// </summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>°Brix, up to 85; null with more than 0.5 % vol of ethanol, for a solid, or above 85.</returns>
    [Source(Handbook)]
    public static DegreesBrix? Brix(ReadOnlySpan<double> grams) =>
        Abv(grams) is { } abv && abv.Value <= HighestAbvForBrix ? BrixOf(grams) : null;

    /// <summary>Volume, strength and °Brix together: each rests on the volume, which is worked out once.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>mL, strength and °Brix at 20 °C; null where <see cref="Volume"/> is, °Brix alone null where <see cref="Brix"/> is.</returns>
    [Source(Balance)]
    public static LiquidMeasures? Measure(ReadOnlySpan<double> grams)
    {
        if (Volume(grams, Celsius.Reference) is not { Value: > 0 } volume)
            return null;
        var abv = AbvIn(grams, volume.Value);
        return new(volume, new(abv), abv <= HighestAbvForBrix ? BrixOf(grams) : null);
    }

    private static DegreesBrix? BrixOf(ReadOnlySpan<double> grams)
    {
        var solution = new Solution(grams);
        if (!(solution.Mass > 0))
            return null;
        var sum = Refracted(grams, solution.Mass);
        if (Salts.Any(grams))
            sum += RefractionOfSalts(grams, solution.Share);
        var brix = sum / solution.Mass * 100;
        return brix <= 85 ? new(brix) : null;
    }

    /// <summary>Share of the dissolved solids in the whole, by mass, whatever they are.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>Mass fraction; null for an invalid composition.</returns>
    [Source(Balance)]
    public static MassFraction? DissolvedSolids(ReadOnlySpan<double> grams) =>
        Composition.IsValid(grams, out var total) ? new(Composition.Dissolved(grams) / total) : null;

    /// <summary>
    /// Sucrose in a liqueur of ethanol, water and sucrose from its strength and its density at 20 °C, by bisection over <see cref="Volume"/>.
    /// </summary>
    /// <param name="abv">Strength by volume, 0 to below 1.</param>
    /// <param name="density">Density at 20 °C, kg/m³.</param>
    /// <returns>g/L at 20 °C; null when no sugar up to 600 g/L gives that density.</returns>
    [Source(Balance)]
    public static GramsPerLitre? SucroseOf(AlcoholByVolume abv, KilogramsPerCubicMetre density)
    {
        if (abv.Value is not (>= 0 and < 0.95))
            return null;
        double low = 0, high = 600;
        if (!(density.Value >= LiqueurDensity(abv.Value, low) - 0.05))
            return null;
        for (var i = 0; i < 40; i++)
        {
            var sugar = (low + high) / 2;
            if (!(LiqueurDensity(abv.Value, sugar) >= density.Value))
                low = sugar;
            else
                high = sugar;
        }

        return low >= 599.9 ? null : new((low + high) / 2);
    }

    /// <summary>Density at 20 °C of a liqueur of ethanol, water and sucrose of a given strength.</summary>
    /// <param name="abv">Strength by volume, 0 to 0.95.</param>
    /// <param name="sucrose">Sucrose, 0 to 600 g/L at 20 °C.</param>
    /// <returns>kg/m³; null outside the range or when ethanol and sugar leave no room for water.</returns>
    [Source(Balance)]
    public static KilogramsPerCubicMetre? LiqueurDensity(AlcoholByVolume abv, GramsPerLitre sucrose)
    {
        if (abv.Value is not (>= 0 and <= 0.95) || sucrose.Value is not (>= 0 and <= 600))
            return null;
        var rho = LiqueurDensity(abv.Value, sucrose.Value);
        return double.IsNaN(rho) ? null : new(rho);
    }

    /// <summary>Sum over the parts; the caller keeps to the range.</summary>
    internal static double VolumeInRange(ReadOnlySpan<double> grams, double t)
    {
        var water = grams.Of(Component.Water);
        var ethanol = grams.Of(Component.Ethanol);
        var solvent = water + ethanol;
        var volume = 0.0;
        if (solvent > 0)
            volume = solvent * 1000 / (t > EthanolWater.HighestCelsius ? SugarWater.WaterRho(t) : EthanolWater.Rho(ethanol / solvent, t));
        var w = new Solution(grams).Share;
        volume = new SpecificVolumes(w, t).AddTo(volume, grams);
        return Salts.Any(grams) ? volume + VolumeOfSalts(grams, w) : volume;
    }

    // Grams of sucrose that bend light as all components but salts do, in a mass of solution.
    private static double Refracted(ReadOnlySpan<double> grams, double solution)
    {
        var sum = 0.0;
        for (var i = 0; i < grams.Length; i++)
        {
            if (grams[i] > 0)
                sum += grams[i] * Refraction((Component)i, grams[i] / solution);
        }

        return sum;
    }

    private static double VolumeOfSalts(ReadOnlySpan<double> grams, double w)
    {
        Span<double> equivalents = stackalloc double[Salts.Count];
        var volume = 0.0;
        var present = Salts.Of(grams, equivalents);
        for (var i = 0; present != 0; i++, present >>= 1)
        {
            if ((present & 1) != 0)
                volume += equivalents[i] * SaltEffects.All[i].Volume.At(Math.Min(w, SaltEffects.All[i].LastShare));
        }

        return volume;
    }

    // Grams of sucrose that bend light as the salts do.
    private static double RefractionOfSalts(ReadOnlySpan<double> grams, double w)
    {
        Span<double> equivalents = stackalloc double[Salts.Count];
        var sum = 0.0;
        var present = Salts.Of(grams, equivalents);
        for (var i = 0; present != 0; i++, present >>= 1)
        {
            if ((present & 1) != 0)
                sum += equivalents[i] * SaltEffects.All[i].Refraction.At(Math.Min(w, SaltEffects.All[i].LastShare));
        }

        return sum;
    }

    // One litre: ethanol and sugar are given, water fills it; NaN when there is no room for water.
    private static double LiqueurDensity(double abv, double sucrose)
    {
        var ethanol = abv * EthanolWater.PureRhoAt20;
        double low = 0, high = 1000;
        if (Litre(ethanol, low, sucrose) > 1000)
            return double.NaN;
        for (var i = 0; i < 45; i++)
        {
            var water = (low + high) / 2;
            if (Litre(ethanol, water, sucrose) < 1000)
                low = water;
            else
                high = water;
        }

        return ethanol + ((low + high) / 2) + sucrose;
    }

    private static double Litre(double ethanol, double water, double sucrose)
    {
        Span<double> grams = stackalloc double[Components.Count];
        grams[(int)Component.Water] = water;
        grams[(int)Component.Ethanol] = ethanol;
        grams[(int)Component.Sucrose] = sucrose;
        return VolumeInRange(grams, 20);
    }

    // Grams of sucrose that bend light as one gram of the solute does: a + b w, from n(D) at 20 °C of the handbook.
    private static double Refraction(Component component, double w) => component switch
    {
        Component.Sucrose or Component.Dextrin or Component.OtherDissolved => 1,
        Component.Ethanol => 0.5476 - (0.3562 * w),
        Component.Glucose => 0.9945 - (0.0255 * Math.Min(w, 0.58)),
        // Lorentz–Lorenz from their volumes and the atomic refractions of Eisenlohr (26.8 and 32.9 cm³/mol), which meet mannitol within 1 %.
        Component.Erythritol => 0.905,
        Component.Xylitol => 0.975,
        Component.Maltitol => 1.0204 - (0.0078 * Math.Min(w, 0.60)),
        Component.Allulose or Component.Fructose => 0.9886 - (0.0153 * Math.Min(w, 0.48)),
        Component.Maltose => 1.0204 - (0.0078 * Math.Min(w, 0.60)),
        Component.Lactose => 1.0405 - (0.0609 * Math.Min(w, 0.16)),
        Component.Glycerol => 0.8239 - (0.0853 * w),
        Component.Sorbitol => 1.0209 - (0.3035 * Math.Min(w, 0.15)),
        Component.Lactic => 0.6956 - (0.1081 * w),
        Component.Acetic => 0.508 - (Math.Min(w, 0.6) * (0.115 + (0.125 * Math.Min(w, 0.6)))),
        Component.Phosphoric => 0.6252 + (0.0437 * Math.Min(w, 0.40)),
        >= Component.Citric and <= Component.Sorbic => 0.8803 - (0.0295 * Math.Min(w, 0.30)),
        // Protein bends light by 0.185 mL/g (T. L. McMeekin, J. Polym. Sci. 1962, as recalled), sucrose by 0.148; of fibre about half is dissolved, judged.
        Component.Protein => 1.25,
        Component.Fibre => 0.5,
        Component.SodiumChloride => 1.21 - (0.3676 * Math.Min(w, 0.26)),
        _ => 0,
    };
}
