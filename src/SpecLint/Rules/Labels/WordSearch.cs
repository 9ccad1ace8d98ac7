namespace SpecLint.Rules.Labels;

/// <summary>Finds words in texts that guests read.</summary>
internal static class WordSearch
{
    /// <summary>Where a word stands in a text by itself, case aside; -1 where it does not.</summary>
    public static int Find(string text, string word)
    {
        for (int at = 0; at <= text.Length - word.Length; at++)
        {
            if (!Phrases.StartsAt(text, at, word)) continue;
            if (at + word.Length == text.Length || !char.IsLetterOrDigit(text[at + word.Length])) return at;
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

    /// <summary>What stands behind a word in a text that holds it, without the blanks around it.</summary>
    public static string Behind(string text, string word) => text.Substring(Find(text, word) + word.Length).Trim();

    /// <summary>Whether the last words of a text are these.</summary>
    public static bool EndsWith(string text, string words) =>
        Phrases.MayBeSame(text, text.Length - 1, words, words.Length - 1)
            && text.EndsWith(words, StringComparison.OrdinalIgnoreCase)
            && (text.Length == words.Length || !char.IsLetterOrDigit(text[text.Length - words.Length - 1]));
}
