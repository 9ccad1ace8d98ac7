namespace SpecLint.Catalogue;

/// <summary>The words by which the words of a menu are parted and read (<c>menu-words.json</c>).</summary>
internal static class MenuWords
{
    /// <summary>How many words before something may take it back.</summary>
    private const int LookBack = 4;

    private static readonly char[] ClauseEnds = ['.', ';', '!', '?', ',', '(', '\n'];
    private static readonly FixedList<string> Leading, Trailing;
    private static readonly HashSet<string> Denying;

    static MenuWords()
    {
        using var document = Tables.Open("menu-words");
        var words = Tables.Rows(document).ToDictionary(static r => r.Text("role"), static r => r.Texts("words"), StringComparer.Ordinal);
        Joints = [.. words["joint"].Select(static w => $" {w} ")];
        Denying = new HashSet<string>(words["denying"], StringComparer.OrdinalIgnoreCase);
        (Leading, Trailing) = (words["leading"], words["trailing"]);
    }

    /// <summary>What stands between two things, with its blanks.</summary>
    public static string[] Joints { get; }

    /// <summary>Whether a word before a place of a text takes back, in its clause, what stands there.</summary>
    public static bool IsDenied(string text, int at)
    {
        int from = at > 0 ? text.LastIndexOfAny(ClauseEnds, at - 1) + 1 : 0;
        var before = text.Substring(from, at - from).Split([' ', ':', '"', '„', '«'], StringSplitOptions.RemoveEmptyEntries);
        return before.Skip(Math.Max(0, before.Length - LookBack)).Any(Denying.Contains);
    }

    /// <summary>What a piece of a menu's words names, without words that only say how it is: "champán brut" is champán.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="alsoBefore">Whether words before it go too, and what was made of it: "frische Kirschen", "zumo de cereza".</param>
    public static string Bare(string piece, bool alsoBefore = false)
    {
        while (true)
        {
            string shorter = piece;
            foreach (string word in Trailing)
            {
                if (shorter.Length > word.Length + 1
                    && shorter[shorter.Length - word.Length - 1] == ' '
                    && shorter.EndsWith(word, StringComparison.OrdinalIgnoreCase))
                    shorter = shorter.Substring(0, shorter.Length - word.Length).TrimEnd();
            }

            foreach (string word in alsoBefore ? Leading : [])
            {
                if (shorter.Length > word.Length + 1
                    && shorter.StartsWith(word, StringComparison.OrdinalIgnoreCase)
                    && (shorter[word.Length] == ' ' || word[word.Length - 1] == '\''))
                    shorter = shorter.Substring(word.Length).TrimStart();
            }

            if (shorter.Length == piece.Length) return piece;
            piece = shorter;
        }
    }
}
