
namespace SpecLint.Vocabulary;

/// <summary>The table of verbs: a row a verb, with its synonyms and traits.</summary>
internal static class VerbTable
{
    /// <summary>The words of the table for traits, in the order of <see cref="VerbTrait"/>.</summary>
    private static readonly string[] TraitWords =
    [
        "dilutes", "closesVessel", "agitates", "aerates", "leavesIce", "takesAll", "adds", "builds", "icesGlass", "usesStrainer", "pours", "draws",
        "tops", "floats", "heats", "cooks", "boils", "boilsDown", "dries", "heatsDry", "pasteurises", "killsGerms", "stopsFerment",
        "cools", "freezes",
        "slushes", "ferments", "carbonates", "hydrates", "dissolves", "extracts", "clarifies", "seals", "setsAlight",
        "usesDryIce", "usesLiquidNitrogen",
        "brief", "opens", "distils", "smokes", "rims", "muddles", "bags", "reduces", "degasses", "coolsGlass", "warmsGlass",
    ];

    private static readonly Dictionary<string, Verb> ByWord = new(StringComparer.Ordinal);

    static VerbTable()
    {
        var traits = new TraitWords(TraitWords);
        var verbs = new List<Verb>();
        var synonyms = new List<(string Word, Verb Verb)>();
        using var document = Tables.Open("verbs");
        foreach (var row in Tables.Rows(document))
        {
            var verb = Read(row, traits);
            verbs.Add(verb);
            ByWord.Add(verb.Id, verb);
            foreach (string word in row.Texts("also")) synonyms.Add((word, verb));
        }

        foreach (var (word, verb) in synonyms) ByWord.Add(word, verb);
        All = [.. verbs];
    }

    /// <summary>All verbs, in the order of the table.</summary>
    public static FixedList<Verb> All { get; }

    /// <summary>All words: ids, and behind them the synonyms.</summary>
    public static IReadOnlyCollection<string> Words => ByWord.Keys;

    /// <summary>The verb of a word; <see langword="null"/> where there is none.</summary>
    public static Verb? Find(string word) => ByWord.TryGetValue(word, out var verb) ? verb : null;

    private static Verb Read(TableValue row, TraitWords known)
    {
        string past = row.Text("past");
        return new Verb(
            row.Text("id"), Group(row.Text("group")), known.Of(row), Straining(row.Text("strains")), Technique(row.Text("technique")),
            past.Length > 0 ? past : "mixed", row.Text("onIce"));
    }

    private static VerbGroup Group(string word) => word switch
    {
        "chill" => VerbGroup.Chill,
        "gather" => VerbGroup.Gather,
        "work" => VerbGroup.Work,
        "strain" => VerbGroup.Strain,
        "pour" => VerbGroup.Pour,
        "finish" => VerbGroup.Finish,
        "keep" => VerbGroup.Keep,
        _ => throw new InvalidOperationException($"The table of verbs has the group {word}, which is none."),
    };

    private static Straining Straining(string word) => word switch
    {
        "" => Vocabulary.Straining.None,
        "coarse" => Vocabulary.Straining.Coarse,
        "fine" => Vocabulary.Straining.Fine,
        "clear" => Vocabulary.Straining.Clear,
        _ => throw new InvalidOperationException($"The table of verbs has {word} for how finely one strains."),
    };

    private static TechniqueKind Technique(string word) => word switch
    {
        "" => TechniqueKind.NoIce,
        "shaken" => TechniqueKind.Shaken,
        "stirred" => TechniqueKind.Stirred,
        "thrown" => TechniqueKind.Thrown,
        "blended" => TechniqueKind.Blended,
        "swizzled" => TechniqueKind.Swizzled,
        _ => throw new InvalidOperationException($"The table of verbs has the technique {word}, which is none."),
    };
}
