namespace SpecLint.Reading;

/// <summary>Texts of a file as a sentence shows them.</summary>
internal static class ShortText
{
    private const int Longest = 40;

    /// <summary>A text cut to a length that a sentence bears.</summary>
    public static string Of(string text)
    {
        if (text.Length <= Longest) return text;
        int end = Longest;
        if (char.IsHighSurrogate(text[end - 1])) end--;
        return text.Substring(0, end) + "…";
    }
}
