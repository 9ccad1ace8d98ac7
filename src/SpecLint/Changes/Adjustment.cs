using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>A figure that a recipe is to come to.</summary>
/// <param name="Fact">Strength, sugar, acid, their ratio, salt, Brix, or the volume (of a drink in the glass, of a preparation as made).</param>
/// <param name="Low">Its least value, in the unit of the fact.</param>
/// <param name="High">Its largest value; the same as the least where one value is wanted.</param>
internal sealed record AdjustTarget(Fact Fact, double Low, double High);

/// <summary>What a recipe is to be adjusted to.</summary>
internal sealed record AdjustRequest
{
    /// <summary>Figures to come to.</summary>
    public IReadOnlyList<AdjustTarget> Targets { get; init; } = [];

    /// <summary>Id of the item whose make-up a preparation is to have; empty where none is meant.</summary>
    public string Like { get; init; } = "";

    /// <summary>Id of the glass that a drink is to fit; empty where none is meant.</summary>
    public string Glass { get; init; } = "";

    /// <summary>Ids of the items whose amounts stay.</summary>
    public IReadOnlyCollection<string> Keep { get; init; } = [];

    /// <summary>Ids of items that may be added.</summary>
    public IReadOnlyCollection<string> Add { get; init; } = [];

    /// <summary>Id of the item that ran out; empty where none did.</summary>
    public string Without { get; init; } = "";

    /// <summary>Id of what takes its place.</summary>
    public string Use { get; init; } = "";
}

/// <summary>A target and what became of it.</summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Unit">Its unit as people write it.</param>
/// <param name="Low">Least value asked for.</param>
/// <param name="High">Largest value asked for.</param>
/// <param name="Before">Before, with its range.</param>
/// <param name="After">After, with its range, worked out anew from the changed recipe.</param>
/// <param name="IsReached">Whether it is reached, to what the steps of the tools allow.</param>
/// <param name="InTheWay">What stands in the way; empty where it is reached.</param>
internal sealed record AdjustedFigure(
    string Name, string Unit, double Low, double High, FactValue Before, FactValue After, bool IsReached, string InTheWay);

/// <summary>A line before and after.</summary>
/// <param name="Item">Id of its item after.</param>
/// <param name="ItemBefore">Id before; empty for a line that is added.</param>
/// <param name="Before">Amount before, as written; empty for a line that is added.</param>
/// <param name="After">Amount after.</param>
/// <param name="MayChange">Whether the search could change it.</param>
internal sealed record AdjustedLine(string Item, string ItemBefore, string Before, string After, bool MayChange)
{
    /// <summary>Whether it is another than before.</summary>
    public bool IsChanged => Item != ItemBefore || Before != After;
}

/// <summary>A recipe adjusted to targets: what changes, and what it then comes to.</summary>
/// <param name="Recipe">The recipe as it was.</param>
/// <param name="Figures">The targets, in the order they were given.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="File">Its file after.</param>
/// <param name="Comparison">The whole book before and after.</param>
internal sealed record Adjustment(
    Recipe Recipe, IReadOnlyList<AdjustedFigure> Figures, IReadOnlyList<AdjustedLine> Lines, SourceFile File, Comparison Comparison)
{
    /// <summary>Whether every target is reached.</summary>
    public bool IsReached => Figures.All(f => f.IsReached) && Like is null or { Holds: true };

    /// <summary>Whether anything changes.</summary>
    public bool IsChanged => Lines.Any(l => l.IsChanged);

    /// <summary>How the recipe then stands to what it is to be like; <see langword="null"/> where that was not asked for.</summary>
    internal StandIn? Like { get; init; }

    /// <summary>The same before.</summary>
    internal StandIn? LikeBefore { get; init; }

    /// <summary>What stands in the way of being like it; empty where nothing does.</summary>
    public string LikeInTheWay { get; init; } = "";

    /// <summary>Findings of rules that guard against harm, and allergens, that the change brings to any recipe.</summary>
    public IReadOnlyList<string> Harm { get; init; } = [];

    /// <summary>What is to be known of how it was worked out, each in a sentence.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}
