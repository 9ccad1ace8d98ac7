using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>What a line of a written recipe is.</summary>
public enum WrittenLineKind
{
    /// <summary>Nothing is written.</summary>
    Blank,

    /// <summary>The name of a recipe, or the head of one of its parts.</summary>
    Heading,

    /// <summary>An item, with its amount where one is written.</summary>
    Ingredient,

    /// <summary>What to do.</summary>
    Method,

    /// <summary>Something of the recipe as a whole: its glass, its yield, its keeping.</summary>
    Detail,
}

/// <summary>How certain it is what a line means.</summary>
public enum Certainty
{
    /// <summary>Amount, unit and item are plain.</summary>
    Certain,

    /// <summary>Understood by folding words or by a usual yield: to be looked at.</summary>
    Likely,

    /// <summary>Something is left open: it is not to be used before somebody has decided.</summary>
    Unclear,
}

/// <summary>A line of a written recipe, and what was understood of it.</summary>
/// <param name="Number">Number in the text, from 1.</param>
/// <param name="Written">The line as written.</param>
/// <param name="Kind">What it is.</param>
public sealed record WrittenLine(int Number, string Written, WrittenLineKind Kind)
{
    /// <summary>The amount as a quantity of a recipe file: <c>1 1/2 oz</c>; empty where none is written or understood.</summary>
    public string Amount { get; init; } = "";

    /// <summary>The number of the amount as written; empty where none is.</summary>
    public string NumberWritten { get; init; } = "";

    /// <summary>The unit of the amount as written; empty where none is.</summary>
    public string UnitWritten { get; init; } = "";

    /// <summary>The quantity of <see cref="Amount"/>; <see langword="null"/> where it has none.</summary>
    public Quantity? Quantity { get; init; }

    /// <summary>The item as written.</summary>
    public string ItemWritten { get; init; } = "";

    /// <summary>What the item means.</summary>
    public WrittenName Item { get; init; } = new(NameAnswer.NotKnown);

    /// <summary>Id that stands for the item in a file: what it means, of a maker's bottle its kind, else the words as an id.</summary>
    public string ItemId => Item.Answer is NameAnswer.Resolved or NameAnswer.Maker && Item.Id.Length > 0 ? Item.Id : Slugs.Of(ItemWritten);

    /// <summary>How the line goes in.</summary>
    public LineRole Role { get; init; } = LineRole.Part;

    /// <summary>What it says of the recipe as a whole; <see langword="null"/> where it is another kind of line.</summary>
    public WrittenDetail? Detail { get; init; }

    /// <summary>How certain it is.</summary>
    public Certainty Certainty { get; init; }

    /// <summary>What is left open or assumed, in words; empty where nothing is.</summary>
    public string Because { get; init; } = "";
}

/// <summary>A recipe as found in a text.</summary>
/// <param name="Name">Its name; empty where the text gives none.</param>
/// <param name="Lines">Its lines, in the order of the text.</param>
public sealed record WrittenRecipe(string Name, FixedList<WrittenLine> Lines)
{
    /// <summary>The lines that name an item.</summary>
    public IEnumerable<WrittenLine> Ingredients => Lines.Where(l => l.Kind == WrittenLineKind.Ingredient);

    /// <summary>The lines that say what to do.</summary>
    public IEnumerable<WrittenLine> Method => Lines.Where(l => l.Kind == WrittenLineKind.Method);
}
