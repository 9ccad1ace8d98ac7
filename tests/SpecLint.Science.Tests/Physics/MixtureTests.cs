using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class MixtureTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var liqueurs = PublishedTable.Read("density-liqueur.csv").Rows;
        yield return new ScienceLine(
            "Density of ethanol, sucrose and water", "Mass balance over OIML R 22 and SPS-4, evaluated independently", "kg/m³", 0.05,
            [.. liqueurs.Select(r => new CheckPoint(Name(r), r.Number("kg_m3"), Mixture.Density(Given(r), Celsius.Reference)?.Value))]);
        yield return new ScienceLine(
            "Density of ethanol, sucrose and water", "Sum rule of Tabarié (official method for wines and liqueurs)", "kg/m³", 7,
            [.. liqueurs.Where(r => r.Has("tabarie_kg_m3"))
                .Select(r => new CheckPoint(Name(r), r.Number("tabarie_kg_m3"), Mixture.Density(Given(r), Celsius.Reference)?.Value))],
            Note: "two ways of reckoning, 0.2 apart up to 20 % vol and 150 g/L; no measured table was found");
        yield return new ScienceLine(
            "Strength of a liqueur from its recipe", "Mass balance over OIML R 22 and SPS-4, evaluated independently", "% vol", 0.2,
            [.. liqueurs.Select(r => new CheckPoint(Name(r), r.Number("percent_vol"), Mixture.Abv(Given(r))?.Percent))]);
        yield return new ScienceLine(
            "Sucrose of a liqueur from strength and density", "Mass balance over OIML R 22 and SPS-4, evaluated independently", "g/L", 0.2,
            [.. liqueurs.Select(r => new CheckPoint(
                Name(r),
                r.Number("g_l"),
                Mixture.SucroseOf(AlcoholByVolume.FromPercent(r.Number("percent_vol")), new(r.Number("kg_m3")))?.Value))]);

        var obscuration = PublishedTable.Read("obscuration.csv").Rows;
        yield return new ScienceLine(
            "Obscuration of strength by 0.1 g of solids per 100 mL", "27 CFR 30.32(b): 0.4 proof, 80 to 100 proof", "proof", 0.1,
            [.. obscuration.Select(r =>
            {
                var abv = AlcoholByVolume.FromPercent(r.Number("percent_vol"));
                var apparent = EthanolWater.AbvOfDensity(Mixture.LiqueurDensity(abv, new(1))!.Value, Celsius.Reference);
                return new CheckPoint(r["proof"] + " proof", 0.4, 2 * (abv.Percent - apparent?.Percent));
            })]);

        var solutes = PublishedTable.Read("density-solutes.csv").Rows;
        foreach (var (solute, tolerance) in new[]
        {
            ("D-glucose", 0.5), ("D-fructose", 0.5), ("maltose", 1.0), ("lactose", 0.5), ("glycerol", 0.5), ("mannitol", 0.5),
            ("citric acid", 0.5), ("lactic acid", 1.0), ("acetic acid", 5.5), ("phosphoric acid", 0.6), ("NaCl", 0.4),
        })
        {
            yield return new ScienceLine(
                "Density of solutions, 20 °C", $"CRC Handbook, 102nd ed. 2021, Concentrative Properties (Wolf 1966), {solute}", "kg/m³", tolerance,
                [.. solutes.Where(r => r["solute"] == solute).Select(r => new CheckPoint(
                    r["percent"] + " %", r.Number("g_ml") * 1000, Mixture.Density(Mixes.Solution(solute, r.Number("percent")), Celsius.Reference)?.Value))],
                Note: "own fit of the apparent volume to these rows");
        }

        foreach (var solute in new[] { "D-glucose", "D-fructose", "maltose", "lactose", "glycerol", "mannitol", "citric acid", "lactic acid", "NaCl" })
        {
            yield return new ScienceLine(
                "Refractive °Brix of other solutes", $"CRC Handbook, 102nd ed. 2021, n(D) at 20 °C, {solute}", "°Brix", 0.35,
                [.. solutes.Where(r => r["solute"] == solute
                    && SugarWater.BrixOfRefractiveIndex(r.Number("n")) is { Value: > 0 and < 80 }).Select(r => new CheckPoint(
                    r["percent"] + " %", SugarWater.BrixOfRefractiveIndex(r.Number("n"))!.Value.Value, Mixture.Brix(Mixes.Solution(solute, r.Number("percent")))?.Value))],
                Note: "own fit to these rows");
        }

        var saline = PublishedTable.Read("saline.csv").Rows;
        yield return new ScienceLine(
            "Salt in a drop of saline", "Fit to the CRC Handbook, evaluated independently; drop of 0.05 mL", "%", 0.5,
            [.. saline.Select(r =>
            {
                var brine = Mixes.Solution("NaCl", r.Number("percent"));
                return new CheckPoint(r["reading"], r.Number("mg_drop"), r.Number("percent") / Mixture.Volume(brine, Celsius.Reference)?.Value * 0.05 * 1000);
            })], Relative: true);

        static string Name(PublishedTable.Row r) => $"{r["percent_vol"]} % vol, {r["g_l"]} g/L";

        static double[] Given(PublishedTable.Row r) => Mixes.Of(
            (Component.Ethanol, r.Number("percent_vol") / 100 * EthanolWater.PureDensityAt20), (Component.Sucrose, r.Number("g_l")), (Component.Water, r.Number("water_g_l")));
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    [Fact]
    public void Falls_back_to_the_two_binary_formulas()
    {
        for (var i = 0; i <= 20; i++)
        {
            var share = i / 20.0;
            foreach (var t in new[] { -10.0, 0, 20, 37 })
            {
                var spirit = Mixes.Of((Component.Ethanol, share), (Component.Water, 1 - share));
                Assert.Equal(EthanolWater.Density(new(share), new(t))!.Value.Value, Mixture.Density(spirit, new(t))!.Value.Value, 9);
            }

            var sugar = share * 0.8;
            foreach (var t in new[] { 0.0, 20, 40, 75 })
            {
                var syrup = Mixes.Of((Component.Sucrose, sugar), (Component.Water, 1 - sugar));
                Assert.Equal(SugarWater.Density(new(sugar), new(t))!.Value.Value, Mixture.Density(syrup, new(t))!.Value.Value, 0.012);
                if (t == 20)
                    Assert.Equal(SugarWater.Density(new(sugar), new(t))!.Value.Value, Mixture.Density(syrup, new(t))!.Value.Value, 0.003);
            }
        }
    }

    [Fact]
    public void Dry_solids_have_no_volume_as_a_liquid_but_oil_and_honey_do()
    {
        Assert.Null(Mixture.Volume(Mixes.Of((Component.SodiumChloride, 100), (Component.Water, 2)), Celsius.Reference));
        Assert.Null(Mixture.Abv(Mixes.Of((Component.Sucrose, 100))));
        Assert.Null(Mixture.Volume(new double[Components.Count], Celsius.Reference));
        Assert.InRange(Mixture.Density(Mixes.Of((Component.Fat, 100)), Celsius.Reference)!.Value.Value, 910, 925);
        // CRC Handbook: glycerol 1261 kg/m³ at 20 °C.
        Assert.Equal(1261, Mixture.Density(Mixes.Of((Component.Glycerol, 100)), Celsius.Reference)!.Value.Value, 1.0);
        // Honey of 17.2 % water: specific gravity 1.42 (table of Chataway and Wedmore, from memory).
        var honey = Mixes.Of(
            (Component.Water, 17.2), (Component.Fructose, 38.2), (Component.Glucose, 31.3), (Component.Maltose, 7.3),
            (Component.Sucrose, 1.3), (Component.OtherDissolved, 4.7));
        Assert.InRange(Mixture.Density(honey, Celsius.Reference)!.Value.Value, 1405, 1435);
    }

    [Fact]
    public void Brix_is_unknown_over_half_a_per_cent_of_alcohol()
    {
        Assert.Null(Mixture.Brix(Mixes.Drink(100, 0.6, 100)));
        Assert.NotNull(Mixture.Brix(Mixes.Drink(100, 0.4, 100)));
        Assert.Equal(50, Mixture.Brix(Mixes.Of((Component.Sucrose, 50), (Component.Water, 50)))!.Value.Value, 10);
    }
}
