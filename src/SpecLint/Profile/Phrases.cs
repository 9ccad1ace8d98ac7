namespace SpecLint.Profile;

/// <summary>Looks for words and phrases in what people write: whole words, any case.</summary>
internal static class Phrases
{
    /// <summary>Whether a text holds a phrase as whole words; its last word may stand in the plural.</summary>
    public static bool Has(string text, string phrase)
    {
        for (int at = 0; (at = text.IndexOf(phrase, at, StringComparison.OrdinalIgnoreCase)) >= 0; at++)
        {
            if (at > 0 && char.IsLetterOrDigit(text[at - 1])) continue;
            int end = at + phrase.Length;
            if (end < text.Length && text[end] is 's' or 'S') end++;
            else if (end + 1 < text.Length && text[end] is 'e' or 'E' && text[end + 1] is 's' or 'S') end += 2;
            if (end == text.Length || !char.IsLetterOrDigit(text[end])) return true;
        }

        return false;
    }

    /// <summary>Whether a text holds one of some phrases as whole words.</summary>
    public static bool HasAny(string text, IReadOnlyList<string> phrases)
    {
        for (int i = 0; i < phrases.Count; i++)
        {
            if (Has(text, phrases[i])) return true;
        }

        return false;
    }
}
