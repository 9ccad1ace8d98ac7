namespace SpecLint.Rules.Labels;

/// <summary>Finds words in texts that guests read.</summary>
internal static class WordSearch
{
    /// <summary>Where a word stands in a text by itself, case aside; -1 where it does not.</summary>
    public static int Find(string text, string word)
    {
        for (int from = 0; from <= text.Length - word.Length;)
        {
            int at = text.IndexOf(word, from, StringComparison.OrdinalIgnoreCase);
            if (at < 0) return -1;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (at + word.Length == text.Length || !char.IsLetterOrDigit(text[at + word.Length]))) return at;
            from = at + 1;
        }

        return -1;
    }

    /// <summary>Whether a word stands in a text by itself.</summary>
    public static bool Has(string text, string word) => Find(text, word) >= 0;

    /// <summary>The first of some words that stands in a text; <see langword="null"/> where none does.</summary>
    public static string? First(string text, FixedList<string> words)
    {
        for (int i = 0; i < words.Count; i++)
        {
            if (Has(text, words[i])) return words[i];
        }

        return null;
    }

    /// <summary>Whether the last words of a text are these.</summary>
    public static bool EndsWith(string text, string words) =>
        text.EndsWith(words, StringComparison.OrdinalIgnoreCase) && (text.Length == words.Length || !char.IsLetterOrDigit(text[text.Length - words.Length - 1]));
}
