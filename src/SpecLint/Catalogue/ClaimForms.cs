namespace SpecLint.Catalogue;

/// <summary>How a word around a thing makes a claim of its absence.</summary>
/// <param name="IsFirm">Whether a guest with an allergy trusts it ("contains no", "free from").</param>
/// <param name="KnownOnly">Whether it only counts before a thing whose absence is known to be a claim.</param>
internal readonly record struct ClaimForm(bool IsFirm, bool KnownOnly);

/// <summary>The words around a thing or a person that make a claim: "without", "contains no", "none", "-less", "suitable for".</summary>
internal static class ClaimForms
{
    private static readonly Dictionary<string, ClaimForm> Befores = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, HashSet<string>> Words = new(StringComparer.Ordinal);
    private static readonly PhraseStarts BeforeStarts, BehindStarts;
    private static readonly HashSet<string> Behinds, Assuring, Assured, Having;

    static ClaimForms()
    {
        using var document = Tables.Open("claim-forms");
        foreach (var row in Tables.Rows(document))
        {
            string form = row.Text("form");
            if (!Words.TryGetValue(form, out var words)) Words.Add(form, words = new HashSet<string>(StringComparer.Ordinal));
            words.UnionWith(row.Texts("words"));
            if (form != "before") continue;
            foreach (string word in row.Texts("words")) Befores.Add(word, new ClaimForm(row.Flag("firm"), row.Flag("knownOnly")));
        }

        Onto = [.. Words["onto"]];
        (Behinds, Assuring, Assured, Having) = (Words["behind"], Words["assuring"], Words["assured"], Words["having"]);
        (BeforeStarts, BehindStarts) = (new PhraseStarts(Befores.Keys), new PhraseStarts(Behinds));
    }

    /// <summary>Endings that are written onto the thing: "milkless".</summary>
    public static FixedList<string> Onto { get; }

    /// <summary>
    /// Words of which a text holds one that holds a claim by a form: of a form of several words one that is a form by itself ("with no"),
    /// else its first.
    /// </summary>
    public static IEnumerable<string> TellingWords
    {
        get
        {
            var forms = new HashSet<string>(
                new[] { "before", "behind", "onto", "assuring", "assured" }.SelectMany(static f => Words[f]), StringComparer.Ordinal);
            return forms.Select(form => form.Split(' ') is var words ? Array.Find(words, forms.Contains) ?? words[0].Split('.')[0] : form);
        }
    }

    /// <summary>Words of the longest form before a thing that begins with a word; 0 where none does.</summary>
    public static int LongestBefore(string word) => BeforeStarts.LongestFrom(word);

    /// <summary>Words of the longest form behind a thing that begins with a word; 0 where none does.</summary>
    public static int LongestBehind(string word) => BehindStarts.LongestFrom(word);

    /// <summary>What some words do before a thing; <see langword="null"/> where they do nothing.</summary>
    public static ClaimForm? Before(string words) => Befores.TryGetValue(words, out var form) ? form : null;

    /// <summary>Whether some words behind a thing say that there is none of it.</summary>
    public static bool IsBehind(string words) => Behinds.Contains(words);

    /// <summary>Whether a word says that a drink suits somebody.</summary>
    public static bool IsAssuring(string word) => Assuring.Contains(word);

    /// <summary>Whether a word behind people, or behind what they must not have, says so.</summary>
    public static bool IsAssured(string word) => Assured.Contains(word);

    /// <summary>Whether a word joins that to those whom it suits.</summary>
    public static bool IsJoint(string word) => Words["joint"].Contains(word);

    /// <summary>Whether a word behind a thing makes of it people who must not have it.</summary>
    public static bool IsHaving(string word) => Having.Contains(word);

    /// <summary>Whether a word may stand between, and says nothing.</summary>
    public static bool IsSmall(string word) => Words["small"].Contains(word);

    /// <summary>Whether some words may follow a claim, and add nothing to it.</summary>
    public static bool IsTrailing(string words) => Words["trailing"].Contains(words);

    /// <summary>Whether a word takes back what follows.</summary>
    public static bool IsDenying(string word) => Words["denying"].Contains(word);

    /// <summary>Whether a word tells how to make another drink of this one.</summary>
    public static bool IsInstead(string word) => Words["instead"].Contains(word);
}
