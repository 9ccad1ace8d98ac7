using SpecLint.Catalogue;
using SpecLint.Rules.Labels;

namespace SpecLint.Tests.Vocabulary;

/// <summary>Words are found in short texts by their first letter; the plain search of the library says the same.</summary>
public sealed class PhrasesTests
{
    private const string Letters = "aAbéÉkK\u212as1 -'’.";

    [Fact]
    public void A_word_is_found_where_a_plain_search_finds_it()
    {
        var random = new Random(22);
        int found = 0;
        for (int i = 0; i < 200_000; i++)
        {
            string text = Made(random, 12), word = Made(random, 3);
            int expected = Plain(text, word);
            Assert.Equal(expected, WordSearch.Find(text, word));
            Assert.Equal(expected >= 0, WordSearch.Has(text, word));
            Assert.Equal(
                text.EndsWith(word, StringComparison.OrdinalIgnoreCase)
                    && (text.Length == word.Length || !char.IsLetterOrDigit(text[text.Length - word.Length - 1])),
                WordSearch.EndsWith(text, word));
            Assert.Equal(text.Contains(word, StringComparison.OrdinalIgnoreCase), Phrases.Holds(text, word));
            if (expected >= 0) found++;
        }

        Assert.InRange(found, 5_000, 190_000);
    }

    /// <summary>A text that no word of a denial stands in is taken to deny nothing.</summary>
    [Fact]
    public void Whatever_denies_passes_the_filter_of_denials()
    {
        int denied = 0;
        foreach (string word in Phrases.DenyingWords)
        {
            foreach (string text in new[] { $"{word} pistachio", $"With {word.ToUpperInvariant()} pistachio", $"pistachio: {word}", $"pistachio? {word}!", $"pistachio-{word}" })
            {
                int at = text.IndexOf("pistachio", StringComparison.Ordinal);
                if (!Phrases.IsDenied(text, at, at + "pistachio".Length)) continue;
                denied++;
                Assert.True(TextWords.MayDeny(text), text);
            }
        }

        Assert.True(denied > 50);
        Assert.All(
            TextWords.RulingOut.Where(word => TextWords.RulesOut(word, false) && !word.Contains(' ', StringComparison.Ordinal)),
            word => Assert.True(TextWords.MayDeny($"{word} pistachio"), word));
        Assert.False(TextWords.MayDeny("Dust with crushed pistachio"));
    }

    /// <summary>A filter may let through what holds no word, and never the other way.</summary>
    [Fact]
    public void A_filter_of_first_words_rules_out_no_text_with_a_phrase()
    {
        var random = new Random(23);
        int ruledOut = 0;
        for (int i = 0; i < 100_000; i++)
        {
            string text = Made(random, 12), phrase = "b" + Made(random, 3);
            if (text.Contains('\'', StringComparison.Ordinal) || WordFilter.OfFirstWords([phrase]).MayHold(text)) continue;
            ruledOut++;
            Assert.True(Plain(text, phrase) < 0, $"\"{phrase}\" in \"{text}\"");
        }

        Assert.InRange(ruledOut, 1_000, 100_000);
    }

    private static int Plain(string text, string word)
    {
        for (int at = 0; (at = at > text.Length ? -1 : text.IndexOf(word, at, StringComparison.OrdinalIgnoreCase)) >= 0; at++)
        {
            int end = at + word.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end]))) return at;
        }

        return -1;
    }

    private static string Made(Random random, int most) =>
        new([.. Enumerable.Range(0, random.Next(1, most + 1)).Select(_ => Letters[random.Next(Letters.Length)])]);
}
