using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Facts of the water in a recipe: its activity, and the temperature at which it begins to freeze.</summary>
internal static class WaterFacts
{
    private static readonly Limit BoundWater = Limits.Of("bound-water");
    private static readonly Solving.Measure Activity = static grams => WaterActivityModel.Of(grams, new Celsius(25))?.Value ?? double.NaN;
    private static readonly Solving.Measure FirstIce = static grams => Freezing.Point(grams)?.Value ?? double.NaN;

    /// <summary>Water activity at 25 °C: measured, else computed.</summary>
    public static void WorkActivity(FactBasis of, FactStore facts, FactValue density)
    {
        if (of.Reading is { WaterActivity.IsGiven: true } reading)
        {
            double half = Meters.WaterActivityHalfWidth;
            facts[Fact.WaterActivity] = new FactValue(
                reading.WaterActivity.Value.Value, Math.Max(0, reading.WaterActivity.Value.Low - half),
                Math.Min(1, reading.WaterActivity.Value.High + half), "measured", null);
        }
        else if (Run(of, facts, density, Fact.WaterActivity, Activity) is { } estimate)
        {
            if (Binds(of.Served)) facts.Leave(Fact.WaterActivity, $"{Bound}: measure the water activity");
            else if (double.IsNaN(estimate.Low) && !(estimate.High < WellDry))
                facts.Leave(Fact.WaterActivity, "it may be too dry for the model: measure the water activity");
            else
                facts[Fact.WaterActivity] = MixErrors.WithActivity(
                    double.IsNaN(estimate.Low) ? estimate with { Low = BelowTheModel(estimate) } : estimate, of.Served)
                    .ToFact();
        }
    }

    /// <summary>Water activity below which the low end does not matter, since hardly anything grows there; common practice, no source.</summary>
    private const double WellDry = 0.70;

    /// <summary>
    /// A low end under the least that the model answers: twice as far below as the high end lies above, since sugar without water falls
    /// faster.
    /// </summary>
    private static double BelowTheModel(Estimate estimate) =>
        Math.Max(0, Math.Min(WaterActivityModel.Lowest, estimate.Value - (2 * (estimate.High - estimate.Value))));

    private const string Bound = "what does not dissolve binds its water, which is not modelled";

    private static bool Binds(Mix of) =>
        of.Of(Component.Protein) + of.Of(Component.Fibre) + of.Of(Component.OtherInsoluble) > BoundWater.Value * of.Of(Component.Water);

    /// <summary>First ice.</summary>
    public static void WorkFreezing(FactBasis of, FactStore facts, FactValue density)
    {
        if (Run(of, facts, density, Fact.FreezingPoint, FirstIce) is not { } estimate) return;
        if (Binds(of.Served)) facts.Leave(Fact.FreezingPoint, Bound);
        else facts[Fact.FreezingPoint] = MixErrors.WithFreezing(estimate, of.Served, LowestIce).ToFact();
    }

    /// <summary>Melting point of ethanol, °C (CRC Handbook): no drink stays liquid below.</summary>
    private const double LowestIce = -114.1;

    private static Estimate? Run(FactBasis of, FactStore facts, FactValue density, Fact fact, Solving.Measure evaluator)
    {
        if (of.IsDrink && density.OpenBecause is { } open)
        {
            facts.Leave(fact, open);
            return null;
        }

        if (facts.LeaveIf(fact, Unknowns.Strength | Unknowns.Sugar | Unknowns.Water, of.Mix.Lack)) return null;
        return Propagation.Through(of.Served, evaluator);
    }
}
