namespace SpecLint.Catalogue;

/// <summary>What a drink of a name is never without.</summary>
/// <param name="What">The part in words: <c>cream or milk of coconut</c>.</param>
/// <param name="Ids">Ids, or words that follow one another in an id, of which one has to be in the drink.</param>
/// <param name="IsBase">Whether it is the spirit that the drink is made on: a name may say another, or none.</param>
internal sealed record NamedPart(string What, FixedList<string> Ids, bool IsBase);

/// <summary>A drink that everybody knows by its name.</summary>
/// <param name="Names">Its names, lower case, words apart by blanks.</param>
/// <param name="Parts">What it is made with.</param>
/// <param name="Source">Where it is published.</param>
internal sealed record NamedDrink(FixedList<string> Names, FixedList<NamedPart> Parts, TableText Source);

/// <summary>The table of drinks that are known by their names.</summary>
internal static class NamedDrinkTable
{
    /// <summary>Words that turn a name into something else.</summary>
    private static readonly HashSet<string> Denials = new(StringComparer.Ordinal)
    {
        "not", "no", "un", "anti", "without", "never", "almost", "faux", "like", "style", "type",
    };

    /// <summary>Words in a name that take the spirit out of it.</summary>
    private static readonly HashSet<string> Alcoholless = new(StringComparer.Ordinal)
    {
        "virgin", "zero", "free", "mock", "temperance", "soft", "sober", "alcohol", "nonalcoholic", "non", "0",
    };

    private static readonly Lazy<(List<NamedDrink> Drinks, Dictionary<string, NamedPart> Spirits)> Rows = new(Load);
    private static readonly Lazy<ILookup<string, (string Name, NamedDrink Drink)>> ByLastWord =
        new(static () => Rows.Value.Drinks.SelectMany(static r => r.Names, static (row, name) => (Name: name, Drink: row))
            .ToLookup(static n => LastWord(n.Name), StringComparer.Ordinal));

    /// <summary>All rows.</summary>
    public static IReadOnlyList<NamedDrink> All => Rows.Value.Drinks;

    /// <summary>A name as it is looked up: plain words, each behind a blank.</summary>
    public static string Plain(string name) => " " + BuiltInCatalogue.Slug(name).Replace('-', ' ');

    /// <summary>The spirits that a name promises, in the order of its words; none where it denies them.</summary>
    /// <param name="plain">The <see cref="Plain"/> name.</param>
    public static IEnumerable<NamedPart> SpiritsIn(string plain)
    {
        string[] words = WordsOf(plain);
        if (Array.Exists(words, Denials.Contains) || IsWithoutAlcohol(words)) yield break;
        foreach (string word in words)
        {
            if (Rows.Value.Spirits.TryGetValue(word, out var spirit)) yield return spirit;
        }
    }

    /// <summary>
    /// The drink that a name ends with, the longest of those in the table; <see langword="null"/> where it is none, or says that it is not
    /// one.
    /// </summary>
    /// <param name="plain">The <see cref="Plain"/> name.</param>
    /// <param name="before">The words before it.</param>
    public static NamedDrink? Find(string plain, out string[] before)
    {
        before = [];
        NamedDrink? best = null;
        int longest = 0;
        foreach (var (known, drink) in ByLastWord.Value[LastWord(plain)])
        {
            bool ends = known.Length > longest && plain.EndsWith(known, StringComparison.Ordinal) && plain[plain.Length - known.Length - 1] == ' ';
            if (ends) (best, longest) = (drink, known.Length);
        }

        if (best is null) return null;
        before = WordsOf(plain.Substring(0, plain.Length - longest));
        foreach (string word in before)
        {
            if (Denials.Contains(word)) return null;
        }

        return best;
    }

    /// <summary>Whether words before the name say that there is no spirit in it.</summary>
    public static bool IsWithoutAlcohol(string[] before) => Array.Exists(before, Alcoholless.Contains);

    /// <summary>Whether an id is that of a part: the same words in a row.</summary>
    public static bool Holds(NamedPart part, string id)
    {
        foreach (string known in part.Ids)
        {
            if (Holds(id, known)) return true;
        }

        return false;
    }

    /// <summary>Whether an id holds another, or a word, as words of its own in a row.</summary>
    public static bool Holds(string id, string known) => ("-" + id + "-").IndexOf("-" + known + "-", StringComparison.Ordinal) >= 0;

    private static string LastWord(string words) => words.Substring(words.LastIndexOf(' ') + 1);

    private static string[] WordsOf(string plain) => plain.Split([' '], StringSplitOptions.RemoveEmptyEntries);

    private static (List<NamedDrink> Drinks, Dictionary<string, NamedPart> Spirits) Load()
    {
        var rows = new List<NamedDrink>();
        var spirits = new Dictionary<string, NamedPart>(StringComparer.Ordinal);
        using var document = Tables.Open("named-drinks");
        foreach (var row in document.Root.Get("drinks").Items)
        {
            var parts = row.Get("parts").Items
                .Select(static p => new NamedPart(p.Text("what"), p.Texts("ids"), p.TryGet("isBase", out var isBase) && isBase.IsTrue));
            rows.Add(new NamedDrink(
                [.. row.Texts("names")
                    .Select(static n => BuiltInCatalogue.Slug(n).Replace('-', ' '))], [.. parts], row.TextLater("source")));
        }

        foreach (var row in document.Root.Get("spirits").Items)
        {
            var part = new NamedPart(row.Text("what"), row.Texts("ids"), IsBase: true);
            foreach (string word in row.Texts("words")) spirits.Add(word, part);
        }

        return (rows, spirits);
    }
}
