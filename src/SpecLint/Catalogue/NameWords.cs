namespace SpecLint.Catalogue;

/// <summary>A maker's name.</summary>
/// <param name="Words">Its words as an id.</param>
/// <param name="Kind">Id of the kind that the bottle is of; empty where that is not certain.</param>
/// <param name="Choices">Ids that it could be.</param>
/// <param name="IsProduct">Whether it names one product that is like no kind, so that what stands beside it says nothing.</param>
internal sealed record MakersName(string Words, string Kind, FixedList<string> Choices, bool IsProduct);

/// <summary>The tables of how people write names: words around a name, spellings, names of the trade and of makers.</summary>
internal static class NameWords
{
    private static readonly Dictionary<string, HashSet<ItemKind>?> NeutralWords = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, string> Spellings = new(StringComparer.Ordinal);
    private static readonly HashSet<ulong> SpelledHashes = [];
    private static readonly HashSet<string> MovableWords = new(StringComparer.Ordinal);
    private static readonly HashSet<string> SingularWords = new(StringComparer.Ordinal);
    private static readonly HashSet<string> PieceWords = new(StringComparer.Ordinal);
    private static readonly HashSet<string> CategoryWords = new(StringComparer.Ordinal);

    static NameWords()
    {
        using var document = Tables.Open("name-words");
        var root = document.Root;
        foreach (var row in root.Get("neutral").Items)
        {
            var kinds = row.Texts("kinds");
            var of = kinds.Count == 0 ? null : new HashSet<ItemKind>();
            foreach (string kind in kinds)
            {
                of!.Add(KindTable.Find(kind)
                    ?? throw new InvalidOperationException($"The table of words around names has the kind {kind}, which is none."));
            }

            foreach (string word in row.Texts("words")) NeutralWords.Add(word, of);
        }

        foreach (var row in root.Get("spellings").Items)
        {
            foreach (string word in row.Texts("words")) Spellings[word] = row.Text("word");
        }

        foreach (string word in Spellings.Keys) SpelledHashes.Add(HashOf(word));
        Tails = root.Texts("tails");
        MovableWords.UnionWith(root.Texts("movable"));
        SingularWords.UnionWith(root.Texts("singular"));
        PieceWords.UnionWith(root.Texts("pieces"));
        CategoryWords.UnionWith(root.Texts("categories"));
        Trade = ReadTrade();
        Makers = ReadMakers();
    }

    /// <summary>Words with which a remark at the end of a name begins.</summary>
    public static FixedList<string> Tails { get; }

    /// <summary>Generic names of the trade as ids, with the id of the catalogue.</summary>
    public static IReadOnlyDictionary<string, string> Trade { get; }

    /// <summary>Makers' names, the longest first.</summary>
    public static FixedList<MakersName> Makers { get; }

    /// <summary>All words that may stand around a name.</summary>
    public static IEnumerable<string> Neutral => NeutralWords.Keys;

    /// <summary>Whether a word does not change what is meant, beside things of some kinds at least.</summary>
    public static bool IsNeutral(string word) => NeutralWords.ContainsKey(word);

    /// <summary>Whether a word does not change what is meant beside a thing of a kind.</summary>
    public static bool IsNeutralFor(string word, ItemKind kind) =>
        NeutralWords.TryGetValue(word, out var kinds) && (kinds is null || kinds.Contains(kind));

    /// <summary>Whether a word may stand before or behind what it describes.</summary>
    public static bool IsMovable(string word) => MovableWords.Contains(word);

    /// <summary>Whether a word beside a maker's name only says what sort of thing the bottle is.</summary>
    public static bool IsCategory(string word) => CategoryWords.Contains(word);

    /// <summary>Whether a word names a part of a fruit or plant.</summary>
    public static bool IsPiece(string word) => PieceWords.Contains(word);

    /// <summary>A word in the singular and in one spelling.</summary>
    public static string Canonical(string word)
    {
        if (Spellings.TryGetValue(word, out string? spelled)) return spelled;
        string one = Singular(word);
        return Spellings.TryGetValue(one, out spelled) ? spelled : one;
    }

    /// <summary>A number that names of the same canonical words share, whatever their order; others hardly ever do.</summary>
    /// <param name="slug">A name as an id.</param>
    public static long SumOf(string slug)
    {
        ulong sum = 0;
        for (int start = 0, end; start <= slug.Length; start = end + 1)
        {
            end = slug.IndexOf('-', start);
            if (end < 0) end = slug.Length;
            ulong word = HashOf(slug, start, end);

            // Most words are in one spelling and in the singular as they stand; only of the others the canonical one is made.
            if (SpelledHashes.Contains(word) || (end - start > 3 && slug[end - 1] == 's'))
                word = HashOf(Canonical(slug.Substring(start, end - start)));
            word = (word ^ (word >> 30)) * 0xBF58_476D_1CE4_E5B9UL;
            sum += word ^ (word >> 27);
        }

        return (long)sum;
    }

    private static ulong HashOf(string word) => HashOf(word, 0, word.Length);

    private static ulong HashOf(string text, int start, int end)
    {
        ulong hash = 14695981039346656037;
        for (int i = start; i < end; i++) hash = (hash ^ text[i]) * 1099511628211;
        return hash;
    }

    private static string Singular(string word) => SingularWords.Contains(word) ? word : Plurals.Singular(word);

    private static Dictionary<string, string> ReadTrade()
    {
        var trade = new Dictionary<string, string>(StringComparer.Ordinal);
        using var document = Tables.Open("trade-names");
        foreach (var row in Tables.Rows(document))
        {
            string item = Known(row.Text("item"), "trade names");
            foreach (string name in row.Texts("names")) trade[Slugs.Of(name)] = item;
        }

        return trade;
    }

    private static FixedList<MakersName> ReadMakers()
    {
        var makers = new List<MakersName>();
        using var document = Tables.Open("makers");
        foreach (var row in Tables.Rows(document))
        {
            string kind = row.Text("kind");
            if (kind.Length > 0) Known(kind, "makers' names");
            FixedList<string> choices = [.. row.Texts("choices").Select(c => Known(c, "makers' names"))];
            foreach (string name in row.Texts("names")) makers.Add(new MakersName(Slugs.Of(name), kind, choices, row.Flag("product")));
        }

        return [.. makers.OrderByDescending(m => m.Words.Length).ThenBy(m => m.Words, StringComparer.Ordinal)];
    }

    private static string Known(string id, string table) =>
        BuiltInCatalogue.Has(id) ? id : throw new InvalidOperationException($"The table of {table} has {id}, which the catalogue lacks.");
}
