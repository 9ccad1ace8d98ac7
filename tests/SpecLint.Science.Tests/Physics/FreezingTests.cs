using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class FreezingTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("freezing.csv").Rows;
        yield return Binary(
            "ethanol",
            "CRC",
            0.3,
            "CRC Handbook, 102nd ed. 2021 (Wolf 1966), ethanol",
            "the curve goes through these points; left out one by one they come back within 0.03 K up to 34 % by mass, 0.09 K above",
            _ => true);
        yield return Binary(
            "ethanol", "MEL", 0.3, "Melinder, IIR 2010, ethanol to 40 % vol", "16 % by mass left out: it is 0.35 K off the handbook",
            r => r.Number("percent_mass") != 16 && r.Number("percent_vol") <= 40);
        yield return Binary("ethanol", "MEL", 0.2, "Melinder, IIR 2010, ethanol over 40 % vol", "", r => r.Number("percent_vol") > 40);
        yield return Binary(
            "ethanol", "ROUND", 2.5, "Table of ethanol–water, rounded from °F, 10 to 70 % vol", "coarse and older; kept to catch a blunder",
            r => r.Number("percent_mass") <= 68);
        foreach (var (solute, tolerance) in new[] { ("sucrose", 0.3), ("glucose", 0.3), ("fructose", 0.3), ("glycerol", 0.3), ("NaCl", 0.3), ("citric acid", 0.3) })
            yield return Binary(
                solute, "CRC", tolerance, $"CRC Handbook, 102nd ed. 2021 (Wolf 1966), {solute}",
                solute == "NaCl" ? "polynomial fitted to this table" : "one constant fitted to this table", _ => true);
        yield return Binary("NaCl", "MEL", 0.3, "Melinder, IIR 2010, NaCl", "", _ => true);
        yield return Binary("glycerol", "MEL", 0.6, "Melinder, IIR 2010, glycerol to 60 %", "0.4 K warmer than the handbook at 20 %", _ => true);
        yield return Binary("sucrose", "CLARKE", 0.3, "C. Clarke, The Science of Ice Cream, 2004, fig. 2.8", "", _ => true);
        yield return new ScienceLine(
            "Freezing point of mixtures", "Product of activities, evaluated independently", "K", 0.5,
            [.. rows.Where(r => r["set"] == "VEC" && r.Has("percent_vol")).Select(r => new CheckPoint(
                $"{r["percent_vol"]} % vol, {r["g_l"]} g/L", r.Number("celsius"), Freezing.Point(Mixes.Drink(100, r.Number("percent_vol"), r.Number("g_l")))?.Value))],
            Note: "no published point of ethanol with sugar was found");
        var solutes = PublishedTable.Read("density-solutes.csv").Rows;
        foreach (var (solute, tolerance) in new[] { ("maltose", 0.1), ("lactose", 0.05), ("mannitol", 0.05), ("acetic acid", 0.1), ("phosphoric acid", 0.3), ("lactic acid", 0.35) })
        {
            yield return new ScienceLine(
                "Freezing point", $"CRC Handbook, 102nd ed. 2021 (Wolf 1966), {solute}", "K", tolerance,
                [.. solutes.Where(r => r["solute"] == solute && r.Has("depression")).Select(r => new CheckPoint(
                    r["percent"] + " %", -r.Number("depression"), Freezing.Point(Mixes.Solution(solute, r.Number("percent")))?.Value))],
                Note: "one constant fitted to this table");
        }

        var slush = PublishedTable.Read("frozen-fraction.csv").Rows;
        yield return new ScienceLine(
            "Ice in a drink at a temperature", "Lever rule on a water-activity model, evaluated independently", "% of the drink", 2.5,
            [.. slush.Select(r => new CheckPoint(
                $"{r["percent_vol"]} % vol, {r["g_l"]} g/L, {r["celsius"]} °C", r.Number("ice_percent"),
                Freezing.IceFraction(Mixes.Drink(100, r.Number("percent_vol"), r.Number("g_l")), new(r.Number("celsius")))?.Value * 100))],
            Note: "differs by the constant of sucrose above 42 %");

        ScienceLine Binary(string system, string set, double tolerance, string source, string note, Func<PublishedTable.Row, bool> where) => new(
            "Freezing point", source, "K", tolerance,
            [.. rows.Where(r => r["system"] == system && r["set"] == set && where(r)).Select(r => new CheckPoint(
                r["percent_mass"] + " %", r.Number("celsius"), Freezing.Point(Mixes.Solution(system, r.Number("percent_mass")))?.Value))],
            Note: note);
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    [Fact]
    public void A_binary_spirit_freezes_on_its_curve()
    {
        for (var p = 0.01; p <= 0.68; p += 0.01)
            Assert.Equal(
                Freezing.OfEthanol(new(p))!.Value.Value,
                Freezing.Point(Mixes.Of((Component.Ethanol, p), (Component.Water, 1 - p)))!.Value.Value, 1e-8);
    }

    // IAPWS/ASHRAE: eutectic of sodium chloride −21.1 °C at 23.3 %.
    [Fact]
    public void Brine_has_its_eutectic()
    {
        Assert.Equal(-21.1, Freezing.Point(Mixes.Solution("NaCl", 23.29))!.Value.Value, 0.2);
        Assert.Null(Freezing.Point(Mixes.Solution("NaCl", 24)));
    }

    [Fact]
    public void Ice_and_freezing_point_agree()
    {
        var drink = Mixes.Drink(100, 12, 80);
        var point = Freezing.Point(drink)!.Value.Value;
        Assert.Equal(0, Freezing.IceFraction(drink, new(point + 0.01))!.Value.Value);
        Assert.InRange(Freezing.IceFraction(drink, new(point - 0.01))!.Value.Value, 1e-5, 0.01);
        var ice = Freezing.IceFraction(drink, new(-10))!.Value.Value * Mixes.Sum(drink);
        drink[(int)Component.Water] -= ice;
        Assert.Equal(-10, Freezing.Point(drink)!.Value.Value, 1e-6);
    }

    [Fact]
    public void Outside_its_range_it_says_unknown()
    {
        Assert.Null(Freezing.Point(Mixes.Solution("ethanol", 69)));
        Assert.Null(Freezing.Point(Mixes.Of((Component.Sucrose, 10))));
        Assert.Null(Freezing.OfEthanol(new(0.7)));
        Assert.Null(Freezing.IceFraction(Mixes.Drink(100, 10, 0), new(-31)));
        Assert.Null(Freezing.IceFraction(Mixes.Drink(100, 10, 0), new(double.NaN)));
    }
}
