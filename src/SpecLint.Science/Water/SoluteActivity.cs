namespace SpecLint.Science;

/// <summary>
/// What a solute does to the water at one kind of temperature: room (25 °C) or the freezing point. Norrish's constants of what is no salt, and which
/// curve of the salts holds.
/// </summary>
internal sealed class SoluteTable
{
    private SoluteTable(Func<Component, double> constant, double glycerolRise, bool freezing)
    {
        Constants = new double[Components.Count];
        for (var c = Components.FirstSolute; c <= Component.CarbonDioxide; c++)
            Constants[(int)c] = constant(c);
        GlycerolRise = glycerolRise;
        Salts = [.. SaltEffects.All.Select(s => freezing ? s.Freezing : s.Room)];
    }

    /// <summary>At 25 °C.</summary>
    public static SoluteTable Room { get; } = new(WaterActivityModel.Constant, 0, freezing: false);

    /// <summary>At the freezing point; glycerol alone needs a constant that rises with its mole fraction.</summary>
    public static SoluteTable AtFreezing { get; } = new(Freezing.Constant, 3.19, freezing: true);

    /// <summary>Norrish's K of each component, natural logarithm.</summary>
    public double[] Constants { get; }

    /// <summary>Rise of the constant of glycerol with its mole fraction.</summary>
    public double GlycerolRise { get; }

    /// <summary>The curves of the salts, by <see cref="Science.Salts.Place"/>.</summary>
    public OsmoticCurve[] Salts { get; }
}

/// <summary>
/// −ln a<sub>w</sub> by all solutes but ethanol and sodium chloride, which have measured curves: Ross's product over Norrish's form,
/// ln a<sub>w</sub> = ln X<sub>w</sub> + K X<sub>s</sub>², of sugars, polyols and acids, and over the curves of salts.
/// </summary>
[Source(WaterActivityModel.Norrish)]
[Source(WaterActivityModel.Ross)]
internal static class SoluteActivity
{
    private static readonly double[] MolesPerGram = Moles();

    /// <summary>−ln a<sub>w</sub>.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="water">Liquid water, g, above 0.</param>
    /// <param name="table">The temperature's table.</param>
    public static double LogActivity(ReadOnlySpan<double> grams, double water, SoluteTable table)
    {
        // Σ ln(1 − x) is taken as one logarithm of the product.
        var molesOfWater = water / WaterActivityModel.MolarWater;
        double sum = 0, product = 1;
        for (var i = (int)Components.FirstSolute; i <= (int)Component.CarbonDioxide; i++)
        {
            if (!(grams[i] > 0))
                continue;
            var solute = grams[i] * MolesPerGram[i];
            var x = solute / (solute + molesOfWater);
            product *= 1 - x;
            var constant = i == (int)Component.Glycerol ? table.Constants[i] + (table.GlycerolRise * x) : table.Constants[i];
            sum -= constant * x * x;
        }

        if (grams.Of(Component.OtherDissolved) is > 0 and var other)
        {
            var solute = other * MolesPerGram[(int)Component.OtherDissolved];
            product *= molesOfWater / (solute + molesOfWater);
        }

        if (product < 1)
            sum -= Math.Log(product);
        return Salts.Any(grams) ? sum + OfSalts(grams, water, table) : sum;
    }

    private static double OfSalts(ReadOnlySpan<double> grams, double water, SoluteTable table)
    {
        Span<double> equivalents = stackalloc double[Salts.Count];
        if (!Salts.Of(grams, equivalents))
            return 0;
        var sum = 0.0;
        for (var i = 0; i < equivalents.Length; i++)
        {
            if (equivalents[i] > 0)
                sum += table.Salts[i].LogActivity(equivalents[i] * 1000 / water);
        }

        return sum;
    }

    private static double[] Moles()
    {
        var values = new double[Components.Count];
        for (var i = 0; i < values.Length; i++)
            values[i] = 1 / WaterActivityModel.MolarMass((Component)i);
        return values;
    }
}
