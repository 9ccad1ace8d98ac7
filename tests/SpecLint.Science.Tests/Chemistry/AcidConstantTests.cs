using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>pKa by temperature and by ethanol, and the ionic product of water.</summary>
public sealed class AcidConstantTests(ITestOutputHelper output) : IScienceTable
{
    [Fact]
    public void Constants_by_temperature_and_ethanol() => ScienceReport.Check(this, output);

    public IEnumerable<ScienceLine> Lines()
    {
        foreach (var group in PublishedTable.Read("pka-by-temperature.csv").Rows.GroupBy(r => r["source"]))
        {
            yield return new ScienceLine(
                "pKa by temperature", group.Key, "pKa", 0.005,
                [.. group.Select(r => new CheckPoint(
                    $"{r["acid"]} {r["step"]} at {r["celsius"]} °C", r.Number("pka"),
                    AcidData.All.Single(a => a.Name == r["acid"]).Pka((int)r.Number("step"), new Celsius(r.Number("celsius")))))]);
        }

        foreach (var group in PublishedTable.Read("ethanol-pka-shift.csv").Rows.GroupBy(r => r["source"]))
        {
            yield return new ScienceLine(
                "pKa shift by ethanol", group.Key, "pKa", 0.045,
                [.. group.Select(r => new CheckPoint(
                    $"{r["constant"]} in {r["medium"]}, {r["percent_vol"]} % vol", r.Number("shift"),
                    Electrolyte.PkaShift(new MassFraction(r.Number("mass_fraction")))))]);
        }

        yield return new ScienceLine(
            "pK of water", "Harned & Owen, The Physical Chemistry of Electrolytic Solutions, 1958, ionic product (from memory)", "pK", 0.015,
            [.. new (double Celsius, double Pk)[] { (0, 14.944), (10, 14.535), (20, 14.167), (25, 13.996), (30, 13.833), (40, 13.535), (50, 13.262) }
                .Select(p => new CheckPoint($"{p.Celsius} °C", p.Pk, Electrolyte.PkWater(new Celsius(p.Celsius))))]);
        yield return new ScienceLine(
            "Debye–Hückel slope", "Robinson & Stokes, Electrolyte Solutions, 2nd ed. 1959, app. 7.1, A molal (from memory)", "kg½ mol⁻½", 0.004,
            [.. new (double Celsius, double A)[] { (0, 0.4918), (15, 0.5028), (25, 0.5115), (35, 0.5211), (50, 0.5373) }
                .Select(p => new CheckPoint($"{p.Celsius} °C", p.A, Electrolyte.DebyeHuckelSlope(new Celsius(p.Celsius), new MassFraction(0))))]);
    }

    [Fact]
    public void The_third_constant_of_citric_acid_is_6_40() => Assert.Equal(6.40, AcidData.Of(Component.Citric)!.Steps[2].Pka, 0.005);

    [Fact]
    public void Beyond_the_measurements_nothing_is_said()
    {
        var citric = AcidData.Of(Component.Citric)!;
        Assert.Null(citric.Pka(1, new Celsius(-1)));
        Assert.Null(citric.Pka(1, new Celsius(51)));
        Assert.Null(citric.Pka(4, new Celsius(20)));
        Assert.Null(citric.Pka(1, new Celsius(double.NaN)));
        Assert.Null(Electrolyte.PkaShift(new MassFraction(0.51)));
    }

    [Fact]
    public void Each_acid_stands_at_the_place_of_its_component()
    {
        Assert.Equal(AcidData.Count, AcidData.All.Count);
        for (var c = Components.FirstAcid; c <= Component.Sulphate; c++)
            Assert.Equal(c, AcidData.All[AcidData.IndexOf(c)].Component);
        Assert.Equal(-1, AcidData.IndexOf(Component.Protein));
        Assert.Null(AcidData.Of(Component.Water));
    }
}
