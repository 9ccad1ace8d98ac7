using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

/// <summary>Several that are bought as one, as a note says: <c>case of six</c>, <c>6er-Karton</c>, <c>24 bottles of 200 ml</c>.</summary>
/// <param name="Count">How many.</param>
/// <param name="Each">What one holds, where the note says.</param>
/// <param name="Words">The note's words.</param>
internal sealed record Pack(double Count, Quantity? Each, string Words);

/// <summary>Finds packs in the notes of price lists.</summary>
internal static class Packs
{
    private const double MostInPack = 200;

    /// <summary>The pack that a text names; none where it names none, or says that the price is that of one.</summary>
    public static Pack? In(string text)
    {
        var words = SpokenWords.Of(text);
        for (int i = 0; i < words.Count; i++)
        {
            if (SpokenWords.PhraseAt(words, i, static s => PriceWords.Is(PriceWord.Each, s)) > 0) return null;
        }

        for (int i = 0; i < words.Count; i++)
        {
            if (At(text, words, i) is { } pack) return pack;
        }

        return null;
    }

    private static Pack? At(string text, List<SpokenWord> words, int at)
    {
        int number = Is(PriceWord.Pack, words, at) ? Skip(words, at + 1) : at;
        var (count, length) = SpokenWords.NumberAt(text, words, number);
        if (!(count >= 2) || count > MostInPack || count != Math.Floor(count)) return null;
        int behind = number + length;
        if (!Is(PriceWord.Bottle, words, behind) && SpokenWords.AmountAt(text, words, number) is not null) return null;
        bool packed = number > at || Is(PriceWord.PackNumber, words, behind - 1);
        if (Is(PriceWord.Bottle, words, behind) || Is(PriceWord.PackNumber, words, behind))
        {
            packed = true;
            behind++;
        }

        var each = SpokenWords.AmountAt(text, words, Skip(words, behind));
        bool times = each is not null && behind < words.Count && IsTimes(text, words, number + length);
        return packed || times ? new Pack(count, each, text.Substring(words[at].Start, words[behind - 1].End - words[at].Start)) : null;
    }

    private static bool Is(PriceWord role, List<SpokenWord> words, int at) => at < words.Count && PriceWords.Is(role, words[at].Slug);

    /// <summary>The word behind those that may stand between a pack and its number or size.</summary>
    private static int Skip(List<SpokenWord> words, int at)
    {
        while (Is(PriceWord.PackGlue, words, at)) at++;
        return at;
    }

    /// <summary>Whether a sign of multiplication stands before a word.</summary>
    private static bool IsTimes(string text, List<SpokenWord> words, int at) =>
        words[at].Slug == "x" || text.IndexOf('×', words[at - 1].End, words[at].Start - words[at - 1].End) >= 0;
}
