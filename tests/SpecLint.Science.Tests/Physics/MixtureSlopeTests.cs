using CsCheck;

namespace SpecLint.Science.Tests.Physics;

/// <summary>The slopes of volume and °Brix against differences of the formulas themselves.</summary>
public sealed class MixtureSlopeTests
{
    private const int Cases = 20_000;

    // Half of the parts are absent; what is there has grams to tens of grams beside 100 to 600 g of water, ethanol or both.
    private static readonly Gen<double[]> Liquid = Gen.Select(
        Gen.Frequency((3, Gen.Const(0.0)), (1, Gen.Double[0.01, 1]), (1, Gen.Double[1, 40])).Array[Components.Count],
        Gen.Double[100, 600], Gen.Frequency((2, Gen.Const(0.0)), (1, Gen.Double[0.1, 400])), Gen.Bool,
        (grams, water, ethanol, salts) =>
        {
            for (var c = (int)Component.CarbonDioxide; c <= (int)Component.Chloride; c++)
                grams[c] = salts ? grams[c] / 10 : 0;
            (grams[(int)Component.Water], grams[(int)Component.Ethanol]) = (water, ethanol);
            return grams;
        });

    // Which salts there are changes by steps, and a curve ends at the last measured share: a difference across such a place is no slope.
    private const double Kink = 2e-3;

    [Fact]
    public void Slopes_of_the_volume_are_those_of_small_changes() =>
        Gen.Select(Liquid, Gen.Int[0, Components.Count - 1]).Sample(
            (grams, moved) =>
            {
                Span<double> slopes = stackalloc double[Components.Count], unused = stackalloc double[Components.Count];
                var measures = Mixture.MeasureWithSlopes(grams, ulong.MaxValue, slopes, unused);
                Assert.Equal(Mixture.Measure(grams), measures);
                var (below, above) = Around(grams, moved, static g => Mixture.Volume(g, Celsius.Reference)?.Value);
                AssertBetween(below, above, slopes[moved], Kink);
            },
            iter: Cases);

    [Fact]
    public void Slopes_of_Brix_are_those_of_small_changes() =>
        Gen.Select(Liquid, Gen.Int[0, Components.Count - 1]).Sample(
            (grams, moved) =>
            {
                grams[(int)Component.Ethanol] = 0;
                Span<double> unused = stackalloc double[Components.Count], slopes = stackalloc double[Components.Count];
                if (Mixture.MeasureWithSlopes(grams, ulong.MaxValue, unused, slopes)?.Brix is null)
                    return;
                var (below, above) = Around(grams, moved, static g => Mixture.Brix(g)?.Value);
                AssertBetween(below, above, slopes[moved], Kink);
            },
            iter: Cases);

    // Euler: what grows in proportion has the volume that its slopes give, and a °Brix that stays.
    [Fact]
    public void More_of_the_whole_has_more_volume_and_the_same_Brix() =>
        Liquid.Sample(
            grams =>
            {
                // Metals with acids alone: where chloride is as much as they are, the salts change by a step.
                grams[(int)Component.Chloride] = grams[(int)Component.Sulphate] = grams[(int)Component.CarbonDioxide] = 0;
                double[] volume = new double[Components.Count], brix = new double[Components.Count];
                var measures = Mixture.MeasureWithSlopes(grams, ulong.MaxValue, volume, brix)!.Value;
                Assert.Equal(measures.Volume.Value, grams.Zip(volume, static (g, s) => g * s).Sum(), 1e-4 * measures.Volume.Value);
                Assert.Equal(0, grams.Zip(brix, static (g, s) => g * s).Sum(), 0.02);
            },
            iter: Cases);

    [Fact]
    public void A_solid_has_none()
    {
        Span<double> slopes = [-1], unused = [];
        var sugar = Mixes.Of((Component.Sucrose, 10), (Component.Water, 0.1));
        Assert.Null(Mixture.MeasureWithSlopes(sugar, ulong.MaxValue, slopes, unused));
        Assert.Equal(-1, slopes[0]);
    }

    private static (double Below, double Above) Around(double[] grams, int moved, Func<double[], double?> measure)
    {
        double was = grams[moved], step = 1e-6 * grams.Sum();
        var here = measure(grams)!.Value;
        grams[moved] = was + step;
        var above = (measure(grams) ?? double.NaN) - here;
        var down = Math.Min(step, was);
        grams[moved] = was - down;
        var below = down > 0 ? here - (measure(grams) ?? double.NaN) : double.NaN;
        grams[moved] = was;
        return (double.IsNaN(below) ? above / step : below / down, above / step);
    }

    private static void AssertBetween(double below, double above, double slope, double tolerance)
    {
        if (double.IsNaN(above))
            return;
        Assert.InRange(slope, Math.Min(below, above) - tolerance, Math.Max(below, above) + tolerance);
    }
}
