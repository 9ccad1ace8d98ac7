
namespace SpecLint.Vocabulary;

/// <summary>The words of the table of families, with their synonyms and traits.</summary>
internal static class FamilyWords
{
    /// <summary>The words of the table for traits, in the order of the bits of <see cref="FamilyTrait"/>.</summary>
    private static readonly string[] TraitWords =
    [
        "batch", "pouredStraight", "keptInFreezer", "carbonated", "readyDrink", "swells", "ferments", "takesFatOut", "takesProteinOut",
        "fatWash", "milkWash", "dry", "transforms", "juiceLike", "pressedJuice", "souredJuice", "juiceExtension", "reworked",
        "sweet", "keptBySugar", "syrup", "shrub", "saline", "acidSolution", "strained", "smooth", "foam",
    ];

    /// <summary>The words of the table for facts of which it gives the usual range.</summary>
    private static readonly (string Word, Fact Fact)[] UsualWords =
    [
        ("sugar", Fact.Sugar), ("brix", Fact.Brix), ("acid", Fact.Acid), ("salt", Fact.Salt), ("abv", Fact.Abv),
    ];

    private static readonly Dictionary<string, Family> ByWord = new(StringComparer.Ordinal);

    static FamilyWords()
    {
        var traits = new TraitWords(TraitWords);
        var families = new List<Family>();
        var words = new List<string>();
        var synonyms = new List<string>();
        using var document = Tables.Open("families");
        foreach (var row in Tables.Rows(document))
        {
            var family = new Family(row.Text("id"), traits.Of(row))
            {
                Usual = UsualOf(row),
                UsualSource = row.TextLater("source"),
            };
            families.Add(family);
            ByWord.Add(family.Id, family);
            words.Add(family.Id);
            foreach (string word in row.Texts("also"))
            {
                ByWord.Add(word, family);
                synonyms.Add(word);
            }
        }

        All = [.. families];
        Words = [.. words, .. synonyms];
    }

    /// <summary>All families, in the order of the table.</summary>
    public static FixedList<Family> All { get; }

    /// <summary>All words for families.</summary>
    public static IReadOnlyList<string> Words { get; }

    /// <summary>The family of a word; <see langword="null"/> where there is none.</summary>
    public static Family? Find(string word) => ByWord.TryGetValue(word, out var family) ? family : null;

    private static FixedList<(Fact Fact, Band Band)> UsualOf(TableValue row)
    {
        if (!row.TryGet("usual", out var usual)) return [];
        var bands = new List<(Fact, Band)>();
        foreach (var (word, fact) in UsualWords)
        {
            if (usual.TryGet(word, out var band)) bands.Add((fact, new Band(band.Get("low").GetNumber(), band.Get("high").GetNumber())));
        }

        return FixedList.Of(bands);
    }
}
