namespace SpecLint.Science;

/// <summary>How a drink is chilled with ice.</summary>
public enum ChillTechnique
{
    /// <summary>Shaken with cubed ice for ten seconds and more.</summary>
    Shaken,

    /// <summary>Stirred over cubed ice, about half a minute.</summary>
    Stirred,

    /// <summary>Built in the glass over ice and stirred briefly.</summary>
    Built,

    /// <summary>Thrown from vessel to vessel over ice.</summary>
    Thrown,

    /// <summary>Blended with crushed ice.</summary>
    Blended,

    /// <summary>Poured over a large piece of ice and left to chill.</summary>
    OnRock,

    /// <summary>Swizzled in crushed ice.</summary>
    Swizzled,
}

/// <summary>A value with the range that its sources and assumptions leave open.</summary>
/// <param name="Typical">The value to expect.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Spread(double Typical, double Low, double High);

/// <summary>What chilling with ice does to a drink.</summary>
/// <param name="WaterPerVolume">Water added, mL (20 °C) per mL of the mix (20 °C).</param>
/// <param name="FinalCelsius">Temperature when the ice is taken away or the drink is served, °C.</param>
/// <param name="HasPublishedFit">True when a published fit of measurements is one of the opinions.</param>
public readonly record struct Dilution(Spread WaterPerVolume, Spread FinalCelsius, bool HasPublishedFit);

/// <summary>
/// Water that melts into a drink that is chilled with ice, and its temperature: two opinions side by side.
/// <list type="bullet">
/// <item>Published fits of measured drinks, r = water added over volume of the mix, a = strength: shaken r = −1.567 a² + 1.742 a + 0.203,
/// stirred r = −1.21 a² + 1.246 a + 0.145; 0.10 ≤ a ≤ 0.40.</item>
/// <item>An energy balance: heat of the mix and of the vessel, heat of mixing ethanol with the melt, against the heat of fusion of ice, the
/// cold of the ice that
/// is left, and the freezing line of the diluted mix (<see cref="Freezing"/>) or the temperature at which the technique stops.</item>
/// </list>
/// The range covers both opinions and the spread of ice (dry or wet), vessel and time. Outside the range of the fits, and for techniques without one,
/// the balance stands alone with a wider range. Works without ethanol. Null for a start below 0 or above 40 °C, or a mix without water.
/// </summary>
[Source(Fits)]
[Source(Balance)]
public static class IceDilution
{
    private const string Fits = "D. Arnold, Liquid Intelligence, 2014, p. 123, regressions of dilution on strength (coefficients second-hand)";

    private const string Balance =
        "Energy balance; heat of fusion of ice 333.4 J/g (IAPWS-95 and IAPWS R10-06), heat capacities and freezing line of this "
            + "library, heat of mixing after J. A. Larkin 1975";

    /// <summary>Heat of fusion of ice at 0 °C, J/g.</summary>
    public const double HeatOfFusion = 333.42;

    /// <summary>Lowest strength of the fits.</summary>
    public const double LowestFitAbv = 0.10;

    /// <summary>Highest strength of the fits.</summary>
    public const double HighestFitAbv = 0.40;

    // Strength over which an opinion fades in and out at the ends of the fits, so that results stay continuous.
    private const double Fade = 0.10;
    private const double WaterHeat = 4.21;
    private const double IcePerVolume = 1.5;

    /// <summary>The published fit for shaken drinks.</summary>
    /// <param name="abv">Strength of the mix, 0.10 to 0.40.</param>
    /// <returns>mL of water per mL of mix; null outside the range of the measurements.</returns>
    [Source(Fits)]
    public static double? ShakenFit(AlcoholByVolume abv) =>
        abv.Value is >= LowestFitAbv and <= HighestFitAbv ? (((-1.567 * abv.Value) + 1.742) * abv.Value) + 0.203 : null;

    /// <summary>The published fit for stirred drinks.</summary>
    /// <param name="abv">Strength of the mix, 0.10 to 0.40.</param>
    /// <returns>mL of water per mL of mix; null outside the range of the measurements.</returns>
    [Source(Fits)]
    public static double? StirredFit(AlcoholByVolume abv) =>
        abv.Value is >= LowestFitAbv and <= HighestFitAbv ? (((-1.21 * abv.Value) + 1.246) * abv.Value) + 0.145 : null;

    /// <summary>Dilution and temperature of a drink by a technique.</summary>
    /// <param name="grams">Masses of the mix by <see cref="Component"/>, g.</param>
    /// <param name="technique">How it is chilled.</param>
    /// <param name="start">Temperature of the mix, 0 to 40 °C.</param>
    /// <param name="ice">Temperature of the ice, −30 to 0 °C; null: 0 °C, as ice from a well, with wet ice in the range.</param>
    /// <param name="seconds">Time on ice, s; null: as is usual for the technique.</param>
    /// <param name="iceGrams">Mass of the ice, g; null: enough. No more than 1.5 g per mL of mix takes part.</param>
    /// <returns>The range of dilution and temperature; null outside the range.</returns>
    [Source(Fits)]
    [Source(Balance)]
    [Source("Stops, times, vessels and wetness of ice of each technique: common practice, no source")]
    public static Dilution? Of(
        ReadOnlySpan<double> grams, ChillTechnique technique, Celsius start, Celsius? ice = null, double? seconds = null, Grams? iceGrams = null)
    {
        if (start.Value is not (>= 0 and <= 40) || ice is { Value: not (>= -30 and <= 0) } || seconds is not (null or >= 0) || iceGrams is { Value: not > 0 })
            return null;
        if (Mixture.Volume(grams, Celsius.Reference) is not { Value: > 0 } volume || Freezing.Point(grams) is null)
            return null;
        var abv = grams.Of(Component.Ethanol) / EthanolWater.PureRhoAt20 * 1000 / volume.Value;
        // In the seconds of a technique the cold of the ice is drawn from its surface: more ice than that takes no part.
        var mix = new Mix(grams, volume.Value, start.Value, ice?.Value ?? 0, Math.Min(iceGrams?.Value ?? double.MaxValue, IcePerVolume * volume.Value));
        var line = new Freezing.Line(grams, stackalloc double[Freezing.Line.Room]);
        var (usual, least, most) = Practice(technique);
        if (seconds is { } s)
        {
            var share = Math.Exp(-s / Pace(technique));
            usual = usual.After(share);
            least = least.After(Math.Min(1, share * 1.5));
            most = most.After(share * share);
        }

        if (ice is not null)
        {
            // Ice of a known temperature below zero is dry.
            var dry = Math.Max(0, 1 + (ice.Value.Value / 2));
            usual = usual with { Wet = usual.Wet * dry };
            most = most with { Wet = most.Wet * dry };
        }

        var typical = Melt(line, mix, usual);
        var low = Melt(line, mix, least);
        var high = Melt(line, mix, most);
        if (double.IsNaN(typical.Water + low.Water + high.Water))
            return null;
        var water = new Spread(typical.Water, Math.Min(low.Water, typical.Water), Math.Max(high.Water, typical.Water));
        // Inside its range a published fit of measured drinks gives the typical value; beyond its ends it fades into the balance.
        var within = Math.Max(LowestFitAbv, Math.Min(HighestFitAbv, abv));
        var fit = technique switch
        {
            ChillTechnique.Shaken => ShakenFit(new(within)),
            ChillTechnique.Stirred => StirredFit(new(within)),
            _ => null,
        };
        var weight = fit is null ? 0 : Math.Max(0, 1 - (Math.Abs(abv - within) / Fade));
        water = water with { Low = water.Low * (0.9 + (0.1 * weight)), High = water.High * (1.1 - (0.1 * weight)) };
        if (fit is { } published)
        {
            // The fits are of drinks at room temperature with their usual time on wet ice; other conditions change them as they change the balance.
            var r = published;
            if (seconds is not null || start.Value != Celsius.Reference.Value || ice is not null || iceGrams is not null)
            {
                var room = new Mix(grams, volume.Value, Celsius.Reference.Value, 0, 1.5 * volume.Value);
                var practice = Practice(technique).Usual;
                if (seconds is not null) practice = practice.After(Math.Exp(-UsualSeconds(technique) / Pace(technique)));
                var usualWater = Melt(line, room, practice).Water;
                if (usualWater > 0) r *= typical.Water / usualWater;
            }

            water = new(
                water.Typical + (weight * (r - water.Typical)),
                water.Low + (weight * Math.Min(0, r - water.Low)),
                water.High + (weight * Math.Max(0, r - water.High)));
        }

        var coldest = Math.Min(typical.Celsius, Math.Min(low.Celsius, high.Celsius));
        var warmest = Math.Max(typical.Celsius, Math.Max(low.Celsius, high.Celsius));
        // Strained and measured, a drink has warmed: the one measured shaken drink read −1.7 °C where the balance ends at −10.
        if (technique == ChillTechnique.Shaken)
            warmest = Math.Min(start.Value, Math.Max(warmest + 3, -1.5));
        return new(water, new(typical.Celsius, coldest, warmest), weight == 1);
    }

    /// <summary>
    /// The energy balance alone, for given conditions: the ice melts until the mix is at its freezing line or at a stop above it.
    /// </summary>
    /// <param name="grams">Masses of the mix by <see cref="Component"/>, g.</param>
    /// <param name="start">Temperature of mix and vessel, 0 to 40 °C.</param>
    /// <param name="ice">Temperature of the ice, −30 to 0 °C.</param>
    /// <param name="iceGrams">Mass of the ice, g.</param>
    /// <param name="vessel">Heat capacity of the vessel, J/K.</param>
    /// <param name="surfaceWater">Water clinging to the ice, g.</param>
    /// <param name="stop">Temperature at which the ice is taken away; null: at equilibrium.</param>
    /// <returns>Water added, g, and the final temperature; null outside the range.</returns>
    [Source(Balance)]
    public static (Grams Water, Celsius Final)? EnergyBalance(
        ReadOnlySpan<double> grams, Celsius start, Celsius ice, Grams iceGrams, double vessel, Grams surfaceWater, Celsius? stop = null)
    {
        if (start.Value is not (>= 0 and <= 40) || ice.Value is not (>= -30 and <= 0) || !(iceGrams.Value > 0) || !(vessel >= 0) || !(surfaceWater.Value >= 0))
            return null;
        if (Mixture.Volume(grams, Celsius.Reference) is not { Value: > 0 } volume || Freezing.Point(grams) is null)
            return null;
        var mix = new Mix(grams, volume.Value, start.Value, ice.Value, iceGrams.Value);
        var line = new Freezing.Line(grams, stackalloc double[Freezing.Line.Room]);
        var (melt, final) = Solve(line, mix, vessel, surfaceWater.Value, stop?.Value ?? double.NegativeInfinity);
        return double.IsNaN(melt) ? null : (new(melt), new(final));
    }

    // Usual, least and most diluting practice. Stop: °C at which chilling ends (the freezing line if that is warmer); Left: share of the way from
    // start to that end not yet gone; Vessel: J/K per 100 mL of mix; Wet: g of water on 100 g of ice. Common practice, no source.
    private static (Practised Usual, Practised Least, Practised Most) Practice(ChillTechnique technique) => technique switch
    {
        ChillTechnique.Shaken => (new(-50, 100, 0), new(-50, 0, 0), new(-50, 100, 7)),
        ChillTechnique.Stirred => (new(-3, 60, 0), new(7, 0, 0), new(-6, 100, 5)),
        ChillTechnique.Built => (new(3, 40, 1), new(8, 0, 0), new(-1, 100, 5)),
        ChillTechnique.Thrown => (new(-1, 60, 2), new(5, 0, 0), new(-50, 100, 7)),
        ChillTechnique.Blended => (new(-50, 100, 5), new(-50, 0, 0), new(-50, 150, 20)),
        ChillTechnique.OnRock => (new(6, 40, 0), new(14, 0, 0), new(0, 80, 3)),
        _ => (new(-1, 60, 7), new(3, 0, 2), new(-50, 100, 17)),
    };

    // Seconds in which the way that is left shrinks to 1/e. Common practice, no source.
    private static double Pace(ChillTechnique technique) => technique switch
    {
        ChillTechnique.Shaken or ChillTechnique.Blended => 3,
        ChillTechnique.Swizzled => 5,
        ChillTechnique.Thrown => 8,
        ChillTechnique.OnRock => 90,
        _ => 15,
    };

    // Seconds of the drinks behind the fits: about 12 shaken, about 30 stirred. Common practice, no source.
    private static double UsualSeconds(ChillTechnique technique) => technique == ChillTechnique.Shaken ? 12 : 30;

    private static (double Water, double Celsius) Melt(in Freezing.Line line, in Mix mix, Practised practice)
    {
        var stop = practice.Stop;
        if (practice.Left > 0)
        {
            var end = Math.Max(stop, -line.Depression(mix.Water));
            stop = end + (practice.Left * (mix.Start - end));
        }

        var wet = Math.Min(practice.Wet / 100 * mix.Ice, mix.Ice / 2);
        var (water, celsius) = Solve(line, mix, practice.Vessel * mix.Volume / 100, wet, stop);
        return (water / 0.9982 / mix.Volume, celsius);
    }

    // Melt in grams (surface water included) and final temperature.
    private static (double Water, double Celsius) Solve(in Freezing.Line line, in Mix mix, double vessel, double wet, double stop)
    {
        // At the stop, if the mix is not frozen there: the balance is linear but for the heat of mixing.
        if (stop >= mix.Start)
            return (wet, mix.Start);
        var atStop = 0.0;
        if (stop > -49)
        {
            atStop = MeltAt(mix, vessel, wet, stop);
            if (atStop <= mix.Ice && -line.Depression(mix.Water + atStop + wet) <= stop)
                return (atStop + wet, stop);
        }

        // Else at the freezing line: its temperature rises with the melt, the melt that the balance asks for falls with temperature.
        double low = 0, high = mix.Ice;
        var missLow = Miss(line, mix, vessel, wet, low);
        var missHigh = Miss(line, mix, vessel, wet, high);
        if (double.IsNaN(missLow))
            return (double.NaN, double.NaN);
        if (missHigh > 0)
        {
            // All the ice is gone before the mix is cold: the melt is all there is, find the temperature.
            return (mix.Ice + wet, Math.Max(WarmEnd(mix, vessel, wet), stop));
        }

        if (missLow <= 0)
            return (wet, Math.Min(mix.Start, -line.Depression(mix.Water + wet)));
        // Illinois variant of the false position: the end that stays twice counts half.
        var melt = low;
        var side = 0;
        for (var i = 0; i < 40 && high - low > 1e-7 * mix.Ice; i++)
        {
            melt = ((low * missHigh) - (high * missLow)) / (missHigh - missLow);
            var miss = Miss(line, mix, vessel, wet, melt);
            if (Math.Abs(miss) < 1e-7 * mix.Ice)
                break;
            if (miss > 0)
            {
                low = melt;
                missLow = miss;
                if (side == 1)
                    missHigh /= 2;
                side = 1;
            }
            else
            {
                high = melt;
                missHigh = miss;
                if (side == -1)
                    missLow /= 2;
                side = -1;
            }
        }

        return (melt + wet, -line.Depression(mix.Water + melt + wet));
    }

    // How far the ice that must melt for the whole to be at the freezing line of that much melt is from it.
    private static double Miss(in Freezing.Line line, in Mix mix, double vessel, double wet, double melt)
    {
        var t = -line.Depression(mix.Water + melt + wet);
        return Math.Max(0, MeltAt(mix, vessel, wet, t, melt)) - melt;
    }

    // Ice that must melt for the whole to be at t: first guess without, then with the heat of mixing of that melt.
    private static double MeltAt(in Mix mix, double vessel, double wet, double t)
    {
        var melt = 0.0;
        for (var i = 0; i < 5; i++)
        {
            var next = Math.Max(0, MeltAt(mix, vessel, wet, t, melt));
            if (Math.Abs(next - melt) < 1e-9 * mix.Ice)
                return next;
            melt = next;
        }

        return melt;
    }

    private static double MeltAt(in Mix mix, double vessel, double wet, double t, double mixedIn)
    {
        var heat = ((mix.Joules(t) + vessel) * (mix.Start - t)) + mix.MixingHeat(mixedIn + wet) - (wet * WaterHeat * t);
        var iceHeat = HeatCapacity.Ice(Math.Min(0, (t + mix.IceCelsius) / 2));
        // Ice that stays comes to t (0 °C at most); ice that melts is warmed to 0 °C, melted, and its water brought to t.
        var left = iceHeat * (Math.Min(t, 0) - mix.IceCelsius);
        var melted = HeatOfFusion - (HeatCapacity.Ice(mix.IceCelsius / 2) * mix.IceCelsius) + (WaterHeat * t);
        return (heat - (mix.Ice * left)) / (melted - left);
    }

    private static double WarmEnd(in Mix mix, double vessel, double wet)
    {
        var joules = mix.Joules(mix.Start / 2) + vessel;
        var given = (joules * mix.Start) + mix.MixingHeat(mix.Ice + wet) - (mix.Ice * (HeatOfFusion - (HeatCapacity.Ice(mix.IceCelsius / 2) * mix.IceCelsius)));
        return Math.Min(mix.Start, given / (joules + ((mix.Ice + wet) * WaterHeat)));
    }

    private readonly record struct Practised(double Stop, double Vessel, double Wet, double Left = 0)
    {
        public Practised After(double left) => this with { Left = left };
    }

    // The mix as the balance sees it: heat capacity as a straight line, heat of mixing as a function of the water that comes in.
    private readonly ref struct Mix
    {
        private readonly double _joules20;
        private readonly double _joulesSlope;
        private readonly double _water;
        private readonly double _ethanol;
        private readonly double _before;

        public Mix(ReadOnlySpan<double> grams, double volume, double start, double iceCelsius, double ice)
        {
            Volume = volume;
            Start = start;
            IceCelsius = iceCelsius;
            Ice = ice;
            _joules20 = HeatCapacity.Joules(grams, 20);
            _joulesSlope = (_joules20 - HeatCapacity.Joules(grams, -10)) / 30;
            _water = grams.Of(Component.Water);
            _ethanol = grams.Of(Component.Ethanol);
            _before = _ethanol > 0 ? EthanolActivity.HeatGivenOff(_ethanol, _water, MixingKelvin) : 0;
        }

        // The heat of mixing is taken at 5 °C, half way between the start and the end.
        private const double MixingKelvin = 278.15;

        public double Volume { get; }

        public double Water => _water;

        public double Start { get; }

        public double IceCelsius { get; }

        public double Ice { get; }

        /// <summary>Mean heat capacity between the start and t, J/K.</summary>
        public double Joules(double t) => _joules20 + (_joulesSlope * (((Start + t) / 2) - 20));

        /// <summary>Heat given off when water comes in, J.</summary>
        public double MixingHeat(double water) => _ethanol > 0 ? EthanolActivity.HeatGivenOff(_ethanol, _water + water, MixingKelvin) - _before : 0;
    }
}
