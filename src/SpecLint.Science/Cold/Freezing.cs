namespace SpecLint.Science;

/// <summary>
/// Freezing point of a liquid and the ice in it at a temperature.
/// <para>
/// Ice is in equilibrium with a solution when the water activity of the solution is that of ice: Σ L<sub>i</sub> = L<sub>ice</sub>(θ), L = −ln a<sub>w</sub>,
/// θ the degrees below 0 °C. Each L<sub>i</sub> is of solute i alone in the water present: ethanol and sodium chloride from their measured
/// freezing curves (so that these binary mixtures fall back to them exactly), the others in Norrish's form with a constant fitted to measured
/// freezing points. Valid to 50 K below zero, to 68 % ethanol by mass of ethanol and water, to the eutectic of brine (23.3 %); null outside.
/// Solutes are taken to stay in solution: no crystals of sugar, no salt hydrate.
/// </para>
/// </summary>
[Source(Curves)]
[Source(IceActivity)]
public static class Freezing
{
    private const string Curves =
        "CRC Handbook of Chemistry and Physics, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions (Wolf 1966), freezing point depressions; "
        + "glycerol above 32 % Melinder by way of the SecCool data of CoolProp; own fits";

    private const string IceActivity =
        "D. M. Murphy and T. Koop, Review of the vapour pressures of ice and supercooled water, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 7 and 10; "
        + "ln of their ratio as a polynomial within 0.03 % of θ, 0.5 to 50 K";

    /// <summary>Lowest temperature of the model, °C.</summary>
    public const double LowestCelsius = -50;

    /// <summary>Highest mass fraction of ethanol in ethanol and water.</summary>
    public const double HighestEthanol = 0.68;

    /// <summary>Highest mass fraction of sodium chloride in salt and water of which ice is the first solid.</summary>
    public const double EutecticSalt = 0.233;

    /// <summary>Temperature at which brine freezes whole, °C.</summary>
    [Source("CRC Handbook, sodium chloride and water: eutectic at −21.1 °C, 23.3 % by mass; from memory")]
    public const double EutecticCelsius = -21.1;

    /// <summary>Whether a composition that freezes no lower than this may meet the eutectic of brine, where salt comes out of solution too.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="lowest">The lowest first ice that is to be reckoned with.</param>
    public static bool MayMeetEutectic(ReadOnlySpan<double> grams, Celsius lowest)
    {
        double salt = grams.Of(Component.SodiumChloride), water = grams.Of(Component.Water);
        return salt > 0 && (lowest.Value <= EutecticCelsius || salt >= EutecticSalt * (salt + water));
    }

    /// <summary>Error for one solute.</summary>
    public static ModelError Error =>
        new(
            new(0.03),
            0.01,
            Zero: 0,
            "Cel",
            -50,
            0,
            "rms deviation from the freezing curves of ethanol, sugars, glycerol, citric acid and salt");

    /// <summary>Error for mixtures, as a share of the depression.</summary>
    public static ModelError MixtureError =>
        new(
            new(0.03),
            0.05,
            Zero: 0,
            "Cel",
            -25,
            0,
            "judged: no published point of ethanol with sugar was found; product of activities against the sum of "
                + "depressions differ by 1 %");

    /// <summary>Error for juices, fruit, milk and other foods, whose minerals and small molecules no table lists in full.</summary>
    public static ModelError FoodError => new(
        new(0.15), 0.16, Zero: 0, "Cel", -3, 0, "held against the freezing points of 14 foods: the mean square of the distances, each "
            + "over its whole variance with that of its entry, is 0.87 a degree of freedom, so that it is not too narrow (Estimating "
            + "the freezing and supercooling points of Korean agricultural products, Korean J. Food Preserv. 23 (2016) 438, table 2, "
            + "means of three; root mean square 0.24 K); the highest freezing points of 47 foods of ASHRAE test it, see "
            + "rules-docs/calibration.md");

    private static ReadOnlySpan<double> EthanolShare =>
    [
        0, 0.005, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09, 0.1, 0.12, 0.13, 0.14, 0.15, 0.16, 0.17, 0.18,
        0.19, 0.2, 0.24, 0.26, 0.3, 0.32, 0.34, 0.38, 0.4, 0.42, 0.44, 0.48, 0.5, 0.52, 0.54, 0.56, 0.58, 0.6, 0.62,
        0.64, 0.66, 0.68,
    ];

    private static ReadOnlySpan<double> EthanolDepression =>
    [
        0, 0.2, 0.4, 0.81, 1.23, 1.65, 2.09, 2.54, 2.99, 3.47, 3.96, 4.47, 5.56, 6.13, 6.73, 7.36, 8.01, 8.69, 9.4,
        10.14, 10.92, 14.47, 16.41, 20.47, 22.44, 24.27, 27.62, 29.26, 30.98, 32.68, 36.04, 37.67, 39.2, 40.65, 42.06,
        43.49, 44.93, 46.28, 47.52, 48.64, 49.52,
    ];

    // Worked out once, since a drink on ice asks for them a hundred times: slopes of the curve of ethanol at its points.
    private static readonly double[] EthanolSlopes = MakeSlopes(EthanolShare, EthanolDepression);

    private static ReadOnlySpan<double> Ice => [0, 0.009675523146, 4.936742961e-6, -4.991364459e-8, 1.773246088e-9, -9.238791873e-11];

    private static ReadOnlySpan<double> SaltDepression => [0, 58.6137, -27.6017, 323.341, -383.6226];

    /// <summary>Temperature at which the first ice can form.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>°C, 0 to −50; null outside the range or without water.</returns>
    [Source(Curves)]
    [Source(IceActivity)]
    public static Celsius? Point(ReadOnlySpan<double> grams)
    {
        if (!Composition.IsValid(grams, out _) || Saturated(grams))
            return null;
        var theta = new Line(grams, stackalloc double[Line.Room]).Depression(grams.Of(Component.Water));
        return double.IsNaN(theta) ? null : new(-theta);
    }

    /// <summary>Freezing point of ethanol and water, by the measured curve with a monotone cubic between its points.</summary>
    /// <param name="ethanol">Mass fraction of ethanol, 0 to 0.68.</param>
    /// <returns>°C; null outside the range.</returns>
    [Source(Curves)]
    [Source("F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238")]
    public static Celsius? OfEthanol(MassFraction ethanol) =>
        ethanol.Value is >= 0 and <= HighestEthanol ? new(-EthanolCurve(ethanol.Value)) : null;

    /// <summary>
    /// Ice in a composition that has come to equilibrium at a temperature, as a share of its whole mass: the water left liquid is such
    /// that the rest freezes at just that temperature.
    /// </summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="t">Temperature, −30 to 40 °C.</param>
    /// <returns>Share of ice by mass, 0 above the freezing point; null outside the range.</returns>
    [Source(Curves)]
    [Source(IceActivity)]
    public static MassFraction? IceFraction(ReadOnlySpan<double> grams, Celsius t)
    {
        if (!Composition.IsValid(grams, out var total) || t.Value is not (>= -30 and <= 40) || Saturated(grams))
            return null;
        var water = grams.Of(Component.Water);
        var ethanol = grams.Of(Component.Ethanol);
        var line = new Line(grams, stackalloc double[Line.Room]);
        if (t.Value >= 0)
            return double.IsNaN(line.Depression(water)) ? null : new(0);
        var wanted = Polynomial.At(Ice, -t.Value);
        var all = line.LogActivity(water);
        if (double.IsNaN(all))
            return null;
        if (all >= wanted)
            return new(0);
        // Less liquid water, lower activity: a bracket between the water that the curves allow and all of it.
        var low = ethanol > 0 ? ethanol * (1 - HighestEthanol) / HighestEthanol * (1 + 1e-12) : 0;
        var high = water;
        for (var i = 0; i < 60 && high - low > 1e-9 * water; i++)
        {
            var liquid = (low + high) / 2;
            if (!(line.LogActivity(liquid) < wanted))
                low = liquid;
            else
                high = liquid;
        }

        // Brine that is stronger than the eutectic at this temperature is a solid with its salt.
        if (t.Value < -21.1
            && grams.Of(Component.SodiumChloride) > EutecticSalt / (1 - EutecticSalt) * high
            && grams.Of(Component.SodiumChloride) > 0.05 * total)
            return null;
        return new((water - high) / total);
    }

    private static bool Saturated(ReadOnlySpan<double> grams) =>
        grams.Of(Component.SodiumChloride) > EutecticSalt / (1 - EutecticSalt) * grams.Of(Component.Water);

    /// <summary>The freezing line of a composition: what the curves ask for at every amount of liquid water, worked out once.</summary>
    internal readonly ref struct Line
    {
        /// <summary>Doubles that the caller lends.</summary>
        public const int Room = Solutes.Room;

        private readonly Solutes solutes;
        private readonly double ethanol;
        private readonly double salt;

        /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
        /// <param name="room">So many doubles as <see cref="Room"/>.</param>
        public Line(ReadOnlySpan<double> grams, Span<double> room)
        {
            solutes = new Solutes(grams, SoluteTable.AtFreezing, room);
            ethanol = grams.Of(Component.Ethanol);
            salt = grams.Of(Component.SodiumChloride);
        }

        /// <summary>Degrees below zero at which the composition with so much liquid water freezes; NaN outside the range.</summary>
        public double Depression(double water)
        {
            var activity = LogActivity(water);
            // A binary brine or spirit comes back to its measured curve: the same polynomial leads there and back.
            return activity <= Polynomial.At(Ice, -LowestCelsius) ? ThetaOf(activity) : double.NaN;
        }

        /// <summary>−ln aw of the composition with so much liquid water, at its freezing point; NaN outside the curves.</summary>
        public double LogActivity(double water)
        {
            if (!(water > 0))
                return double.NaN;
            var sum = 0.0;
            if (ethanol > 0)
            {
                var share = ethanol / (ethanol + water);
                if (share > HighestEthanol)
                    return double.NaN;
                sum = Polynomial.At(Ice, EthanolCurve(share));
            }

            sum += solutes.LogActivity(water);
            if (salt > 0)
                sum += Polynomial.At(Ice, Polynomial.At(SaltDepression, Math.Min(salt / water, EutecticSalt / (1 - EutecticSalt))));
            return sum;
        }
    }

    // Norrish's form with constants fitted to freezing points; largest deviation in K: sucrose 0.05 to 42 %, glucose 0.02 to 30 %,
    // fructose 0.03 to 28 %, maltose 0.05 to 44 %, lactose 0.01, mannitol 0.01, citric acid 0.09 to 30 %, acetic 0.04 to 36 %,
    // phosphoric 0.23 to 40 %, glycerol 0.3 to 60 % (two sources that differ by as much). Lactic acid is held at 2, where the curve is still monotone.
    internal static double Constant(Component component) => component switch
    {
        Component.Sucrose => -7.38,
        Component.Glucose => -2.61,
        Component.Fructose or Component.Allulose => -1.99,
        Component.Maltose or Component.Maltitol => -7.02,
        Component.Lactose => -9.33,
        Component.Glycerol => -2.38,
        Component.Sorbitol => -1.65,
        Component.Citric => -1.67,
        Component.Lactic => 2,
        Component.Acetic => 1.24,
        Component.Phosphoric => -9.61,
        _ => WaterActivityModel.Constant(component),
    };

    // Inverse of the polynomial of ice by Newton's steps: it is nearly a straight line.
    private static double ThetaOf(double activity)
    {
        var theta = activity / Ice[1];
        for (var i = 0; i < 6; i++)
        {
            var step = (Polynomial.At(Ice, theta, out var slope) - activity) / slope;
            theta -= step;
            if (Math.Abs(step) < 1e-11)
                break;
        }

        return Math.Max(0, theta);
    }

    private static double EthanolCurve(double share)
    {
        var x = EthanolShare;
        var y = EthanolDepression;
        int low = 0, high = x.Length - 1;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (x[middle] <= share)
                low = middle;
            else
                high = middle;
        }

        var h = x[high] - x[low];
        var s = (share - x[low]) / h;
        var left = EthanolSlopes[low] * h;
        var right = EthanolSlopes[high] * h;
        var rise = y[high] - y[low];
        return y[low] + (s * (left + (s * ((3 * rise) - (2 * left) - right + (s * (left + right - (2 * rise)))))));
    }

    private static double[] MakeSlopes(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var slopes = new double[x.Length];
        for (var i = 0; i < slopes.Length; i++)
            slopes[i] = Slope(x, y, i);
        return slopes;
    }

    // Slope at a point of the table: harmonic mean of its neighbours, so that the curve keeps rising; at the ends the chord.
    private static double Slope(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int i)
    {
        if (i == 0)
            return (y[1] - y[0]) / (x[1] - x[0]);
        if (i == x.Length - 1)
            return (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
        var before = x[i] - x[i - 1];
        var after = x[i + 1] - x[i];
        var w1 = (2 * after) + before;
        var w2 = after + (2 * before);
        return (w1 + w2) / ((w1 * before / (y[i] - y[i - 1])) + (w2 * after / (y[i + 1] - y[i])));
    }
}
