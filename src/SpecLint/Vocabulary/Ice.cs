namespace SpecLint.Vocabulary;

/// <summary>
/// The ice of a step. It is written in a few words ("one large clear cube"): the first row of <c>ice.json</c> of which the
/// text is a synonym, else of which it holds a word, is the ice. A new ice is a row.
/// </summary>
public sealed class Ice : Word
{
    private Ice(string word)
        : base(word, isKnown: false)
    {
    }

    internal Ice(string id, FixedList<string> also, FixedList<string> words, Traits traits)
        : base(id, isKnown: true)
    {
        Also = also;
        Held = words;
        IsNone = traits.Has(0);
        IsBlock = traits.Has(1);
        IsDryIce = traits.Has(2);
        IsCrushed = traits.Has(3);
    }

    /// <summary>All kinds of ice, in the order of the table.</summary>
    public static FixedList<Ice> All => IceTable.All;

    /// <summary>All words for ice: ids, and behind them the synonyms.</summary>
    public static IReadOnlyList<string> Words => IceTable.Words;

    /// <summary>The ice that a text means; an ice without traits where the table does not have it.</summary>
    public static Ice Of(string text) => IceTable.Find(text) ?? new Ice(text);

    /// <summary>Whether the text says that there is no ice.</summary>
    public bool IsNone { get; }

    /// <summary>Whether it is one large piece: a block, a sphere, a spear.</summary>
    public bool IsBlock { get; }

    /// <summary>Whether it is frozen carbon dioxide.</summary>
    public bool IsDryIce { get; }

    /// <summary>Whether it is crushed, shaved or pebble ice.</summary>
    public bool IsCrushed { get; }

    /// <summary>Texts that mean it and nothing else.</summary>
    internal FixedList<string> Also { get; } = [];

    /// <summary>Words of which a text that means it holds one.</summary>
    internal FixedList<string> Held { get; } = [];
}

/// <summary>The table of ice.</summary>
internal static class IceTable
{
    /// <summary>The words of the table for traits, in the order in which the ice asks for them.</summary>
    private static readonly string[] TraitWords = ["none", "block", "dryIce", "crushed"];

    private static readonly Dictionary<string, Ice> ByText = new(StringComparer.OrdinalIgnoreCase);

    static IceTable()
    {
        var traits = new TraitWords(TraitWords);
        var rows = new List<Ice>();
        using var document = Tables.Open("ice");
        foreach (var row in Tables.Rows(document))
        {
            var ice = new Ice(row.Text("id"), row.Texts("also"), row.Texts("words"), traits.Of(row));
            rows.Add(ice);
            ByText.Add(ice.Id, ice);
            foreach (string text in ice.Also) ByText.Add(text, ice);
        }

        All = [.. rows];
        Words = [.. rows.Select(static r => r.Id), .. rows.SelectMany(static r => r.Also)];
    }

    /// <summary>All kinds of ice, in the order of the table.</summary>
    public static FixedList<Ice> All { get; }

    /// <summary>Ids, and behind them the synonyms.</summary>
    public static IReadOnlyList<string> Words { get; }

    /// <summary>The ice of a text; <see langword="null"/> where there is none.</summary>
    public static Ice? Find(string text)
    {
        if (ByText.TryGetValue(text, out var exact)) return exact;
        foreach (var ice in All)
        {
            foreach (string word in ice.Held)
            {
                if (text.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0) return ice;
            }
        }

        return null;
    }
}
