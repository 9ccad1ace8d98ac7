using System.Diagnostics;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

[CollectionDefinition("Alone", DisableParallelization = true)]
public sealed class AloneDefinition;

[Collection("Alone")]
public sealed class PhysicsSpeedTests(ITestOutputHelper output)
{
    // The aim is 10 µs on one core, optimised; the test runs unoptimised and perhaps beside others: it prints what it took, and catches a blunder.
    [Fact]
    public void All_facts_of_a_mixture_take_microseconds_and_allocate_nothing()
    {
        var drink = Mixes.Of(
            (Component.Water, 62), (Component.Ethanol, 19), (Component.Sucrose, 9), (Component.Glucose, 1), (Component.Fructose, 1), (Component.Citric, 1.3), (Component.Malic, 0.3),
            (Component.SodiumChloride, 0.02), (Component.Potassium, 0.03), (Component.OtherDissolved, 0.1));
        var sink = 0.0;
        for (var i = 0; i < 3_000; i++)
            sink += Facts(drink);
        var best = double.MaxValue;
        long allocated = 0;
        for (var round = 0; round < 10; round++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var clock = Stopwatch.GetTimestamp();
            for (var i = 0; i < 1_000; i++)
                sink += Facts(drink);
            best = Math.Min(best, Stopwatch.GetElapsedTime(clock).TotalMicroseconds / 1_000);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        output.WriteLine($"{best:0.00} µs, {allocated} bytes in a thousand rounds ({sink:0})");
        Assert.Equal(0, allocated);
        Assert.True(best < 200, $"{best} µs");
    }

    private static double Facts(ReadOnlySpan<double> drink) =>
        Mixture.Volume(drink, Celsius.Reference)!.Value.Value + Mixture.Density(drink, Celsius.Reference)!.Value.Value + Mixture.Abv(drink)!.Value.Value
        + (Mixture.Brix(drink)?.Value ?? 0) + WaterActivityModel.Of(drink, new(25))!.Value.Value + Freezing.Point(drink)!.Value.Value
        + HeatCapacity.Of(drink, Celsius.Reference)!.Value.Value + FoodEnergyModel.Of(drink)!.Value.Kilocalories
        + IceDilution.Of(drink, ChillTechnique.Shaken, Celsius.Reference)!.Value.WaterPerVolume.Typical;
}
