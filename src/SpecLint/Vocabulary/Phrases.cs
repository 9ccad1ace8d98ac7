namespace SpecLint.Vocabulary;

/// <summary>Looks for words and phrases in what people write: whole words, any case.</summary>
internal static class Phrases
{
    private static readonly FixedList<string> Denying, Nones;
    private static readonly HashSet<string> Between = new(StringComparer.OrdinalIgnoreCase);

    static Phrases()
    {
        List<string> denying = [], nones = [];
        using var document = Tables.Open("denial-words");
        foreach (var row in Tables.Rows(document))
        {
            switch (row.Text("role"))
            {
                case "denying": denying.AddRange(row.Texts("words")); break;
                case "none": nones.AddRange(row.Texts("words")); break;
                default: Between.UnionWith(row.Texts("words")); break;
            }
        }

        Denying = FixedList.Of(denying);
        Nones = FixedList.Of(nones);
    }

    /// <summary>Words and phrases of which a text holds one that denies something.</summary>
    public static IEnumerable<string> DenyingWords => [.. Denying, .. Nones, "free"];

    /// <summary>Whether a text holds a phrase as whole words; its last word may stand in the plural.</summary>
    public static bool Has(string text, string phrase) => HasAsWritten(text, phrase)
        || (phrase.EndsWith("y", StringComparison.OrdinalIgnoreCase)
            && Holds(text, "ies")
            && HasAsWritten(text, phrase.Substring(0, phrase.Length - 1) + "ies"))
        || (phrase.EndsWith("f", StringComparison.OrdinalIgnoreCase)
            && Holds(text, "ves")
            && HasAsWritten(text, phrase.Substring(0, phrase.Length - 1) + "ves"));

    /// <summary>Whether a text holds some letters anywhere, case aside.</summary>
    public static bool Holds(string text, string part)
    {
        int first = part.Length > 0 && part[0] <= 127 ? part[0] | 0x20 : -1;
        for (int at = 0; at <= text.Length - part.Length; at++)
        {
            char c = text[at];
            if ((first < 0 || c > 127 || (c | 0x20) == first)
                && string.Compare(text, at, part, 0, part.Length, StringComparison.OrdinalIgnoreCase) == 0)
                return true;
        }

        return false;
    }

    private static bool HasAsWritten(string text, string phrase)
    {
        for (int at = 0; at <= text.Length - phrase.Length; at++)
        {
            if (!StartsAt(text, at, phrase)) continue;
            int end = at + phrase.Length;
            if (end < text.Length && text[end] is 's' or 'S') end++;
            else if (end + 1 < text.Length && text[end] is 'e' or 'E' && text[end + 1] is 's' or 'S') end += 2;
            if (end == text.Length || !char.IsLetterOrDigit(text[end])) return true;
        }

        return false;
    }

    /// <summary>Whether a text holds one of some phrases as whole words.</summary>
    public static bool HasAny(string text, IReadOnlyList<string> phrases)
    {
        for (int i = 0; i < phrases.Count; i++)
        {
            if (Has(text, phrases[i])) return true;
        }

        return false;
    }

    /// <summary>Whether a text says one of some phrases and does not deny it ("assayed", not "not assayed").</summary>
    public static bool Affirms(string text, FixedList<string> phrases)
    {
        for (int at = 0; at < text.Length; at++)
        {
            if (at > 0 && char.IsLetterOrDigit(text[at - 1])) continue;
            for (int i = 0; i < phrases.Count; i++)
            {
                int end = at + phrases[i].Length;
                if (end <= text.Length && StartsAt(text, at, phrases[i]) && !IsDenied(text, at, end)) return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Whether a word or phrase starts at a place of a text, case aside, and no letter or digit stands before it. Looking for a whole phrase
    /// without regard to case takes ten times as long in the short texts of a recipe.
    /// </summary>
    public static bool StartsAt(string text, int at, string phrase) =>
        MayBeSame(text, at, phrase, 0)
            && (at == 0 || !char.IsLetterOrDigit(text[at - 1]))
            && string.Compare(text, at, phrase, 0, phrase.Length, StringComparison.OrdinalIgnoreCase) == 0;

    /// <summary>Whether two letters may be the same but for their case; one letter rules most words out.</summary>
    public static bool MayBeSame(string a, int inA, string b, int inB) =>
        inA < 0 || inB < 0 || inA >= a.Length || inB >= b.Length || a[inA] > 127 || b[inB] > 127 || (a[inA] | 0x20) == (b[inB] | 0x20);

    /// <summary>
    /// Whether a text denies what it names from one place to another: "no foxglove", "foxglove-free", "instead of foxglove",
    /// "foxglove: none"; a denial of a denial ("never without foxglove") is none.
    /// </summary>
    public static bool IsDenied(string text, int start, int end)
    {
        if (end < text.Length
            && text[end] is '-' or ' '
            && string.Compare(text, end + 1, "free", 0, 4, StringComparison.OrdinalIgnoreCase) == 0
            && !(end + 5 < text.Length && char.IsLetter(text[end + 5])))
            return true;
        return IsDeniedBefore(text, start) || IsNoneBehind(text, end);
    }

    /// <summary>Whether what stands before a place in its clause, small words left out, ends in a denial.</summary>
    private static bool IsDeniedBefore(string text, int at)
    {
        while (true)
        {
            while (at > 0 && char.IsWhiteSpace(text[at - 1])) at--;
            if (at == 0 || IsClauseEnd(text[at - 1])) return false;
            for (int i = 0; i < Denying.Count; i++)
            {
                int from = at - Denying[i].Length;
                if (from >= 0 && StartsAt(text, from, Denying[i])) return !IsDeniedBefore(text, from);
            }

            int word = at;
            while (word > 0 && char.IsLetterOrDigit(text[word - 1])) word--;
            if (word == at || !Between.Contains(text.Substring(word, at - word))) return false;
            at = word;
        }
    }

    /// <summary>Whether a mark stands at a place, and behind it nothing but that there is none.</summary>
    private static bool IsNoneBehind(string text, int at)
    {
        if (at >= text.Length || text[at] is not (':' or '?' or '-' or '=')) return false;
        do at++;
        while (at < text.Length && char.IsWhiteSpace(text[at]));
        for (int i = 0; i < Nones.Count; i++)
        {
            int end = at + Nones[i].Length;
            if (StartsAt(text, at, Nones[i]) && (end == text.Length || IsClauseEnd(text[end]))) return true;
        }

        return false;
    }

    private static bool IsClauseEnd(char c) => c is '.' or ';' or ':' or '!' or '?' or ',';

    /// <summary>
    /// Where the first of some phrases ends that stands as whole words between two
    /// places of a text; beyond all text where none does.
    /// </summary>
    public static int FirstEnd(string text, int from, int to, IReadOnlyList<string> phrases)
    {
        First(text, from, to, phrases, out int end);
        return end;
    }

    /// <summary>Where it begins, and where it ends.</summary>
    public static int First(string text, int from, int to, IReadOnlyList<string> phrases, out int end)
    {
        for (int at = from; at < to; at++)
        {
            if (at > from && char.IsLetterOrDigit(text[at - 1])) continue;
            for (int i = 0; i < phrases.Count; i++)
            {
                end = at + phrases[i].Length;
                if (end <= to && StartsAt(text, at, phrases[i]) && (end == text.Length || !char.IsLetterOrDigit(text[end]))) return at;
            }
        }

        return end = int.MaxValue;
    }
}
