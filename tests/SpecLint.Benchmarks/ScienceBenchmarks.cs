using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using SpecLint.Science;

namespace SpecLint.Benchmarks;

/// <summary>
/// What the models cost: a drink of five parts (spirit, liqueur, citrus, syrup, salt) as masses, with all facts that hang on
/// its composition. Aims: the whole set under 20 µs on one core, pH alone under 2 µs, nothing allocated.
/// </summary>
[MemoryDiagnoser(displayGenColumns: false)]
public class ScienceBenchmarks
{
    private readonly double[] mix = Compose();

    /// <summary>Runs in this process, so that no project has to be built beside.</summary>
    public static IConfig Config => DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));

    [Benchmark]
    public double Ph() => AcidBase.Ph(mix, Celsius.Reference)!.Value.Value;

    [Benchmark]
    public double VolumeStrengthBrix() => Mixture.Measure(mix)!.Value.Volume.Value;

    [Benchmark]
    public double TitratableAcidity() => AcidBase.TitratableAcidity(mix, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)!.Value.Value;

    [Benchmark]
    public double WaterActivity() => WaterActivityModel.Of(mix, new Celsius(25))!.Value.Value;

    [Benchmark]
    public double FreezingPoint() => Freezing.Point(mix)!.Value.Value;

    [Benchmark]
    public double DilutionAndTemperature() => IceDilution.Of(mix, ChillTechnique.Shaken, Celsius.Reference)!.Value.WaterPerVolume.Typical;

    [Benchmark]
    public double AllFacts() =>
        Ph() + VolumeStrengthBrix() + TitratableAcidity() + WaterActivity() + FreezingPoint() + DilutionAndTemperature()
        + Mixture.Density(mix, Celsius.Reference)!.Value.Value + FoodEnergyModel.Of(mix)!.Value.Kilocalories;

    // 45 mL spirit of 40 % vol, 15 mL orange liqueur, 22 mL lime juice, 15 mL syrup, two drops of saline; g.
    private static double[] Compose()
    {
        var grams = new double[Components.Count];
        grams[(int)Component.Water] = 62.4;
        grams[(int)Component.Ethanol] = 18.9;
        grams[(int)Component.Sucrose] = 12.6;
        grams[(int)Component.Glucose] = 0.2;
        grams[(int)Component.Fructose] = 0.2;
        grams[(int)Component.Citric] = 1.30;
        grams[(int)Component.Malic] = 0.12;
        grams[(int)Component.Ascorbic] = 0.007;
        grams[(int)Component.Potassium] = 0.026;
        grams[(int)Component.SodiumChloride] = 0.02;
        grams[(int)Component.OtherDissolved] = 0.2;
        return grams;
    }
}
