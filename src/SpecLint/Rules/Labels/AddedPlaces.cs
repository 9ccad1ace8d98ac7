using SpecLint.Catalogue;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.Labels;

/// <summary>The places of a text at which something may be named as added.</summary>
internal static class AddedPlaces
{
    /// <summary>Where in a text something may be named as added: behind an amount, and behind a word of adding.</summary>
    public static IEnumerable<(int From, int To, int At, bool Spoken)> Of(string text)
    {
        for (int from = 0; AmountsInText.Next(text, from, out var spoken); from = spoken.End)
            yield return (spoken.Start, spoken.End, SkipFillers(text, spoken.End), true);
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsLetter(text[i]) || (i > 0 && char.IsLetterOrDigit(text[i - 1]))) continue;
            foreach (string word in TextWords.AddingFrom(text[i]))
            {
                int end = i + word.Length;
                if (string.Compare(text, i, word, 0, word.Length, StringComparison.OrdinalIgnoreCase) != 0
                    || (end < text.Length && char.IsLetterOrDigit(text[end])))
                    continue;
                int at = SkipFillers(text, end);
                if (at < text.Length) yield return (i, end, at, false);
                break;
            }
        }
    }

    private static int SkipFillers(string text, int at)
    {
        while (true)
        {
            while (at < text.Length && text[at] == ' ') at++;
            int end = at;
            while (end < text.Length && (char.IsDigit(text[end]) || (end > at && text[end] is '/' or '.'))) end++;
            if (end > at)
            {
                at = end;
                continue;
            }

            while (end < text.Length && char.IsLetter(text[end])) end++;
            if (end == at || !TextWords.IsFiller(text.Substring(at, end - at))) return at;
            at = end;
        }
    }
}
