using System.Globalization;
using CsCheck;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>Growth models against worked vectors of their formulas and against measured growth.</summary>
public sealed class GrowthTests(ITestOutputHelper output) : IScienceTable
{
    private static readonly WaterActivity Wet = new(0.995);

    [Fact]
    public void Growth_against_vectors_and_measurements() => ScienceReport.Check(this, output);

    public IEnumerable<ScienceLine> Lines()
    {
        var vectors = PublishedTable.Read("growth-vectors.csv").Rows;
        foreach (var group in vectors.GroupBy(r => r["source"]))
        {
            // Printed to 5 decimals.
            yield return new ScienceLine(
                "growth rate, formula", group.Key, "1/h", 0.0000061, [.. group.Select(r => new CheckPoint(Name(r), r.Number("per_hour"), Vector(r)?.PerHour))]);
        }

        var listeria = vectors.Where(r => r["model"] == "listeria").ToList();
        yield return new ScienceLine(
            "growth rate, ψ", listeria[0]["source"], "1", 0.000061,
            [.. listeria.Where(r => r.Number("psi") < 9).Select(r => new CheckPoint(Name(r), r.Number("psi"), Vector(r)?.Psi))],
            Note: "the vector beyond a limit of lactic acid has ψ infinite here");

        var measured = PublishedTable.Read("growth-checkpoints.csv").Rows;
        foreach (var group in measured.Where(r => r["quantity"] == "doubling hours").GroupBy(r => r["source"]))
        {
            var slow = group.Where(r => Model(r)!.Value.DoublingHours > r.Number("high"))
                .Select(r => $"{r["celsius"]} °C ({Model(r)!.Value.DoublingHours.ToString("F1", CultureInfo.InvariantCulture)} h, measured to {r["high"]} h)").ToList();
            yield return new ScienceLine(
                "doubling time of Listeria", group.Key, "%", 50,
                [.. group.Select(r => new CheckPoint(
                    $"{r["matrix"]} at {r["celsius"]} °C", Math.Clamp(Model(r)!.Value.DoublingHours, r.Number("low"), r.Number("high")),
                    Model(r)?.DoublingHours))],
                Relative: true,
                Note: "distance from the measured range; " + (slow.Count > 0
                    ? "too slow, the unsafe side: " + string.Join("; ", slow)
                    : "none on the unsafe side"));
        }

        var plantarum = measured.Where(r => r["model"] == "l-plantarum").ToList();
        yield return new ScienceLine(
            "growth rate, formula", plantarum[0]["source"], "1/h", 0.000051,
            [.. plantarum.Select(r => new CheckPoint($"{r["celsius"]} °C", r.Number("low"), Model(r)?.PerHour))]);

        // The foods' own pH, salt, smoke and flora are not in the table: a factor of ten is all it can show.
        var fish = measured.Where(r => r["quantity"] == "log10 in days").ToList();
        yield return new ScienceLine(
            "days of Listeria in smoked fish", fish[0]["source"], "log₁₀ of the ratio", 1,
            [.. fish.Select(r => new CheckPoint(
                $"{r["matrix"]} at {r["celsius"]} °C", Math.Log10(r.Number("high")),
                Math.Log10(Model(r)!.Value.DaysPerLog10 * r.Number("low"))))],
            Note: "order of magnitude: pH 6.1 and water activity 0.965 taken; phenol, lactate, lag and competing flora not counted, so that the model is fast");
    }

    [Fact]
    public void The_published_error_is_the_one_measured_here()
    {
        var logs = PublishedTable.Read("growth-checkpoints.csv").Rows.Where(r => r["quantity"] == "doubling hours")
            .Select(r => Math.Log(Model(r)!.Value.DoublingHours / Math.Sqrt(r.Number("low") * r.Number("high")))).ToList();
        var rms = Math.Sqrt(logs.Average(l => l * l));
        output.WriteLine($"{logs.Count} points, rms {rms}, from {logs.Min()} to {logs.Max()}");
        Assert.InRange(GrowthModels.DoublingTimeError.Share, rms - 0.01, rms + 0.01);
    }

    [Fact]
    public void Outside_its_fit_a_model_says_nothing()
    {
        Assert.Null(GrowthModels.Listeria.Rate(new Celsius(-1), new Ph(6), Wet));
        Assert.Null(GrowthModels.Listeria.Rate(new Celsius(30), new Ph(6), Wet));
        Assert.Null(GrowthModels.Listeria.Rate(new Celsius(5), new Ph(4.6), Wet)); // Growth is known there: not nought.
        Assert.Null(GrowthModels.Listeria.Rate(new Celsius(5), new Ph(6), new WaterActivity(0.9)));
        Assert.Null(GrowthModels.Listeria.Rate(new Celsius(5), new Ph(double.NaN), Wet));
        Assert.Null(GrowthModels.EscherichiaColi.Rate(new Celsius(3), new Ph(6), Wet));
        Assert.Null(GrowthModels.OsmophilicYeast(new Ph(6), new MassFraction(0.6)));
        Assert.Null(GrowthModels.OsmophilicYeast(new Ph(4), new MassFraction(0.2)));
    }

    [Fact]
    public void Every_model_has_a_source_a_range_and_a_rate_inside_it()
    {
        Assert.Equal(GrowthModels.All.Count, GrowthModels.All.Select(m => m.Id).Distinct().Count());
        foreach (var model in GrowthModels.All)
        {
            Assert.True(model.Source.Length > 8, model.Id);
            var (t, p, w) = (Middle(model.TemperatureRange), Middle(model.PhRange ?? new(7, 7)), Middle(model.WaterActivityRange ?? new(0.99, 0.99)));
            var rate = model.Rate(new Celsius(t), new Ph(p), new WaterActivity(w));
            output.WriteLine($"{model.Id}: {rate?.PerHour:F3} 1/h at {t} °C, pH {p}, {w}");
            Assert.NotNull(rate);
            Assert.InRange(rate.Value.PerHour, 0.001, 3);
        }
    }

    [Fact]
    public void Growth_adds_up_over_holds()
    {
        var holds = new Hold[] { new(new Celsius(4), 24 * 60), new(new Celsius(10), 60) };
        var (cold, warm) = (GrowthModels.Listeria.Rate(new Celsius(4), new Ph(6.5), Wet)!.Value, GrowthModels.Listeria.Rate(new Celsius(10), new Ph(6.5), Wet)!.Value);
        Assert.Equal((24 * cold.PerHour + warm.PerHour) / Math.Log(10), GrowthModels.Listeria.Log10Increase(holds, new Ph(6.5), Wet)!.Value, 1e-12);
        Assert.Null(GrowthModels.Listeria.Log10Increase([new Hold(new Celsius(40), 1)], new Ph(6.5), Wet));
    }

    [Fact]
    public void Acid_slows_and_the_limit_stops()
    {
        double[] Sour(double millimoles) => Mixture.Of((Component.Water, 1000), (Component.Acetic, millimoles * 0.060052));
        double Rate(double millimoles) => GrowthModels.Listeria.Rate(new Celsius(10), new Ph(5.5), Wet, Sour(millimoles))!.Value.PerHour;
        Assert.True(Rate(0) > Rate(5) && Rate(5) > Rate(20) && Rate(20) > 0);
        Assert.Equal(0, Rate(80)); // u = 80 / (1 + 10^(5.5 − 4.76)) = 12.3 mmol, above 10.3.
        Assert.Equal(Rate(0), GrowthModels.Listeria.Rate(new Celsius(10), new Ph(5.5), Wet)!.Value.PerHour, 1e-15);
    }

    [Fact]
    public void Limits_answer_in_three_ways()
    {
        var listeria = GrowthLimits.All.Single(l => l.Organism.StartsWith("Listeria", StringComparison.Ordinal));
        Assert.True(listeria.RulesOut(new Celsius(4), new Ph(3.5), null));
        Assert.False(listeria.RulesOut(new Celsius(4), new Ph(4.6), new WaterActivity(0.99)));
        Assert.Null(listeria.RulesOut(new Celsius(4), new Ph(4.6), null));
        Assert.True(listeria.RulesOut(new Celsius(-1), null, null)); // Walker et al. 1990: growth down to −0.4 °C, not below.
        Assert.False(listeria.RulesOut(new Celsius(-0.2), new Ph(6), new WaterActivity(0.99)));
        Assert.True(GrowthLimits.All.Single(l => l.Organism == "any organism").RulesOut(null, null, new WaterActivity(0.5)));

        // Medvedova et al.: S. aureus grew from a water activity of 0.83.
        Assert.Equal(0.83, GrowthLimits.All.Single(l => l.Organism == "Staphylococcus aureus").LowestWaterActivity);
    }

    [Fact]
    public void The_sweetest_usual_syrup_does_not_stop_yeast() // 2 to 1 by mass: doubling in 4.5 h at the optimum of temperature.
        => Assert.InRange(GrowthModels.OsmophilicYeast(new Ph(4), new MassFraction(2.0 / 3))!.Value.DoublingHours, 4, 5);

    [Theory]
    [InlineData(0, EthanolBand.None)]
    [InlineData(4.99, EthanolBand.None)]
    [InlineData(5, EthanolBand.Partial)]
    [InlineData(12.5, EthanolBand.NoGrowthOfTestedPathogens)]
    [InlineData(20, EthanolBand.NoGrowthInPractice)]
    [InlineData(40, EthanolBand.KillsOverDays)]
    public void Bands_of_strength(double percent, EthanolBand band)
    {
        Assert.Equal(band, EthanolInhibition.Band(AlcoholByVolume.FromPercent(percent)));
        Assert.All(EthanolInhibition.Observations, o => Assert.True(o.Low <= o.High && o.Source.Length > 10));
    }

    [Fact]
    public void Bands_beyond_the_scale_are_unknown()
    {
        Assert.Null(EthanolInhibition.Band(AlcoholByVolume.FromPercent(-1)));
        Assert.Null(EthanolInhibition.Band(new AlcoholByVolume(double.NaN)));
    }

    [Fact]
    public void No_conditions_make_a_model_throw_or_lose_a_number() =>
        Gen.Select(
            Gen.Double[-30, 80], Gen.Double[-1, 15], Gen.Double[-0.1, 1.1], Gen.Double[0, 30].Array[Components.Count],
            Gen.Int[0, GrowthModels.All.Count - 1]).Sample(
            (t, p, w, grams, m) =>
            {
                var rate = GrowthModels.All[m].Rate(new Celsius(t), new Ph(p), new WaterActivity(w), grams);
                return rate is not { } r || (double.IsFinite(r.PerHour) && r.PerHour >= 0 && r.PerHour < 10 && r.Xi is >= 0 and <= 1 && r.Psi >= 0);
            },
            iter: LongRun.Cases(200_000, 1_000_000));

    [Fact]
    public void Warmer_is_faster_below_the_optimum() =>
        Gen.Select(Gen.Double[0, 24], Gen.Double[0.01, 1], Gen.Double[5.2, 7], Gen.Double[0.95, 1]).Sample(
            (t, more, p, w) =>
            {
                var (cold, warm) = (GrowthModels.Listeria.Rate(new Celsius(t), new Ph(p), new WaterActivity(w)), GrowthModels.Listeria.Rate(
                    new Celsius(t + more), new Ph(p), new WaterActivity(w)));
                return warm!.Value.PerHour >= cold!.Value.PerHour;
            },
            iter: 100_000);

    private static GrowthRate? Vector(PublishedTable.Row row)
    {
        var t = new Celsius(row.Has("celsius") ? row.Number("celsius") : 0);
        var ph = new Ph(row.Has("ph") ? row.Number("ph") : 7);
        switch (row["model"])
        {
            case "listeria":
                var water = Mixture.Of((Component.Water, 1000));
                foreach (var (acid, millimoles) in Mixture.Parts(row["acid_mmol"]))
                    water[(int)Mixture.ComponentOf(acid)] = millimoles / 1000 * AcidData.All.Single(a => a.Name == acid).MolarMass;
                return GrowthModels.Listeria.Rate(t, ph, new WaterActivity(row.Number("water_activity")), water);
            case "e-coli":
                return GrowthModels.EscherichiaColi.Rate(t, ph, Wet);
            case "s-aureus":
                return GrowthModels.StaphylococcusAureus.Rate(t, ph, new WaterActivity(row.Number("water_activity")));
            default:
                // One vector lies at pH 6, outside the fit: there the formula is checked from its parts.
                var sugar = row.Number("sugar_g_kg");
                return GrowthModels.OsmophilicYeast(ph, new MassFraction(sugar / 1000))
                    ?? new GrowthRate(0.48 * GrowthFunctions.Cardinal(1, ph.Value, 2.3, 4, 15.1)!.Value * (1 - sugar / 981), 0, 1);
        }
    }

    private static GrowthRate? Model(PublishedTable.Row row) => row["model"] == "listeria"
        ? GrowthModels.Listeria.Rate(new Celsius(row.Number("celsius")), new Ph(row.Number("ph")), new WaterActivity(row.Number("water_activity")))
        : GrowthModels.LactobacillusPlantarum.Rate(new Celsius(row.Number("celsius")), new Ph(6), Wet);

    private static string Name(PublishedTable.Row row) => $"{row["case"]} at {row["celsius"]} °C, pH {row["ph"]}";

    private static double Middle(FitRange range) => (range.Low + range.High) / 2;
}
