namespace SpecLint.Catalogue;

/// <summary>The words by which a note is read for what it adds to a recipe.</summary>
internal static class TextWords
{
    private static readonly Dictionary<string, HashSet<string>> Words = new(StringComparer.Ordinal);
    private static readonly FixedList<string> Endings;

    static TextWords()
    {
        using var document = Tables.Open("text-words");
        FixedList<string> endings = [];
        foreach (var row in Tables.Rows(document))
        {
            Words.Add(row.Text("role"), new HashSet<string>(row.Texts("words"), StringComparer.OrdinalIgnoreCase));
            if (row.Texts("endings") is { Count: > 0 } of) endings = of;
        }

        Endings = endings;
        Adding = [.. Words["adding"]];
        RulingOut = [.. Words["rulingOut"]];
        Restoring = [.. Words["restoring"]];
    }

    /// <summary>What stands before a thing that is added.</summary>
    public static FixedList<string> Adding { get; }

    /// <summary>What takes a thing out that is named.</summary>
    public static FixedList<string> RulingOut { get; }

    /// <summary>What ends or takes back a ruling out before it: "no sugar but cream", "don't forget the cream".</summary>
    public static FixedList<string> Restoring { get; }

    /// <summary>Whether a thing is ruled out behind a word, if one before it was.</summary>
    public static bool RulesOut(string word, bool before) => before ? !Words["restoring"].Contains(word) : Words["rulingOut"].Contains(word);

    /// <summary>Whether a word joins the last thing of a list that a denial opened: "no milk, cream or nuts".</summary>
    public static bool IsJoining(string word) => Words["joining"].Contains(word);

    /// <summary>Whether a word may stand between, and says nothing.</summary>
    public static bool IsFiller(string word) => Words["filler"].Contains(word);

    /// <summary>Whether a word only says how a thing is: "crushed", "two".</summary>
    public static bool IsDescribing(string word)
    {
        if (IsFiller(word) || Words["describing"].Contains(word)) return true;
        for (int i = 0; i < Endings.Count; i++)
        {
            if (word.Length > Endings[i].Length + 1 && word.EndsWith(Endings[i], StringComparison.OrdinalIgnoreCase)) return true;
        }

        return false;
    }

    /// <summary>Whether a word behind a thing says where it goes or what it is made into.</summary>
    public static bool IsPlacing(string word) => Words["placed"].Contains(word) || Words["made"].Contains(word);

    /// <summary>Whether a word makes of the name of a food a tool, a taste or a likeness.</summary>
    public static bool IsNoFood(string word) => Words["notFood"].Contains(word);
}
