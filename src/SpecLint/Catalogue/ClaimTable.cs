namespace SpecLint.Catalogue;

/// <summary>What a claim is held against.</summary>
internal enum ClaimKind
{
    /// <summary>It is no claim about what is in a drink.</summary>
    None,

    /// <summary>Nothing of an animal.</summary>
    Vegan,

    /// <summary>Nothing of a killed animal.</summary>
    Vegetarian,

    /// <summary>No cereal with gluten.</summary>
    GlutenFree,

    /// <summary>No milk.</summary>
    DairyFree,

    /// <summary>No lactose.</summary>
    LactoseFree,

    /// <summary>No alcohol.</summary>
    AlcoholFree,

    /// <summary>Said to be non-alcoholic, which some laws part from alcohol-free.</summary>
    NonAlcoholic,

    /// <summary>Its alcohol taken out.</summary>
    DeAlcoholised,

    /// <summary>Little alcohol.</summary>
    LowAlcohol,

    /// <summary>No sugar.</summary>
    SugarFree,

    /// <summary>Little sugar.</summary>
    LowSugar,

    /// <summary>No sugar but that of fruit and milk.</summary>
    NoAddedSugar,

    /// <summary>No caffeine.</summary>
    CaffeineFree,

    /// <summary>None of some allergens.</summary>
    Allergens,

    /// <summary>Nothing of some animals.</summary>
    Animals,

    /// <summary>None of some ingredient.</summary>
    Ingredient,

    /// <summary>The table does not know what it is about.</summary>
    Unknown,
}

/// <summary>In which texts a word is taken for a claim.</summary>
internal enum ClaimPlace
{
    /// <summary>In lists of claims only.</summary>
    Claims,

    /// <summary>In names and lists of claims.</summary>
    Names,

    /// <summary>In any text that the guest reads.</summary>
    Anywhere,
}

/// <summary>What a claim means.</summary>
/// <param name="Kind">What it is held against.</param>
/// <param name="What">Of what there is none, as written; empty where the claim is a word of its own.</param>
/// <param name="Tokens">Allergens or animals that it excludes.</param>
internal sealed record ClaimMeaning(ClaimKind Kind, string What, FixedList<string> Tokens);

/// <summary>
/// The words of claims: those that stand by themselves, what may stand behind "no", "without" and "free from", the people whom a
/// drink is said to suit, and the letters that menus print in brackets.
/// </summary>
internal static class ClaimTable
{
    private static readonly Dictionary<string, (ClaimMeaning Meaning, ClaimPlace Where, bool AtEnd)> Phrases = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, ClaimMeaning> Things = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, ClaimMeaning> People = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, ClaimMeaning> Marks = new(StringComparer.Ordinal);

    private static readonly PhraseStarts PhraseStarts, PeopleStarts;

    private static readonly char[] Partings = [',', ';'];

    static ClaimTable()
    {
        using var document = Tables.Open("claim-words");
        foreach (var row in Tables.Rows(document))
        {
            string check = row.Text("check");
            if (!Enum.TryParse(check, ignoreCase: true, out ClaimKind kind))
                throw new InvalidOperationException($"The table of claims has the check {check}, which is none.");
            if (!Enum.TryParse(row.Text("where"), ignoreCase: true, out ClaimPlace where)) where = ClaimPlace.Anywhere;
            var tokens = row.Texts("tokens");
            if (tokens.Contains("*")) tokens = AllergenTable.Tokens;
            foreach (string word in row.Texts("words"))
                Phrases.Add(word, (new ClaimMeaning(kind, kind == ClaimKind.Unknown ? word : "", tokens), where, row.Flag("atEnd")));
            foreach (string thing in row.Texts("without")) Things.Add(thing, new ClaimMeaning(kind, thing, tokens));
            foreach (string people in row.Texts("for")) People.Add(people, new ClaimMeaning(kind, people, tokens));
            foreach (string mark in row.Texts("marks")) Marks.Add(mark, new ClaimMeaning(kind, "", tokens));
        }

        (PhraseStarts, PeopleStarts) = (new PhraseStarts(Phrases.Keys), new PhraseStarts(People.Keys));
    }

    /// <summary>Words of the longest phrase that begins with a word; 0 where none does.</summary>
    public static int LongestPhrase(string word) => PhraseStarts.LongestFrom(word);

    /// <summary>Words of the longest name for people that begins with a word; 0 where none does.</summary>
    public static int LongestSuiting(string word) => PeopleStarts.LongestFrom(word);

    /// <summary>Takes in the words with which phrases and marks begin, and things that an ending is written onto.</summary>
    public static void AddFirstWordsTo(WordFilter filter)
    {
        foreach (string phrase in Phrases.Keys) filter.AddFirstWord(phrase);
        foreach (string mark in Marks.Keys) filter.AddFirstWord(mark);
        foreach (string ending in ClaimForms.Onto)
        {
            AddWith(Things.Keys, ending);
            AddWith(AllergenTable.Tokens, ending);
            AddWith(AllergenTable.AllWords, ending);
        }

        void AddWith(IEnumerable<string> things, string ending)
        {
            foreach (string thing in things)
            {
                if (thing.IndexOf(' ') < 0 && thing.IndexOf('-') < 0) filter.AddFirstWord(thing, thing.IndexOf('.') < 0 ? ending : "");
            }
        }
    }

    /// <summary>What a phrase of plain words claims in a text; <see langword="null"/> where it is none there.</summary>
    /// <param name="words">The words.</param>
    /// <param name="where">What kind of text they stand in.</param>
    /// <param name="isAtEnd">Whether nothing follows in what is said.</param>
    public static ClaimMeaning? Phrase(string words, ClaimPlace where, bool isAtEnd) =>
        Phrases.TryGetValue(words, out var known) && known.Where >= where && (isAtEnd || !known.AtEnd) ? known.Meaning : null;

    /// <summary>What letters claim that stand alone, in brackets or in a list of claims; <see langword="null"/> where they claim nothing.</summary>
    public static ClaimMeaning? Mark(string letters) => Marks.TryGetValue(letters, out var known) ? known : null;

    /// <summary>What it claims that a drink suits some people; <see langword="null"/> where they are not known.</summary>
    public static ClaimMeaning? Suiting(string people) => People.TryGetValue(people, out var known) ? known : null;

    /// <summary>What the absence of a thing claims; <see langword="null"/> where the thing is not known.</summary>
    /// <param name="thing">One or more plain words.</param>
    /// <param name="isItem">Whether a book or the catalogue has an item of an id.</param>
    public static ClaimMeaning? Without(string thing, Func<string, bool> isItem)
    {
        if (thing.IndexOfAny(Partings) >= 0) return null;
        if (Things.TryGetValue(thing, out var known)) return known;
        string slug = thing.Replace(' ', '-');
        var tokens = AllergenTable.TokensOf(slug);
        if (tokens.Count > 0) return new ClaimMeaning(ClaimKind.Allergens, thing, tokens);
        foreach (string one in new[] { slug, slug.TrimEnd('s'), slug.EndsWith("ies", StringComparison.Ordinal)
            ? slug.Substring(0, slug.Length - 3) + "y"
            : slug, slug.EndsWith("es", StringComparison.Ordinal) ? slug.Substring(0, slug.Length - 2) : slug })
        {
            if (one.Length > 2 && isItem(one)) return new ClaimMeaning(ClaimKind.Ingredient, thing, []);
        }

        return null;
    }
}
