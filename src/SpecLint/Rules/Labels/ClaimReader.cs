using System.Globalization;
using System.Text;
using SpecLint.Catalogue;
using SpecLint.Linking;

namespace SpecLint.Rules.Labels;

/// <summary>A claim in a text.</summary>
/// <param name="Words">The words that make it.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="IsFreeFrom">Whether it is written as "free" or "contains no", which a guest with an allergy trusts.</param>
internal sealed record ReadClaim(string Words, ClaimMeaning Meaning, bool IsFreeFrom);

/// <summary>
/// Finds claims in what the guest or the staff reads: words of the table, "X-free", "X-less", "no X", "without X", "free from X",
/// "contains no X", with the lists that follow ("no nuts, eggs or milk"), and whom a drink suits ("safe for coeliacs").
/// </summary>
internal sealed class ClaimReader
{
    private const int MostWordsOfThing = 3;

    /// <summary>The words of which each text with a claim holds one.</summary>
    private static readonly WordFilter Telling = TellingOf([.. ClaimForms.TellingWords, "00", "000"]);

    private static readonly char[] SentenceEnds = ['.', '!', '?', '\n'];

    private readonly LinkedBook book;
    private readonly ClaimPlace where;
    private readonly bool isNote;
    private readonly List<string> words = [];
    private readonly HashSet<int> hyphened = [];
    private readonly HashSet<int> bracketed = [];
    private readonly List<ReadClaim> claims = [];

    // Whether a word makes people of a thing, or assures them, and whether one says behind a thing that there is none: few texts have
    // either.
    private readonly bool namesPeople;
    private readonly bool deniesBehind;

    private ClaimReader(string text, ClaimPlace where, LinkedBook book, bool isNote)
    {
        this.book = book;
        this.where = where;
        this.isNote = isNote;
        Split(text);
        namesPeople = words.Exists(static w => ClaimForms.IsHaving(w) || ClaimForms.IsAssured(w));
        deniesBehind = words.Exists(static w => ClaimForms.LongestBehind(w) > 0);
    }

    private static WordFilter TellingOf(string[] others)
    {
        var telling = new WordFilter(others);
        ClaimTable.AddFirstWordsTo(telling);
        return telling;
    }

    /// <summary>Whether a text may hold a claim: most names and notes have no word of one, and need no reading.</summary>
    public static bool MayHold(string text) => Telling.MayHold(text);

    /// <summary>The claims of a text, in its order.</summary>
    /// <param name="text">The text.</param>
    /// <param name="where">What kind of text it is.</param>
    /// <param name="book">The book, for the names of items.</param>
    public static List<ReadClaim> Read(string text, ClaimPlace where, LinkedBook book)
    {
        var reader = new ClaimReader(text, where, book, isNote: false);
        reader.Read();
        return reader.claims;
    }

    /// <summary>
    /// The claims of a note. A sentence that tells how another drink is made of this one claims nothing, and "no" and "without"
    /// are a claim only where they are all that is said; else they are part of the method.
    /// </summary>
    public static List<ReadClaim> ReadNote(string text, LinkedBook book)
    {
        var claims = new List<ReadClaim>();
        for (int from = 0; from < text.Length;)
        {
            int end = from;
            do end = text.IndexOfAny(SentenceEnds, end) is >= 0 and int at ? at + 1 : text.Length;
            while (end < text.Length && text[end - 1] != '\n' && text[end] != ' ');
            string sentence = text.Substring(from, end - from);
            from = end;
            if (!MayHold(sentence)) continue;
            var reader = new ClaimReader(sentence, ClaimPlace.Anywhere, book, isNote: true);
            if (reader.IsOfAnother()) continue;
            reader.Read();
            claims.AddRange(reader.claims);
        }

        return claims;
    }

    /// <summary>Whether a sentence tells how another drink is made of this one; "we use no milk" tells of this one.</summary>
    private bool IsOfAnother()
    {
        for (int at = 0; at < words.Count;)
        {
            int negation = Negation(at, out _);
            if (negation < 2 && ClaimForms.IsInstead(words[at])) return true;
            at += Math.Max(1, negation);
        }

        return false;
    }

    private void Read()
    {
        if (where == ClaimPlace.Claims && words.Count == 1 && ClaimTable.Mark(words[0]) is not null) bracketed.Add(0);
        for (int at = 0; at < words.Count;) at = IsWord(at) ? One(at) : at + 1;
    }

    /// <summary>Reads the claim that begins at a word, or is found by it; hands back where to go on.</summary>
    private int One(int at)
    {
        int negation = Negation(at, out var form);
        if (negation > 0 && Thing(at + negation, out _) is { } thing && !(form.KnownOnly && thing.Kind == ClaimKind.Ingredient))
            return Behind(at, negation, form.IsFirm);
        if (NoneOf(at) is > 0 and int none) return at + none;
        if (Phrase(at, out int length) is { } phrase)
        {
            if (!IsOffer(at + length) && !IsDenied(at)) claims.Add(new ReadClaim(Join(at, length), phrase, false));
            return at + length;
        }

        if (bracketed.Contains(at))
        {
            claims.Add(new ReadClaim(words[at], ClaimTable.Mark(words[at])!, true));
            return at + 1;
        }

        if (Suits(at) is > 0 and int suits) return at + suits;
        if (IsEnding(at)) Before(at);
        else if (!Onto(at) && negation > 0 && !form.KnownOnly) return Behind(at, negation, form.IsFirm);
        return at + 1;
    }

    private ClaimMeaning? Phrase(int at, out int length)
    {
        for (length = Math.Min(ClaimTable.LongestPhrase(words[at]), words.Count - at); length > 0; length--)
        {
            if (ClaimTable.Phrase(Join(at, length), where, !IsWord(at + length)) is { } meaning) return meaning;
        }

        return null;
    }

    /// <summary>"no", "without", "free from", "contains no" and their like: how many words.</summary>
    private int Negation(int at, out ClaimForm form)
    {
        for (int length = Math.Min(ClaimForms.LongestBefore(words[at]), words.Count - at); length > 0; length--)
        {
            if (ClaimForms.Before(Join(at, length)) is not { } known) continue;
            form = known;
            return length;
        }

        form = default;
        return 0;
    }

    /// <summary>Reads "milk: none" and its like; hands back its words, 0 where it is none.</summary>
    private int NoneOf(int at)
    {
        for (int length = 1; deniesBehind && length <= MostWordsOfThing && IsWord(at + length - 1); length++)
        {
            int behind = at + length + (Word(at + length) == ";" ? 1 : 0);
            for (int tail = Math.Min(ClaimForms.LongestBehind(Word(behind)), words.Count - behind); tail > 0; tail--)
            {
                if (!ClaimForms.IsBehind(Join(behind, tail)) || IsWord(behind + tail)) continue;
                if (ClaimTable.Without(Join(at, length), IsItem) is not { Kind: not (ClaimKind.None or ClaimKind.Ingredient) } known)
                    continue;
                claims.Add(new ReadClaim($"{Join(at, length)} {Join(behind, tail)}", known, true));
                return behind + tail - at;
            }
        }

        return 0;
    }

    /// <summary>
    /// Reads whom a drink suits ("safe for coeliacs", "kid friendly", "nut safe"); hands back its words, 0 where it says so of nobody.
    /// </summary>
    private int Suits(int at)
    {
        int people = at;
        if (ClaimForms.IsAssuring(words[at]) && ClaimForms.IsJoint(Word(at + 1)))
        {
            people += 2;
            while (ClaimForms.IsSmall(Word(people))) people++;
        }

        if (PeopleAt(people, out int length) is not { Kind: not ClaimKind.None } known) return 0;
        int end = people + length;
        if (people == at)
        {
            if (!ClaimForms.IsAssured(Word(end))) return 0;
            end++;
        }

        if (!IsDenied(at) && !IsOffer(end)) claims.Add(new ReadClaim(Join(at, end - at), known, true));
        return end - at;
    }

    /// <summary>
    /// Those who must not have a thing, by a word of their own or by it; where nobody needs to be named ("nut safe"), the thing.
    /// </summary>
    private ClaimMeaning? PeopleAt(int at, out int length)
    {
        for (length = Math.Min(ClaimTable.LongestSuiting(Word(at)), words.Count - at); length > 0; length--)
        {
            if (ClaimTable.Suiting(Join(at, length)) is { } known) return known;
        }

        if (ClaimForms.IsHaving(Word(at)) && Word(at + 1) is "to" or "of" && Thing(at + 2, out length) is { } avoided)
        {
            length += 2;
            return avoided;
        }

        if (!namesPeople || Thing(at, out length) is not { Kind: not ClaimKind.Ingredient } thing) return null;
        if (ClaimForms.IsHaving(Word(at + length))) length++;
        else if (!IsAllergen(thing) || !ClaimForms.IsAssured(Word(at + length)) || Word(at + length) == "friendly") return null;
        return thing;
    }

    private static bool IsAllergen(ClaimMeaning meaning) =>
        meaning.Kind is ClaimKind.Allergens or ClaimKind.DairyFree or ClaimKind.GlutenFree or ClaimKind.LactoseFree;

    /// <summary>Reads "milkless" and "eggfree"; false where the word is none of them.</summary>
    private bool Onto(int at)
    {
        foreach (string ending in ClaimForms.Onto)
        {
            string word = words[at];
            if (word.Length <= ending.Length || !word.EndsWith(ending, StringComparison.Ordinal)) continue;
            string thing = word.Substring(0, word.Length - ending.Length);
            if (ClaimTable.Without(thing, static _ => false) is not { Kind: not ClaimKind.None } known) continue;
            if (!IsDenied(at) && !IsOffer(at + 1)) claims.Add(new ReadClaim(word, known, true));
            return true;
        }

        return false;
    }

    /// <summary>Whether a word stands behind a thing of which there is none: "milk free", "milk-less".</summary>
    private bool IsEnding(int at) => words[at] switch
    {
        "free" => Word(at + 1) is not ("from" or "of"),
        "less" => hyphened.Contains(at - 1),
        _ => false,
    };

    /// <summary>Reads the things behind a negation, and those of the list that it opens; hands back where to go on.</summary>
    private int Behind(int start, int negator, bool isFirm)
    {
        int at = start + negator, before = claims.Count;
        if (at >= words.Count) return at;
        if (Thing(at, out _) is null)
        {
            // "No. 3" and names such as "No Regrets" say nothing of what is inside; nor do notes of what their writer left out.
            bool isName = isNote || (where == ClaimPlace.Names && !isFirm);
            if (!isName && char.IsLetter(words[at][0]))
                claims.Add(new ReadClaim(Join(start, negator + 1), new ClaimMeaning(ClaimKind.Unknown, words[at], []), isFirm));
            return at + 1;
        }

        while (Thing(at, out int length) is { } known)
        {
            bool counts = known.Kind != ClaimKind.None && !(isNote && !isFirm && known.Kind == ClaimKind.Ingredient);
            if (counts && !IsOffer(at + length)) claims.Add(new ReadClaim($"{Join(start, negator)} {Join(at, length)}", known, isFirm));
            at += length;
            if (Word(at) is not ("or" or "and" or "nor" or ",")) break;

            // A list goes on behind a comma or "and" only with what a law calls an allergen: "no milk, lemon" ends at the comma.
            int next = at + (Word(at + 1) is "or" or "and" or "nor" or "no" ? 2 : 1);
            if (next >= words.Count
                || Thing(next, out _) is not { } further
                || (further.Kind == ClaimKind.Ingredient && Word(next - 1) is not ("or" or "nor")))
                break;
            at = next;
        }

        if (isNote && !isFirm && (IsWord(start - 1) || !Ends(at))) claims.RemoveRange(before, claims.Count - before);
        return at;
    }

    /// <summary>Reads the thing in front of "free" or "less", and those that "and" or a comma join to it.</summary>
    private void Before(int free)
    {
        for (int end = free; end > 0; end--)
        {
            ClaimMeaning? known = null;
            int length = Math.Min(MostWordsOfThing, end) + 1;
            while (known is null && --length > 0) known = ClaimTable.Without(Join(end - length, length), IsItem);
            if (known is null)
            {
                // "Peat free" may mean anything; with a hyphen, or in a list of claims, it is a claim.
                if (end == free
                    && !isNote
                    && words[free] == "free"
                    && char.IsLetter(words[end - 1][0])
                    && (where == ClaimPlace.Claims || hyphened.Contains(end - 1)))
                    claims.Add(new ReadClaim(words[end - 1] + "-free", new ClaimMeaning(ClaimKind.Unknown, words[end - 1], []), true));
                return;
            }

            if (known.Kind != ClaimKind.None && !IsOffer(free + 1) && !IsDenied(end - length))
                claims.Add(new ReadClaim($"{Join(end - length, length)}-{words[free]}", known, true));
            end -= length;
            if (Word(end - 1) is not ("and" or "or" or ",")) return;
            if (end < 2 || Thing(end - 2, out _) is not { } joined || !IsAllergen(joined)) return;
        }
    }

    private ClaimMeaning? Thing(int at, out int length)
    {
        length = 0;
        if (!IsWord(at)) return null;
        for (length = Math.Min(MostWordsOfThing, words.Count - at); length > 0; length--)
        {
            if (ClaimTable.Without(Join(at, length), IsItem) is { } known) return known;
        }

        return null;
    }

    private bool IsItem(string id) => book.Resolve(id) is not null;

    /// <summary>Whether the words behind make an offer of what was said: "vegan on request".</summary>
    private bool IsOffer(int at) =>
        Word(at) is "option" or "optional" or "version" or "available" || (Word(at) is "on" or "by" or "upon" && Word(at + 1) == "request");

    /// <summary>Whether what follows is taken back: "not vegan", "not suitable for coeliacs".</summary>
    private bool IsDenied(int at) => ClaimForms.IsDenying(Word(at - 1));

    /// <summary>Whether what is said ends at a place, but for words that add nothing.</summary>
    private bool Ends(int at)
    {
        int length = 0;
        while (IsWord(at + length)) length++;
        return length == 0 || ClaimForms.IsTrailing(Join(at, length));
    }

    /// <summary>Whether a word stands at a place, and no comma or other mark, nor the end.</summary>
    private bool IsWord(int at) => at >= 0 && at < words.Count && char.IsLetterOrDigit(words[at][0]);

    private string Word(int at) => at >= 0 && at < words.Count ? words[at] : "";

    private string Join(int at, int length) => length == 1 ? words[at] : string.Join(" ", words.GetRange(at, length));

    /// <summary>
    /// Plain words in lower case, a number with its decimals as one; a comma is a word, and so is any other mark that parts what is said.
    /// </summary>
    private void Split(string text)
    {
        var word = new StringBuilder();
        string plain = text.Normalize(NormalizationForm.FormD);
        int opened = -1;
        for (int i = 0; i <= plain.Length; i++)
        {
            char c = i < plain.Length ? plain[i] : ' ';
            if (c is '\'' or '’' || (c > 127 && CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark)) continue;
            if (char.IsLetterOrDigit(c))
            {
                word.Append(char.ToLowerInvariant(c));
                continue;
            }

            if (c is '.' or ',' && IsNumber(word) && i + 1 < plain.Length && char.IsDigit(plain[i + 1]))
            {
                word.Append('.');
                continue;
            }

            if (word.Length > 0)
            {
                if (c is '-' or '\u2011' && (Continues(plain, i + 1, "free") || Continues(plain, i + 1, "less"))) hyphened.Add(words.Count);
                words.Add(IsNumber(word) ? Zero(word.ToString()) : word.ToString());
                word.Clear();
            }

            if (c == '&') words.Add("and");
            else if (c == '%') words.Add("percent");
            else if (c == ',') words.Add(",");
            else if (c is ';' or ':' or '(' or ')' or '[' or ']' or '|' or '·' or '•' or '–' or '—' or '\n' or '!' or '?'
                || (c == '.' && i + 1 < plain.Length && plain[i + 1] == ' '))
                words.Add(";");
            if (c is '(' or '[') opened = words.Count;
            else if (c is ')' or ']' && opened >= 0)
            {
                AddMarks(opened, words.Count - 1);
                opened = -1;
            }
        }

        // What ends the text ends no word of it.
        while (words.Count > 0 && words[words.Count - 1] == ";") words.RemoveAt(words.Count - 1);
    }

    /// <summary>Letters that stand alone between brackets are marks where all of them are.</summary>
    private void AddMarks(int from, int to)
    {
        var inside = Enumerable.Range(from, to - from).Where(IsWord).ToList();
        if (inside.TrueForAll(i => ClaimTable.Mark(words[i]) is not null)) bracketed.UnionWith(inside);
    }

    private static bool Continues(string text, int at, string word) =>
        string.Compare(text, at, word, 0, word.Length, StringComparison.OrdinalIgnoreCase) == 0;

    private static bool IsNumber(StringBuilder word)
    {
        for (int i = 0; i < word.Length; i++)
        {
            if (!char.IsDigit(word[i]) && word[i] != '.') return false;
        }

        return word.Length > 0;
    }

    /// <summary>A number as written; nothing at all, with whatever decimals, as <c>0</c> or <c>0.0</c>.</summary>
    private static string Zero(string number) => number.Trim('0', '.').Length > 0 ? number : number.IndexOf('.') < 0 ? "0" : "0.0";
}
