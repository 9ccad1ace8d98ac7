using System.Numerics;
using System.Runtime.InteropServices;

namespace SpecLint.Fuzz;

/// <summary>
/// The map into which the instrumented assemblies count the edges that a run takes, kept within this process: a run costs no change of
/// process, so that there are many more of them than a fuzzer outside makes.
/// </summary>
internal sealed unsafe class Coverage
{
    private const int Size = 1 << 16;

    /// <summary>There as long as the process: instrumented code may run at any time, and writes into it.</summary>
    private static readonly byte* map = (byte*)NativeMemory.AllocZeroed(Size);

    /// <summary>Of each edge, the orders of magnitude of counts that were seen, a bit each.</summary>
    private readonly byte[] seen = new byte[Size];

    /// <summary>Gives the instrumented assemblies the map; nothing of them may run before.</summary>
    public static void Start() => SharpFuzz.Common.Trace.SharedMem = map;

    /// <summary>Number of edges that were ever taken.</summary>
    public int Edges { get; private set; }

    /// <summary>Forgets the last run.</summary>
    public void Clear()
    {
        new Span<byte>(map, Size).Clear();
        SharpFuzz.Common.Trace.PrevLocation = 0;
    }

    /// <summary>Takes the last run in.</summary>
    /// <returns>Whether it took an edge that none took before, or took one so often for the first time.</returns>
    public bool TakeIn()
    {
        bool isNew = false;
        var counts = new ReadOnlySpan<ulong>(map, Size / 8);
        for (int i = 0; i < counts.Length; i++)
        {
            if (counts[i] == 0) continue;
            for (int at = i * 8; at < (i * 8) + 8; at++)
            {
                if (map[at] == 0) continue;
                byte bit = (byte)(1 << BitOperations.Log2(map[at]));
                if ((seen[at] & bit) != 0) continue;
                if (seen[at] == 0) Edges++;
                seen[at] |= bit;
                isNew = true;
            }
        }

        return isNew;
    }
}
