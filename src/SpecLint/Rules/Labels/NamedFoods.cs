using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>
/// The foods with an allergen that a note names as added: behind a word of adding anywhere in its sentence ("dust with crushed
/// pistachio"), or as all that a clause says ("Crushed pistachio on top").
/// </summary>
internal sealed class NamedFoods
{
    private const int LongestName = 3;

    /// <summary>How many words before a food may tell that it is only compared ("a hint of almond").</summary>
    private const int LookBack = 3;

    private static readonly char[] ClauseEnds = ['.', ';', ':', '!', '?', ',', '(', ')', '\n'];

    private readonly string text;
    private readonly string plain;
    private readonly LinkedBook book;
    private readonly ProfileSet profiles;
    private readonly bool mayAdd;
    private readonly bool mayDeny;
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private readonly List<(string Id, IReadOnlyList<string> Tokens)> found = [];

    private NamedFoods(string text, LinkedBook book, ProfileSet profiles)
    {
        this.text = text;
        this.book = book;
        this.profiles = profiles;
        plain = text.ToLowerInvariant();
        mayAdd = TextWords.MayAdd(plain);
        mayDeny = TextWords.MayDeny(plain);
    }

    /// <summary>The foods, each once and by its words as an id, and the allergens that it brings.</summary>
    /// <param name="text">The note.</param>
    /// <param name="book">The book, for the names of items.</param>
    /// <param name="profiles">Its profiles, for what they hold.</param>
    public static List<(string Id, IReadOnlyList<string> Tokens)> In(string text, LinkedBook book, ProfileSet profiles)
    {
        var foods = new NamedFoods(text, book, profiles);
        foods.Read();
        return foods.found;
    }

    private void Read()
    {
        bool adding = false, denied = false;
        int deniedTo = 0;
        for (int from = 0; from < text.Length;)
        {
            int end = ClauseEnd(text, from);
            var words = WordsOf(plain, from, end);
            int added = adding ? 0 : mayAdd ? FirstAdded(words) : int.MaxValue;

            // So does a list of what is denied, as far as its last thing is joined to it.
            if (denied && from >= deniedTo) deniedTo = EndOfDenied(from);
            denied = from < deniedTo || Look(words, added, mayDeny && end < text.Length && text[end] == ',');
            denied &= end < text.Length && text[end] == ',';

            // A list of what is added goes on behind a comma.
            adding = end < text.Length && text[end] is ',' or '(' && added <= words.Count;
            from = end + 1;
        }
    }

    /// <summary>Whether what the words at a place name is a tool, a taste or a likeness, by the words behind.</summary>
    public static bool IsNoFood(string text, int at)
    {
        var words = WordsOf(text, at, ClauseEnd(text, at), LongestName + 1);
        for (int i = 1; i < words.Count; i++)
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
        while (end > 0 && end + 1 < text.Length && char.IsDigit(text[end - 1]) && char.IsDigit(text[end + 1]))
            end = text.IndexOfAny(ClauseEnds, end + 1);
        return end < 0 ? text.Length : end;
    }

    /// <summary>
    /// How far the clauses from a place on are a list of foods whose last is joined by "or": all that is denied; 0 where they are
    /// none.
    /// </summary>
    private int EndOfDenied(int from)
    {
        while (from < text.Length)
        {
            int end = ClauseEnd(text, from);
            var words = WordsOf(plain, from, end);
            bool joins = words.Exists(static w => TextWords.IsJoining(w.Word));
            for (int i = 0; i < words.Count;)
            {
                int length = FoodAt(words, i, out _, out _);
                if (length == 0 && !TextWords.IsDescribing(words[i].Word) && !TextWords.IsJoining(words[i].Word)) return 0;
                i += Math.Max(1, length);
            }

            if (joins || words.Count == 0 || end >= text.Length || text[end] != ',') return joins ? end : 0;
            from = end + 1;
        }

        return 0;
    }

    /// <summary>Adds the foods of a clause; whether its last is denied.</summary>
    private bool Look(List<(string Word, int At)> words, int firstAdded, bool mayOpenList)
    {
        // A clause is all about foods as long as each word is one, or only says how it is.
        bool isAboutFoods = !words.Exists(static w => TextWords.IsNoFood(w.Word));
        bool isRuledOut = false, isReplaced = false, isDenied = false;
        for (int i = 0; i < words.Count;)
        {
            // Nothing more can count: it is not added, the clause says other things, and no list of what is denied begins here.
            if (!isAboutFoods && firstAdded >= words.Count && !mayOpenList) return false;
            int length = FoodAt(words, i, out string id, out var tokens), behind = i + Math.Max(1, length);
            if (length == 0)
            {
                isAboutFoods &= TextWords.IsDescribing(words[i].Word);
            }
            else if (tokens.Count > 0)
            {
                bool added = i >= firstAdded
                    ? !IsCompared(words, i, length)
                    : isAboutFoods && (behind == words.Count || TextWords.IsPlacing(words[behind].Word));
                isDenied = isRuledOut || Phrases.IsDenied(text, words[i].At, words[behind - 1].At + words[behind - 1].Word.Length);
                if (added && !isDenied && ids.Add(id)) found.Add((id, tokens));
            }

            for (; i < behind; i++)
            {
                isReplaced |= TextWords.Replacing.Contains(words[i].Word);
                isRuledOut = TextWords.RulesOut(words[i].Word, isRuledOut) && !(isReplaced && TextWords.IsUsing(words[i].Word));
            }
        }

        return isDenied;
    }

    /// <summary>How many words from one on name an item or an allergen, the longest name first; 0 where they name neither.</summary>
    private int FoodAt(List<(string Word, int At)> words, int at, out string id, out IReadOnlyList<string> tokens)
    {
        for (int length = Math.Min(LongestName, words.Count - at); length > 0; length--)
        {
            id = words[at].Word;
            for (int i = 1; i < length; i++) id += "-" + words[at + i].Word;
            if (TokensOf(id) is not { } brought) continue;
            tokens = brought;
            return length;
        }

        (id, tokens) = ("", []);
        return 0;
    }

    /// <summary>What some words bring: those of an item, or of an allergen; <see langword="null"/> where they name neither.</summary>
    private IReadOnlyList<string>? TokensOf(string id)
    {
        if (id.Length <= 2) return null;
        if (AllergenTable.TokensOf(id) is { Count: > 0 } tokens) return tokens;
        if (book.Resolve(id) is not { } item) return id[id.Length - 1] == 's' ? TokensOf(id.TrimEnd('s')) : null;
        if (item.File is Recipe recipe) return [.. profiles.Of(recipe).Allergens.Contained(book.Settings)];
        return profiles.MaterialOf(item.Id)?.Ingredient?.Allergens is { } stated
            ? [.. AllergenProfile.TokensOf(stated, book.Settings)]
            : [];
    }

    /// <summary>The word behind the first word of adding; beyond all words where there is none.</summary>
    private static int FirstAdded(List<(string Word, int At)> words)
    {
        for (int i = 0; i < words.Count; i++)
        {
            foreach (string adding in TextWords.AddingFrom(words[i].Word[0]))
            {
                int behind = Behind(words, i, adding);
                if (behind > 0) return behind;
            }
        }

        return int.MaxValue;
    }

    /// <summary>The word behind a phrase that stands at a word; 0 where it does not.</summary>
    private static int Behind(List<(string Word, int At)> words, int at, string phrase)
    {
        for (int from = 0; from < phrase.Length; at++)
        {
            int space = phrase.IndexOf(' ', from), length = (space < 0 ? phrase.Length : space) - from;
            if (at == words.Count
                || words[at].Word.Length != length
                || string.Compare(words[at].Word, 0, phrase, from, length, StringComparison.OrdinalIgnoreCase) != 0)
                return 0;
            from += length + 1;
        }

        return at;
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

    private static List<(string Word, int At)> WordsOf(string text, int from, int end, int most = int.MaxValue)
    {
        var words = new List<(string, int)>(Math.Min(most, (end - from + 9) / 5));
        for (int i = from; i < end && words.Count < most; i++)
        {
            if (!char.IsLetterOrDigit(text[i])) continue;
            int start = i;
            while (i < end && (char.IsLetterOrDigit(text[i]) || text[i] is '\'' or '’')) i++;
            words.Add((text.Substring(start, i - start), start));
        }

        return words;
    }
}
