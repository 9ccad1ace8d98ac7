using System.Numerics;
using System.Runtime.InteropServices;

namespace SpecLint.Profile;

/// <summary>Slopes of several results by the mass of each component; those by one component stand together in whole vectors.</summary>
internal readonly ref struct Gradient(Span<Vector<double>> rows, int lanes)
{
    private readonly Span<Vector<double>> rows = rows;

    /// <summary>Vectors of one row.</summary>
    public int Lanes { get; } = lanes;

    /// <summary>Vectors that hold so many results.</summary>
    public static int LanesOf(int results) => (results + Vector<double>.Count - 1) / Vector<double>.Count;

    /// <summary>Slopes by a component, in vectors.</summary>
    public Span<Vector<double>> Row(int component) => rows.Slice(component * Lanes, Lanes);

    /// <summary>Slopes by a component, by the place of the result.</summary>
    public Span<double> Of(int component) => MemoryMarshal.Cast<Vector<double>, double>(Row(component));

    /// <summary>Sets the slopes of one result.</summary>
    /// <param name="result">Its place.</param>
    /// <param name="wanted">Components whose bits are set.</param>
    /// <param name="slopes">By component.</param>
    public void Fill(int result, ulong wanted, ReadOnlySpan<double> slopes)
    {
        for (; wanted != 0; wanted &= wanted - 1)
        {
            int c = Propagation.LowestBit(wanted);
            Of(c)[result] = slopes[c];
        }
    }
}
