namespace SpecLint.Catalogue;

/// <summary>What a word of a price list says (<c>price-words.json</c>).</summary>
internal enum PriceWord
{
    /// <summary>A pack of several, before its number.</summary>
    Pack,

    /// <summary>A pack of several, behind its number.</summary>
    PackNumber,

    /// <summary>One of what is in the pack.</summary>
    Bottle,

    /// <summary>What may stand between a pack and its number.</summary>
    PackGlue,

    /// <summary>The price is that of one.</summary>
    Each,

    /// <summary>A tax on sales.</summary>
    Tax,

    /// <summary>It is in the price.</summary>
    Included,

    /// <summary>It is not.</summary>
    Excluded,

    /// <summary>With tax, in one word.</summary>
    Taxed,

    /// <summary>Without tax, in one word.</summary>
    Untaxed,

    /// <summary>Before a rate of exchange.</summary>
    Rate,

    /// <summary>The prices were converted.</summary>
    Converted,
}

/// <summary>The words by which the notes of a price list are read, as ids.</summary>
internal static class PriceWords
{
    private static readonly Lazy<HashSet<string>[]> ByRole = new(Load);

    /// <summary>Whether words, as an id, say a thing.</summary>
    public static bool Is(PriceWord role, string slug) => ByRole.Value[(int)role].Contains(slug);

    /// <summary>Whether a text says that its prices were converted.</summary>
    public static bool SaysConverted(string text)
    {
        string slug = "-" + Slugs.Of(text) + "-";
        return ByRole.Value[(int)PriceWord.Converted].Any(w => slug.Contains("-" + w + "-"));
    }

    private static HashSet<string>[] Load()
    {
        var roles = new HashSet<string>[Enum.GetNames(typeof(PriceWord)).Length];
        for (int i = 0; i < roles.Length; i++) roles[i] = new HashSet<string>(StringComparer.Ordinal);
        using var document = Tables.Open("price-words");
        foreach (var row in Tables.Rows(document))
            roles[(int)(PriceWord)Enum.Parse(typeof(PriceWord), row.Text("role"), ignoreCase: true)].UnionWith(row.Texts("words").Select(Slugs.Of));
        return roles;
    }
}
