using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>
/// The foods with an allergen that a note names as added: behind a word of adding anywhere in its sentence ("dust with crushed
/// pistachio"), or as all that a clause says ("Crushed pistachio on top").
/// </summary>
internal static class NamedFoods
{
    private const int LongestName = 3;

    /// <summary>How many words before a food may tell that it is only compared ("a hint of almond").</summary>
    private const int LookBack = 3;

    private static readonly char[] ClauseEnds = ['.', ';', ':', '!', '?', ',', '(', ')', '\n'];

    /// <summary>The foods, each by its words as an id, and the allergens that it brings.</summary>
    /// <param name="text">The note.</param>
    /// <param name="book">The book, for the names of items.</param>
    /// <param name="profiles">Its profiles, for what they hold.</param>
    public static List<(string Id, IReadOnlyList<string> Tokens)> In(string text, LinkedBook book, ProfileSet profiles)
    {
        var found = new List<(string, IReadOnlyList<string>)>();
        bool adding = false;
        for (int from = 0; from < text.Length;)
        {
            int end = ClauseEnd(text, from);
            var words = WordsOf(text, from, end);
            int added = adding ? 0 : FirstAdded(words);
            Look(text, words, added, book, profiles, found);

            // A list of what is added goes on behind a comma.
            adding = end < text.Length && text[end] is ',' or '(' && added <= words.Count;
            from = end + 1;
        }

        return found;
    }

    /// <summary>Whether what the words at a place name is a tool, a taste or a likeness, by the words behind.</summary>
    public static bool IsNoFood(string text, int at)
    {
        var words = WordsOf(text, at, ClauseEnd(text, at));
        for (int i = 1; i < words.Count && i <= LongestName; i++)
        {
            if (TextWords.IsNoFood(words[i].Word)) return true;
            if (TextWords.IsPlacing(words[i].Word)) return false;
        }

        return false;
    }

    /// <summary>The end of a clause; a point or comma between digits ends none.</summary>
    private static int ClauseEnd(string text, int from)
    {
        int end = text.IndexOfAny(ClauseEnds, from);
        while (end > 0 && end + 1 < text.Length && char.IsDigit(text[end - 1]) && char.IsDigit(text[end + 1])) end = text.IndexOfAny(ClauseEnds, end + 1);
        return end < 0 ? text.Length : end;
    }

    private static void Look(string text, List<(string Word, int At)> words, int firstAdded, LinkedBook book, ProfileSet profiles, List<(string, IReadOnlyList<string>)> found)
    {
        var foods = new HashSet<int>();
        for (int i = 0; i < words.Count; i++)
        {
            for (int length = Math.Min(LongestName, words.Count - i); length > 0; length--)
            {
                string id = string.Join("-", words.Skip(i).Take(length).Select(static w => w.Word)).ToLowerInvariant();
                if (TokensOf(id, book, profiles) is not { } tokens) continue;
                bool added = i >= firstAdded ? !IsCompared(words, i, length) : IsAllThatIsSaid(words, foods, i, length);
                if (tokens.Count > 0 && added && !Phrases.IsDenied(text, words[i].At, words[i + length - 1].At + words[i + length - 1].Word.Length) && !IsRuledOut(words, i)) found.Add((id, tokens));
                foods.UnionWith(Enumerable.Range(i, length));
                i += length - 1;
                break;
            }
        }
    }

    /// <summary>What some words bring: those of an item, or of an allergen; <see langword="null"/> where they name neither.</summary>
    private static IReadOnlyList<string>? TokensOf(string id, LinkedBook book, ProfileSet profiles)
    {
        foreach (string one in new[] { id, id.TrimEnd('s') })
        {
            if (one.Length <= 2) continue;
            if (AllergenTable.TokensOf(one) is { Count: > 0 } tokens) return tokens;
            if (book.Resolve(one) is not { } item) continue;
            if (item.File is Recipe recipe) return [.. profiles.Of(recipe).Allergens.Contained(book.Settings)];
            return profiles.MaterialOf(item.Id)?.Ingredient?.Allergens is { } stated ? [.. AllergenProfile.TokensOf(stated, book.Settings)] : [];
        }

        return null;
    }

    /// <summary>The word behind the first word of adding; beyond all words where there is none.</summary>
    private static int FirstAdded(List<(string Word, int At)> words)
    {
        for (int i = 0; i < words.Count; i++)
        {
            foreach (string adding in TextWords.Adding)
            {
                int length = 1 + adding.Count(static c => c == ' ');
                if (i + length <= words.Count && string.Equals(string.Join(" ", words.Skip(i).Take(length).Select(static w => w.Word)), adding, StringComparison.OrdinalIgnoreCase)) return i + length;
            }
        }

        return int.MaxValue;
    }

    private static bool IsCompared(List<(string Word, int At)> words, int at, int length)
    {
        if (at + length < words.Count && TextWords.IsNoFood(words[at + length].Word)) return true;
        for (int i = Math.Max(0, at - LookBack); i < at; i++)
        {
            if (TextWords.IsNoFood(words[i].Word)) return true;
        }

        return false;
    }

    private static bool IsAllThatIsSaid(List<(string Word, int At)> words, HashSet<int> foods, int at, int length)
    {
        for (int i = 0; i < words.Count; i++)
        {
            if (TextWords.IsNoFood(words[i].Word) || (i < at && !foods.Contains(i) && !TextWords.IsDescribing(words[i].Word))) return false;
        }

        return at + length == words.Count || TextWords.IsPlacing(words[at + length].Word);
    }

    private static bool IsRuledOut(List<(string Word, int At)> words, int at) => words.Take(at).Any(static w => TextWords.RulingOut.Contains(w.Word, StringComparer.OrdinalIgnoreCase));

    private static List<(string Word, int At)> WordsOf(string text, int from, int end)
    {
        var words = new List<(string, int)>();
        for (int i = from; i < end; i++)
        {
            if (!char.IsLetterOrDigit(text[i])) continue;
            int start = i;
            while (i < end && (char.IsLetterOrDigit(text[i]) || text[i] is '\'' or '’')) i++;
            words.Add((text.Substring(start, i - start), start));
        }

        return words;
    }
}
