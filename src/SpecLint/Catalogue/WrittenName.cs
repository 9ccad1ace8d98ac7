namespace SpecLint.Catalogue;

/// <summary>How a name that somebody wrote is understood.</summary>
public enum NameAnswer
{
    /// <summary>It is not known.</summary>
    NotKnown,

    /// <summary>It means one item.</summary>
    Resolved,

    /// <summary>It leaves open which of several items is meant.</summary>
    Unclear,

    /// <summary>It is a maker's name.</summary>
    Maker,
}

/// <summary>What a name means that somebody wrote.</summary>
/// <param name="Answer">How it is understood.</param>
public sealed record WrittenName(NameAnswer Answer)
{
    /// <summary>Id of the item; of a maker's name that of its generic kind; empty where there is none.</summary>
    public string Id { get; init; } = "";

    /// <summary>Ids of what could be meant where that is unclear.</summary>
    public FixedList<string> Choices { get; init; } = [];

    /// <summary>What is left open, in words: <c>it does not say which</c>.</summary>
    public string Because { get; init; } = "";

    /// <summary>A part that the name asks for and the item does not: <c>slice</c>, <c>juice of</c>; empty where there is none.</summary>
    public string Piece { get; init; } = "";

    /// <summary>Whether the name is that of the item or one of its synonyms, nothing folded.</summary>
    public bool IsExact { get; init; }
}
