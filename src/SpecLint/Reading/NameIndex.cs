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
    private readonly Buckets byStart = new();
    private readonly Buckets byLetters = new();
    private long compared;

    /// <param name="candidates">What could be meant.</param>
    public NameIndex(IEnumerable<string> candidates)
    {
        foreach (string name in candidates)
        {
            if (name.Length == 0) continue;
            int at = names.Count;
            names.Add(name);
            var (length, letters) = Describe(name);
            byStart.Add(StartKey(char.ToLowerInvariant(name[0]), length), at);
            byLetters.Add(letters, at);
        }
    }

    /// <summary>Number of names that were compared so far; of interest to tests of its cost.</summary>
    internal long Compared => Interlocked.Read(ref compared);

    /// <summary>See <see cref="NearestName.Slips"/>; none where more than <see cref="MostNear"/> names come near.</summary>
    public List<string> Slips(string name)
    {
        var (length, letters) = Describe(name);
        if (name.Length == 0 || length > NearestName.Longest) return [];
        var near = new List<int>();
        int edits = NearestName.SlipsOf(length);
        char first = char.ToLowerInvariant(name[0]);
        for (int l = length - edits; l <= length + edits; l++)
        {
            if (!byStart.Take(StartKey(first, l), near, MostNear)) return [];
        }

        if (!byLetters.Take(letters, near, MostNear) || near.Count == 0) return [];
        near.Sort();
        Interlocked.Add(ref compared, near.Count);
        return NearestName.Slips(name, near.Select(i => names[i]));
    }

    /// <summary>The one candidate that a slip of the hand would turn into a name; <see langword="null"/> where there is none, or more.</summary>
    public string? Slip(string name) => Slips(name) is [var only] ? only : null;

    private static long StartKey(char first, int length) => ((long)first << 32) | (uint)length;

    /// <summary>Length without blanks, hyphens and underscores, and a number that names of the same letters share in any order.</summary>
    private static (int Length, long Letters) Describe(string name)
    {
        int length = 0;
        ulong letters = 0;
        foreach (char c in name)
        {
            if (c is not (' ' or '-' or '_')) length++;
            if (!char.IsLetterOrDigit(c)) continue;

            // A sum says nothing of the order; the finalizer of splitmix64 keeps sums of other letters apart.
            ulong z = char.ToLowerInvariant(c) * 0x9E37_79B9_7F4A_7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58_476D_1CE4_E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D0_49BB_1331_11EBUL;
            letters += z ^ (z >> 31);
        }

        return (length, (long)letters);
    }

    /// <summary>Numbers of names by a key, in chains through one list: thousands of names, and no object for each key.</summary>
    private sealed class Buckets
    {
        private readonly Dictionary<long, (int Last, int Count)> heads = [];
        private readonly List<int> before = [];

        /// <summary>Adds a name; each once, in the order of their numbers.</summary>
        public void Add(long key, int name)
        {
            var (last, count) = heads.TryGetValue(key, out var head) ? head : (-1, 0);
            before.Add(last);
            heads[key] = (name, count + 1);
        }

        /// <summary>Adds the names of a key to others, where they are not among them; false where these would be too many.</summary>
        public bool Take(long key, List<int> to, int most)
        {
            if (!heads.TryGetValue(key, out var head)) return true;
            if (to.Count + head.Count > most) return false;
            int others = to.Count;
            for (int name = head.Last; name >= 0; name = before[name])
            {
                if (to.IndexOf(name, 0, others) < 0) to.Add(name);
            }

            return true;
        }
    }
}
