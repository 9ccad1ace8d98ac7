namespace SpecLint.Reading;

/// <summary>Finds the name that was probably meant.</summary>
internal static class NearestName
{
    /// <summary>Letters of the longest name that is compared, blanks, hyphens and underscores aside.</summary>
    internal const int Longest = 64;

    /// <summary>The edits of a slip of the hand in a name of so many letters.</summary>
    internal static int SlipsOf(int letters) => letters < 9 ? 1 : letters < 15 ? 2 : 3;

    /// <summary>The edits that a name of a length may be away: a third of it, at least one, at most three.</summary>
    public static int Allowed(int length) => length <= 2 ? 1 : Math.Min(3, Math.Max(1, (length + 1) / 3));

    /// <summary>The candidate nearest to a name, the first of equals; <see langword="null"/> where none is near.</summary>
    /// <param name="name">What was written.</param>
    /// <param name="candidates">What could have been meant.</param>
    public static string? Of(string name, IEnumerable<string> candidates)
    {
        string? nearest = null;
        int least = Allowed(name.Length) + 1;
        foreach (string candidate in candidates)
        {
            int distance = Distance(name, candidate, least - 1);
            if (distance >= least) continue;
            least = distance;
            nearest = candidate;
        }

        return nearest;
    }

    /// <summary>
    /// The candidates that a slip of the hand would turn into a name, all at the least distance: they begin with the same letter,
    /// and differ in one edit (two from nine letters on, three from fifteen); a name of three letters only in their order. Wider
    /// nets catch other things: garlic is two edits from malic, and tamari from campari.
    /// </summary>
    /// <param name="name">What was written.</param>
    /// <param name="candidates">What could have been meant.</param>
    public static List<string> Slips(string name, IEnumerable<string> candidates)
    {
        var nearest = new List<string>();
        int letters = name.Count(c => c is not (' ' or '-' or '_'));
        int least = SlipsOf(letters);
        foreach (string candidate in candidates)
        {
            int distance = Distance(name, candidate, least);
            if (distance > least || candidate.Length == 0 || name.Length == 0) continue;
            bool sameLetters = HasSameLetters(name, candidate);
            if (!sameLetters && (letters < 4 || char.ToLowerInvariant(name[0]) != char.ToLowerInvariant(candidate[0]))) continue;
            if (distance < least) nearest.Clear();
            least = distance;
            if (!nearest.Contains(candidate)) nearest.Add(candidate);
        }

        return nearest;
    }

    /// <summary>The one candidate that a slip of the hand would turn into a name; <see langword="null"/> where there is none, or more.</summary>
    public static string? Slip(string name, IEnumerable<string> candidates)
    {
        var slips = Slips(name, candidates);
        return slips.Count == 1 ? slips[0] : null;
    }

    private static bool HasSameLetters(string a, string b) =>
        a.Where(char.IsLetterOrDigit)
            .Select(char.ToLowerInvariant)
            .OrderBy(c => c)
            .SequenceEqual(b.Where(char.IsLetterOrDigit).Select(char.ToLowerInvariant).OrderBy(c => c));

    /// <summary>
    /// Edits between two names: letters put in, taken out, changed, or swapped with their neighbour (optimal string
    /// alignment), case, blanks, hyphens and underscores aside; more than a limit is answered as the limit and one.
    /// </summary>
    public static int Distance(string a, string b, int limit)
    {
        if (limit < 0 || Math.Abs(a.Length - b.Length) > limit + 3) return limit + 1;
        Span<char> first = stackalloc char[64];
        Span<char> second = stackalloc char[64];
        if (!Plain(a, first, out int n) || !Plain(b, second, out int m) || Math.Abs(n - m) > limit) return limit + 1;
        Span<int> rows = stackalloc int[3 * 65];
        var before = rows.Slice(0, 65);
        var row = rows.Slice(65, 65);
        var next = rows.Slice(130, 65);
        for (int j = 0; j <= m; j++) row[j] = j;
        for (int i = 1; i <= n; i++)
        {
            next[0] = i;
            int least = i;
            for (int j = 1; j <= m; j++)
            {
                int cost = first[i - 1] == second[j - 1] ? 0 : 1;
                int edits = Math.Min(Math.Min(next[j - 1], row[j]) + 1, row[j - 1] + cost);
                if (i > 1 && j > 1 && first[i - 1] == second[j - 2] && first[i - 2] == second[j - 1]) edits = Math.Min(edits, before[j - 2] + 1);
                next[j] = edits;
                least = Math.Min(least, edits);
            }

            if (least > limit) return limit + 1;
            var spare = before;
            before = row;
            row = next;
            next = spare;
        }

        return Math.Min(row[m], limit + 1);
    }

    /// <summary>Whether two names differ only in case, blanks, hyphens and underscores.</summary>
    public static bool IsSame(string a, string b) => Distance(a, b, 0) == 0;

    private static bool Plain(string name, Span<char> to, out int length)
    {
        length = 0;
        foreach (char c in name)
        {
            if (c is ' ' or '-' or '_') continue;
            if (length == 64) return false;
            to[length++] = char.ToLowerInvariant(c);
        }

        return true;
    }
}
