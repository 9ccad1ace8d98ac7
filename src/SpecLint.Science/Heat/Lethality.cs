namespace SpecLint.Science;

/// <summary>A reading of a temperature record.</summary>
/// <param name="Minutes">Minutes from the start.</param>
/// <param name="Temperature">Temperature of the coldest part.</param>
public readonly record struct TemperatureReading(double Minutes, Celsius Temperature);

/// <summary>A log reduction with the range of the D and z it rests on.</summary>
/// <param name="Least">Least log₁₀ reduction.</param>
/// <param name="Most">Greatest log₁₀ reduction.</param>
public readonly record struct LogReduction(double Least, double Most);

/// <summary>
/// Lethality of a heating: minutes at the reference temperature that would kill as much, ∫ 10^((T − Tref)/z) dt over straight lines
/// between the readings, integrated exactly. Time below the range of an entry counts nothing; time above it counts as at its upper end: both give too
/// little rather than too much. The figure is that of the coldest part: a bath's temperature is not a bag's.
/// </summary>
[Source("Bigelow 1921; Ball & Olson, Sterilization in Food Technology, 1957, general method: lethal rate 10^((T − Tref)/z), integrated over the record")]
public static class Lethality
{
    private const double BeerReference = 60;

    // 1.393 for each kelvin: z = ln 10 / ln 1.393 = 6.94 K.
    private static readonly double BeerZ = Electrolyte.Ln10 / Math.Log(1.393);

    /// <summary>
    /// Minutes at the reference temperature equal to a record. Null for z not above 0, a range that does not hold the reference, or a record that is
    /// no record (fewer than one reading, time running back, a figure that is none).
    /// </summary>
    /// <param name="record">Readings in order of time.</param>
    /// <param name="reference">Reference temperature.</param>
    /// <param name="zBelow">z below the reference, K.</param>
    /// <param name="zAbove">z above the reference, K.</param>
    /// <param name="from">Least temperature that counts.</param>
    /// <param name="to">Temperature from which more heat counts no more.</param>
    public static double? EquivalentMinutes(
        ReadOnlySpan<TemperatureReading> record, Celsius reference, double zBelow, double zAbove, Celsius from, Celsius to)
    {
        if (record.IsEmpty || !(zBelow > 0) || !(zAbove > 0) || !(from.Value <= reference.Value) || !(reference.Value <= to.Value)
            || double.IsInfinity(from.Value) || double.IsInfinity(to.Value))
            return null;
        double minutes = 0;
        for (var i = 0; i < record.Length; i++)
        {
            if (!IsNumber(record[i].Minutes) || !IsNumber(record[i].Temperature.Value))
                return null;
            if (i == 0)
                continue;
            var span = record[i].Minutes - record[i - 1].Minutes;
            if (span < 0)
                return null;
            minutes += Segment(
                span, record[i - 1].Temperature.Value, record[i].Temperature.Value, new Killing(reference.Value, zBelow, zAbove),
                from.Value, to.Value);
        }

        return minutes;
    }

    /// <summary>
    /// Pasteurisation units of a record: minutes at 60 °C, PU = ∫ 1.393^(T − 60) dt, from 50 to 70 °C. Null for a record that is none.
    /// </summary>
    /// <param name="record">Readings in order of time.</param>
    [Source("Del Vecchio, Dayharsh & Baselt, Proc. Am. Soc. Brew. Chem. 45, 1951: PU = t · 1.393^(T − 60)")]
    public static double? PasteurisationUnits(ReadOnlySpan<TemperatureReading> record) =>
        EquivalentMinutes(record, new Celsius(BeerReference), BeerZ, BeerZ, new Celsius(50), new Celsius(70));

    /// <summary>
    /// Pasteurisation units for drinks with spores (tomato juice and the like): minutes at 80 °C with z = 10, from 70 to 100 °C. Null for a record
    /// that is none.
    /// </summary>
    /// <param name="record">Readings in order of time.</param>
    [Source("instrument maker's manual: PU80 = t · 10^((T − 80)/10)")]
    public static double? PasteurisationUnits80(ReadOnlySpan<TemperatureReading> record) =>
        EquivalentMinutes(record, new Celsius(80), 10, 10, new Celsius(70), new Celsius(100));

    /// <summary>
    /// Log reduction of an organism over a record; null when the entry has no z, unless every reading is at the reference, or for a record that is none.
    /// </summary>
    /// <param name="organism">Resistance.</param>
    /// <param name="record">Readings in order of time.</param>
    public static LogReduction? Reduction(ThermalResistance organism, ReadOnlySpan<TemperatureReading> record)
    {
        double low, high;
        var reference = new Celsius(organism.ReferenceCelsius);
        if (organism.LeastZ is not { } leastZ || organism.MostZ is not { } mostZ)
        {
            foreach (var reading in record)
            {
                if (reading.Temperature.Value != organism.ReferenceCelsius)
                    return null;
            }

            if (EquivalentMinutes(record, reference, 1, 1, reference, reference) is not { } held)
                return null;
            (low, high) = (held, held);
        }
        else
        {
            var (from, to) = (new Celsius(organism.FromCelsius), new Celsius(organism.ToCelsius));
            if (EquivalentMinutes(record, reference, leastZ, organism.ZAbove ?? mostZ, from, to) is not { } least
                || EquivalentMinutes(record, reference, mostZ, organism.ZAbove ?? leastZ, from, to) is not { } most)
                return null;
            (low, high) = (least, most);
        }

        return new LogReduction(low / organism.MostDMinutes, high / organism.LeastDMinutes);
    }

    // One straight line of temperature, cut at the ends of the range and at the reference.
    private static double Segment(double minutes, double start, double end, Killing killing, double from, double to)
    {
        var (cold, hot) = start < end ? (start, end) : (end, start);
        if (!(minutes > 0) || hot < from)
            return 0;
        if (hot - cold < 1e-9)
            return minutes * killing.Rate(Math.Min(hot, to));
        var perKelvin = minutes / (hot - cold);
        var sum = hot > to ? (hot - Math.Max(cold, to)) * perKelvin * killing.Rate(to) : 0;
        var (a, b) = (Math.Max(cold, from), Math.Min(hot, to));
        if (a < b)
        {
            var middle = Math.Min(Math.Max(killing.Reference, a), b);
            sum += perKelvin * (Primitive(middle - killing.Reference, killing.ZBelow) - Primitive(a - killing.Reference, killing.ZBelow));
            sum += perKelvin * (Primitive(b - killing.Reference, killing.ZAbove) - Primitive(middle - killing.Reference, killing.ZAbove));
        }

        return sum;
    }

    // How fast it kills: minutes at the reference for a minute at t, °C; z in K on either side of the reference.
    private readonly record struct Killing(double Reference, double ZBelow, double ZAbove)
    {
        public double Rate(double t) => Math.Pow(10, (t - Reference) / (t < Reference ? ZBelow : ZAbove));
    }

    private static double Primitive(double distance, double z) => z / Electrolyte.Ln10 * Math.Pow(10, distance / z);

    private static bool IsNumber(double x) => !double.IsNaN(x) && !double.IsInfinity(x);
}
