using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class FoodEnergyTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("energy.csv").Rows;
        yield return Line("kJ", 0.5, r => r.Number("kj"), e => e?.Kilojoules);
        yield return Line("kcal", 0.1, r => r.Number("kcal"), e => e?.Kilocalories);
        yield return new ScienceLine(
            "Ethanol in a drink", "OIML R 22, 1975, 789.24 kg/m³, worked by hand", "g", 0.02,
            [.. rows.Select(r => new CheckPoint(
                r["drink"],
                r.Number("ethanol_g"),
                FoodEnergyModel.EthanolGrams(new(r.Number("ml")), AlcoholByVolume.FromPercent(r.Number("percent_vol")))?.Value))]);
        // Public help page of a wine e-label service: 12 % vol, 3 g/L sugar, 6 g/L acid, 7 g/L polyol: 295 kJ, 71 kcal per 100 mL (components rounded).
        var wine = Mixes.Of(
            (Component.Ethanol, 12 * 0.789), (Component.Glucose, 0.3), (Component.Tartaric, 0.6), (Component.Glycerol, 0.7),
            (Component.Water, 85));
        yield return new ScienceLine(
            "Energy of a drink, kJ", "Public help page of a wine e-label service, worked example per 100 mL", "kJ", 1,
            [new("wine", 295, FoodEnergyModel.Of(wine)?.Kilojoules)], Note: "its parts are rounded before they are added");

        ScienceLine Line(string unit, double tolerance, Func<PublishedTable.Row, double> published, Func<FoodEnergy?, double?> pick) => new(
            "Energy of a drink, " + unit, "Regulation (EU) No 1169/2011, Annex XIV, worked by hand", unit, tolerance,
            [.. rows.Select(r =>
            {
                var litres = r.Number("ml") / 1000;
                var grams = Mixes.Of(
                    (Component.Ethanol, litres * r.Number("percent_vol") * 7.8924), (Component.Sucrose, litres * r.Number("sugar_g_l")), (Component.Citric, litres * r.Number("acid_g_l")),
                    (Component.Water, 1));
                return new CheckPoint(r["drink"], published(r), pick(FoodEnergyModel.Of(grams)));
            })]);
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    // Regulation (EU) No 1169/2011, Annex XIV, factor by factor.
    [Theory]
    [InlineData(Component.Sucrose, 17, 4)]
    [InlineData(Component.Dextrin, 17, 4)]
    [InlineData(Component.Sorbitol, 10, 2.4)]
    [InlineData(Component.Glycerol, 10, 2.4)]
    [InlineData(Component.Protein, 17, 4)]
    [InlineData(Component.Fat, 37, 9)]
    [InlineData(Component.Ethanol, 29, 7)]
    [InlineData(Component.Citric, 13, 3)]
    [InlineData(Component.Fibre, 8, 2)]
    [InlineData(Component.Phosphoric, 0, 0)]
    [InlineData(Component.SodiumChloride, 0, 0)]
    [InlineData(Component.Water, 0, 0)]
    public void Each_component_has_its_factor(Component component, double kilojoules, double kilocalories)
    {
        var energy = FoodEnergyModel.Of(Mixes.Of((component, 10)))!.Value;
        Assert.Equal(kilojoules * 10, energy.Kilojoules, 10);
        Assert.Equal(kilocalories * 10, energy.Kilocalories, 10);
    }

    [Fact]
    public void Standard_drinks_are_known_by_country()
    {
        // A unit in the United Kingdom is 10 mL of ethanol: 7.9 g, rounded 8.
        Assert.Equal(8, StandardDrinks.Of("GB")!.Ethanol);
        Assert.Equal(7.89, FoodEnergyModel.EthanolGrams(new(10), new(1))!.Value.Value, 0.01);
        Assert.Equal(1.4, StandardDrinks.Of("IE")!.In(new(14)), 10);
        Assert.Null(StandardDrinks.Of("ZZ"));
        Assert.All(StandardDrinks.All, d => Assert.InRange(d.Ethanol, d.Low, d.High));
        Assert.All(StandardDrinks.All, d => Assert.InRange(d.Ethanol, 8, 20));
        Assert.Equal(
            StandardDrinks.All.OrderBy(d => d.Country, StringComparer.Ordinal).Select(d => d.Country).Distinct(StringComparer.Ordinal),
            StandardDrinks.All.Select(d => d.Country));
    }

    [Fact]
    public void Grams_and_millilitres_of_ethanol_are_inverses() =>
        Assert.Equal(25, FoodEnergyModel.EthanolVolume(FoodEnergyModel.EthanolGrams(new(25), new(1))!.Value)!.Value.Value, 10);
}

public sealed class DryingTests(ITestOutputHelper output) : IScienceTable
{
    // A pressed pulp of 100 g: worked by hand from the mass balance.
    private static double[] Pulp() => Mixes.Of(
        (Component.Water, 80), (Component.Glucose, 3), (Component.Fructose, 3), (Component.Citric, 4), (Component.Malic, 2), (Component.Fibre, 6), (Component.OtherInsoluble, 2));

    public IEnumerable<ScienceLine> Lines()
    {
        var dried = Drying.ToMass(Pulp(), new(22));
        var ground = Drying.Together(
            Mixes.Of(
                (Component.Water, 2), (Component.Glucose, 3), (Component.Fructose, 3), (Component.Citric, 4), (Component.Malic, 2),
                (Component.Fibre, 6), (Component.OtherInsoluble, 2)),
            Mixes.Of((Component.SodiumChloride, 22)));
        yield return new ScienceLine(
            "Drying of a pulp", "Mass balance, worked by hand: 100 g with 80 g of water to 22 g, then its own weight of salt", "1", 1e-6,
            [
                new("mass loss", 0.78, dried?.MassLoss.Value),
                new("water", 2 / 22.0, dried?.Water.Value),
                new("salt with its own weight", 0.5, ground?.Salt.Value),
            ]);
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    // Common practice, no source: dried pulp ground with its own weight of salt is far too dry to spoil. Moulds stop near 0.60, bacteria near 0.75.
    [Fact]
    public void Dried_pulp_with_its_own_weight_of_salt_is_far_too_dry_to_spoil()
    {
        var dried = Mixes.Of(
            (Component.Water, 2), (Component.Glucose, 3), (Component.Fructose, 3), (Component.Citric, 4), (Component.Malic, 2),
            (Component.Fibre, 6), (Component.OtherInsoluble, 2));
        var result = Drying.Together(dried, Mixes.Of((Component.SodiumChloride, 22)))!.Value;
        output.WriteLine(result.ToString());
        Assert.True(result.WaterActivityAtMost.Value < 0.60);
    }

    [Fact]
    public void Dries_to_a_water_activity()
    {
        var result = Drying.ToWaterActivity(Pulp(), new(0.6))!.Value;
        Assert.Equal(0.6, result.WaterActivity!.Value.Value, 1e-6);
        Assert.Equal(result.Mass.Value, 100 * (1 - result.MassLoss.Value), 1e-9);
        var again = Drying.ToMass(Pulp(), result.Mass)!.Value;
        Assert.Equal(result.WaterActivity!.Value.Value, again.WaterActivity!.Value.Value, 1e-6);
    }

    [Fact]
    public void Out_of_reach_is_unknown()
    {
        Assert.Null(Drying.ToMass(Pulp(), new(19)));
        Assert.Null(Drying.ToMass(Pulp(), new(101)));
        Assert.Null(Drying.ToWaterActivity(Pulp(), new(0.4)));
        Assert.Null(Drying.ToWaterActivity(Mixes.Of((Component.Water, 10), (Component.Fibre, 5)), new(0.9)));
    }

    [Fact]
    public void Ethanol_goes_off_before_the_water()
    {
        var result = Drying.ToMass(Mixes.Of((Component.Ethanol, 10), (Component.Water, 50), (Component.Sucrose, 40)), new(85))!.Value;
        Assert.Equal(45 / 85.0, result.Water.Value, 10);
    }
}
