using System.Collections.Concurrent;

namespace SpecLint.Vocabulary;

/// <summary>
/// What something is kept, heated or made in, as a few words tell it: the vessel, and its state or material ("swing-top bottle,
/// cap loose", "copper mug, lined", "jar, in the fridge"). All traits of the words in the table count; a denied word ("not
/// lined") does not. A new vessel or state is a row of <c>vessels.json</c>.
/// </summary>
public sealed class Vessel : Word
{
    /// <summary>Texts that are held: a book says few things of its bottles, and many times.</summary>
    private const int MostKept = 2000;

    private static readonly ConcurrentDictionary<string, Vessel> Known = new(StringComparer.Ordinal);
    private static int kept;

    private readonly Traits traits;

    internal Vessel(string text, VesselType? type, VesselType? rated, Traits traits)
        : base(text, isKnown: type is not null || IsPlace(traits))
    {
        Type = type;
        Rated = rated;
        this.traits = traits;
    }

    /// <summary>The vessel where none is given.</summary>
    public static Vessel None { get; } = new("", null, null, default);

    /// <summary>The vessel that a text tells; one without traits where the table has none of its words.</summary>
    public static Vessel Of(string text)
    {
        if (text.Length == 0) return None;
        if (Known.TryGetValue(text, out var known)) return known;
        var vessel = VesselTable.Read(text);
        if (Interlocked.Increment(ref kept) <= MostKept) Known.TryAdd(text, vessel);
        return vessel;
    }

    /// <summary>The first type of vessel that the text names; <see langword="null"/> if none.</summary>
    public VesselType? Type { get; }

    /// <summary>
    /// The type whose rated pressure holds for it; <see langword="null"/> where the text says more than the name of a type, and
    /// may mean another.
    /// </summary>
    public VesselType? Rated { get; }

    /// <summary>Whether it is shut, and nothing says that gas can leave.</summary>
    public bool IsClosed => Has(Trait.Closes) && !IsVented;

    /// <summary>Whether gas can leave: open, a loose cap, an airlock, a cloth.</summary>
    public bool IsVented => Has(Trait.Vents);

    /// <summary>Whether it holds less oxygen than air does: under vacuum, in a keg or can, under gas.</summary>
    public bool HoldsNoAir => Has(Trait.NoAir);

    /// <summary>Whether it holds less oxygen than air does once it is closed: a bag, a canning jar.</summary>
    public bool HoldsNoAirIfClosed => Has(Trait.NoAirIfClosed);

    /// <summary>Whether it is a bag.</summary>
    public bool IsBag => Has(Trait.Bag);

    /// <summary>Whether it is a keg: it vents itself through its valve.</summary>
    public bool IsKeg => Has(Trait.Keg);

    /// <summary>Whether it is a siphon: its chargers are made for it.</summary>
    public bool IsSiphon => Has(Trait.Siphon);

    /// <summary>Whether it is an open vessel to drink from or to heat in: a mug, a bowl, a pan.</summary>
    public bool IsWare => Has(Trait.Ware);

    /// <summary>Whether what touches the drink is copper, brass or bronze, unless it is lined.</summary>
    public bool IsCopper => Has(Trait.Copper);

    /// <summary>Whether what touches the drink is zinc, unless it is lined.</summary>
    public bool IsZinc => Has(Trait.Zinc);

    /// <summary>Whether what touches the drink is aluminium, unless it is lined.</summary>
    public bool IsAluminium => Has(Trait.Aluminium);

    /// <summary>Whether what touches the drink is pewter, unless it is lined.</summary>
    public bool IsPewter => Has(Trait.Pewter);

    /// <summary>Whether it is lead crystal, as far as the text tells.</summary>
    public bool IsLeadCrystal => Has(Trait.LeadCrystal) && !Has(Trait.LeadFree);

    /// <summary>Whether it is pottery whose glaze may hold lead, as far as the text tells.</summary>
    public bool MayHaveLeadGlaze => Has(Trait.OldGlaze) && !Has(Trait.LeadFree);

    /// <summary>Whether it is lined with steel, nickel or tin.</summary>
    public bool IsLined => Has(Trait.Lined);

    /// <summary>Whether the text tells that the bare metal touches the drink.</summary>
    public bool IsBare => Has(Trait.Bare);

    /// <summary>Whether it stands in a refrigerator.</summary>
    public bool IsInFridge => Has(Trait.Fridge);

    /// <summary>Whether it stands in a freezer.</summary>
    public bool IsInFreezer => Has(Trait.Freezer);

    /// <summary>Whether it stands in a room.</summary>
    public bool IsAtRoom => Has(Trait.Room);

    /// <summary>Whether it stands in the cold, of whichever kind.</summary>
    public bool IsCold => Has(Trait.Cold) || IsInFridge || IsInFreezer;

    private static bool IsPlace(Traits traits) =>
        traits.Has((int)Trait.Fridge) || traits.Has((int)Trait.Freezer) || traits.Has((int)Trait.Room) || traits.Has((int)Trait.Cold);

    private bool Has(Trait trait) => traits.Has((int)trait);

    /// <summary>Traits of vessels; the table has the same words in lower case.</summary>
    internal enum Trait
    {
        Closes,
        Vents,
        NoAir,
        NoAirIfClosed,
        Bag,
        Keg,
        Siphon,
        Ware,
        Copper,
        Zinc,
        Aluminium,
        Pewter,
        LeadCrystal,
        OldGlaze,
        Lined,
        LeadFree,
        Bare,
        Fridge,
        Freezer,
        Room,
        Cold,
    }
}

/// <summary>A type of vessel, and the pressure it is made for.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Aliases">Other names.</param>
/// <param name="IsForPressure">Whether it is made for pressure.</param>
/// <param name="RatingBar">Rated gauge pressure, bar; NaN where none is given.</param>
/// <param name="Source">Source.</param>
/// <param name="Mark">How far to trust it.</param>
public sealed record VesselType(string Id, string Name, FixedList<string> Aliases, bool IsForPressure, double RatingBar, string Source, Mark Mark)
{
    /// <summary>All types, in the order of the table.</summary>
    public static IReadOnlyList<VesselType> All => VesselTable.All;

    /// <summary>All words for types: ids and other names.</summary>
    public static IReadOnlyList<string> Words => VesselTable.Words;
}
