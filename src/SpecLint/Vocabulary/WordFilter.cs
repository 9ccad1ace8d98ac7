namespace SpecLint.Vocabulary;

/// <summary>
/// Tells in one pass, without making anything, that a text holds none of some words: what looks for them need not read it. A text
/// with letters beyond ASCII is never ruled out, since accents and marks are folded only by the full reading.
/// </summary>
internal sealed class WordFilter
{
    private const uint Start = 2166136261, Factor = 16777619;

    private readonly HashSet<uint> words = [];

    /// <summary>A filter without a word.</summary>
    public WordFilter()
    {
    }

    /// <param name="words">Single words in lower case.</param>
    public WordFilter(IEnumerable<string> words)
    {
        foreach (string word in words) AddFirstWord(word);
    }

    /// <summary>A filter for the first words of names and phrases.</summary>
    public static WordFilter OfFirstWords(IEnumerable<string> phrases)
    {
        var filter = new WordFilter();
        foreach (string phrase in phrases)
        {
            uint hash = Start;
            for (int i = 0; i < phrase.Length && char.IsLetterOrDigit(phrase[i]); i++) hash = (hash ^ char.ToLowerInvariant(phrase[i])) * Factor;
            filter.words.Add(hash);
        }

        return filter;
    }

    /// <summary>Takes in what stands before the first blank or dot of a phrase, with an ending that may be written onto it.</summary>
    /// <param name="phrase">A phrase in lower case.</param>
    /// <param name="ending">The ending; for a single word only.</param>
    public void AddFirstWord(string phrase, string ending = "") => words.Add(Hash(ending, Hash(phrase, Start)));

    private static uint Hash(string word, uint hash)
    {
        foreach (char c in word)
        {
            if (c is ' ' or '.') break;
            hash = (hash ^ c) * Factor;
        }

        return hash;
    }

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
