using CsCheck;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>Heat: pasteurisation units, equivalents and log reductions.</summary>
public sealed class LethalityTests(ITestOutputHelper output) : IScienceTable
{
    private static readonly ThermalResistance Botulinum = ThermalResistance.ById("c-botulinum-non-proteolytic")!;

    [Fact]
    public void Heat_against_the_tables() => ScienceReport.Check(this, output);

    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("heat-equivalents-90.csv").Rows;
        CheckPoint Equivalent(PublishedTable.Row r) => new(
            $"{r["celsius"]} °C", r.Number("seconds"), Botulinum.DMinutes(new Celsius(r.Number("celsius"))) * 6 * 60);
        yield return new ScienceLine(
            "hold equal to 90 °C for 10 minutes", rows[0]["source"], "%", 3, [.. rows.Where(r => r["celsius"] != "99").Select(Equivalent)], Relative: true);
        yield return new ScienceLine(
            "hold equal to 90 °C for 10 minutes", rows[0]["source"], "%", 4, [.. rows.Where(r => r["celsius"] == "99").Select(Equivalent)], Relative: true,
            Note: "99 °C is printed as 1.3 minutes: the rounding alone is 3.8 %");
        yield return new ScienceLine(
            "log reduction", "thermal resistances of the reference entries: FSA 2006; Gaze et al. 1989; Mazzotta 2001; Stumbo (from memory)", "log₁₀", 0.05,
            [
                new("C. botulinum, non-proteolytic, 10 min at 90 °C", 6, Least("c-botulinum-non-proteolytic", 10, 90)),
                new("Listeria, 2 min at 70 °C", 6, Least("listeria", 2, 70)),
                new("E. coli in juice, 3 s at 71.1 °C", 5, Least("e-coli-juice", 0.05, 71.1)),
                new("C. botulinum, proteolytic, 2.52 min at 121.1 °C", 12, Least("c-botulinum-proteolytic", 2.52, 121.1)),
            ]);
        yield return new ScienceLine(
            "pasteurisation units", "Del Vecchio, Dayharsh & Baselt 1951; instrument maker's manual (80 °C)", "PU", 0.001,
            [
                new("10 min at 60 °C", 10, Lethality.PasteurisationUnits(Held(10, 60))),
                new("10 min at 61 °C", 13.93, Lethality.PasteurisationUnits(Held(10, 61))),
                new("10 min at 58 °C", 10 / (1.393 * 1.393), Lethality.PasteurisationUnits(Held(10, 58))),
                new("10 min at 40 °C", 0, Lethality.PasteurisationUnits(Held(10, 40))),
                new("10 min at 80 °C, base 80", 10, Lethality.PasteurisationUnits80(Held(10, 80))),
                new("10 min at 90 °C, base 80", 100, Lethality.PasteurisationUnits80(Held(10, 90))),
            ]);
    }

    [Fact]
    public void Equivalents_of_ten_minutes_at_90_degrees_are_within_one_per_cent()
    {
        var deviations = PublishedTable.Read("heat-equivalents-90.csv").Rows
            .Select(r => Botulinum.DMinutes(new Celsius(r.Number("celsius")))!.Value * 360 / r.Number("seconds") - 1).ToList();
        var rms = Math.Sqrt(deviations.Average(d => d * d));
        output.WriteLine($"{deviations.Count} rows, rms {rms}");
        Assert.InRange(rms, 0, 0.011);
    }

    [Fact]
    public void A_slope_is_integrated_exactly()
    {
        // Against a fine sum of rectangles, over both values of z and both ends of the range.
        TemperatureReading[] record = [new(0, new Celsius(20)), new(10, new Celsius(95)), new(12, new Celsius(95)), new(20, new Celsius(60))];
        var exact = Lethality.Reduction(Botulinum, record)!.Value.Least;
        double sum = 0;
        const int Steps = 200_000;
        for (var i = 0; i < Steps; i++)
        {
            var m = (i + 0.5) * 20 / Steps;
            var t = m < 10 ? 20 + 7.5 * m : m < 12 ? 95 : 95 - 35.0 / 8 * (m - 12);
            if (t >= 80)
                sum += 20.0 / Steps / Botulinum.DMinutes(new Celsius(t))!.Value;
        }

        Assert.Equal(sum, exact, sum * 1e-4);
    }

    [Fact]
    public void Heat_outside_the_range_gives_too_little_rather_than_too_much()
    {
        Assert.Equal(0, Lethality.Reduction(Botulinum, Held(1000, 79))!.Value.Most);
        Assert.Equal(Lethality.Reduction(Botulinum, Held(1, 100)), Lethality.Reduction(Botulinum, Held(1, 120)));
        Assert.Null(Botulinum.DMinutes(new Celsius(79)));
        Assert.Null(Lethality.Reduction(ThermalResistance.ById("s-aureus-chicken")!, Held(10, 65))); // No z: the reference alone.
        Assert.Equal(10 / 5.37, Lethality.Reduction(ThermalResistance.ById("s-aureus-chicken")!, Held(10, 60))!.Value.Least, 1e-12);
        Assert.Null(ThermalResistance.ById("nothing"));
    }

    [Fact]
    public void A_range_of_resistances_gives_a_range()
    {
        var egg = ThermalResistance.ById("salmonella-whole-egg")!;
        var at = Lethality.Reduction(egg, Held(3.5, 60))!.Value;
        Assert.Equal(3.5 / 0.4, at.Least, 1e-9);
        Assert.Equal(3.5 / 0.3, at.Most, 1e-9);
        var below = Lethality.Reduction(egg, Held(3.5, 57))!.Value;
        Assert.Equal(3.5 / 0.4 * Math.Pow(10, -3 / 4.0), below.Least, 1e-9);
        Assert.Equal(3.5 / 0.3 * Math.Pow(10, -3 / 4.5), below.Most, 1e-9);
        Assert.Equal(3.5 / below.Least, egg.DMinutes(new Celsius(57))!.Value, 1e-9);
    }

    [Fact]
    public void A_record_that_is_none_is_unknown()
    {
        Assert.Null(Lethality.PasteurisationUnits([]));
        Assert.Null(Lethality.PasteurisationUnits([new(5, new Celsius(60)), new(4, new Celsius(60))]));
        Assert.Null(Lethality.PasteurisationUnits([new(0, new Celsius(double.NaN)), new(4, new Celsius(60))]));
        Assert.Null(Lethality.EquivalentMinutes(Held(1, 60), new Celsius(60), 0, 7, new Celsius(50), new Celsius(70)));
        Assert.Null(HeatProcesses.Meets(HeatedProduct.Milk, []));
    }

    [Theory]
    [InlineData(HeatedProduct.Milk, 72, 15, true)]
    [InlineData(HeatedProduct.Milk, 72, 14.9, false)]
    [InlineData(HeatedProduct.Milk, 71.9, 15, false)]
    [InlineData(HeatedProduct.Milk, 73, 15, true)]
    [InlineData(HeatedProduct.Cream, 72, 15, false)]
    [InlineData(HeatedProduct.Cream, 75, 15, true)]
    [InlineData(HeatedProduct.EggWhite, 56.7, 210, true)]
    [InlineData(HeatedProduct.CookChill, 70, 120, true)]
    [InlineData(HeatedProduct.ChilledSealedFood, 80, 7740, true)]
    [InlineData(HeatedProduct.ChilledSealedFood, 80, 7700, false)]
    public void A_process_meets_its_table_or_not(HeatedProduct product, double celsius, double seconds, bool meets) =>
        Assert.Equal(meets, HeatProcesses.Meets(product, [new(0, new Celsius(20)), new(5, new Celsius(celsius)), new(5 + seconds / 60, new Celsius(celsius)), new(5 + seconds / 60, new Celsius(20))]));

    [Fact]
    public void Two_stretches_do_not_add_up_to_a_hold() =>
        Assert.False(HeatProcesses.Meets(HeatedProduct.Milk,
            [new(0, new Celsius(72)), new(0.15, new Celsius(72)), new(0.2, new Celsius(60)), new(0.25, new Celsius(72)), new(0.4, new Celsius(72))]));

    [Fact]
    public void Every_entry_is_well_formed()
    {
        Assert.All(ThermalResistance.All, e =>
        {
            Assert.True(e.LeastDMinutes <= e.MostDMinutes && e.FromCelsius <= e.ReferenceCelsius && e.ReferenceCelsius <= e.ToCelsius, e.Id);
            Assert.True(e.LeastZ is null == e.MostZ is null && !(e.LeastZ > e.MostZ) && e.Source.Length > 10, e.Id);
        });
        Assert.Equal(ThermalResistance.All.Count, ThermalResistance.All.Select(e => e.Id).Distinct().Count());
        Assert.All(Enum.GetValues<HeatedProduct>(), p => Assert.Contains(HeatProcesses.All, h => h.Product == p));
    }

    [Fact]
    public void More_time_and_more_heat_never_kill_less() =>
        Gen.Select(Gen.Select(Gen.Double[0, 30], Gen.Double[-20, 130]).Array[1, 8], Gen.Int[0, ThermalResistance.All.Count - 1], Gen.Double[0, 10]).Sample(
            (steps, entry, warmer) =>
            {
                double now = 0;
                var record = steps.Select(s => new TemperatureReading(now += s.Item1, new Celsius(s.Item2))).ToArray();
                var hotter = record.Select(r => r with { Temperature = new Celsius(r.Temperature.Value + warmer) }).ToArray();
                var resistance = ThermalResistance.All[entry];
                var (a, b) = (Lethality.Reduction(resistance, record), Lethality.Reduction(resistance, hotter));
                if (a is not { } cold || b is not { } hot)
                    return resistance.LeastZ is null;
                return double.IsFinite(cold.Most) && cold.Least >= 0 && cold.Least <= cold.Most * (1 + 1e-9) && hot.Least >= cold.Least * (1 - 1e-9);
            },
            iter: 200_000);

    private static TemperatureReading[] Held(double minutes, double celsius) => [new(0, new Celsius(celsius)), new(minutes, new Celsius(celsius))];

    private static double? Least(string id, double minutes, double celsius) => Lethality.Reduction(ThermalResistance.ById(id)!, Held(minutes, celsius))?.Least;
}
