namespace SpecLint.Vocabulary;

/// <summary>A family of house preparations, with all that rules ask about it. A new family is a row of <c>families.json</c>.</summary>
public sealed class Family : Word
{
    private readonly Traits traits;

    private Family(string word)
        : base(word, isKnown: false) => Kind = ItemKind.Of(word);

    internal Family(string id, Traits traits)
        : base(id, isKnown: true)
    {
        this.traits = traits;
        Kind = ItemKind.Of(id);
    }

    /// <summary>The family of a preparation that gives none.</summary>
    public static Family None { get; } = new("");

    /// <summary>All families, in the order of the table.</summary>
    public static FixedList<Family> All => FamilyWords.All;

    /// <summary>All words for families: ids, and behind them the synonyms.</summary>
    public static IReadOnlyList<string> Words => FamilyWords.Words;

    /// <summary>The family that a word means; a family without traits where the table does not have it.</summary>
    public static Family Of(string word) => FamilyWords.Find(word) ?? new Family(word);

    /// <summary>What kind of item a preparation of the family is.</summary>
    public ItemKind Kind { get; }

    /// <summary>Facts with the range in which preparations of the family usually lie, in the unit of the fact.</summary>
    internal FixedList<(Fact Fact, Band Band)> Usual { get; init; } = [];

    /// <summary>Source of these ranges.</summary>
    internal TableText UsualSource { get; init; } = TableText.Empty;

    /// <summary>Whether it is a drink made in advance.</summary>
    public bool IsBatch => Has(FamilyTrait.Batch);

    /// <summary>Whether it is poured as it is, without ice.</summary>
    public bool IsPouredStraight => Has(FamilyTrait.PouredStraight);

    /// <summary>Whether it stands in the freezer.</summary>
    public bool IsKeptInFreezer => Has(FamilyTrait.KeptInFreezer);

    /// <summary>Whether it is carbonated.</summary>
    public bool IsCarbonated => Has(FamilyTrait.Carbonated);

    /// <summary>Whether it may be poured alone as a drink.</summary>
    public bool IsReadyDrink => Has(FamilyTrait.ReadyDrink);

    /// <summary>Whether it freezes, ferments or stands under gas, and needs room in its vessel.</summary>
    public bool Swells => Has(FamilyTrait.Swells);

    /// <summary>Whether microbes work in it.</summary>
    public bool Ferments => Has(FamilyTrait.Ferments);

    /// <summary>Whether its making takes fat out.</summary>
    public bool TakesFatOut => Has(FamilyTrait.TakesFatOut);

    /// <summary>Whether its making takes protein and insoluble matter out.</summary>
    public bool TakesProteinOut => Has(FamilyTrait.TakesProteinOut);

    /// <summary>Whether it is washed with fat, traces of which turn rancid.</summary>
    public bool IsFatWash => Has(FamilyTrait.FatWash);

    /// <summary>Whether it is washed with milk.</summary>
    public bool IsMilkWash => Has(FamilyTrait.MilkWash);

    /// <summary>Whether it is a dry good.</summary>
    public bool IsDry => Has(FamilyTrait.Dry);

    /// <summary>Whether sugar, acid, spirit or drying makes something of its parts that keeps by a clock of its own.</summary>
    public bool Transforms => Has(FamilyTrait.Transforms);

    /// <summary>Whether it can be juice low in acid.</summary>
    public bool IsJuiceLike => Has(FamilyTrait.JuiceLike);

    /// <summary>Whether it is pressed juice.</summary>
    public bool IsPressedJuice => Has(FamilyTrait.PressedJuice);

    /// <summary>Whether it is juice with acid added.</summary>
    public bool IsSouredJuice => Has(FamilyTrait.SouredJuice);

    /// <summary>Whether it is juice drawn out with acid and water.</summary>
    public bool IsJuiceExtension => Has(FamilyTrait.JuiceExtension);

    /// <summary>Whether it is no longer fresh juice.</summary>
    public bool IsReworked => Has(FamilyTrait.Reworked);

    /// <summary>Whether sugar makes up much of it.</summary>
    public bool IsSweet => Has(FamilyTrait.Sweet);

    /// <summary>Whether it is kept by its sugar.</summary>
    public bool IsKeptBySugar => Has(FamilyTrait.KeptBySugar);

    /// <summary>Whether it is a syrup.</summary>
    public bool IsSyrup => Has(FamilyTrait.Syrup);

    /// <summary>Whether it is made with vinegar.</summary>
    public bool IsShrub => Has(FamilyTrait.Shrub);

    /// <summary>Whether it is a solution of salt.</summary>
    public bool IsSaline => Has(FamilyTrait.Saline);

    /// <summary>Whether it is a solution of acid.</summary>
    public bool IsAcidSolution => Has(FamilyTrait.AcidSolution);

    /// <summary>Whether what is steeped in it is strained out again.</summary>
    public bool IsStrained => Has(FamilyTrait.Strained);

    /// <summary>Whether curds spoil it.</summary>
    public bool IsSmooth => Has(FamilyTrait.Smooth);

    /// <summary>Whether it is whipped up with a gas or by beating.</summary>
    public bool IsFoam => Has(FamilyTrait.Foam);

    private bool Has(FamilyTrait trait) => traits.Has((int)trait);
}

/// <summary>The yes-or-no traits of a family; each has its property in <see cref="Family"/>.</summary>
internal enum FamilyTrait
{
    Batch,
    PouredStraight,
    KeptInFreezer,
    Carbonated,
    ReadyDrink,
    Swells,
    Ferments,
    TakesFatOut,
    TakesProteinOut,
    FatWash,
    MilkWash,
    Dry,
    Transforms,
    JuiceLike,
    PressedJuice,
    SouredJuice,
    JuiceExtension,
    Reworked,
    Sweet,
    KeptBySugar,
    Syrup,
    Shrub,
    Saline,
    AcidSolution,
    Strained,
    Smooth,
    Foam,
}
