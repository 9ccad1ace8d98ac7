using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>Takes what stands for an item into words: an id by its hyphens, a text by its blanks.</summary>
internal static class ItemWords
{
    /// <summary>What a line has for an item: its id, else the text that is none.</summary>
    public static Given<string> TextOf(Line line) => line.Item.IsGiven ? line.Item : line.ItemText;

    /// <summary>Whether a text holds a digit: without one there is no amount in it.</summary>
    public static bool HasDigit(string text)
    {
        foreach (char c in text)
        {
            if (c is >= '0' and <= '9') return true;
        }

        return false;
    }

    /// <summary>The words; an id has hyphens between them, a text blanks.</summary>
    public static string[] Of(string text, out bool isId)
    {
        isId = text.IndexOf(' ') < 0;
        return text.Split(isId ? '-' : ' ');
    }

    /// <summary>The amount that some words make; <see langword="null"/> where they make none.</summary>
    public static string? AmountOf(string[] words, int start, int length, bool isId)
    {
        string first = words[start];
        if (first.Length == 0 || first[0] is < '0' or > '9') return null;
        string text = length switch
        {
            1 => first,
            2 => first + " " + words[start + 1],
            _ when isId => Number(first, words[start + 1]) + " " + words[start + 2],
            _ => first + " " + words[start + 1] + " " + words[start + 2],
        };
        return QuantityReader.TryRead(text.AsSpan(), Measures.Default, out _, out _) ? text : null;
    }

    /// <summary>The id that some words make.</summary>
    public static string Id(string[] words, int from, int to) => BuiltInCatalogue.Slug(string.Join(" ", words, from, to - from));

    /// <summary>Two numbers that a hyphen keeps apart in an id: a half or a quarter where they can be one, else a decimal.</summary>
    private static string Number(string first, string second) =>
        first is "1" or "3" && second is "2" or "4" ? first + "/" + second : first + "." + second;
}
