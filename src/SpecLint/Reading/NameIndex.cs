namespace SpecLint.Reading;

/// <summary>
/// Names in which a slip of the hand is looked for many times: <see cref="NearestName.Slips"/> with the same answers, held
/// against the few names that begin with the same letter and are about as long, or have the same letters.
/// </summary>
internal sealed class NameIndex
{
    /// <summary>Where more names come near than this, none of them is a likely slip, and comparing them all is not worth the time.</summary>
    public const int MostNear = 2000;

    private readonly List<string> names = [];
    private long compared;
    private readonly Dictionary<(char First, int Length), List<int>> byStart = [];
    private readonly Dictionary<string, List<int>> byLetters = new(StringComparer.Ordinal);

    /// <param name="candidates">What could be meant.</param>
    public NameIndex(IEnumerable<string> candidates)
    {
        foreach (string name in candidates)
        {
            if (name.Length == 0) continue;
            int at = names.Count;
            names.Add(name);
            Add(byStart, (char.ToLowerInvariant(name[0]), PlainLength(name)), at);
            Add(byLetters, Letters(name), at);
        }
    }

    /// <summary>Number of names that were compared so far; of interest to tests of its cost.</summary>
    internal long Compared => Interlocked.Read(ref compared);

    /// <summary>See <see cref="NearestName.Slips"/>; none where more than <see cref="MostNear"/> names come near.</summary>
    public List<string> Slips(string name)
    {
        int length = PlainLength(name);
        if (name.Length == 0 || length > NearestName.Longest) return [];
        var near = new SortedSet<int>();
        int edits = NearestName.SlipsOf(length);
        char first = char.ToLowerInvariant(name[0]);
        for (int l = length - edits; l <= length + edits; l++)
        {
            if (!byStart.TryGetValue((first, l), out var some)) continue;
            if (near.Count + some.Count > MostNear) return [];
            near.UnionWith(some);
        }

        if (byLetters.TryGetValue(Letters(name), out var same))
        {
            if (near.Count + same.Count > MostNear) return [];
            near.UnionWith(same);
        }

        if (near.Count == 0) return [];
        Interlocked.Add(ref compared, near.Count);
        return NearestName.Slips(name, near.Select(i => names[i]));
    }

    /// <summary>The one candidate that a slip of the hand would turn into a name; <see langword="null"/> where there is none, or more.</summary>
    public string? Slip(string name) => Slips(name) is [var only] ? only : null;

    private static int PlainLength(string name)
    {
        int length = 0;
        foreach (char c in name)
        {
            if (c is not (' ' or '-' or '_')) length++;
        }

        return length;
    }

    private static string Letters(string name)
    {
        char[] letters = [.. name.Where(char.IsLetterOrDigit).Select(char.ToLowerInvariant)];
        Array.Sort(letters);
        return new string(letters);
    }

    private static void Add<TKey>(Dictionary<TKey, List<int>> to, TKey key, int at)
        where TKey : notnull
    {
        if (!to.TryGetValue(key, out var list)) to.Add(key, list = []);
        list.Add(at);
    }
}
