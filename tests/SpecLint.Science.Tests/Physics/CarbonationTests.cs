using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class CarbonationTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("carbon-dioxide.csv").Rows;
        yield return Line("CRC", "CRC Handbook, p. 8-90 (Carroll, Crovetto), 0 to 40 °C", 2, "the table states an accuracy of 2 %", _ => true);
        yield return Line(
            "MURRAY", "C. N. Murray and J. P. Riley, 1971 (IUPAC-NIST SRD 106), 1 to 35 °C", 2.2,
            "up to 2 % under the handbook above 20 °C", _ => true);
        yield return Line(
            "EU", "Regulation (EEC) No 2676/90, ch. 37, 20 °C, to 15 % vol", 3, "the law's factor for water is 1.5 % under the handbook",
            r => r.Number("percent_vol") <= 15);
        yield return Line("VEC", "Own earlier fit of water by the factors of 2676/90", 2, "", r => r.Number("percent_vol") <= 15 && r.Number("g_l") <= 150);
        yield return Line("ORDER", "G. Liger-Belair and C. Cilindre, 2021, table 1: order of magnitude for beer and champagne", 9, "", _ => true);
        var champagne = rows.Where(r => r["set"] == "CHAMPAGNE").ToList();
        var last = champagne.MaxBy(r => r.Number("celsius"))!;
        var wine = (Abv: AlcoholByVolume.FromPercent(12.5), Sugar: new GramsPerLitre(10));
        var held = Carbonation.Volumes(new(last.Number("bar")), new(last.Number("celsius")), wine.Abv, wine.Sugar)!.Value;
        yield return new ScienceLine(
            "Pressure in a closed bottle by temperature", "G. Liger-Belair, Sci. Rep. 7 (2017) s41598-017-10702-6, table 1, champagne", "%", 4,
            [.. champagne.Where(r => r != last)
                .Select(r => new CheckPoint(
                    r["celsius"] + " °C", r.Number("bar"),
                    Carbonation.Pressure(held, new(r.Number("celsius")), wine.Abv, wine.Sugar)?.Value))],
            Relative: true, Note: "from the bottle's pressure at 19.85 °C");
        yield return new ScienceLine(
            "Carbon dioxide in beer", "Carbonation chart for beer, 0 to 26 °C", "%", 14,
            [.. rows.Where(r => r["set"] == "BEER").Select(r => new CheckPoint(
                $"{r["bar"]} bar at {r["celsius"]} °C", r.Number("volumes"), Carbonation.Volumes(
                    new(r.Number("bar")), new(r.Number("celsius")), AlcoholByVolume.FromPercent(5), new(20))?.Value))],
            Relative: true, Note: "beer taken as 5 % vol with 20 g/L of sugar; the chart is for beer alone, and reads up to 13 % over the law for wine");

        ScienceLine Line(string set, string source, double tolerance, string note, Func<PublishedTable.Row, bool> where) => new(
            "Carbon dioxide dissolved", source, "%", tolerance,
            [.. rows.Where(r => r["set"] == set && where(r)).Select(r => new CheckPoint(
                $"{r["celsius"]} °C, {r["percent_vol"]} % vol, {r["g_l"]} g/L, {r["bar"]} bar", r.Number("g_l_gas"),
                Carbonation.Volumes(
                    new(r.Number("bar")), new(r.Number("celsius")), AlcoholByVolume.FromPercent(r.Number("percent_vol")),
                    new(r.Number("g_l")))?.GramsPerLitre))],
            Relative: true, Note: note);
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    // Stoichiometry: 7.7 g/L of hexose makes 1.9 volumes of gas and 0.5 % vol.
    [Fact]
    public void Residual_sugar_makes_gas_and_alcohol()
    {
        var ferment = Mixes.Of((Component.Glucose, 3.85), (Component.Fructose, 3.85), (Component.Water, 992));
        var end = Carbonation.OfLiveFerment(ferment, new(20))!.Value;
        Assert.Equal(1.9, end.AddedVolumes.Value, 0.02);
        Assert.Equal(0.5, end.AddedAbv.Percent, 0.005);
        Assert.Equal(2.2, end.AbsolutePressure.Value, 0.1);
        var warmer = Carbonation.OfLiveFerment(ferment, new(30))!.Value;
        Assert.True(warmer.AbsolutePressure.Value > end.AbsolutePressure.Value);
    }

    [Fact]
    public void A_headspace_takes_up_gas_and_keeps_its_air()
    {
        var ferment = Mixes.Of((Component.Sucrose, 20), (Component.Water, 985));
        var full = Carbonation.OfLiveFerment(ferment, new(20), 0)!.Value;
        var tenth = Carbonation.OfLiveFerment(ferment, new(20), 0.1)!.Value;
        Assert.True(tenth.AbsolutePressure.Value < full.AbsolutePressure.Value);
        Assert.Equal(full.AddedVolumes, tenth.AddedVolumes);
        Assert.Equal(tenth.AbsolutePressure.Value, tenth.GaugePressure.Value, 0.01);
    }

    [Fact]
    public void Pressure_and_volumes_are_inverses()
    {
        for (var bar = 0.1; bar <= 9; bar += 0.7)
        {
            var volumes = Carbonation.Volumes(new(bar), new(7), AlcoholByVolume.FromPercent(9), new(70))!.Value;
            Assert.Equal(bar, Carbonation.Pressure(volumes, new(7), AlcoholByVolume.FromPercent(9), new(70))!.Value.Value, 9);
        }
    }

    [Fact]
    public void Outside_its_range_it_says_unknown()
    {
        Assert.Null(Carbonation.Volumes(new(1), new(-1), new(0), new(0)));
        Assert.Null(Carbonation.Volumes(new(1), new(5), AlcoholByVolume.FromPercent(15.1), new(0)));
        Assert.Null(Carbonation.Volumes(new(1), new(5), new(0), new(151)));
        Assert.Null(Carbonation.Pressure(new(30), new(30), new(0), new(0)));
        Assert.Null(Carbonation.OfLiveFerment(Mixes.Of((Component.Sucrose, 200), (Component.Water, 800)), new(20)));
        Assert.Null(Carbonation.OfLiveFerment(Mixes.Of((Component.Sucrose, 20), (Component.Water, 980)), new(20), 1));
    }
}
