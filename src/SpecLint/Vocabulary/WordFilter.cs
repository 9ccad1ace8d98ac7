namespace SpecLint.Vocabulary;

/// <summary>
/// Tells in one pass, without making anything, that a text holds none of some words: what looks for them need not read it. A text
/// with letters beyond ASCII is never ruled out, since accents and marks are folded only by the full reading.
/// </summary>
internal sealed class WordFilter
{
    private const uint Start = 2166136261, Factor = 16777619;

    private readonly HashSet<uint> words = [];

    /// <param name="words">Single words in lower case.</param>
    public WordFilter(IEnumerable<string> words)
    {
        foreach (string word in words)
        {
            uint hash = Start;
            foreach (char c in word) hash = (hash ^ c) * Factor;
            this.words.Add(hash);
        }
    }

    /// <summary>A filter for the first words of names and phrases.</summary>
    public static WordFilter OfFirstWords(IEnumerable<string> phrases) =>
        new(phrases.Select(p => new string([.. p.ToLowerInvariant().TakeWhile(char.IsLetterOrDigit)])));

    /// <summary>Whether a text may hold one of the words, in any case; an apostrophe is no part of a word.</summary>
    public bool MayHold(string text)
    {
        uint hash = Start;
        foreach (char c in text)
        {
            if (c > 127) return true;
            if (c is (>= 'a' and <= 'z') or (>= '0' and <= '9'))
            {
                hash = (hash ^ c) * Factor;
            }
            else if (c is >= 'A' and <= 'Z')
            {
                hash = (hash ^ (uint)(c | 0x20)) * Factor;
            }
            else if (c != '\'')
            {
                if (hash != Start && words.Contains(hash)) return true;
                hash = Start;
            }
        }

        return hash != Start && words.Contains(hash);
    }
}
