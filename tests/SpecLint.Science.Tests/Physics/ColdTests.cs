using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

public sealed class HeatCapacityTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("heat-capacity.csv").Rows;
        yield return Line("EW", "Melinder, IIR 2010, ethanol–water, −20 to 20 °C", Component.Ethanol, 0.04, "own fit to these rows");
        yield return Line("W", "IAPWS-95, water, 0 to 30 °C", Component.Ethanol, 0.02, "");
        yield return Line(
            "SW", "Bubník et al., Sugar Technologists Manual, formula, 0 to 40 °C", Component.Sucrose, 0.04,
            "its water is 4.184 at every temperature");
        yield return new ScienceLine(
            "Heat capacity of ice", "IAPWS R10-06", "J/(g·K)", 0.002,
            [.. rows.Where(r => r["set"] == "ICE")
                .Select(r => new CheckPoint(
                    r["celsius"] + " °C", r.Number("j_g_k"), HeatCapacity.OfIce(new(r.Number("celsius")))?.Value))]);

        ScienceLine Line(string set, string source, Component solute, double tolerance, string note) => new(
            "Heat capacity", source, "J/(g·K)", tolerance,
            [.. rows.Where(r => r["set"] == set && r.Number("celsius") <= 40).Select(r => new CheckPoint(
                $"{r["percent_mass"]} % at {r["celsius"]} °C", r.Number("j_g_k"),
                HeatCapacity.Of(
                    Mixes.Of((solute, r.Number("percent_mass")), (Component.Water, 100 - r.Number("percent_mass"))),
                    new(r.Number("celsius")))?.Value))],
            Note: note);
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    [Fact]
    public void Outside_its_range_it_says_unknown()
    {
        Assert.Null(HeatCapacity.Of(Mixes.Drink(100, 10, 0), new(41)));
        Assert.Null(HeatCapacity.Of(new double[Components.Count], new(20)));
        Assert.Null(HeatCapacity.OfIce(new(1)));
    }
}

public sealed class IceDilutionTests(ITestOutputHelper output) : IScienceTable
{
    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("dilution.csv").Rows;
        foreach (var (method, fit) in new (string, Func<AlcoholByVolume, double?>)[] { ("shaken", IceDilution.ShakenFit), ("stirred", IceDilution.StirredFit) })
        {
            yield return new ScienceLine(
                $"Dilution, {method}: published fit", "D. Arnold, Liquid Intelligence, 2014, p. 123 (second-hand)", "mL per mL", 0.0001,
                [.. rows.Where(r => r["set"] == "FIT" && r["method"] == method && r.Number("percent_vol") >= 10).Select(r => new CheckPoint(
                    r["percent_vol"] + " % vol", r.Number("ratio"), fit(AlcoholByVolume.FromPercent(r.Number("percent_vol")))))]);
        }

        yield return new ScienceLine(
            "Dilution, shaken: balance against the fit", "D. Arnold, Liquid Intelligence, 2014, p. 123 (second-hand), 12 to 40 % vol", "mL per mL", 0.06,
            [.. rows.Where(r => r["set"] == "FIT" && r["method"] == "shaken" && r.Number("percent_vol") >= 12).Select(r =>
            {
                var sugar = r.Number("percent_vol") >= 30 ? 0 : 80;
                var balance = IceDilution.EnergyBalance(Mixes.Drink(100, r.Number("percent_vol"), sugar), new(20), new(0), new(150), 100, new(0));
                return new CheckPoint(r["percent_vol"] + " % vol", r.Number("ratio"), balance?.Water.Value / 99.82);
            })], Note: "vessel 100 J/K per 100 mL, dry ice of 0 °C");
        var balances = rows.Where(r => r["set"] == "BALANCE").ToList();
        yield return Balance("water", "mL per mL", 0.06, r => r.Number("ratio"), b => b?.Water.Value / 99.82);
        yield return Balance("temperature", "K", 0.6, r => r.Number("celsius_final"), b => b?.Final.Value);

        ScienceLine Balance(
            string what, string unit, double tolerance, Func<PublishedTable.Row, double> published,
            Func<(Grams Water, Celsius Final)?, double?> pick) => new(
            "Energy balance with ice: " + what, "Energy balance, evaluated independently", unit, tolerance,
            [.. balances.Select(r => new CheckPoint($"{r["method"]}, {r["percent_vol"]} % vol, {r["g_l"]} g/L", published(r), pick(Conditions(r))))],
            Note: "the other balance has simpler heat capacities; heat of mixing counted only where its rows do not say bare");

        static (Grams Water, Celsius Final)? Conditions(PublishedTable.Row r)
        {
            var method = r["method"];
            double vessel = method.Contains("bare", StringComparison.Ordinal) ? 0 : method.Contains("stopped", StringComparison.Ordinal) ? 60 : 100;
            var ice = method.Contains("ice at", StringComparison.Ordinal) ? Number(method, "at ") : 0;
            var wet = method.Contains("surface water", StringComparison.Ordinal) ? Number(method, "EB, ") : 0;
            Celsius? stop = method.Contains("stopped", StringComparison.Ordinal) ? new(Number(method, "at ")) : null;
            return IceDilution.EnergyBalance(Mixes.Drink(100, r.Number("percent_vol"), r.Number("g_l")), new(20), new(ice), new(150), vessel, new(wet), stop);
        }

        static double Number(string text, string after)
        {
            var rest = text[(text.IndexOf(after, StringComparison.Ordinal) + after.Length)..];
            return double.Parse(rest.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        }
    }

    [Fact]
    public void Agrees_with_the_published_tables() => ScienceReport.Check(this, output);

    // 2012 report: 70 g of vodka of 40 % at 22.8 °C, 350 g of ice. Shaken 116 g at −1.7 °C, stirred 86 g at 3.4 °C.
    [Theory]
    [InlineData(ChillTechnique.Shaken, 0.623, -1.7)]
    [InlineData(ChillTechnique.Stirred, 0.217, 3.4)]
    public void The_range_holds_the_two_measured_drinks(ChillTechnique technique, double ratio, double celsius)
    {
        var vodka = Mixes.Of((Component.Ethanol, 70 * 0.333), (Component.Water, 70 * 0.667));
        var chilled = IceDilution.Of(vodka, technique, new(22.8), iceGrams: new(350))!.Value;
        output.WriteLine(chilled.ToString());
        Assert.InRange(ratio, chilled.WaterPerVolume.Low, chilled.WaterPerVolume.High);
        Assert.InRange(celsius, chilled.FinalCelsius.Low - 0.05, chilled.FinalCelsius.High + 0.6);
    }

    [Fact]
    public void The_range_covers_both_opinions()
    {
        for (var percent = 10.0; percent <= 40; percent += 2)
        {
            foreach (var technique in new[] { ChillTechnique.Shaken, ChillTechnique.Stirred })
            {
                var mix = Mixes.Drink(90, percent, 60);
                var chilled = IceDilution.Of(mix, technique, new(20))!.Value;
                if (percent is > 12 and < 38)
                {
                    var fit = (technique == ChillTechnique.Shaken
                        ? IceDilution.ShakenFit(AlcoholByVolume.FromPercent(percent))
                        : IceDilution.StirredFit(AlcoholByVolume.FromPercent(percent)))!.Value;
                    Assert.InRange(fit, chilled.WaterPerVolume.Low - 1e-9, chilled.WaterPerVolume.High + 1e-9);
                }

                Assert.InRange(chilled.WaterPerVolume.Typical, chilled.WaterPerVolume.Low, chilled.WaterPerVolume.High);
                Assert.InRange(chilled.FinalCelsius.Typical, chilled.FinalCelsius.Low, chilled.FinalCelsius.High);
            }
        }
    }

    // Common practice, no source: bands a bar would recognise.
    [Theory]
    [InlineData(ChillTechnique.Shaken, 20, 80, 0.35, 0.65)]
    [InlineData(ChillTechnique.Stirred, 30, 30, 0.25, 0.55)]
    [InlineData(ChillTechnique.Built, 30, 20, 0.10, 0.45)]
    [InlineData(ChillTechnique.OnRock, 40, 0, 0.03, 0.35)]
    [InlineData(ChillTechnique.Swizzled, 20, 80, 0.2, 0.75)]
    [InlineData(ChillTechnique.Blended, 15, 100, 0.3, 0.8)]
    [InlineData(ChillTechnique.Thrown, 18, 50, 0.15, 0.6)]
    [InlineData(ChillTechnique.Shaken, 0, 100, 0.2, 0.6)]
    public void Typical_dilutions_are_those_of_the_trade(ChillTechnique technique, double percent, double sugar, double low, double high)
    {
        var chilled = IceDilution.Of(Mixes.Drink(100, percent, sugar), technique, new(20));
        output.WriteLine(chilled.ToString());
        Assert.NotNull(chilled);
        Assert.InRange(chilled.Value.WaterPerVolume.Typical, low, high);
    }

    [Fact]
    public void A_mix_without_ethanol_is_diluted_too()
    {
        foreach (var technique in Enum.GetValues<ChillTechnique>())
        {
            var chilled = IceDilution.Of(Mixes.Drink(100, 0, 80), technique, new(20))!.Value;
            Assert.False(chilled.HasPublishedFit);
            Assert.True(chilled.WaterPerVolume.Low > 0);
            Assert.True(chilled.FinalCelsius.Low > -3);
        }
    }

    [Fact]
    public void Longer_on_ice_and_warmer_at_the_start_mean_more_water()
    {
        var mix = Mixes.Drink(90, 28, 20);
        double before = 0;
        foreach (var seconds in new[] { 5.0, 10, 20, 40, 90 })
        {
            var water = IceDilution.Of(mix, ChillTechnique.Stirred, new(20), seconds: seconds)!.Value.WaterPerVolume.Typical;
            Assert.True(water > before);
            before = water;
        }

        Assert.True(IceDilution.Of(mix, ChillTechnique.Shaken, new(25))!.Value.WaterPerVolume.Typical > IceDilution.Of(mix, ChillTechnique.Shaken, new(5))!.Value.WaterPerVolume.Typical);
        Assert.True(IceDilution.Of(
            mix, ChillTechnique.Shaken, new(20), ice: new(-18))!.Value.WaterPerVolume.Typical < IceDilution.Of(mix, ChillTechnique.Shaken, new(20))!.Value.WaterPerVolume.Typical);
    }

    [Fact]
    public void Too_little_ice_melts_whole()
    {
        var chilled = IceDilution.EnergyBalance(Mixes.Drink(100, 20, 0), new(20), new(0), new(10), 0, new(0))!.Value;
        Assert.Equal(10, chilled.Water.Value, 9);
        Assert.InRange(chilled.Final.Value, 5, 15);
    }

    [Fact]
    public void Outside_its_range_it_says_unknown()
    {
        var mix = Mixes.Drink(90, 28, 20);
        Assert.Null(IceDilution.Of(mix, ChillTechnique.Shaken, new(41)));
        Assert.Null(IceDilution.Of(mix, ChillTechnique.Shaken, new(-1)));
        Assert.Null(IceDilution.Of(mix, ChillTechnique.Shaken, new(20), ice: new(1)));
        Assert.Null(IceDilution.Of(Mixes.Of((Component.Fat, 10)), ChillTechnique.Shaken, new(20)));
        Assert.Null(IceDilution.ShakenFit(new(0.09)));
        Assert.Null(IceDilution.StirredFit(new(0.41)));
    }
}
