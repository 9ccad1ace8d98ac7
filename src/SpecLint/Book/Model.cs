using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>The kinds of file in a book.</summary>
public enum FileKind
{
    /// <summary><c>bar.json</c>.</summary>
    Bar,

    /// <summary><c>*.drink.json</c>.</summary>
    Drink,

    /// <summary><c>*.prep.json</c>.</summary>
    Prep,

    /// <summary><c>*.ingredient.json</c>.</summary>
    Ingredient,

    /// <summary><c>*.menu.json</c>.</summary>
    Menu,

    /// <summary><c>*.stock.json</c>.</summary>
    Stock,

    /// <summary><c>*.prices.json</c>.</summary>
    Prices,
}

/// <summary>A file of the book, bound: what it says, each part with its place.</summary>
public abstract class BookFile
{
    private SourceFile source = null!;
    private IReadOnlyList<ReadingProblem> problems = [];
    private JsonTree? tree;

    /// <summary>The text.</summary>
    public required SourceFile Source
    {
        get
        {
            DeclarationReads.Note();
            return source;
        }
        init => source = value;
    }

    /// <summary>
    /// The positioned tree of the text; <see langword="null"/> where the text is no JSON object. Few files are asked for theirs
    /// once they are bound, so that it is read anew then and not kept for all.
    /// </summary>
    public JsonTree? Tree
    {
        get
        {
            DeclarationReads.Note();
            return !HoldsObject ? null : tree ??= JsonTree.Parse(source, new List<ReadingProblem>());
        }
    }

    /// <summary>Lets go of the tree, where it was asked for.</summary>
    internal void ForgetTree() => tree = null;

    /// <summary>Whether the text is a JSON object, or the start of one.</summary>
    internal bool HoldsObject { get; init; }

    /// <summary>The id: the file name without its ending.</summary>
    public required string Id { get; init; }

    /// <summary>The kind of file.</summary>
    public abstract FileKind Kind { get; }

    /// <summary>What was found wrong while reading and binding.</summary>
    public required IReadOnlyList<ReadingProblem> Problems
    {
        get
        {
            DeclarationReads.Note();
            return problems;
        }
        init => problems = value;
    }

    /// <summary>Whether anything was found wrong: asked before <see cref="Problems"/>, which counts as a look at the text.</summary>
    internal bool HasProblems => problems.Count > 0;

    /// <summary><c>name</c>.</summary>
    public Given<string> Name { get; set; }

    /// <summary><c>accept</c>.</summary>
    public FixedList<Acceptance> Accept { get; set; } = [];

    /// <summary><c>notes</c>.</summary>
    public FixedList<Given<string>> Notes { get; set; } = [];

    /// <summary>Place of a part of this file.</summary>
    public Place At(TextSpan span) => new(source, span);

    /// <summary>A copy of what is bound, over another text that says the same.</summary>
    private protected BookFile Over(SourceFile text, IReadOnlyList<ReadingProblem> found)
    {
        var copy = (BookFile)MemberwiseClone();
        copy.source = text;
        copy.problems = found;
        copy.tree = null;
        return copy;
    }

    /// <summary>Where a finding about the whole file points: its name, else its first character.</summary>
    public Place Head =>
        At(Name.IsGiven ? Name.Span : new TextSpan(source.ByteOrderMarkLength, source.Utf8.Length > source.ByteOrderMarkLength ? 1 : 0));
}

/// <summary>An accepted finding: a SARIF suppression.</summary>
public sealed class Acceptance
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Id of the rule.</summary>
    public Given<string> Rule { get; init; }

    /// <summary>The reason.</summary>
    public Given<string> Because { get; init; }

    /// <summary>The last day on which it holds.</summary>
    public Given<CalendarDate> Until { get; init; }
}

/// <summary>How a line of a recipe goes into it.</summary>
public enum LineRole
{
    /// <summary>A part of the mix.</summary>
    Part,

    /// <summary>Added after the technique (a sparkling top).</summary>
    Top,

    /// <summary>Coats the glass and is thrown away.</summary>
    Rinse,

    /// <summary>Laid on the finished drink.</summary>
    Float,

    /// <summary>On the rim of the glass.</summary>
    Rim,

    /// <summary>Washes the preparation and is strained out.</summary>
    Wash,

    /// <summary>Fines the preparation and is taken out.</summary>
    Fining,

    /// <summary>Crushed into the mix and strained out.</summary>
    Muddle,

    /// <summary>A garnish.</summary>
    Garnish,
}

/// <summary>One line of a recipe: an item and its amount.</summary>
public sealed class Line
{
    private readonly More? more;

    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Number in its list, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Id of the item.</summary>
    public Given<string> Item { get; init; }

    /// <summary>What stands in the place of the item where that is no id (<c>30 ml lime juice</c>); not given where the item is one.</summary>
    internal Given<string> ItemText
    {
        get => more is null ? default : more.ItemText;
        init { if (value.IsGiven) (more ??= new More()).ItemText = value; }
    }

    /// <summary>The amount.</summary>
    public Given<Quantity> Amount { get; init; }

    /// <summary>The share of the whole.</summary>
    public Given<Quantity> Share { get => more is null ? default : more.Share; init { if (value.IsGiven) (more ??= new More()).Share = value; } }

    /// <summary>The role as given, else by the list that the line stands in.</summary>
    public LineRole Role { get; init; }

    /// <summary>Whether the role is written in the file.</summary>
    public bool RoleIsGiven { get; init; }

    /// <summary>Whether it may be left out.</summary>
    public bool Optional { get; init; }

    /// <summary>A remark.</summary>
    public Given<string> Note { get => more is null ? default : more.Note; init { if (value.IsGiven) (more ??= new More()).Note = value; } }

    /// <summary>What few lines have; the others need no room for it.</summary>
    private sealed class More
    {
        public Given<string> ItemText { get; set; }

        public Given<Quantity> Share { get; set; }

        public Given<string> Note { get; set; }
    }
}

/// <summary>A step of the method.</summary>
public sealed class Step
{
    private readonly More? more;

    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Number in the method, from 1.</summary>
    public int Number { get; init; }

    /// <summary>The verb: <c>shake</c>, <c>strain</c>, <c>heat</c> …</summary>
    public Given<Verb> Do { get; init; }

    /// <summary>The verb, to be asked for its traits; <see cref="Verb.None"/> where none is given.</summary>
    public Verb Verb => Do.IsGiven ? Do.Value : Verb.None;

    /// <summary>The verb as it is written, a synonym perhaps; empty where none is given.</summary>
    public string Written { get; init; } = "";

    /// <summary>The items it acts on (<c>item</c> or <c>items</c>); empty means all so far.</summary>
    public FixedList<Given<string>> Items { get; init; } = [];

    /// <summary>Kind of ice.</summary>
    public Given<Ice> Ice { get; init; }

    /// <summary>The ice as it is written; empty where none is given.</summary>
    public string IceWritten { get; init; } = "";

    /// <summary>Whether it names ice, and does not say that there is none.</summary>
    public bool HasIce => Ice.IsGiven && !Ice.Value.IsNone;

    /// <summary>Whether it shakes without ice, by its verb or by the ice that it denies.</summary>
    internal bool IsDryShake => Verb.ShakesDry || (Verb.Technique == TechniqueKind.Shaken && Ice is { IsGiven: true, Value.IsNone: true });

    /// <summary>How long.</summary>
    public Given<Quantity> For { get; init; }

    /// <summary>The temperature it is held at.</summary>
    public Given<Quantity> At { get => more is null ? default : more.At; init { if (value.IsGiven) (more ??= new More()).At = value; } }

    /// <summary>The temperature it is brought to.</summary>
    public Given<Quantity> To { get => more is null ? default : more.To; init { if (value.IsGiven) (more ??= new More()).To = value; } }

    /// <summary>The end point in words.</summary>
    public Given<string> Until { get => more is null ? default : more.Until; init { if (value.IsGiven) (more ??= new More()).Until = value; } }

    /// <summary>Where it goes.</summary>
    public Given<string> Into { get => more is null ? default : more.Into; init { if (value.IsGiven) (more ??= new More()).Into = value; } }

    /// <summary>The vessel; its <see cref="Word.Id"/> is the text as written.</summary>
    public Given<Vessel> Vessel { get => more is null ? default : more.Vessel; init { if (value.IsGiven) (more ??= new More()).Vessel = value; } }

    /// <summary>An amount that the step names.</summary>
    public Given<Quantity> Amount { get => more is null ? default : more.Amount; init { if (value.IsGiven) (more ??= new More()).Amount = value; } }

    /// <summary>A remark.</summary>
    public Given<string> Note { get => more is null ? default : more.Note; init { if (value.IsGiven) (more ??= new More()).Note = value; } }

    /// <summary>What few steps have; the others need no room for it.</summary>
    private sealed class More
    {
        public Given<Quantity> At { get; set; }

        public Given<Quantity> To { get; set; }

        public Given<string> Until { get; set; }

        public Given<string> Into { get; set; }

        public Given<Vessel> Vessel { get; set; }

        public Given<Quantity> Amount { get; set; }

        public Given<string> Note { get; set; }
    }
}

/// <summary>What a recipe declares to the guest.</summary>
public sealed class Declaration
{
    private readonly More? more;

    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Allergens; not given means that nothing is declared.</summary>
    public Given<FixedList<Given<string>>> Allergens { get; init; }

    /// <summary>Allergens that may be present.</summary>
    public FixedList<Given<string>> MayContain { get; init; } = [];

    /// <summary>Strength.</summary>
    public Given<Quantity> Abv { get; init; }

    /// <summary>Grams of ethanol a serve.</summary>
    public Given<Quantity> Alcohol
    {
        get => more is null ? default : more.Alcohol;
        init { if (value.IsGiven) (more ??= new More()).Alcohol = value; }
    }

    /// <summary>Energy a serve.</summary>
    public Given<Quantity> Energy { get => more is null ? default : more.Energy; init { if (value.IsGiven) (more ??= new More()).Energy = value; } }

    /// <summary>Claims such as <c>vegan</c>.</summary>
    public FixedList<Given<string>> Claims { get; init; } = [];

    /// <summary>Advisory texts shown to the guest.</summary>
    public FixedList<Given<string>> Advisory { get; init; } = [];

    /// <summary>What few declarations have; the others need no room for it.</summary>
    private sealed class More
    {
        public Given<Quantity> Alcohol { get; set; }

        public Given<Quantity> Energy { get; set; }
    }
}

/// <summary>What was measured.</summary>
public sealed record Measurement
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>pH.</summary>
    public Given<Quantity> Ph { get; init; }

    /// <summary>°Brix.</summary>
    public Given<Quantity> Brix { get; init; }

    /// <summary>Strength.</summary>
    public Given<Quantity> Abv { get; init; }

    /// <summary>Water activity, 0 to 1.</summary>
    public Given<Quantity> WaterActivity { get; init; }

    /// <summary>Titratable acidity, a percentage.</summary>
    public Given<Quantity> TitratableAcidity { get; init; }

    /// <summary>Temperature.</summary>
    public Given<Quantity> Temperature { get; init; }

    /// <summary>Mass.</summary>
    public Given<Quantity> Mass { get; init; }

    /// <summary>Volume.</summary>
    public Given<Quantity> Volume { get; init; }

    /// <summary>Day of the measurement.</summary>
    public Given<CalendarDate> On { get; init; }

    /// <summary>Id of the meter.</summary>
    public Given<string> Meter { get; init; }

    /// <summary>Fingerprint of the recipe that was measured.</summary>
    public Given<string> Of { get; init; }

    /// <summary>Revision of the recipe that was measured.</summary>
    public Given<string> Revision { get; init; }
}

/// <summary>A drink or a preparation.</summary>
public abstract class Recipe : BookFile
{
    /// <summary>Number of drinks that the amounts make; 1 where none is given, and of a preparation.</summary>
    public virtual double ServesOrOne => 1;

    /// <summary><c>ingredients</c>.</summary>
    public FixedList<Line> Ingredients { get; set; } = [];

    /// <summary>Place of the list <c>ingredients</c>.</summary>
    public TextSpan IngredientsSpan { get; set; }

    /// <summary><c>method</c>.</summary>
    public FixedList<Step> Method { get; set; } = [];

    /// <summary>Place of the list <c>method</c>; its length is 0 where there is none.</summary>
    public TextSpan MethodSpan { get; set; }

    /// <summary><c>declares</c>.</summary>
    public Declaration? Declares
    {
        get
        {
            DeclarationReads.Note();
            return declares;
        }
        set => declares = value;
    }

    private Declaration? declares;

    /// <summary><c>measured</c> as written, whether or not it is of the recipe as it stands.</summary>
    public Measurement? AsMeasured { get; set; }

    /// <summary>
    /// The readings that count: those of the recipe as it stands. Linking takes out what was measured before a change, the profile what
    /// cannot be.
    /// </summary>
    public Measurement? Measured { get; set; }

    /// <summary>Why the readings do not count, as the end of a sentence; <see langword="null"/> where they do, or where there are none.</summary>
    public string? StaleBecause { get; internal set; }

    /// <summary>Whether the recipe is one at another size, worked out in passing: it keeps the readings of the one it was made of.</summary>
    internal bool CarriesReadings { get; set; }

    /// <summary><c>author</c>.</summary>
    public Given<string> Author { get; set; }

    /// <summary><c>date</c>.</summary>
    public Given<CalendarDate> Date { get; set; }

    /// <summary><c>revision</c> (a number is read as its text).</summary>
    public Given<string> Revision { get; set; }

    /// <summary><c>source</c>: where the recipe comes from.</summary>
    public Given<string> Origin { get; set; }

    /// <summary><c>supersedes</c>: id of the recipe that this one replaces.</summary>
    public Given<string> Supersedes { get; set; }

    /// <summary>The same recipe, line by line the same objects, with another declaration.</summary>
    /// <param name="now">What it declares.</param>
    /// <param name="text">The text that says so, which differs in nothing else.</param>
    /// <param name="found">What is wrong with that text.</param>
    internal Recipe Declaring(Declaration now, SourceFile text, IReadOnlyList<ReadingProblem> found)
    {
        var copy = (Recipe)Over(text, found);
        copy.declares = now;
        return copy;
    }
}

/// <summary>The spec of a drink.</summary>
public sealed class Drink : Recipe
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Drink;

    /// <summary><c>style</c>.</summary>
    public Given<Style> Style { get; set; }

    /// <summary>The style, where it is given and one of the table, by its id or by another word for it.</summary>
    public Style? KnownStyle => !Style.IsGiven ? null : Style.Value.IsKnown ? Style.Value : Style.Value.Meant;

    /// <summary><c>glass</c>.</summary>
    public Given<GlassType> Glass { get; set; }

    /// <summary>The glass as it is written: the id of one of bar.json, or a word for a type; empty where none is given.</summary>
    public string GlassWritten { get; set; } = "";

    /// <summary><c>garnish</c>.</summary>
    public FixedList<Line> Garnish { get; set; } = [];

    /// <summary><c>rim</c>.</summary>
    public FixedList<Line> Rim { get; set; } = [];

    /// <summary><c>serves</c>: the number of drinks that the amounts make.</summary>
    public Given<double> Serves { get; set; }

    /// <inheritdoc/>
    public override double ServesOrOne => Serves.IsGiven && Serves.Value > 0 ? Serves.Value : 1;
}

/// <summary>The target of a preparation.</summary>
public sealed class Target
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Acid, a percentage.</summary>
    public Given<Quantity> Acid { get; init; }

    /// <summary>Sugar, a percentage.</summary>
    public Given<Quantity> Sugar { get; init; }

    /// <summary>°Brix.</summary>
    public Given<Quantity> Brix { get; init; }

    /// <summary>pH.</summary>
    public Given<Quantity> Ph { get; init; }

    /// <summary>Strength.</summary>
    public Given<Quantity> Abv { get; init; }

    /// <summary>Salt, a percentage.</summary>
    public Given<Quantity> Salt { get; init; }

    /// <summary>Water activity.</summary>
    public Given<Quantity> WaterActivity { get; init; }

    /// <summary>Pressure.</summary>
    public Given<Quantity> Pressure { get; init; }

    /// <summary>Id of the item it stands in for.</summary>
    public Given<string> StandsInFor { get; init; }
}

/// <summary>How a preparation is kept.</summary>
public sealed class Keeping
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Storage temperature.</summary>
    public Given<Quantity> At { get; init; }

    /// <summary>Vessel, in words or by id; its <see cref="Word.Id"/> is the text as written.</summary>
    public Given<Vessel> In { get; init; }

    /// <summary>The vessel, to be asked for its traits; <see cref="Vessel.None"/> where none is given.</summary>
    public Vessel Vessel => In.IsGiven ? In.Value : Vessel.None;

    /// <summary>How long.</summary>
    public Given<Quantity> For { get; init; }

    /// <summary>Whether it is sealed from air.</summary>
    public Given<bool> Sealed { get; init; }

    /// <summary>Volume of the vessel.</summary>
    public Given<Quantity> Capacity { get; init; }

    /// <summary>Pressure rating of the vessel.</summary>
    public Given<Quantity> Rating { get; init; }

    /// <summary>Gas above it.</summary>
    public Given<string> Gas { get; init; }

    /// <summary>What the recipe says of its keeping, in words.</summary>
    public Given<string> Claim { get; init; }
}

/// <summary>What is left of making a preparation.</summary>
public sealed class ByProduct
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Its id.</summary>
    public Given<string> Id { get; init; }

    /// <summary>Its amount.</summary>
    public Given<Quantity> Amount { get; init; }

    /// <summary>A remark.</summary>
    public Given<string> Note { get; init; }
}

/// <summary>The recipe of a house preparation.</summary>
public sealed class Prep : Recipe
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Prep;

    /// <summary><c>family</c>.</summary>
    public Given<Family> Family { get; set; }

    /// <summary><c>yield</c>.</summary>
    public Given<Quantity> Yield { get; set; }

    /// <summary><c>target</c>.</summary>
    public Target? Target { get; set; }

    /// <summary><c>keep</c>.</summary>
    public Keeping? Keep { get; set; }

    /// <summary><c>byProducts</c>.</summary>
    public FixedList<ByProduct> ByProducts { get; set; } = [];

    /// <summary><c>batchOf</c>: id of the drink that it is a batch of.</summary>
    public Given<string> BatchOf { get; set; }

    /// <summary><c>portions.count</c>.</summary>
    public Given<double> PortionCount { get; set; }

    /// <summary><c>portions.each</c>.</summary>
    public Given<Quantity> PortionSize { get; set; }

    /// <summary>The same preparation kept otherwise, as a lot of it stands.</summary>
    internal Prep KeptAs(Keeping keep)
    {
        var copy = (Prep)Over(Source, Problems);
        copy.Keep = keep;
        return copy;
    }
}

/// <summary>A value of an ingredient: low, typical, high in the base unit of its dimension, with its source.</summary>
/// <param name="Typical">Typical value.</param>
/// <param name="Low">Low end, about the 2.5th percentile.</param>
/// <param name="High">High end, about the 97.5th percentile.</param>
/// <param name="Dimension">Dimension of the three.</param>
/// <param name="Mark">How far to trust it.</param>
/// <param name="Source">Its source, or <see langword="null"/>.</param>
/// <param name="Span">Its place in the ingredient's file.</param>
public sealed record SourcedValue(double Typical, double Low, double High, Dimension Dimension, Mark Mark, string? Source, TextSpan Span);

/// <summary>An allergen that a jurisdiction exempts in this ingredient.</summary>
/// <param name="Allergen">Token of the substance.</param>
/// <param name="In">Jurisdictions.</param>
/// <param name="Because">The legal reason.</param>
/// <param name="Source">The law.</param>
public sealed record AllergenExemption(string Allergen, FixedList<string> In, string? Because, string? Source);

/// <summary>Allergens of an ingredient.</summary>
/// <param name="Contains">Tokens of what it contains.</param>
/// <param name="MayContain">Tokens of what it may contain.</param>
/// <param name="Exempt">Exemptions.</param>
/// <param name="Mark">How far to trust it.</param>
/// <param name="Source">Its source.</param>
/// <param name="Span">Place of the object.</param>
public sealed record AllergenStatement(
    FixedList<string> Contains,
    FixedList<string> MayContain,
    FixedList<AllergenExemption> Exempt,
    Mark Mark,
    string? Source,
    TextSpan Span)
{
    /// <summary>Whether it says what the ingredient contains, be it nothing; else that is not known.</summary>
    public bool SaysWhatItContains { get; init; } = true;
}

/// <summary>An ingredient that the bar buys, or an entry of the built-in catalogue.</summary>
public sealed class Ingredient : BookFile
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Ingredient;

    /// <summary><c>aliases</c>.</summary>
    public FixedList<Given<string>> Aliases { get; set; } = [];

    /// <summary><c>kind</c>; not given where it is inherited.</summary>
    public Given<ItemKind> IngredientKind { get; set; }

    /// <summary><c>like</c>.</summary>
    public Given<string> Like { get; set; }

    /// <summary>
    /// Whether it, or what it is like, is like what is no ingredient, so that what it
    /// stands for is not known; set when it is flattened.
    /// </summary>
    internal bool LikeIsBroken { get; set; }

    /// <summary>The last of the files that it is like, one after another, from which it has what no other gives; set when it is flattened.</summary>
    internal Ingredient? LikeInTheEnd { get; set; }

    /// <summary><c>state</c>: liquid, solid, powder or gas.</summary>
    public Given<string> State { get; set; }

    /// <summary><c>per</c>: whether contents are per 100 mL; else per 100 g.</summary>
    public Given<bool> PerHundredMillilitres { get; set; }

    /// <summary>
    /// Contents by property path: <c>density</c>, <c>strength</c>, <c>ph</c>, <c>titratableAcidity</c>, <c>sugars.sucrose</c>,
    /// <c>acids.citric</c>, <c>salt</c>, <c>piece</c>, <c>yields</c>, <c>life.opened</c> …
    /// </summary>
    public IReadOnlyDictionary<string, SourcedValue> Values { get; set; } = new Dictionary<string, SourcedValue>();

    /// <summary><c>form</c>.</summary>
    public Given<string> Form { get; set; }

    /// <summary><c>allergens</c>; <see langword="null"/> means unknown.</summary>
    public AllergenStatement? Allergens { get; set; }

    /// <summary><c>animal</c>: origin in an animal, or none, or unknown.</summary>
    public Given<string> Animal { get; set; }

    /// <summary><c>hazard</c>: id in the table of hazards.</summary>
    public Given<string> Hazard { get; set; }

    /// <summary><c>keepsCold</c>.</summary>
    public Given<bool> KeepsCold { get; set; }

    /// <summary><c>open</c>: properties left open, with the reason.</summary>
    public IReadOnlyDictionary<string, string> Open { get; set; } = new Dictionary<string, string>();
}

/// <summary>A drink on a menu.</summary>
public sealed class MenuEntry
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Number, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Id of the drink.</summary>
    public Given<string> Drink { get; init; }

    /// <summary>Name on the menu.</summary>
    public Given<string> Name { get; init; }

    /// <summary>What the guest reads.</summary>
    public Given<string> Words { get; init; }

    /// <summary>Serves expected.</summary>
    public Given<double> Covers { get; init; }

    /// <summary>Claims.</summary>
    public FixedList<Given<string>> Claims { get; init; } = [];

    /// <summary>Remarks.</summary>
    public FixedList<Given<string>> Notes { get; init; } = [];
}

/// <summary>A menu.</summary>
public sealed class Menu : BookFile
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Menu;

    /// <summary><c>drinks</c>.</summary>
    public FixedList<MenuEntry> Drinks { get; set; } = [];
}

/// <summary>A time in the freezer.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Day of thawing, or <see langword="null"/> while frozen.</param>
/// <param name="Span">Place.</param>
public sealed record FrozenTime(CalendarDate From, CalendarDate? To, TextSpan Span);

/// <summary>A lot in stock.</summary>
public sealed class Lot
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Number, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Id of the item.</summary>
    public Given<string> Item { get; init; }

    /// <summary>Day made.</summary>
    public Given<CalendarDate> Made { get; init; }

    /// <summary>Day opened.</summary>
    public Given<CalendarDate> Opened { get; init; }

    /// <summary>Use-by day on the label.</summary>
    public Given<CalendarDate> UseBy { get; init; }

    /// <summary>Amount left.</summary>
    public Given<Quantity> Amount { get; init; }

    /// <summary>Storage temperature.</summary>
    public Given<Quantity> At { get; init; }

    /// <summary>Vessel; its <see cref="Word.Id"/> is the text as written.</summary>
    public Given<Vessel> In { get; init; }

    /// <summary>What was measured.</summary>
    public Measurement? Measured { get; init; }

    /// <summary>Lot code (<c>lot</c>).</summary>
    public Given<string> LotCode { get; init; }

    /// <summary>Codes of the lots that it was made from (<c>madeFrom</c>).</summary>
    public FixedList<Given<string>> MadeFrom { get; init; } = [];

    /// <summary>Initials of the maker.</summary>
    public Given<string> By { get; init; }

    /// <summary>Times in the freezer.</summary>
    public FixedList<FrozenTime> Frozen { get; init; } = [];

    /// <summary>A remark.</summary>
    public Given<string> Note { get; init; }
}

/// <summary>What is in the house on a day.</summary>
public sealed class Stock : BookFile
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Stock;

    /// <summary><c>on</c>.</summary>
    public Given<CalendarDate> On { get; set; }

    /// <summary><c>lots</c>.</summary>
    public FixedList<Lot> Lots { get; set; } = [];
}

/// <summary>What the bar pays for an item.</summary>
public sealed class Price
{
    /// <summary>Place of the object.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Number, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Id of the item.</summary>
    public Given<string> Item { get; init; }

    /// <summary>What is paid, in the currency of the bar.</summary>
    public Given<decimal> Paid { get; init; }

    /// <summary>The size that is bought for it.</summary>
    public Given<Quantity> For { get; init; }

    /// <summary>The share of what is bought that can be used, a percentage; not given where all of it can, or a table says.</summary>
    public Given<Quantity> Yield { get; init; }

    /// <summary>Day of the price; not given where it is that of the list.</summary>
    public Given<CalendarDate> On { get; init; }

    /// <summary>The supplier; not given where it is that of the list.</summary>
    public Given<string> From { get; init; }

    /// <summary>A remark.</summary>
    public Given<string> Note { get; init; }
}

/// <summary>A price list.</summary>
public sealed class PriceList : BookFile
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Prices;

    /// <summary><c>on</c>: the day of the prices that give none.</summary>
    public Given<CalendarDate> On { get; set; }

    /// <summary><c>from</c>: the supplier of the prices that give none.</summary>
    public Given<string> From { get; set; }

    /// <summary><c>prices</c>.</summary>
    public FixedList<Price> Prices { get; set; } = [];

    /// <summary>The day of a price.</summary>
    public Given<CalendarDate> DayOf(Price price) => price.On.IsGiven ? price.On : On;
}

/// <summary>What the house sets on costs.</summary>
/// <param name="Currency">ISO 4217 code of the currency of all prices.</param>
/// <param name="MostPerServe">The most that a serve may cost, in that currency.</param>
/// <param name="PricesHold">How long a price holds.</param>
/// <param name="Span">Place.</param>
public sealed record CostSettings(Given<string> Currency, Given<decimal> MostPerServe, Given<Quantity> PricesHold, TextSpan Span);

/// <summary>A glass of the house.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Brim">Volume to the brim.</param>
/// <param name="WashLine">Volume to the wash line.</param>
/// <param name="Span">Place.</param>
public sealed record Glass(string Id, Given<Quantity> Brim, Given<Quantity> WashLine, TextSpan Span)
{
    /// <summary>What the house calls it.</summary>
    internal Given<string> Name { get; init; }
}

/// <summary>A vessel of the house.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Capacity">Its volume.</param>
/// <param name="Rating">Its pressure rating.</param>
/// <param name="Span">Place.</param>
public sealed record VesselSpec(string Id, Given<Quantity> Capacity, Given<Quantity> Rating, TextSpan Span);

/// <summary>A meter of the house.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Ph">Uncertainty in pH (half width of about 95 %).</param>
/// <param name="Brix">Uncertainty in °Brix (half width of about 95 %).</param>
/// <param name="Calibrated">Day of the last calibration.</param>
/// <param name="Span">Place.</param>
public sealed record Meter(string Id, Given<double> Ph, Given<double> Brix, Given<CalendarDate> Calibrated, TextSpan Span);

/// <summary>The bar: <c>bar.json</c>.</summary>
public sealed class Bar : BookFile
{
    /// <inheritdoc/>
    public override FileKind Kind => FileKind.Bar;

    /// <summary><c>jurisdictions</c>, as written.</summary>
    public FixedList<Given<string>> Jurisdictions { get; set; } = [];

    /// <summary><c>measures</c>: house values of trade measures.</summary>
    public IReadOnlyDictionary<string, Given<Quantity>> Measures { get; set; } = new Dictionary<string, Given<Quantity>>();

    /// <summary><c>tools.scale</c>: step of the scale.</summary>
    public Given<Quantity> Scale { get; set; }

    /// <summary><c>tools.jigger</c>: step of the jigger.</summary>
    public Given<Quantity> Jigger { get; set; }

    /// <summary><c>tools.fridge</c>: temperature of the refrigerator.</summary>
    public Given<Quantity> Fridge { get; set; }

    /// <summary><c>tools.freezer</c>: temperature of the freezer.</summary>
    public Given<Quantity> Freezer { get; set; }

    /// <summary><c>tools.meters</c>.</summary>
    public IReadOnlyDictionary<string, Meter> Meters { get; set; } = new Dictionary<string, Meter>();

    /// <summary><c>glasses</c>.</summary>
    public IReadOnlyDictionary<string, Glass> Glasses { get; set; } = new Dictionary<string, Glass>();

    /// <summary><c>vessels</c>.</summary>
    public IReadOnlyDictionary<string, VesselSpec> Vessels { get; set; } = new Dictionary<string, VesselSpec>();

    /// <summary><c>limits</c>.</summary>
    public IReadOnlyDictionary<string, Given<Quantity>> Limits { get; set; } = new Dictionary<string, Given<Quantity>>();

    /// <summary><c>costs</c>; <see langword="null"/> where the house sets nothing.</summary>
    public CostSettings? Costs { get; set; }

    /// <summary><c>rules</c>: levels by rule id.</summary>
    public IReadOnlyDictionary<string, Given<RuleLevel>> Rules { get; set; } = new Dictionary<string, Given<RuleLevel>>();

    /// <summary><c>schemas</c>: the bar's own schema by kind.</summary>
    public IReadOnlyDictionary<string, Given<string>> Schemas { get; set; } = new Dictionary<string, Given<string>>();

    /// <summary><c>files</c>: patterns of files to read.</summary>
    public FixedList<Given<string>> Files { get; set; } = [];

    /// <summary><c>leaveOut</c>: patterns of files to leave out.</summary>
    public FixedList<Given<string>> LeaveOut { get; set; } = [];

    /// <summary><c>asks</c>: properties that every recipe of the bar must give.</summary>
    public FixedList<Given<string>> Asks { get; set; } = [];

    /// <summary><c>asOf</c>: the day that an example book is set on; a run takes it where it is given no day.</summary>
    public Given<CalendarDate> AsOf { get; set; }
}
