using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// Masses by component, most of them nought: only the others are held, in the order of the components. A large book holds tens of thousands.
/// </summary>
internal readonly struct SparseMasses
{
    private readonly double[] values;

    private SparseMasses(ulong touches, double[] values)
    {
        Touches = touches;
        this.values = values;
    }

    /// <summary>The components that are held: bit n stands for component n.</summary>
    public ulong Touches { get; }

    /// <summary>What is held, g, from the lowest bit of <see cref="Touches"/> on.</summary>
    public ReadOnlySpan<double> Values => values;

    /// <summary>Those of a list by component.</summary>
    /// <param name="masses">g.</param>
    public static SparseMasses Of(ReadOnlySpan<double> masses)
    {
        ulong touches = 0;
        int count = 0;
        for (int c = 0; c < masses.Length; c++)
        {
            if (masses[c] == 0) continue;
            touches |= 1UL << c;
            count++;
        }

        var values = new double[count];
        int at = 0;
        for (ulong left = touches; left != 0; left &= left - 1) values[at++] = masses[Propagation.LowestBit(left)];
        return new SparseMasses(touches, values);
    }

    /// <summary>Adds so many times these masses to a list by component.</summary>
    public void AddTo(Span<double> grams, double factor)
    {
        int at = 0;
        for (ulong left = Touches; left != 0; left &= left - 1) grams[Propagation.LowestBit(left)] += values[at++] * factor;
    }

    /// <summary>The same with a share of one of them.</summary>
    public SparseMasses Keep(int component, double share)
    {
        var kept = (double[])values.Clone();
        int at = 0;
        for (ulong left = Touches; left != 0; left &= left - 1, at++)
        {
            if (Propagation.LowestBit(left) == component) kept[at] *= share;
        }

        return new SparseMasses(Touches, kept);
    }

    /// <summary>As a list by component.</summary>
    public double[] ToArray()
    {
        var grams = new double[Components.Count];
        AddTo(grams, 1);
        return grams;
    }
}
