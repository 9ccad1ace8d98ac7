using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Facts of the water in a recipe: its activity, and the temperature at which it begins to freeze.</summary>
internal static class WaterFacts
{
    private static readonly Evaluator Activity = static (grams, r) => r[0] = WaterActivityModel.Of(grams, new Celsius(25))?.Value ?? double.NaN;
    private static readonly Evaluator FirstIce = static (grams, r) => r[0] = Freezing.Point(grams)?.Value ?? double.NaN;

    /// <summary>Water activity at 25 °C: measured, else computed.</summary>
    public static void WorkActivity(FactBasis of, FactStore facts, FactValue density)
    {
        if (of.Reading is { WaterActivity.IsGiven: true } reading)
        {
            double half = Meters.WaterActivityHalfWidth;
            facts[Fact.WaterActivity] = new FactValue(reading.WaterActivity.Value.Value, Math.Max(0, reading.WaterActivity.Value.Low - half), Math.Min(1, reading.WaterActivity.Value.High + half), "measured", null);
        }
        else if (Run(of, facts, density, Fact.WaterActivity, Activity) is { } estimate)
        {
            facts[Fact.WaterActivity] = estimate.With(WaterActivityModel.MixtureError.At(estimate.Value).Value, 0, 1).ToFact();
        }
    }

    /// <summary>First ice.</summary>
    public static void WorkFreezing(FactBasis of, FactStore facts, FactValue density)
    {
        if (Run(of, facts, density, Fact.FreezingPoint, FirstIce) is { } estimate) facts[Fact.FreezingPoint] = estimate.With(Freezing.MixtureError.At(estimate.Value).Value, double.NegativeInfinity, 0).ToFact();
    }

    private static Estimate? Run(FactBasis of, FactStore facts, FactValue density, Fact fact, Evaluator evaluator)
    {
        if (of.IsDrink && density.OpenBecause is { } open)
        {
            facts.Leave(fact, open);
            return null;
        }

        if (facts.LeaveIf(fact, Unknowns.Strength | Unknowns.Sugar | Unknowns.Water, of.Mix.Lack)) return null;
        Span<double> v = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(of.Served, evaluator, v, low, high);
        return new Estimate(v[0], low[0], high[0]);
    }
}
