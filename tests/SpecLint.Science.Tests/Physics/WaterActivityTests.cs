using System.Globalization;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class WaterActivityTests(ITestOutputHelper output) : IScienceTable
{
    private static readonly Celsius Room = new(25);

    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("water-activity.csv").Rows;
        foreach (var (solute, source) in new[]
        {
            ("sucrose", "Robinson and Stokes, Electrolyte Solutions, 1959, app. 8.6, sucrose, 25 °C"),
            ("NaCl", "Robinson and Stokes, Electrolyte Solutions, 1959, app. 8.3, NaCl, 25 °C"),
            ("glycerol", "Scatchard, Hamer and Wood, 1938, glycerol, 25 °C"),
        })
        {
            yield return new ScienceLine(
                "Water activity of one solute", source, "1", 0.003,
                [.. rows.Where(r => r["solute"] == solute).Select(r => new CheckPoint(
                    r["molality"] + " mol/kg", r.Number("aw"),
                    WaterActivityModel.Of(Mixes.Of((Mixes.Named(solute), r.Number("molality") * Molar(solute)), (Component.Water, 1000)), Room)?.Value))],
                Note: "published figures from memory");
        }

        yield return new ScienceLine(
            "Water activity of brine", "Common practice, no source: 5 % brine 0.970, 10 % brine 0.935", "1", 0.002,
            [.. new[] { (5.0, 0.970), (10.0, 0.935) }.Select(b => new CheckPoint(
                b.Item1.ToString(CultureInfo.InvariantCulture) + " %", b.Item2, WaterActivityModel.Of(Mixes.Solution("NaCl", b.Item1), Room)?.Value))]);
        var humidity = PublishedTable.Read("salt-humidity.csv").Rows;
        yield return new ScienceLine(
            "Water activity over saturated salt", "L. Greenspan, J. Res. NBS 81A (1977) 89, NaCl, 10 to 40 °C", "1", 0.003,
            [.. humidity.Select(r => new CheckPoint(r["celsius"] + " °C", r.Number("rh") / 100, WaterActivityModel.Of(Mixes.Solution("NaCl", 40), new(r.Number("celsius")))?.Value))]);
        var preparations = PublishedTable.Read("water-activity-preparations.csv").Rows;
        yield return new ScienceLine(
            "Water activity of preparations", "Product of Norrish and Pitzer, evaluated independently", "1", 0.001,
            [.. preparations.Select(r => new CheckPoint(
                r["preparation"], r.Number("aw"),
                WaterActivityModel.Of(
                    Mixes.Of([(Component.Water, r.Number("water")), .. r["solutes"].Split(';').Select(s => s.Split('=')).Select(s => (Mixes.Named(s[0]), double.Parse(s[1], CultureInfo.InvariantCulture)))]),
                    Room)?.Value))]);
        yield return new ScienceLine(
            "Water activity of spirits", "Allan et al., Determination of the water activities of wines and spirits, Food Anal. Methods 12 (2019) 2753, abstract", "1", 0.012,
            [new("grain alcohol, 95 % vol", 0.365, EthanolActivity.OfWater(EthanolWater.MassFractionOf(new(0.95))!.Value, Room)?.Value)],
            Note: "wines 0.860 to 0.968 and spirits 0.750 to 0.909 are tested as bands");
    }

    private static double Molar(string solute) => solute switch { "sucrose" => 342.297, "NaCl" => 58.443, _ => 92.094 };

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    // Allan et al. 2019, abstract: wines (678) 0.860 to 0.968, spirits (42) 0.750 to 0.909, at 25 °C.
    [Theory]
    [InlineData(11, 20, 0.93, 0.968)]
    [InlineData(13.5, 5, 0.93, 0.960)]
    [InlineData(20, 100, 0.860, 0.94)]
    [InlineData(40, 0, 0.75, 0.909)]
    [InlineData(63, 0, 0.75, 0.909)]
    public void Wines_and_spirits_lie_in_the_measured_bands(double percent, double sugar, double low, double high) =>
        Assert.InRange(WaterActivityModel.Of(Mixes.Drink(100, percent, sugar), Room)!.Value.Value, low, high);

    // J. A. Larkin 1975, from memory: −780 J/mol at the minimum, near 15 % of ethanol by moles, 25 °C.
    [Fact]
    public void Mixing_ethanol_with_water_gives_off_heat()
    {
        var lowest = Enumerable.Range(0, 101).Select(i => EthanolActivity.MixingEnthalpy(new(i / 100.0), Room)!.Value).Min();
        Assert.InRange(lowest, -830, -750);
    }

    [Fact]
    public void Solids_that_do_not_dissolve_count_for_nothing()
    {
        var juice = Mixes.Of((Component.Water, 90), (Component.Glucose, 5), (Component.Citric, 3));
        var pulpy = Mixes.Of((Component.Water, 90), (Component.Glucose, 5), (Component.Citric, 3), (Component.Fibre, 8), (Component.Fat, 4), (Component.Protein, 2), (Component.OtherInsoluble, 30));
        Assert.Equal(WaterActivityModel.Of(juice, Room), WaterActivityModel.Of(pulpy, Room));
    }

    [Fact]
    public void Below_a_half_there_is_a_bound_and_no_value()
    {
        var candy = Mixes.Of((Component.Sucrose, 97), (Component.Water, 3));
        Assert.Null(WaterActivityModel.Of(candy, Room));
        Assert.Equal(WaterActivityModel.Lowest, WaterActivityModel.AtMost(candy, Room)!.Value.Value);
        Assert.Null(WaterActivityModel.Of(Mixes.Of((Component.Ethanol, 1)), Room));
        Assert.Null(WaterActivityModel.Of(candy, new(41)));
        Assert.Null(WaterActivityModel.AtMost(candy, new(-1)));
        Assert.Null(WaterActivityModel.OfBrine(new(6.2), Room));
    }

    [Fact]
    public void Potassium_of_a_juice_lowers_it_a_little()
    {
        var plain = WaterActivityModel.Of(Mixes.Of((Component.Water, 90), (Component.Citric, 6)), Room)!.Value.Value;
        var salted = WaterActivityModel.Of(Mixes.Of((Component.Water, 90), (Component.Citric, 6), (Component.Potassium, 0.2)), Room)!.Value.Value;
        Assert.InRange(plain - salted, 0.0003, 0.002);
    }
}
