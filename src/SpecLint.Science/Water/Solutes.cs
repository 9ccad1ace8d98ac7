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
/// The solutes of a composition but ethanol and sodium chloride, which have measured curves, as moles: what −ln a<sub>w</sub> asks for at
/// every amount of water. Ross's product over Norrish's form, ln a<sub>w</sub> = ln X<sub>w</sub> + K X<sub>s</sub>², of sugars, polyols and acids, and over
/// the curves of salts.
/// </summary>
[Source(WaterActivityModel.Norrish)]
[Source(WaterActivityModel.Ross)]
internal readonly ref struct Solutes
{
    /// <summary>Doubles that the caller lends.</summary>
    public const int Room = (2 * Kinds) + Salts.Count;

    // All that Norrish's form serves, and other dissolved solids.
    private const int Kinds = Component.CarbonDioxide - Components.FirstSolute + 2;

    private static readonly double[] MolesPerGram = Moles();

    private readonly Span<double> moles;
    private readonly Span<double> constants;
    private readonly Span<double> salts;
    private readonly SoluteTable table;
    private readonly uint present;
    private readonly int count;
    private readonly int glycerol;

    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="table">The temperature's table.</param>
    /// <param name="room">So many doubles as <see cref="Room"/>.</param>
    public Solutes(ReadOnlySpan<double> grams, SoluteTable table, Span<double> room)
    {
        moles = room.Slice(0, Kinds);
        constants = room.Slice(Kinds, Kinds);
        salts = room.Slice(2 * Kinds, Salts.Count);
        this.table = table;
        count = 0;
        glycerol = -1;
        for (var i = (int)Components.FirstSolute; i <= (int)Component.CarbonDioxide; i++)
        {
            if (!(grams[i] > 0))
                continue;
            if (i == (int)Component.Glycerol)
                glycerol = count;
            moles[count] = grams[i] * MolesPerGram[i];
            constants[count++] = table.Constants[i];
        }

        if (grams.Of(Component.OtherDissolved) is > 0 and var other)
        {
            moles[count] = other * MolesPerGram[(int)Component.OtherDissolved];
            constants[count++] = 0;
        }

        present = Salts.Of(grams, salts);
    }

    /// <summary>−ln a<sub>w</sub>.</summary>
    /// <param name="water">Liquid water, g, above 0.</param>
    public double LogActivity(double water)
    {
        // Σ ln(1 − x) is taken as one logarithm of the product.
        var molesOfWater = water * (1 / WaterActivityModel.MolarWater);
        double sum = 0, product = 1;
        for (var i = 0; i < count; i++)
        {
            var x = moles[i] / (moles[i] + molesOfWater);
            product *= 1 - x;
            var constant = i == glycerol ? constants[i] + (table.GlycerolRise * x) : constants[i];
            sum -= constant * x * x;
        }

        if (product < 1)
            sum -= Math.Log(product);
        var perKilogram = 1000 / water;
        var left = present;
        for (var i = 0; left != 0; i++, left >>= 1)
        {
            if ((left & 1) != 0)
                sum += table.Salts[i].LogActivity(salts[i] * perKilogram);
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
