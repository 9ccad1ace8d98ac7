namespace SpecLint.Findings;

/// <summary>Families of rules: the thousands digit of the id.</summary>
public enum RuleFamily
{
    /// <summary>1: the file.</summary>
    File = 1,

    /// <summary>2: amounts and units.</summary>
    Amounts = 2,

    /// <summary>3: balance.</summary>
    Balance = 3,

    /// <summary>4: acid and sugar.</summary>
    AcidAndSugar = 4,

    /// <summary>5: keeping.</summary>
    Keeping = 5,

    /// <summary>6: hazards.</summary>
    Hazards = 6,

    /// <summary>7: labels and words.</summary>
    Labels = 7,

    /// <summary>8: service (glass, ice, batch).</summary>
    Service = 8,

    /// <summary>9: the book as a whole.</summary>
    Book = 9,
}

/// <summary>What a rule is, as data.</summary>
/// <param name="Id"><c>SL</c> and four digits; never reused.</param>
/// <param name="Name">Its name: the mistake, in lower case with hyphens.</param>
/// <param name="Title">The mistake in one short sentence.</param>
/// <param name="Level">Default level.</param>
public sealed record RuleInfo(string Id, string Name, string Title, Level Level)
{
    /// <summary>The family.</summary>
    public RuleFamily Family => (RuleFamily)(Id[2] - '0');

    /// <summary>Facts that the rule reads. Each is computed when it is first asked for.</summary>
    public IReadOnlyList<Vocabulary.Fact> Needs { get; init; } = [];

    /// <summary>Ids of the limits it uses (table <c>limits</c>).</summary>
    public IReadOnlyList<string> Limits { get; init; } = [];

    /// <summary>
    /// Whether it guards against harm: an acceptance then needs an end date, and an accepted finding stays in the summary's count.
    /// </summary>
    public bool Safety { get; init; }

    /// <summary>
    /// Whether what it finds leaves allergens, hazards and keeping unknown: the verdict on what may be served counts its findings as
    /// it counts those of rules that guard against harm.
    /// </summary>
    public bool LeavesHarmUnknown { get; init; }

    /// <summary>
    /// Whether its findings explain others of the same recipe (a wrong unit puts everything out of band): those are folded under it.
    /// </summary>
    public bool IsCause { get; init; }

    /// <summary>Whether its findings may be folded under a cause.</summary>
    public bool IsConsequence { get; init; }

    /// <summary>Address of the page, relative to the root of the project.</summary>
    public string Page => $"rules-docs/{Id}.md";
}
