namespace SpecLint.Vocabulary;

/// <summary>The table of kinds of item: a row a kind, with its synonyms and traits.</summary>
internal static class KindTable
{
    /// <summary>The words of the table for traits, in the order of the bits of <see cref="KindTrait"/>.</summary>
    private static readonly string[] TraitWords =
    [
        "spirit", "strong", "strengthGiven", "burns", "manifold", "boughtReady", "liqueur", "bitters", "sparkling",
        "lengthens", "juice", "puree", "sours", "pouredInPart", "botanical", "freshPlant", "namedOnMenus", "pieces",
        "mayBePieces", "phOfPlants", "perishablePlant", "perishableBrew", "perishesWet", "seed", "gum", "spice", "liveCulture",
        "mayHoldSugar", "mayHoldAcid", "unknownComposition", "sugar", "syrup", "honey", "sweetens", "sweetPour", "acid",
        "salt", "drySalt", "dairy", "plantMilk", "egg", "fat", "nut", "foams", "preserves",
        "water", "ice", "gas", "brew", "potentPowder", "soluble", "boundIons", "dosed", "feedsNothing",
        "acidFree", "keptBySpirit", "addedAtService", "foodOfItsOwn", "mayBringSulphite", "mayHoldAddedCaffeine", "holdsAir", "bottled", "beer",
        "clear", "mayHoldAllergen",
    ];

    private static readonly Dictionary<string, ItemKind> ByWord = new(StringComparer.Ordinal);

    static KindTable()
    {
        var traits = new TraitWords(TraitWords);
        var kinds = new List<ItemKind>();
        var words = new List<string>();
        var synonyms = new List<string>();
        using var document = Tables.Open("kinds");
        foreach (var row in Tables.Rows(document))
        {
            string id = row.Text("id"), piece = row.Text("piece");
            bool made = row.TryGet("made", out var flag) && flag.IsTrue;
            var kind = new ItemKind(id, traits.Of(row), State(row.Text("state")), made, piece.Length > 0 ? piece : "piece");
            kinds.Add(kind);
            ByWord.Add(id, kind);
            if (!made) words.Add(id);
            foreach (string word in row.Texts("also"))
            {
                ByWord.Add(word, kind);
                if (!made) synonyms.Add(word);
            }
        }

        All = [.. kinds];
        Words = [.. words, .. synonyms];
    }

    /// <summary>All kinds, in the order of the table.</summary>
    public static FixedList<ItemKind> All { get; }

    /// <summary>All words for kinds that an ingredient can have.</summary>
    public static IReadOnlyList<string> Words { get; }

    /// <summary>The kind of a word; <see langword="null"/> where there is none.</summary>
    public static ItemKind? Find(string word) => ByWord.TryGetValue(word, out var kind) ? kind : null;

    private static MaterialState State(string word) => word switch
    {
        "" => MaterialState.Liquid,
        "solid" => MaterialState.Solid,
        "powder" => MaterialState.Powder,
        _ => throw new InvalidOperationException($"The table of kinds has the state {word}, which is none."),
    };
}
