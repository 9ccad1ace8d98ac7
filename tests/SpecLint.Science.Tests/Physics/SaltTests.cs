using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

/// <summary>Density, °Brix, freezing point and water activity of salts and sugar alcohols.</summary>
public sealed class SaltTests(ITestOutputHelper output) : IScienceTable
{
    private static readonly Celsius Room = new(25);

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    public IEnumerable<ScienceLine> Lines()
    {
        var solutes = PublishedTable.Read("density-solutes.csv").Rows;
        foreach (var salt in new[] { "KCl", "NaHCO3", "trisodium citrate dihydrate" })
        {
            var source = $"CRC Handbook, 102nd ed. 2021, Concentrative Properties (Wolf 1966), {salt}";
            var rows = solutes.Where(r => r["solute"] == salt).ToList();
            yield return new ScienceLine(
                "Density of salts, 20 °C", source, "kg/m³", 1.0,
                [.. rows.Select(r => new CheckPoint(r["percent"] + " %", r.Number("g_ml") * 1000, Mixture.Density(Of(r), Celsius.Reference)?.Value))], Note: "own fit of the volume to these rows");
            yield return new ScienceLine(
                "Refractive °Brix of salts", source, "°Brix", 0.3,
                [.. rows.Select(r => new CheckPoint(r["percent"] + " %", SugarWater.BrixOfRefractiveIndex(r.Number("n"))!.Value.Value, Mixture.Brix(Of(r))?.Value))], Note: "own fit to these rows");
            yield return new ScienceLine(
                "Freezing point of salts", source, "K", 0.3,
                [.. rows.Where(r => r.Has("depression")).Select(r => new CheckPoint(r["percent"] + " %", -r.Number("depression"), Freezing.Point(Of(r))?.Value))], Note: "own fit to these rows");

            double[] Of(PublishedTable.Row r) => Mixes.SaltSolution(salt, r.Number("percent"));
        }

        // M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725, at 20 °C; Melinder's figure for calcium chloride at 20 °C, by way of CoolProp.
        yield return new ScienceLine(
            "Density of salts, 20 °C", "Laliberté 2009: CaCl₂ and MgSO₄", "kg/m³", 1.0,
            [.. new[] { ("CaCl2", 5.0, 1039.4), ("CaCl2", 10, 1083.1), ("CaCl2", 20, 1177.8), ("CaCl2", 30, 1281.9), ("MgSO4", 5, 1049.7), ("MgSO4", 10, 1103.3), ("MgSO4", 20, 1219.0) }
                .Select(p => new CheckPoint($"{p.Item1} {p.Item2} %", p.Item3, Mixture.Density(Mixes.SaltSolution(p.Item1, p.Item2), Celsius.Reference)?.Value))], Note: "own fit of the volume to this correlation");
        yield return new ScienceLine(
            "Density of salts, 20 °C", "Melinder, IIR 2010, by way of CoolProp: CaCl₂", "kg/m³", 2.5,
            [.. new[] { (9.0, 1072.8), (9.4, 1076.9), (14.4, 1123.6), (19.4, 1172.2), (24.4, 1222.5), (29.4, 1274.9) }
                .Select(p => new CheckPoint($"{p.Item1} %", p.Item2, Mixture.Density(Mixes.SaltSolution("CaCl2", p.Item1), Celsius.Reference)?.Value))]);
        yield return new ScienceLine(
            "Freezing point of salts", "Melinder, IIR 2010, by way of CoolProp: CaCl₂", "K", 0.3,
            [.. new[] { (9.0, -4.994), (14, -9.772), (19, -16.658), (24, -26.345) }
                .Select(p => new CheckPoint($"{p.Item1} %", p.Item2, Freezing.Point(Mixes.SaltSolution("CaCl2", p.Item1))?.Value))], Note: "own fit to these rows");
        const string Smithsonian = "Forsythe, Smithsonian Physical Tables, 9th ed. 1956, freezing point lowering by electrolytes";
        yield return Lowering("KCl", 74.551, 0.3, [(0.05, 0.17), (0.1, 0.35), (0.25, 0.86), (0.5, 1.68), (0.75, 2.49), (1, 3.29), (1.5, 4.88), (2, 6.50), (2.5, 8.14), (3, 9.77)]);
        yield return Lowering("CaCl2", 110.984, 0.3, [(0.05, 0.25), (0.1, 0.49), (0.25, 1.27), (0.5, 2.66), (0.75, 4.28)]);
        yield return Lowering("MgSO4", 120.368, 0.3, [(0.05, 0.13), (0.1, 0.24), (0.25, 0.55), (0.5, 1.01), (0.75, 1.50), (1, 2.08), (1.5, 3.41)]);

        // L. Greenspan, J. Res. NBS 81A (1977) 89, 25 °C; sodium bicarbonate has no row there.
        yield return new ScienceLine(
            "Water activity over saturated salt", "L. Greenspan, J. Res. NBS 81A (1977) 89, 25 °C: KCl 84.34 %, K₂SO₄ 97.30 %", "1", 0.005,
            [
                new("KCl", 0.8434, WaterActivityModel.Of(Mixes.SaltSolution("KCl", 40), Room)?.Value),
                new("K2SO4", 0.9730, WaterActivityModel.Of(Mixes.Of((Component.Potassium, 2 * 39.098), (Component.Sulphate, 96.063), (Component.Water, 500)), Room)?.Value),
            ]);
        yield return new ScienceLine(
            "Refractive °Brix of other solutes", "CRC Handbook, 102nd ed. 2021, n(D) at 20 °C, acetic acid to 10 %", "°Brix", 0.3,
            [.. solutes.Where(r => r["solute"] == "acetic acid" && r.Number("percent") <= 10).Select(r => new CheckPoint(
                r["percent"] + " %", SugarWater.BrixOfRefractiveIndex(r.Number("n"))!.Value.Value, Mixture.Brix(Mixes.Solution("acetic acid", r.Number("percent")))?.Value))],
            Note: "own fit to these rows");

        ScienceLine Lowering(string salt, double molar, double tolerance, (double Molality, double Kelvin)[] points) => new(
            "Freezing point of salts", $"{Smithsonian}, {salt}", "K", tolerance,
            [.. points.Select(p => new CheckPoint(
                $"{p.Molality} mol/kg", -p.Kelvin, Freezing.Point(Mixes.SaltSolution(salt, 100 * p.Molality * molar / (1000 + (p.Molality * molar))))?.Value))]);
    }

    // Lorentz–Lorenz from its volume (86.8 cm³/mol) and its atomic refractions: 0.9 of sucrose; Norrish with K = −1.34 (Kiyosawa 1991).
    [Fact]
    public void A_syrup_of_erythritol_has_its_brix_and_its_water_activity()
    {
        var syrup = Mixes.Of((Component.Erythritol, 30), (Component.Water, 70));
        Assert.InRange(Mixture.Brix(syrup)!.Value.Value, 26, 29);
        Assert.InRange(WaterActivityModel.Of(syrup, Room)!.Value.Value, 0.925, 0.945);
        Assert.InRange(Freezing.Point(syrup)!.Value.Value, -8.5, -6);
        Assert.Equal(0, FoodEnergyModel.Of(syrup)!.Value.Kilocalories);
    }

    // Sodium from one salt and chloride from another make the brine that sodium chloride makes.
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(15)]
    public void Ions_of_sodium_chloride_are_sodium_chloride(double percent)
    {
        var salt = Mixes.Of((Component.SodiumChloride, percent), (Component.Water, 100 - percent));
        var ions = Mixes.Of((Component.Sodium, percent * 22.990 / 58.443), (Component.Chloride, percent * 35.453 / 58.443), (Component.Water, 100 - percent));
        Assert.Equal(Mixture.Density(salt, Celsius.Reference)!.Value.Value, Mixture.Density(ions, Celsius.Reference)!.Value.Value, 0.5);
        Assert.Equal(Mixture.Brix(salt)!.Value.Value, Mixture.Brix(ions)!.Value.Value, 0.3);
        Assert.Equal(WaterActivityModel.Of(salt, Room)!.Value.Value, WaterActivityModel.Of(ions, Room)!.Value.Value, 0.002);
        Assert.Equal(Freezing.Point(salt)!.Value.Value, Freezing.Point(ions)!.Value.Value, 0.4);
    }
}
