using CsCheck;

namespace SpecLint.Science.Tests.Physics;

// Takes both cores: alone, so that no test of speed runs beside it.
[Collection("Alone")]
public sealed class PhysicsPropertyTests
{
    // Drinks as a bar makes them: water and ethanol, sugars, acids, salt, now and then the rest.
    private static readonly Gen<double[]> Liquid =
        Gen.Select(Gen.Double[20, 200], Gen.Double[0, 100], Gen.Double[0, 80], Gen.Double[0, 60], Gen.Double[0, 8], Gen.Double[0, 5], Gen.Double[0, 3], Gen.Int[0, 63]).Select(
            (water, ethanol, sucrose, hexose, acid, salt, other, present) => Mixes.Of(
                (Component.Water, water),
                (Component.Ethanol, (present & 1) == 0 ? 0 : ethanol),
                (Component.Sucrose, (present & 2) == 0 ? 0 : sucrose),
                (Component.Glucose, (present & 4) == 0 ? 0 : hexose / 2),
                (Component.Fructose, (present & 4) == 0 ? 0 : hexose / 2),
                (Component.Citric, (present & 8) == 0 ? 0 : acid),
                (Component.Malic, (present & 8) == 0 ? 0 : acid / 3),
                (Component.SodiumChloride, (present & 16) == 0 ? 0 : salt),
                (Component.Glycerol, (present & 32) == 0 ? 0 : other),
                (Component.Potassium, (present & 32) == 0 ? 0 : other / 20),
                (Component.Fibre, (present & 32) == 0 ? 0 : other / 2)));

    private static readonly Gen<int> Solute = Gen.Int[(int)Component.Sucrose, (int)Component.Potassium];

    // Anything at all: each component from nothing to a kilogram, many absent, some vanishing.
    private static readonly Gen<double[]> Anything =
        Gen.Select(Gen.Double[0, 1].Array[Components.Count], Gen.Double[0, 1].Array[Components.Count]).Select((sizes, gates) =>
        {
            var grams = new double[Components.Count];
            for (var i = 0; i < grams.Length; i++)
            {
                grams[i] = gates[i] switch
                {
                    < 0.55 => 0,
                    < 0.60 => sizes[i] * 1e-12,
                    < 0.65 => sizes[i] * 1e6,
                    _ => sizes[i] * 100,
                };
            }

            return grams;
        });

    [Fact]
    public void A_million_compositions_give_no_exception_and_no_NaN()
    {
        var techniques = Enum.GetValues<ChillTechnique>();
        Gen.Select(Anything, Gen.Double[-30, 60], Gen.Int[0, techniques.Length - 1]).Sample(
            (grams, celsius, technique) =>
            {
                var t = new Celsius(celsius);
                Number(Mixture.Volume(grams, t)?.Value, 0, 1e12);
                Number(Mixture.Density(grams, t)?.Value, 100, 3000);
                Number(Mixture.Abv(grams)?.Value, 0, 1);
                Number(Mixture.Brix(grams)?.Value, 0, 85);
                Number(WaterActivityModel.Of(grams, t)?.Value, 0.5, 1);
                Number(WaterActivityModel.AtMost(grams, t)?.Value, 0.5, 1);
                Number(Freezing.Point(grams)?.Value, -50, 0);
                Number(Freezing.IceFraction(grams, t)?.Value, 0, 1);
                Number(HeatCapacity.Of(grams, t)?.Value, 0.5, 5);
                Number(FoodEnergyModel.Of(grams)?.Kilojoules, 0, 1e12);
                Number(Carbonation.OfLiveFerment(grams, t, 0.05)?.AbsolutePressure.Value, 0, 10);
                if (technique == 0)
                {
                    // One composition in seven: the balance of ice is the dearest of them.
                    var dilution = IceDilution.Of(grams, techniques[Math.Abs((int)(celsius * 7)) % techniques.Length], t);
                    Number(dilution?.WaterPerVolume.Low, 0, 10);
                    Number(dilution?.WaterPerVolume.High, 0, 10);
                    Number(dilution?.FinalCelsius.Typical, -50, 60);
                    if (dilution is { } d)
                    {
                        Assert.InRange(d.WaterPerVolume.Typical, d.WaterPerVolume.Low, d.WaterPerVolume.High);
                        Assert.InRange(d.FinalCelsius.Typical, d.FinalCelsius.Low, d.FinalCelsius.High);
                    }

                    Number(Drying.ToWaterActivity(grams, new(0.7))?.MassLoss.Value, 0, 1);
                }
            },
            iter: 1_000_000, threads: 2);

        static void Number(double? value, double low, double high)
        {
            if (value is { } v && !(v >= low && v <= high))
                Assert.Fail($"{v} is not from {low} to {high}");
        }
    }

    [Fact]
    public void Mass_is_conserved()
    {
        Gen.Select(Liquid, Liquid).Sample((a, b) =>
        {
            var both = a.Zip(b, (x, y) => x + y).ToArray();
            var density = Mixture.Density(both, Celsius.Reference)!.Value.Value;
            var volume = Mixture.Volume(both, Celsius.Reference)!.Value.Value;
            return Math.Abs((density * volume / 1000) - Mixes.Sum(a) - Mixes.Sum(b)) < 1e-9 * (Mixes.Sum(a) + Mixes.Sum(b));
        }, iter: 20_000);
        Gen.Select(Liquid, Gen.Double[0.3, 1]).Sample((a, share) =>
        {
            var before = Mixes.Sum(a);
            return Drying.ToMass(a, new(before * share)) is not { } dried
                || (Math.Abs(dried.Mass.Value - (before * share)) < 1e-9 * before && Math.Abs(before * (1 - dried.MassLoss.Value) - dried.Mass.Value) < 1e-9 * before);
        }, iter: 20_000);
        Gen.Select(Gen.Double[1, 500], Gen.Double[0, 1], Gen.Double[1, 500], Gen.Double[0, 1]).Sample((v1, a1, v2, a2) =>
        {
            // Pure ethanol at 20 °C is what strengths by volume count.
            var mixed = EthanolWater.Mix(new(v1), new(a1), new(v2), new(a2))!.Value;
            return Math.Abs((mixed.Volume.Value * mixed.Abv.Value) - (v1 * a1) - (v2 * a2)) < 1e-9 * (v1 + v2);
        }, iter: 20_000);
    }

    [Fact]
    public void Strength_rises_with_ethanol() =>
        Gen.Select(Liquid, Gen.Double[0.01, 20]).Sample((a, more) =>
        {
            var before = Mixture.Abv(a)!.Value.Value;
            a[(int)Component.Ethanol] += more;
            return Mixture.Abv(a)!.Value.Value > before;
        }, iter: 50_000);

    [Fact]
    public void Water_activity_falls_with_every_solute_and_with_ethanol() =>
        Gen.Select(Liquid, Gen.OneOf(Solute, Gen.Const((int)Component.Ethanol), Gen.Const((int)Component.OtherDissolved)), Gen.Double[0.01, 5], Gen.Double[0, 40]).Sample((a, solute, more, t) =>
        {
            var before = WaterActivityModel.AtMost(a, new(t))!.Value.Value;
            a[solute] += more;
            var after = WaterActivityModel.AtMost(a, new(t))!.Value.Value;
            return after < before || after == WaterActivityModel.Lowest;
        }, iter: 50_000);

    [Fact]
    public void Freezing_point_falls_with_every_solute_and_ice_with_temperature() =>
        Gen.Select(Liquid, Gen.OneOf(Solute, Gen.Const((int)Component.Ethanol)), Gen.Double[0.01, 5], Gen.Double[-25, -1]).Sample((a, solute, more, t) =>
        {
            var colder = Freezing.IceFraction(a, new(t - 1));
            var ice = Freezing.IceFraction(a, new(t));
            if (colder is { } c && ice is { } i && c.Value < i.Value - 1e-8)
                return false;
            var before = Freezing.Point(a);
            a[solute] += more;
            var after = Freezing.Point(a);
            return before is null || after is null || after.Value.Value < before.Value.Value;
        }, iter: 50_000);

    // A change of a part in a million of one component, or of a ten-thousandth of a degree, moves no result by a step.
    [Fact]
    public void Results_are_continuous() =>
        Gen.Select(Liquid, Gen.Int[0, Components.Count - 1], Gen.Double[1, 35], Gen.Int[0, 6]).Sample((a, component, celsius, technique) =>
        {
            var b = (double[])a.Clone();
            b[component] += 1e-6 * Mixes.Sum(a);
            Compare(Mixture.Density(a, new(celsius))?.Value, Mixture.Density(b, new(celsius + 1e-4))?.Value, 0.02, "density");
            Compare(Mixture.Abv(a)?.Value, Mixture.Abv(b)?.Value, 1e-5, "abv");
            Compare(Mixture.Brix(a)?.Value, Mixture.Brix(b)?.Value, 1e-3, "brix");
            Compare(WaterActivityModel.Of(a, new(celsius))?.Value, WaterActivityModel.Of(b, new(celsius + 1e-4))?.Value, 1e-4, "aw");
            Compare(Freezing.Point(a)?.Value, Freezing.Point(b)?.Value, 3e-3, "freezing");
            Compare(Freezing.IceFraction(a, new(-celsius / 2))?.Value, Freezing.IceFraction(b, new((-celsius / 2) - 1e-5))?.Value, 1e-3, "ice");
            Compare(HeatCapacity.Of(a, new(celsius))?.Value, HeatCapacity.Of(b, new(celsius + 1e-4))?.Value, 1e-4, "heat capacity");
            var x = IceDilution.Of(a, (ChillTechnique)technique, new(celsius));
            var y = IceDilution.Of(b, (ChillTechnique)technique, new(celsius + 1e-4));
            Compare(x?.WaterPerVolume.Typical, y?.WaterPerVolume.Typical, 1e-3, "dilution");
            Compare(x?.WaterPerVolume.Low, y?.WaterPerVolume.Low, 1e-3, "least dilution");
            Compare(x?.WaterPerVolume.High, y?.WaterPerVolume.High, 1e-3, "most dilution");
            Compare(x?.FinalCelsius.Typical, y?.FinalCelsius.Typical, 0.03, "temperature");

            static void Compare(double? left, double? right, double step, string what)
            {
                if (left is { } l && right is { } r && Math.Abs(l - r) > step)
                    Assert.Fail($"{what}: {l} and {r}");
            }
        }, iter: 50_000);
}
