namespace SpecLint.RecipeText;

/// <summary>A step of a method, as it was understood of a sentence.</summary>
/// <param name="Verb">What is done; without a word where the sentence only says what it is served in.</param>
public sealed record WrittenStep(Verb Verb)
{
    /// <summary>Items that it names, as ids of the recipe's lines; empty where it acts on all.</summary>
    public FixedList<string> Items { get; init; } = [];

    /// <summary>Kind of ice, by its id; empty where none is named.</summary>
    public string Ice { get; init; } = "";

    /// <summary>How long, as written; empty where it does not say.</summary>
    public string For { get; init; } = "";

    /// <summary>Temperature at which it is held, as written.</summary>
    public string At { get; init; } = "";

    /// <summary>Temperature to which it is brought, as written.</summary>
    public string To { get; init; } = "";

    /// <summary>End point, in words.</summary>
    public string Until { get; init; } = "";

    /// <summary>Where it goes, in words.</summary>
    public string Into { get; init; } = "";

    /// <summary>The glass that the sentence names, by its id.</summary>
    public string Glass { get; init; } = "";

    /// <summary>What else the sentence says, in its own words.</summary>
    public string Note { get; init; } = "";
}
