using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Facts of the water in a recipe: its activity, and the temperature at which it begins to freeze.</summary>
internal static class WaterFacts
{
    private static readonly Limit OneKind = Limits.Of("one-kind-of-solute");
    private static readonly Limit FoodShare = Limits.Of("food-share");
    private static readonly Limit BoundWater = Limits.Of("bound-water");
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
            if (Binds(of.Served)) facts.Leave(Fact.WaterActivity, "what does not dissolve binds its water, which is not modelled: measure the water activity");
            else if (double.IsNaN(estimate.Low) && !(estimate.High < WellDry)) facts.Leave(Fact.WaterActivity, "it may be too dry for the model: measure the water activity");
            else facts[Fact.WaterActivity] = (double.IsNaN(estimate.Low) ? estimate with { Low = 0 } : estimate).With(ActivityError(of.Served).At(estimate.Value)).Within(0, 1).ToFact();
        }
    }

    /// <summary>Water activity below which the low end does not matter, since hardly anything grows there; common practice, no source.</summary>
    private const double WellDry = 0.70;

    private static ModelError FreezingError(Mix of) => IsFood(of) ? Freezing.FoodError : IsOneSolute(of) ? Freezing.Error : Freezing.MixtureError;

    private static ModelError ActivityError(Mix of) => IsOneSolute(of) ? WaterActivityModel.Error : WaterActivityModel.MixtureError;

    /// <summary>Whether nearly all that is dissolved is of one kind, so that the model has the error of a single solute.</summary>
    private static bool IsOneSolute(Mix of)
    {
        double hexoses = (of.Of(Component.Glucose) + of.Of(Component.Fructose) + of.Of(Component.Allulose)) / 180.16;
        double disaccharides = (of.Of(Component.Sucrose) + of.Of(Component.Maltose) + of.Of(Component.Lactose)) / 342.3;
        double salt = 2 * of.Of(Component.SodiumChloride) / 58.44, ethanol = of.Of(Component.Ethanol) / 46.07, glycerol = of.Of(Component.Glycerol) / 92.09;
        double others = 0;
        for (var c = Component.Sorbitol; c <= Components.LastSolute; c++)
        {
            // Ions and acids: about one particle to 60 g.
            if (c is not (Component.SodiumChloride or Component.Allulose)) others += of.Of(c) / 60;
        }

        others += of.Of(Component.OtherDissolved) / 342.3;
        double most = Math.Max(Math.Max(hexoses, disaccharides), Math.Max(salt, Math.Max(ethanol, glycerol)));
        return most >= OneKind.Value / 100 * (hexoses + disaccharides + salt + ethanol + glycerol + others);
    }

    private static bool Binds(Mix of) =>
        of.Of(Component.Protein) + of.Of(Component.Fibre) + of.Of(Component.OtherInsoluble) > BoundWater.Value * of.Of(Component.Water);

    /// <summary>First ice.</summary>
    public static void WorkFreezing(FactBasis of, FactStore facts, FactValue density)
    {
        if (Run(of, facts, density, Fact.FreezingPoint, FirstIce) is { } estimate)
            facts[Fact.FreezingPoint] = estimate.With(FreezingError(of.Served).At(estimate.Value)).Within(LowestIce, 0).ToFact();
    }

    /// <summary>Melting point of ethanol, °C (CRC Handbook): no drink stays liquid below.</summary>
    private const double LowestIce = -114.1;

    /// <summary>Whether it holds what grew, with minerals and small molecules that its entry does not list.</summary>
    private static bool IsFood(Mix of) =>
        of.Of(Component.Protein) + of.Of(Component.Fibre) + of.Of(Component.OtherInsoluble) > FoodShare.Value / 100 * of.Total;

    private static Estimate? Run(FactBasis of, FactStore facts, FactValue density, Fact fact, Evaluator evaluator)
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
