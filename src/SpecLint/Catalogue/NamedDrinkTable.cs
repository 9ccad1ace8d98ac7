namespace SpecLint.Catalogue;

/// <summary>What a drink of a name is never without.</summary>
/// <param name="What">The part in words: <c>cream or milk of coconut</c>.</param>
/// <param name="Ids">Ids, or words that follow one another in an id, of which one has to be in the drink.</param>
internal sealed record NamedPart(string What, FixedList<string> Ids);

/// <summary>A drink that everybody knows by its name.</summary>
/// <param name="Names">Its names, lower case, words apart by blanks.</param>
/// <param name="Parts">What it is made with.</param>
/// <param name="Source">Where it is published.</param>
internal sealed record NamedDrink(FixedList<string> Names, FixedList<NamedPart> Parts, string Source);

/// <summary>The table of drinks that are known by their names.</summary>
internal static class NamedDrinkTable
{
    /// <summary>Words before a name that turn it into something else.</summary>
    private static readonly HashSet<string> Denials = new(StringComparer.Ordinal) { "not", "no", "un", "anti", "without", "never", "almost", "faux" };

    private static readonly Lazy<List<NamedDrink>> Rows = new(Load);

    /// <summary>All rows.</summary>
    public static IReadOnlyList<NamedDrink> All => Rows.Value;

    /// <summary>The drink that a name ends with, the longest of those in the table; <see langword="null"/> where it is none, or says that it is not one.</summary>
    public static NamedDrink? Find(string name)
    {
        string words = Normalized(name);
        NamedDrink? best = null;
        int longest = 0;
        foreach (var row in Rows.Value)
        {
            foreach (string known in row.Names)
            {
                if (known.Length > longest && words.EndsWith(" " + known, StringComparison.Ordinal)) (best, longest) = (row, known.Length);
            }
        }

        if (best is null) return null;
        foreach (string word in words.Substring(0, words.Length - longest).Split(' '))
        {
            if (Denials.Contains(word)) return null;
        }

        return best;
    }

    /// <summary>Whether an id is that of a part: the same words in a row.</summary>
    public static bool Holds(NamedPart part, string id)
    {
        string hyphens = "-" + id + "-";
        foreach (string known in part.Ids)
        {
            if (hyphens.IndexOf("-" + known + "-", StringComparison.Ordinal) >= 0) return true;
        }

        return false;
    }

    private static string Normalized(string name) => " " + BuiltInCatalogue.Slug(name).Replace('-', ' ');

    private static List<NamedDrink> Load()
    {
        var rows = new List<NamedDrink>();
        using var document = Tables.Open("named-drinks");
        foreach (var row in Tables.Rows(document))
        {
            var parts = row.GetProperty("parts").EnumerateArray().Select(static p => new NamedPart(p.Text("what"), p.Texts("ids")));
            rows.Add(new NamedDrink([.. row.Texts("names").Select(static n => BuiltInCatalogue.Slug(n).Replace('-', ' '))], [.. parts], row.Text("source")));
        }

        return rows;
    }
}
