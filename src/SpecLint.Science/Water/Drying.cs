namespace SpecLint.Science;

/// <summary>What a composition has become by drying.</summary>
/// <param name="MassLoss">Share of the first mass that has gone off.</param>
/// <param name="Mass">Mass that is left, g.</param>
/// <param name="Water">Share of water in what is left.</param>
/// <param name="WaterActivity">Water activity at 25 °C; null when it is below the range of the model.</param>
/// <param name="WaterActivityAtMost">Upper bound of the water activity at 25 °C.</param>
/// <param name="Salt">Share of sodium chloride in what is left.</param>
public readonly record struct Dried(
    MassFraction MassLoss, Grams Mass, MassFraction Water, WaterActivity? WaterActivity, WaterActivity WaterActivityAtMost, MassFraction Salt);

/// <summary>
/// Drying of a pulp or a juice: mass balance of what evaporates, and the water activity of what is left by <see cref="WaterActivityModel"/> over
/// its dissolved solids, insoluble solids being inert. Carbon dioxide and ethanol go off before the water does; acetic acid is taken to stay.
/// </summary>
[Source(Balance)]
public static class Drying
{
    private const string Balance = "Mass balance; water activity by Norrish 1966 and Ross 1975 over the dissolved solids, insoluble solids inert";

    /// <summary>Error of the water activity of a dried food: binding of water by fibre and protein is left out, so the answer is on the wet side.</summary>
    public static ModelError Error =>
        new(new(0.03), 0, Zero: 0, "1", 0.5, 1, "judged: neglect of sorption by fibre and protein, crystals of sugar not foreseen");

    /// <summary>Dries a composition to a final mass.</summary>
    /// <param name="grams">Masses by <see cref="Component"/> before, g.</param>
    /// <param name="final">Mass after, g: at least the mass of what does not evaporate.</param>
    /// <returns>The result; null when the final mass is out of reach or above the first.</returns>
    [Source(Balance)]
    public static Dried? ToMass(ReadOnlySpan<double> grams, Grams final)
    {
        if (!Composition.IsValid(grams, out var total) || !(final.Value > 0 && final.Value <= total))
            return null;
        Span<double> left = stackalloc double[Components.Count];
        grams.CopyTo(left);
        var toLose = total - final.Value;
        toLose = Lose(left, Component.CarbonDioxide, toLose);
        toLose = Lose(left, Component.Ethanol, toLose);
        toLose = Lose(left, Component.Water, toLose);
        return toLose > 1e-9 * total ? null : Result(left, total);
    }

    /// <summary>Dries a composition until a water activity at 25 °C is reached, by bisection over the water left.</summary>
    /// <param name="grams">Masses by <see cref="Component"/> before, g.</param>
    /// <param name="target">Water activity, 0.50 to below 1.</param>
    /// <returns>The result, with ethanol and carbon dioxide gone; as it is when it is that dry already; null outside the range.</returns>
    [Source(Balance)]
    public static Dried? ToWaterActivity(ReadOnlySpan<double> grams, WaterActivity target)
    {
        if (!Composition.IsValid(grams, out var total) || target.Value is not (>= WaterActivityModel.Lowest and < 1))
            return null;
        Span<double> left = stackalloc double[Components.Count];
        grams.CopyTo(left);
        left[(int)Component.CarbonDioxide] = 0;
        left[(int)Component.Ethanol] = 0;
        double low = 0, high = left[(int)Component.Water];
        if (!(high > 0) || !Composition.IsValid(left, out _))
            return null;
        if (Math.Exp(WaterActivityModel.LogActivity(left, 25)) > target.Value)
        {
            for (var i = 0; i < 60; i++)
            {
                left[(int)Component.Water] = (low + high) / 2;
                if (Math.Exp(WaterActivityModel.LogActivity(left, 25)) > target.Value)
                    high = left[(int)Component.Water];
                else
                    low = left[(int)Component.Water];
            }
        }

        // Without any solute the activity stays 1 until the last water has gone: there is nothing to reach.
        return low <= 1e-12 * total ? null : Result(left, total);
    }

    /// <summary>Two compositions put together, such as a dried pulp and salt.</summary>
    /// <param name="a">Masses by <see cref="Component"/>, g.</param>
    /// <param name="b">Masses by <see cref="Component"/>, g.</param>
    /// <returns>The result, its mass loss counted as zero; null for an invalid composition.</returns>
    [Source(Balance)]
    public static Dried? Together(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        if (a.Length != Components.Count || b.Length != Components.Count)
            return null;
        Span<double> sum = stackalloc double[Components.Count];
        for (var i = 0; i < sum.Length; i++)
            sum[i] = a[i] + b[i];
        return Composition.IsValid(sum, out var total) ? Result(sum, total) : null;
    }

    private static double Lose(Span<double> left, Component component, double toLose)
    {
        var lost = Math.Min(left[(int)component], toLose);
        left[(int)component] -= lost;
        return toLose - lost;
    }

    private static Dried? Result(ReadOnlySpan<double> left, double before)
    {
        if (!Composition.IsValid(left, out var mass) || WaterActivityModel.AtMost(left, new(25)) is not { } bound)
            return null;
        return new(
            new(Math.Max(0, 1 - (mass / before))), new(mass), new(left.Of(Component.Water) / mass), WaterActivityModel.Of(left, new(25)), bound,
            new(left.Of(Component.SodiumChloride) / mass));
    }
}
