namespace SpecLint.Mutants;

/// <summary>Random numbers that are the same on every runtime (SplitMix64; Steele, Lea, Flood: Fast splittable pseudorandom number generators, 2014).</summary>
internal sealed class Lottery(ulong seed)
{
    private ulong state = seed;

    /// <summary>A number from 0 to below <paramref name="count"/>.</summary>
    public int Below(int count) => (int)(Next() % (ulong)count);

    /// <summary>A number from <paramref name="low"/> to below <paramref name="high"/>.</summary>
    public double Between(double low, double high) => low + ((high - low) * (Next() >> 11) / (1UL << 53));

    /// <summary>One of some; the default where there is none.</summary>
    public T? Pick<T>(IReadOnlyList<T> of) => of.Count == 0 ? default : of[Below(of.Count)];

    /// <summary>All of some, in random order.</summary>
    public List<T> Shuffled<T>(IEnumerable<T> of)
    {
        var list = of.ToList();
        for (int i = list.Count - 1; i > 0; i--)
        {
            int j = Below(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }

        return list;
    }

    private ulong Next()
    {
        state += 0x9E3779B97F4A7C15UL;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
