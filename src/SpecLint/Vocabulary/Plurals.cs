namespace SpecLint.Vocabulary;

/// <summary>
/// English plurals, as far as names of food and drink need them: leaves and leaf, berries and berry, peaches and peach,
/// mangoes and mango. Every search for a name goes by this one.
/// </summary>
internal static class Plurals
{
    /// <summary>Words whose plural turns f into v; others that end in "ves" keep it (chives, cloves, olives).</summary>
    private static readonly string[] WithF = ["leaves", "halves", "loaves", "calves", "sheaves", "wolves"];

    /// <summary>Endings after which the plural takes "es".</summary>
    private static readonly string[] WithEs = ["oes", "ches", "shes", "sses", "xes"];

    /// <summary>How much of a word its singular keeps, and what it puts in place of the rest.</summary>
    /// <param name="text">A text, in any case.</param>
    /// <param name="start">Where the word starts.</param>
    /// <param name="end">Where it ends.</param>
    /// <returns>The end of what is kept, and the letters that follow it in the singular.</returns>
    public static (int KeptTo, string Ending) Singular(string text, int start, int end)
    {
        if (end - start < 4
            || !Phrases.MayBeSame(text, end - 1, "s", 0)
            || !Ends(text, start, end, "s")
            || Ends(text, start, end, "ss")
            || Ends(text, start, end, "us")
            || Ends(text, start, end, "is"))
            return (end, "");
        foreach (string plural in WithF)
        {
            if (Ends(text, start, end, plural)) return (end - 3, "f");
        }

        if (end - start > 4 && Ends(text, start, end, "ies")) return (end - 3, "y");
        foreach (string plural in WithEs)
        {
            if (Ends(text, start, end, plural)) return (end - 2, "");
        }

        return (end - 1, "");
    }

    /// <summary>A word in the singular.</summary>
    public static string Singular(string word)
    {
        var (keptTo, ending) = Singular(word, 0, word.Length);
        return keptTo == word.Length ? word : word.Substring(0, keptTo) + ending;
    }

    private static bool Ends(string text, int start, int end, string ending) =>
        end - start >= ending.Length
            && string.Compare(text, end - ending.Length, ending, 0, ending.Length, StringComparison.OrdinalIgnoreCase) == 0;
}
