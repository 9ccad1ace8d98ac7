using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What is not known of a material; a fact that needs it stays open.</summary>
[Flags]
public enum Unknowns
{
    /// <summary>All is known.</summary>
    None = 0,

    /// <summary>How much there is.</summary>
    Mass = 1,

    /// <summary>Its strength.</summary>
    Strength = 2,

    /// <summary>Its sugars.</summary>
    Sugar = 4,

    /// <summary>Its acids.</summary>
    Acid = 8,

    /// <summary>Its pH.</summary>
    Ph = 16,

    /// <summary>Its salt.</summary>
    Salt = 32,

    /// <summary>How much water is left in it.</summary>
    Water = 64,

    /// <summary>What it is made of at all.</summary>
    Composition = 128,

    /// <summary>Its caffeine.</summary>
    Caffeine = 256,
}

/// <summary>
/// An input that is not known exactly (JCGM 100:2008, 5.1): the change of the composition for one unit of it, and its
/// standard uncertainties upward and downward. Two materials that share an input vary together.
/// </summary>
internal sealed class UncertainInput(string name, SparseMasses changes, double up, double down)
{
    private object? root;

    /// <summary>
    /// What tells inputs apart: the same root in two materials (the acid of one lime, in the juice and in a cordial of it)
    /// is one input.
    /// </summary>
    public object Root
    {
        get => root ?? this;
        init => root = value;
    }

    /// <summary>What varies, for people.</summary>
    public string Name { get; } = name;

    /// <summary>The composition of the thing whose amount it is, within the mix that measured it; <see langword="null"/> where it is another input.</summary>
    public double[]? AmountOf { get; init; }

    /// <summary>Change of the masses in one gram of the material, g, for one unit of the input.</summary>
    public SparseMasses Changes { get; } = changes;

    /// <summary>The same input with other changes: what became of it in a mix.</summary>
    public UncertainInput With(SparseMasses changes) => new(Name, changes, Up, Down) { Root = Root };

    /// <summary>Standard uncertainty upward, in units of the input.</summary>
    public double Up { get; } = up;

    /// <summary>Standard uncertainty downward.</summary>
    public double Down { get; } = down;
}

/// <summary>What is dissolved in traces, mg a gram of the material.</summary>
/// <param name="Caffeine">Caffeine: typical, low, high.</param>
/// <param name="Quinine">Quinine.</param>
/// <param name="Sulphite">Sulphite as SO2.</param>
public readonly record struct Traces(Trace Caffeine, Trace Quinine, Trace Sulphite);

/// <summary>A trace: typical, low and high, mg a gram.</summary>
/// <param name="Typical">Typical.</param>
/// <param name="Low">Low.</param>
/// <param name="High">High.</param>
public readonly record struct Trace(double Typical, double Low, double High)
{
    /// <summary>Adds an amount of another.</summary>
    public Trace Plus(Trace other, double factor) =>
        new(Typical + (other.Typical * factor), Low + (other.Low * factor), High + (other.High * factor));
}

/// <summary>What an item is made of, by mass, with what is uncertain of it.</summary>
public sealed class Material
{
    internal Material(string id, double[] perGram, UncertainInput[] inputs, double density, MaterialState state)
    {
        Id = id;
        this.perGram = perGram;
        Sparse = SparseMasses.Of(perGram);
        Inputs = inputs;
        Density = density;
        State = state;
    }

    private readonly double[] perGram;
    private Catalogue.Hazard? hazard;
    private volatile bool hazardKnown;
    private volatile int perishable = -1;

    /// <summary>Id of the item.</summary>
    public string Id { get; }

    /// <summary>Masses in one gram, g, by component.</summary>
    public ReadOnlySpan<double> PerGram => perGram;

    /// <summary>The same as an array that mixes share; never written to.</summary>
    internal double[] Composition => perGram;

    /// <summary>The same without what is not in it.</summary>
    internal SparseMasses Sparse { get; }

    /// <summary>g/mL at 20 °C (of a powder its bulk density); NaN where unknown.</summary>
    public double Density { get; }

    /// <summary>State at room temperature.</summary>
    public MaterialState State { get; }

    /// <summary>Whether it holds caffeine, or nobody says that it holds none.</summary>
    internal bool MayHoldCaffeine => Traces.Caffeine.High > 0 || (Unknown & Unknowns.Caffeine) != 0;

    /// <summary>What kind of item it is; <see cref="ItemKind.None"/> where unknown.</summary>
    public ItemKind Kind { get; internal init; } = ItemKind.None;

    /// <summary>What is not known of it.</summary>
    public Unknowns Unknown { get; internal init; }

    /// <summary>Why.</summary>
    public string UnknownBecause { get; internal init; } = "";

    /// <summary>Mass of one piece: typical, low, high, g; NaN where there is none.</summary>
    public Trace Piece { get; internal init; } = new(double.NaN, double.NaN, double.NaN);

    /// <summary>Caffeine, quinine, sulphite, mg a gram.</summary>
    public Traces Traces { get; internal init; }

    /// <summary>The pH of the material itself, where it is measured or given: typical, low, high; NaN where not.</summary>
    public Trace Ph { get; internal init; } = new(double.NaN, double.NaN, double.NaN);

    /// <summary>The density of the material itself, where it was measured: typical, low, high, g/mL; NaN where not.</summary>
    public Trace MeasuredDensity { get; internal init; } = new(double.NaN, double.NaN, double.NaN);

    /// <summary>The ingredient, with what it inherits; <see langword="null"/> for a preparation.</summary>
    public Ingredient? Ingredient { get; internal init; }

    /// <summary>Whether it is an ingredient of the bar's own.</summary>
    internal bool IsOwn { get; init; }

    /// <summary>What an ingredient of the bar's own takes after by <c>like</c> or by its name, whatever kind its file gives it.</summary>
    internal FixedList<Ingredient> TakesAfter { get; init; } = [];

    /// <summary>The hazard that the ingredient names, or whose name it bears; <see langword="null"/> where there is none.</summary>
    internal Catalogue.Hazard? Hazard
    {
        get
        {
            if (!hazardKnown)
            {
                hazard = Ingredient is null ? null : Catalogue.HazardTable.Find(Ingredient.Hazard.Or(Ingredient.Id));
                hazardKnown = true;
            }

            return hazard;
        }
    }

    /// <summary>Why it needs cold in itself.</summary>
    internal Perishable Perishable
    {
        get
        {
            if (perishable < 0) perishable = (int)Perishables.OfItself(this);
            return (Perishable)perishable;
        }
    }

    internal UncertainInput[] Inputs { get; }

    /// <summary>Mass of a component in one gram, g.</summary>
    public double Of(Component component) => perGram[(int)component];
}
