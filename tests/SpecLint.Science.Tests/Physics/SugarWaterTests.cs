using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class SugarWaterTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("density-sucrose.csv").Rows;
        yield return Density("ICUMSA SPS-4 formula, evaluated independently", "SPS4", 0.1, "0 to 80 °C", _ => true);
        yield return Density("Asadi, Beet-Sugar Handbook, 2007, Table A.1", "ASADI", 0.1, "20 °C", _ => true);
        yield return Density(
            "CRC Handbook, 102nd ed. 2021, Concentrative Properties (Wolf 1966), to 48 %", "CRC", 0.15, "prints 0.1 kg/m³",
            r => r.Number("brix") <= 48);
        yield return Density(
            "CRC Handbook, 102nd ed. 2021, Concentrative Properties (Wolf 1966), over 48 %", "CRC", 0.55, "older data: the two handbooks part by 0.15 at 50 % to 0.5 at 80 %",
            r => r.Number("brix") > 48);
        yield return new ScienceLine(
            "Sucrose per litre by °Brix", "CRC Handbook, 102nd ed. 2021, and SPS-4 evaluated independently", "%", 0.7,
            [.. rows.Where(r => r.Has("g_100ml") && r.Number("brix") > 0 && r.Number("celsius") == 20).Select(r => new CheckPoint(
                r["brix"] + " °Brix", r.Number("g_100ml") * 10, SugarWater.GramsPerLitre(new(r.Number("brix")))?.Value))], Relative: true, Note: "the handbook works from a molarity of three decimals: 3.05 g per 100 mL at 3 %");
        yield return new ScienceLine(
            "°Brix from density", "ICUMSA SPS-4 formula, evaluated independently", "°Brix", 0.02,
            [.. rows.Where(r => r["set"] == "SPS4").Select(r => new CheckPoint(
                $"{r["kg_m3"]} kg/m³ at {r["celsius"]} °C", r.Number("brix"), SugarWater.BrixOf(new(r.Number("kg_m3")), new(r.Number("celsius")))?.Value))]);
        var refraction = PublishedTable.Read("refraction-sucrose.csv").Rows;
        yield return new ScienceLine(
            "Refractive °Brix", "CRC Handbook, 102nd ed. 2021, n(D) at 20 °C", "°Brix", 0.05,
            [.. refraction.Select(r => new CheckPoint(
                r["n"], r.Number("brix"), SugarWater.BrixOfRefractiveIndex(r.Number("n"))?.Value))], Note: "own fit to these rows; four decimals of n are 0.03 °Brix");
        var syrups = PublishedTable.Read("syrups.csv").Rows;
        yield return Syrup("density", r => (r.Number("g_ml") * 1000, SugarWater.Density(new(r.Number("brix") / 100), Celsius.Reference)?.Value));
        yield return Syrup("sucrose per litre", r => (r.Number("g_100ml") * 10, SugarWater.GramsPerLitre(new(r.Number("brix")))?.Value));
        yield return Syrup(
            "volume",
            r => (r.Number("ml"), r.Number("grams") / SugarWater.Density(new(r.Number("brix") / 100), Celsius.Reference)?.Value * 1000));
        var solubility = PublishedTable.Read("solubility-sucrose.csv").Rows;
        yield return new ScienceLine(
            "Solubility of sucrose", "Mohos, Confectionery and Chocolate Engineering, 2010, App. 2", "% mass", 0.4,
            [.. solubility.Where(r => r.Has("g_100g_water_second")).Select(r => new CheckPoint(
                r["celsius"] + " °C", 100 * r.Number("g_100g_water_second") / (100 + r.Number("g_100g_water_second")), SugarWater.Solubility(new(r.Number("celsius")))?.Value * 100))]);

        ScienceLine Syrup(string what, Func<PublishedTable.Row, (double, double?)> pick) => new(
            "Syrups: " + what, "ICUMSA SPS-4 formula, evaluated independently", "%", 0.05,
            [.. syrups.Select(r => (r, pick(r))).Select(p => new CheckPoint(p.r["recipe"], p.Item2.Item1, p.Item2.Item2))], Relative: true);

        ScienceLine Density(string source, string set, double tolerance, string note, Func<PublishedTable.Row, bool> where) => new(
            "Density of sucrose solutions", source, "kg/m³", tolerance,
            [.. rows.Where(r => r["set"] == set && where(r)).Select(r => new CheckPoint(
                $"{r["brix"]} % at {r["celsius"]} °C", r.Number("kg_m3"), SugarWater.Density(new(r.Number("brix") / 100), new(r.Number("celsius")))?.Value))],
            Note: note);
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    // Bartek, malic acid, after Apelblat et al. 1995: 0 °C 46.8, 20 °C 55.5, 25 °C 57.8, 50 °C 69.2 % by mass.
    [Theory]
    [InlineData(0, 46.8)]
    [InlineData(20, 55.5)]
    [InlineData(25, 57.8)]
    [InlineData(50, 69.2)]
    public void Malic_acid_dissolves_as_the_equation_of_Apelblat_says(double celsius, double percent) =>
        Assert.Equal(percent, SolubilityModel.Of(Component.Malic, new(celsius))!.Value.Value * 100, 0.3);

    [Fact]
    public void Two_to_one_syrup_is_under_saturation_at_20_degrees_and_over_it_in_the_refrigerator()
    {
        const double rich = 2.0 / 3;
        Assert.True(SugarWater.Solubility(new(20))!.Value.Value > rich);
        Assert.True(SugarWater.Solubility(new(4))!.Value.Value < rich);
    }

    [Fact]
    public void Outside_its_range_it_says_unknown()
    {
        Assert.Null(SugarWater.Density(new(0.81), new(20)));
        Assert.Null(SugarWater.Density(new(0.5), new(-1)));
        Assert.Null(SugarWater.Density(new(0.5), new(81)));
        Assert.Null(SugarWater.GramsPerLitre(new(80.5)));
        Assert.Null(SugarWater.BrixOf(new(990)));
        Assert.Null(SugarWater.BrixOfRefractiveIndex(1.3));
        Assert.Null(SugarWater.BrixOfRefractiveIndex(double.NaN));
        Assert.Null(SolubilityModel.Of(Component.Fructose, new(20)));
        Assert.Null(SolubilityModel.Of(Component.Glucose, new(4)));
    }
}
