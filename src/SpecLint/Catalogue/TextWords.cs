namespace SpecLint.Catalogue;

/// <summary>The words by which a note is read for what it adds to a recipe.</summary>
internal static class TextWords
{
    private static readonly HashSet<string> Fillers, Describing, Placed, Made, NotFood, TakingOut, TakingBack, Joining, Giving;
    private static readonly HashSet<string> Labelled = new(StringComparer.Ordinal);
    private static readonly FixedList<string> Endings, Adding;
    private static readonly WordFilter AddingFilter, DenyingFilter;
    private static readonly FixedList<string>[] AddingByLetter = new FixedList<string>[26];

    static TextWords()
    {
        using var document = Tables.Open("text-words");
        var words = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        FixedList<string> endings = [];
        foreach (var row in Tables.Rows(document))
        {
            words.Add(row.Text("role"), new HashSet<string>(row.Texts("words"), StringComparer.OrdinalIgnoreCase));
            if (row.Texts("endings") is { Count: > 0 } of) endings = of;
        }

        Endings = endings;
        (Fillers, Describing, Placed, Made, NotFood) = (words["filler"], words["describing"], words["placed"], words["made"], words["notFood"]);
        (TakingOut, TakingBack, Joining) = (words["rulingOut"], words["restoring"], words["joining"]);
        (Adding, RulingOut, Restoring) = ([.. words["adding"]], [.. TakingOut], [.. TakingBack]);
        Giving = words["using"];
        Refrozen = [.. words["refrozen"]];
        foreach (string word in words["labelled"]) Labelled.Add(Slugs.Of(word));
        (PouredAsIs, ToOrder, Slush) = ([.. words["pouredAsIs"]], [.. words["toOrder"]], [.. words["slush"]]);
        (Spooned, Glass) = ([.. words["spooned"]], [.. words["glass"]]);
        Cold = [.. words["cold"]];
        (CarbonDioxide, NitrousOxide) = ([.. words["carbonDioxide"]], [.. words["nitrousOxide"]]);
        (Flat, KeptLively, ColdGlass) = ([.. words["flat"]], [.. words["keptLively"]], [.. words["coldGlass"]]);
        (Replacing, Using) = ([.. words["replacing"]], [.. Giving]);
        for (int i = 0; i < AddingByLetter.Length; i++) AddingByLetter[i] = [.. Adding.Where(w => w[0] == 'a' + i)];
        AddingFilter = WordFilter.OfFirstWords(Adding);

        // A word alone rules out behind it: of those that are phrases the first one says nothing.
        DenyingFilter = new WordFilter(Phrases.DenyingWords.Concat(RulingOut.Where(static w => w.IndexOf(' ') < 0))
            .Select(static d => d.Replace("'", "").Split(' ', '-')[0]));
    }

    /// <summary>What says that a batch is poured as it is: no ice, no stirring, straight from the fridge.</summary>
    public static FixedList<string> PouredAsIs { get; }

    /// <summary>What says that it is stirred or shaken, or gets its ice, when it is ordered.</summary>
    public static FixedList<string> ToOrder { get; }

    /// <summary>Words that say that something is cold, or where it is.</summary>
    public static FixedList<string> Cold { get; }

    /// <summary>What names carbon dioxide, or a charger of it.</summary>
    public static FixedList<string> CarbonDioxide { get; }

    /// <summary>What names nitrous oxide, or a charger of it.</summary>
    public static FixedList<string> NitrousOxide { get; }

    /// <summary>What says that gas is gone.</summary>
    public static FixedList<string> Flat { get; }

    /// <summary>What turns that round: it must not go flat.</summary>
    public static FixedList<string> KeptLively { get; }

    /// <summary>What says that a machine makes a slush of it.</summary>
    public static FixedList<string> Slush { get; }

    /// <summary>What guests drink from.</summary>
    public static FixedList<string> Glass { get; }

    /// <summary>What says that a pour is laid on what is there.</summary>
    public static FixedList<string> Spooned { get; }

    /// <summary>What says that the glass comes out of the freezer.</summary>
    public static FixedList<string> ColdGlass { get; }

    /// <summary>What stands before a thing that is added, as far as it may begin with a letter.</summary>
    public static FixedList<string> AddingFrom(char letter) =>
        letter > 127 ? Adding : (letter | 0x20) is >= 'a' and <= 'z' and var lower ? AddingByLetter[lower - 'a'] : [];

    /// <summary>Whether a text may hold a word of adding.</summary>
    public static bool MayAdd(string text) => AddingFilter.MayHold(text);

    /// <summary>Whether a text may deny or rule out something that it names.</summary>
    public static bool MayDeny(string text) => DenyingFilter.MayHold(text);

    /// <summary>What takes a thing out that is named.</summary>
    public static FixedList<string> RulingOut { get; }

    /// <summary>What ends or takes back a ruling out before it: "no sugar but cream", "don't forget the cream".</summary>
    public static FixedList<string> Restoring { get; }

    /// <summary>Of what takes a thing out, that which puts another in its place: "instead of milk use cream".</summary>
    public static FixedList<string> Replacing { get; }

    /// <summary>What says that something was frozen a second time.</summary>
    public static FixedList<string> Refrozen { get; }

    /// <summary>Whether words, as an id, stand before the name that a vessel bears.</summary>
    public static bool IsLabelled(string slug) => Labelled.Contains(slug);

    /// <summary>What names the other.</summary>
    public static FixedList<string> Using { get; }

    /// <summary>Whether a word names what is put in the place of another.</summary>
    public static bool IsUsing(string word) => Giving.Contains(word);

    /// <summary>Whether a thing is ruled out behind a word, if one before it was.</summary>
    public static bool RulesOut(string word, bool before) => before ? !TakingBack.Contains(word) : TakingOut.Contains(word);

    /// <summary>Whether a word joins the last thing of a list that a denial opened: "no milk, cream or nuts".</summary>
    public static bool IsJoining(string word) => Joining.Contains(word);

    /// <summary>Whether a word may stand between, and says nothing.</summary>
    public static bool IsFiller(string word) => Fillers.Contains(word);

    /// <summary>Whether a word only says how a thing is: "crushed", "two".</summary>
    public static bool IsDescribing(string word)
    {
        if (IsFiller(word) || Describing.Contains(word)) return true;
        for (int i = 0; i < Endings.Count; i++)
        {
            if (word.Length > Endings[i].Length + 1 && word.EndsWith(Endings[i], StringComparison.OrdinalIgnoreCase)) return true;
        }

        return false;
    }

    /// <summary>Whether a word behind a thing says where it goes or what it is made into.</summary>
    public static bool IsPlacing(string word) => Placed.Contains(word) || Made.Contains(word);

    /// <summary>Whether a word makes of the name of a food a tool, a taste or a likeness.</summary>
    public static bool IsNoFood(string word) => NotFood.Contains(word);
}
