using System.Globalization;
using System.Text;
using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

/// <summary>A claim in a text.</summary>
/// <param name="Words">The words that make it.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="IsFreeFrom">Whether it is written as "free" or "contains no", which a guest with an allergy trusts.</param>
internal sealed record ReadClaim(string Words, ClaimMeaning Meaning, bool IsFreeFrom);

/// <summary>
/// Finds claims in what the guest reads: words of the table, and "X-free", "no X", "without X", "free from X", "contains no X",
/// with the lists that follow ("no nuts, eggs or milk").
/// </summary>
internal sealed class ClaimReader
{
    private const int MostWordsOfThing = 3;

    /// <summary>The words with which a claim in a text begins, or by which it is found.</summary>
    private static readonly WordFilter Telling = new(
        ClaimTable.FirstWords.Concat(["free", "contains", "containing", "contain", "not", "never", "doesnt", "cannot", "without", "sans", "no", "zero", "non"]));

    private readonly LinkedBook book;
    private readonly ClaimPlace where;
    private readonly List<string> words = [];
    private readonly HashSet<int> hyphened = [];
    private readonly List<ReadClaim> claims = [];

    private ClaimReader(string text, ClaimPlace where, LinkedBook book)
    {
        this.book = book;
        this.where = where;
        Split(text);
    }

    /// <summary>Whether a text may hold a claim: most names and notes have no word of one, and need no reading.</summary>
    public static bool MayHold(string text) => Telling.MayHold(text);

    /// <summary>The claims of a text, in its order.</summary>
    /// <param name="text">The text.</param>
    /// <param name="where">What kind of text it is.</param>
    /// <param name="book">The book, for the names of items.</param>
    public static List<ReadClaim> Read(string text, ClaimPlace where, LinkedBook book)
    {
        var reader = new ClaimReader(text, where, book);
        reader.Read();
        return reader.claims;
    }

    private void Read()
    {
        for (int at = 0; at < words.Count; at++)
        {
            if (!char.IsLetterOrDigit(words[at][0])) continue;
            if (Phrase(at, out int length) is { } phrase)
            {
                if (!IsOffer(at + length)) claims.Add(new ReadClaim(Join(at, length), phrase, false));
                at += length - 1;
            }
            else if (words[at] == "free" && Word(at + 1) is not ("from" or "of"))
            {
                Before(at);
            }
            else if (NegatorLength(at, out bool isFreeFrom) is > 0 and int negator)
            {
                at = Behind(at, negator, isFreeFrom) - 1;
            }
        }
    }

    private ClaimMeaning? Phrase(int at, out int length)
    {
        for (length = Math.Min(ClaimTable.LongestPhrase, words.Count - at); length > 0; length--)
        {
            if (ClaimTable.Phrase(Join(at, length), where) is { } meaning) return meaning;
        }

        return null;
    }

    /// <summary>"no", "without", "free from", "contains no" and their like: how many words.</summary>
    private int NegatorLength(int at, out bool isFreeFrom)
    {
        string next = Word(at + 1);
        isFreeFrom = true;
        switch (words[at])
        {
            case "free" when next is "from" or "of":
            case "contains" or "containing" or "contain" when next is "no" or "zero":
            case "not" or "never" or "doesnt" or "cannot" when next is "contain" or "contains" or "containing":
                return 2;
        }

        isFreeFrom = false;
        return words[at] switch
        {
            "without" or "sans" => next == "any" ? 2 : 1,
            "no" or "zero" or "non" => 1,
            _ => 0,
        };
    }

    /// <summary>Reads the things behind a negation, and those of the list that it opens; hands back where to go on.</summary>
    private int Behind(int start, int negator, bool isFreeFrom)
    {
        int at = start + negator;
        if (at >= words.Count) return at;
        if (Thing(at, out _) is null)
        {
            // "No. 3" and names such as "No Regrets" say nothing of what is inside.
            bool isName = where == ClaimPlace.Names && !isFreeFrom;
            if (!isName && char.IsLetter(words[at][0])) claims.Add(new ReadClaim(Join(start, negator + 1), new ClaimMeaning(ClaimKind.Unknown, words[at], []), isFreeFrom));
            return at + 1;
        }

        while (Thing(at, out int length) is { } known)
        {
            if (known.Kind != ClaimKind.None && !IsOffer(at + length)) claims.Add(new ReadClaim($"{Join(start, negator)} {Join(at, length)}", known, isFreeFrom));
            at += length;
            if (Word(at) is not ("or" or "and" or "nor" or ",")) return at;

            // A list goes on behind a comma or "and" only with what a law calls an allergen: "no milk, lemon" ends at the comma.
            int next = at + (Word(at + 1) is "or" or "and" or "nor" or "no" ? 2 : 1);
            if (next < words.Count && Thing(next, out _) is { } further && (further.Kind != ClaimKind.Ingredient || Word(next - 1) is "or" or "nor")) at = next;
            else return at;
        }

        return at;
    }

    /// <summary>Reads the thing in front of "free", and those that "and" or a comma join to it.</summary>
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
                if (end == free && char.IsLetter(words[end - 1][0]) && (where == ClaimPlace.Claims || hyphened.Contains(end - 1)))
                    claims.Add(new ReadClaim(words[end - 1] + "-free", new ClaimMeaning(ClaimKind.Unknown, words[end - 1], []), true));
                return;
            }

            if (known.Kind != ClaimKind.None && !IsOffer(free + 1) && Word(end - length - 1) != "not") claims.Add(new ReadClaim(Join(end - length, length) + "-free", known, true));
            end -= length;
            if (Word(end - 1) is not ("and" or "or" or ",")) return;
            if (end < 2 || Thing(end - 2, out _) is not { Kind: ClaimKind.Allergens or ClaimKind.DairyFree or ClaimKind.GlutenFree or ClaimKind.LactoseFree }) return;
        }
    }

    private ClaimMeaning? Thing(int at, out int length)
    {
        for (length = Math.Min(MostWordsOfThing, words.Count - at); length > 0; length--)
        {
            if (ClaimTable.Without(Join(at, length), IsItem) is { } known) return known;
        }

        return null;
    }

    private bool IsItem(string id) => book.Resolve(id) is not null;

    /// <summary>Whether the words behind make an offer of what was said: "vegan on request".</summary>
    private bool IsOffer(int at) => Word(at) is "option" or "optional" or "version" or "available" || (Word(at) is "on" or "by" or "upon" && Word(at + 1) == "request");

    private string Word(int at) => at >= 0 && at < words.Count ? words[at] : "";

    private string Join(int at, int length) => length == 1 ? words[at] : string.Join(" ", words.Skip(at).Take(length));

    /// <summary>Plain words in lower case; a comma is a word, and so is any other mark that parts what is said.</summary>
    private void Split(string text)
    {
        var word = new StringBuilder();
        string plain = text.Normalize(NormalizationForm.FormD);
        for (int i = 0; i <= plain.Length; i++)
        {
            char c = i < plain.Length ? plain[i] : ' ';
            if (c is '\'' or '’' || CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark) continue;
            if (char.IsLetterOrDigit(c))
            {
                word.Append(char.ToLowerInvariant(c));
                continue;
            }

            if (word.Length > 0)
            {
                if (c is '-' or '\u2011' && string.Compare(plain, i + 1, "free", 0, 4, StringComparison.OrdinalIgnoreCase) == 0) hyphened.Add(words.Count);
                words.Add(word.ToString());
                word.Clear();
            }

            if (c == '&') words.Add("and");
            else if (c == ',') words.Add(",");
            else if (c is ';' or ':' or '(' or ')' or '|' or '·' or '•' or '–' or '—' or '\n' or '!' or '?' || (c == '.' && i + 1 < plain.Length && plain[i + 1] == ' ')) words.Add(";");
        }
    }
}
