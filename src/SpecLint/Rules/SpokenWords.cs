using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Rules;

/// <summary>A word of a running text, as an id, and where it stands.</summary>
/// <param name="Slug">The word as an id.</param>
/// <param name="Start">Where it starts.</param>
/// <param name="End">Where it ends.</param>
internal readonly record struct SpokenWord(string Slug, int Start, int End);

/// <summary>The words of a running text, and the items that they name.</summary>
internal static class SpokenWords
{
    private const int LongestPhrase = 4;

    /// <summary>The words and numbers of a text; figures and letters are apart ("6er", "70cl").</summary>
    public static List<SpokenWord> Of(string text)
    {
        var words = new List<SpokenWord>();
        for (int at = 0; at < text.Length; at++)
        {
            int end = at;
            bool figures = IsFigure(text, at);
            while (end < text.Length && (figures ? IsFigure(text, end) || IsInNumber(text, end) : char.IsLetter(text[end]))) end++;
            if (end == at) continue;
            string slug = Slugs.Of(text.Substring(at, end - at));
            words.Add(new SpokenWord(slug, at, end));
            at = end - 1;
        }

        return words;
    }

    private static bool IsFigure(string text, int at) => char.IsDigit(text[at]) || text[at] == '½';

    private static bool IsInNumber(string text, int at) =>
        text[at] is '.' or ',' && at > 0 && at + 1 < text.Length && char.IsDigit(text[at - 1]) && char.IsDigit(text[at + 1]);

    /// <summary>How many words from one on are one of some phrases, the longest first; 0 where none is.</summary>
    public static int PhraseAt(List<SpokenWord> words, int at, Func<string, bool> isPhrase)
    {
        for (int length = Math.Min(LongestPhrase, words.Count - at); length > 0; length--)
        {
            if (isPhrase(Join(words, at, length))) return length;
        }

        return 0;
    }

    /// <summary>
    /// The ids that the words from one on name, the longest name first; none where they name nothing. A name that says too little names
    /// all it may mean.
    /// </summary>
    public static (FixedList<string> Ids, int Length) ItemAt(LinkedBook book, List<SpokenWord> words, int at)
    {
        for (int length = Math.Min(LongestPhrase, words.Count - at); length > 0; length--)
        {
            string slug = Join(words, at, length);
            if (slug.Length < 3) continue;
            var ids = Named(book, slug);
            if (ids.Count == 0 && slug[slug.Length - 1] == 's') ids = Named(book, slug.Substring(0, slug.Length - 1));
            if (ids.Count > 0) return (ids, length);
        }

        return ([], 0);
    }

    private static FixedList<string> Named(LinkedBook book, string slug) =>
        book.Resolve(slug) is { } item ? item.File is Drink ? [] : [item.Id]
        : book.Names.Named(slug) is { Count: > 0 } own ? [.. own]
        : UnclearNames.Find(slug)?.Could ?? [];

    /// <summary>The number that stands at a word, in figures or in words, and how many words it has; NaN where none does.</summary>
    public static (double Number, int Length) NumberAt(string text, List<SpokenWord> words, int at)
    {
        if (at >= words.Count) return (double.NaN, 0);
        string written = text.Substring(words[at].Start, words[at].End - words[at].Start);
        double figures = NumberWords.OfFigures(written);
        if (!double.IsNaN(figures)) return (figures, 1);
        int length = PhraseAt(words, at, NumberWords.IsWord);
        return length == 0 ? (double.NaN, 0) : (NumberWords.OfWord(Join(words, at, length)), length);
    }

    /// <summary>The amount of volume or mass that starts at a word; none where there is no such amount.</summary>
    public static Quantity? AmountAt(string text, List<SpokenWord> words, int at) =>
        at + 1 < words.Count && char.IsDigit(text[words[at].Start])
        && QuantityReader.TryRead(text.AsSpan(words[at].Start, words[at + 1].End - words[at].Start), Measures.Default, out var quantity, out _)
        && quantity.Dimension is Dimension.Volume or Dimension.Mass ? quantity : null;

    /// <summary>Some words as one id.</summary>
    public static string Join(List<SpokenWord> words, int at, int length)
    {
        if (length == 1) return words[at].Slug;
        string joined = words[at].Slug;
        for (int i = 1; i < length; i++) joined += "-" + words[at + i].Slug;
        return joined;
    }
}
