using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class EthanolWaterTests(ITestOutputHelper output) : IScienceTable
{
    private const string Quantity = "Density of ethanol and water";

    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("density-ethanol.csv").Rows;
        yield return Density("OIML R 22, 1975, general formula, evaluated independently", "OIML", 0.02, "−20 to 40 °C, 0 to 100 %", _ => true);
        yield return Density("CRC Handbook, 102nd ed. 2021, Concentrative Properties (Wolf 1966)", "CRC", 0.6, "20 °C", _ => true);
        yield return Density("Perry's Handbook, 7th ed., ethanol–water at 20 °C (NBS Circular 19)", "PERRY", 0.6, "rows over 12 % from memory", _ => true);
        yield return Density("Table of pure ethanol, 10 to 40 °C, source not stated", "ETH", 0.6, "", _ => true);
        yield return Density(
            "Melinder, Properties of Secondary Working Fluids, IIR 2010", "MEL", 0.75,
            "smoothed table, 0 to 20 °C; rows below 0 °C (supercooled for the formula) differ by up to 1.5 and are left out",
            r => r.Number("celsius") >= 0);

        var strength = PublishedTable.Read("strength-ethanol.csv").Rows;
        yield return new ScienceLine(
            "Strength by volume of ethanol and water", "OIML R 22, 1975, evaluated independently", "% vol", 0.01,
            [.. strength.Where(r => r["basis"] == "ABV20").Select(r =>
                new CheckPoint(r["percent_mass"] + " % mass", r.Number("percent_vol"), EthanolWater.AbvOf(new(r.Number("percent_mass") / 100))?.Percent))]);
        yield return new ScienceLine(
            "Strength by volume of ethanol and water", "CRC Handbook, 102nd ed. 2021, molarity of ethanol", "% vol", 0.05,
            [.. strength.Where(r => r["basis"].Contains("molarity", StringComparison.Ordinal)).Select(r =>
                new CheckPoint(r["percent_mass"] + " % mass", r.Number("percent_vol"), EthanolWater.AbvOf(new(r.Number("percent_mass") / 100))?.Percent))]);
        yield return new ScienceLine(
            "Mass fraction of ethanol from strength", "OIML R 22, 1975, evaluated independently", "% mass", 0.001,
            [.. strength.Where(r => r["basis"] == "ABV20").Select(r =>
                new CheckPoint(
                    r["percent_vol"] + " % vol",
                    r.Number("percent_mass"),
                    EthanolWater.MassFractionOf(AlcoholByVolume.FromPercent(r.Number("percent_vol")))?.Value * 100))]);
        yield return new ScienceLine(
            "Strength from density of ethanol and water", "OIML R 22, 1975, evaluated independently, −20 to 40 °C", "% vol", 0.01,
            [.. rows.Where(r => r["set"] == "OIML").Select(r => new CheckPoint(
                $"{r["percent_mass"]} % at {r["celsius"]} °C", EthanolWater.AbvOf(new(r.Number("percent_mass") / 100))!.Value.Percent,
                EthanolWater.AbvOfDensity(new(r.Number("kg_m3")), new(r.Number("celsius")))?.Percent))]);

        var mixes = PublishedTable.Read("contraction.csv").Rows;
        yield return new ScienceLine(
            "Volume of two spirits poured together", "OIML R 22, 1975, evaluated independently", "mL per 100 mL", 0.01,
            [.. mixes.Where(r => r["kind"] == "vector").Select(r => Poured(r))]);
        yield return new ScienceLine(
            "Volume of two spirits poured together", "Classroom demonstrations of contraction", "mL per 100 mL", 1.1,
            [.. mixes.Where(r => r["kind"] != "vector").Select(r => Poured(r))], Note: "read off cylinders, common alcohol");

        ScienceLine Density(string source, string set, double tolerance, string note, Func<PublishedTable.Row, bool> where) => new(
            Quantity, source, "kg/m³", tolerance,
            [.. rows.Where(r => r["set"] == set && where(r)).Select(r => new CheckPoint(
                $"{r["percent_mass"]} % at {r["celsius"]} °C", r.Number("kg_m3"),
                EthanolWater.Density(new(r.Number("percent_mass") / 100), new(r.Number("celsius")))?.Value))],
            Note: note);

        static CheckPoint Poured(PublishedTable.Row r)
        {
            var total = r.Number("ml1") + r.Number("ml2");
            var mixed = EthanolWater.Mix(
                new(r.Number("ml1")), AlcoholByVolume.FromPercent(r.Number("percent1")), new(r.Number("ml2")), AlcoholByVolume.FromPercent(r.Number("percent2")));
            return new($"{r["ml1"]} mL {r["percent1"]} % and {r["ml2"]} mL {r["percent2"]} %", r.Number("ml") / total * 100, mixed?.Volume.Value / total * 100);
        }
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    [Fact]
    public void Strength_and_mass_fraction_are_inverses()
    {
        for (var i = 0; i <= 1000; i++)
        {
            var abv = i / 1000.0;
            var p = EthanolWater.MassFractionOf(new(abv));
            Assert.NotNull(p);
            Assert.Equal(abv, EthanolWater.AbvOf(p.Value)!.Value.Value, 12);
        }
    }

    [Fact]
    public void Density_falls_with_ethanol_at_every_temperature()
    {
        for (var t = -20.0; t <= 40; t += 2.5)
        {
            for (var p = 0.002; p <= 1; p += 0.002)
            {
                var slope = EthanolWater.Density(new(p), new(t))!.Value.Value - EthanolWater.Density(new(p - 0.002), new(t))!.Value.Value;
                Assert.True(slope < 0, $"p {p}, t {t}");
            }
        }
    }

    // OIML R 22, 1975: pure water and pure ethanol at 20 °C.
    [Fact]
    public void Contracts_most_near_half_and_half_by_volume()
    {
        Assert.Equal(998.20123, EthanolWater.Density(new(0), Celsius.Reference)!.Value.Value, 5);
        Assert.Equal(EthanolWater.PureDensityAt20, EthanolWater.Density(new(1), Celsius.Reference)!.Value.Value, 3);
        Assert.Equal(0, EthanolWater.Contraction(new(0), Celsius.Reference)!.Value, 12);
        Assert.Equal(0, EthanolWater.Contraction(new(1), Celsius.Reference)!.Value, 12);
        Assert.InRange(EthanolWater.Contraction(new(0.46), Celsius.Reference)!.Value, 0.034, 0.037);
    }

    [Theory]
    [InlineData(0.4, 40.1)]
    [InlineData(0.4, -20.1)]
    [InlineData(1.0001, 20)]
    [InlineData(-0.0001, 20)]
    [InlineData(double.NaN, 20)]
    [InlineData(0.4, double.NaN)]
    public void Outside_its_range_the_formula_says_unknown(double p, double t)
    {
        Assert.Null(EthanolWater.Density(new(p), new(t)));
        Assert.Null(EthanolWater.Contraction(new(p), new(t)));
    }

    [Fact]
    public void A_density_that_no_mixture_has_gives_no_strength()
    {
        Assert.Null(EthanolWater.AbvOfDensity(new(1010), Celsius.Reference));
        Assert.Null(EthanolWater.AbvOfDensity(new(780), Celsius.Reference));
        Assert.Null(EthanolWater.MassFractionOf(new(1.01)));
        Assert.Null(EthanolWater.MassFractionOf(new(double.NaN)));
    }
}
