namespace SpecLint.Vocabulary;

/// <summary>What kind of thing an item is, bought or made. A new kind is a row of <c>kinds.json</c>.</summary>
public sealed class ItemKind : Word
{
    private readonly Traits traits;

    private ItemKind(string word)
        : base(word, isKnown: false)
    {
    }

    internal ItemKind(string id, Traits traits, MaterialState usualState, bool isMade, string piece)
        : base(id, isKnown: true)
    {
        this.traits = traits;
        UsualState = usualState;
        IsMade = isMade;
        Piece = piece;
    }

    /// <summary>The kind of an item of which none is known.</summary>
    public static ItemKind None { get; } = new("");

    /// <summary>The kind of what is poured ready: a drink as a part of another.</summary>
    public static ItemKind Drink { get; } = Of("drink");

    /// <summary>The kind of what is left of making something.</summary>
    public static ItemKind ByProduct { get; } = Of("by-product");

    /// <summary>Juice.</summary>
    public static ItemKind Juice { get; } = Of("juice");

    /// <summary>A bought thing of which no more is known.</summary>
    public static ItemKind Other { get; } = Of("other");

    /// <summary>All kinds, in the order of the table.</summary>
    public static FixedList<ItemKind> All => KindTable.All;

    /// <summary>All words for kinds that an ingredient can have: ids, and behind them the synonyms.</summary>
    public static IReadOnlyList<string> Words => KindTable.Words;

    /// <summary>The kind that a word means; a kind without traits where the table does not have it.</summary>
    public static ItemKind Of(string word) => KindTable.Find(word) ?? new ItemKind(word);

    /// <summary>Its state at room temperature where its file gives none.</summary>
    public MaterialState UsualState { get; } = MaterialState.Liquid;

    /// <summary>Whether only a preparation is of this kind, and no bought ingredient.</summary>
    public bool IsMade { get; }

    /// <summary>The word for one of it: sprig, flower, piece.</summary>
    public string Piece { get; } = "piece";

    /// <summary>Whether it is spirit.</summary>
    public bool IsSpirit => Has(KindTrait.Spirit);

    /// <summary>Whether it is strong in alcohol, as a part of a drink.</summary>
    public bool IsStrong => Has(KindTrait.Strong);

    /// <summary>Whether a bought one has its strength on the label.</summary>
    public bool GivesStrength => Has(KindTrait.StrengthGiven);

    /// <summary>Whether it burns when lit.</summary>
    public bool Burns => Has(KindTrait.Burns);

    /// <summary>Whether it tastes of many things that no file lists.</summary>
    public bool IsManifold => Has(KindTrait.Manifold);

    /// <summary>Whether bars buy it ready and do not make it.</summary>
    public bool IsBoughtReady => Has(KindTrait.BoughtReady);

    /// <summary>Whether it is liqueur.</summary>
    public bool IsLiqueur => Has(KindTrait.Liqueur);

    /// <summary>Whether it is bitters.</summary>
    public bool IsBitters => Has(KindTrait.Bitters);

    /// <summary>Whether it sparkles.</summary>
    public bool IsSparkling => Has(KindTrait.Sparkling);

    /// <summary>Whether drinks are topped with it.</summary>
    public bool Lengthens => Has(KindTrait.Lengthens);

    /// <summary>Whether it is juice, adjusted or not.</summary>
    public bool IsJuice => Has(KindTrait.Juice);

    /// <summary>Whether it is a purée.</summary>
    public bool IsPuree => Has(KindTrait.Puree);

    /// <summary>Whether it is what sours a drink.</summary>
    public bool Sours => Has(KindTrait.Sours);

    /// <summary>Whether it is poured as a lesser part of a drink.</summary>
    public bool IsPouredInPart => Has(KindTrait.PouredInPart);

    /// <summary>Whether it is a plant part that is strained out.</summary>
    public bool IsBotanical => Has(KindTrait.Botanical);

    /// <summary>Whether it is a fresh part of a plant.</summary>
    public bool IsFreshPlant => Has(KindTrait.FreshPlant);

    /// <summary>Whether a guest who reads its name expects it in the glass.</summary>
    public bool IsNamedOnMenus => Has(KindTrait.NamedOnMenus);

    /// <summary>Whether it comes in pieces.</summary>
    public bool ComesInPieces => Has(KindTrait.Pieces);

    /// <summary>Whether some of its kind come in pieces.</summary>
    public bool MayComeInPieces => Has(KindTrait.MayBePieces);

    /// <summary>Whether potassium without a pH leaves its pH open.</summary>
    public bool HasPlantPh => Has(KindTrait.PhOfPlants);

    /// <summary>Whether it is a plant part that perishes where it is kept cold.</summary>
    public bool IsPerishablePlant => Has(KindTrait.PerishablePlant);

    /// <summary>Whether it is a brew or mixture of plants that perishes where it is kept cold.</summary>
    public bool IsPerishableBrew => Has(KindTrait.PerishableBrew);

    /// <summary>Whether the dry good perishes like a plant once it is wet.</summary>
    public bool PerishesWet => Has(KindTrait.PerishesWet);

    /// <summary>Whether it is seeds.</summary>
    public bool IsSeed => Has(KindTrait.Seed);

    /// <summary>Whether it is a gum or starch.</summary>
    public bool IsGum => Has(KindTrait.Gum);

    /// <summary>Whether it is a spice.</summary>
    public bool IsSpice => Has(KindTrait.Spice);

    /// <summary>Whether a bought one is alive.</summary>
    public bool IsLiveCulture => Has(KindTrait.LiveCulture);

    /// <summary>Whether it may hold sugar that its file does not give.</summary>
    public bool MayHoldSugar => Has(KindTrait.MayHoldSugar);

    /// <summary>Whether it may hold acid that its file does not give.</summary>
    public bool MayHoldAcid => Has(KindTrait.MayHoldAcid);

    /// <summary>Whether the kind tells nothing of its composition.</summary>
    public bool IsUnspecified => Has(KindTrait.UnknownComposition);

    /// <summary>Whether it is sugar.</summary>
    public bool IsSugar => Has(KindTrait.Sugar);

    /// <summary>Whether it is syrup.</summary>
    public bool IsSyrup => Has(KindTrait.Syrup);

    /// <summary>Whether it is honey.</summary>
    public bool IsHoney => Has(KindTrait.Honey);

    /// <summary>Whether it is sugar, syrup or honey.</summary>
    public bool Sweetens => Has(KindTrait.Sweetens);

    /// <summary>Whether it is what sweetens a drink.</summary>
    public bool IsSweetPour => Has(KindTrait.SweetPour);

    /// <summary>Whether it is an acid.</summary>
    public bool IsAcid => Has(KindTrait.Acid);

    /// <summary>Whether it is salt, dry or dissolved.</summary>
    public bool IsSalt => Has(KindTrait.Salt);

    /// <summary>Whether it is dry salt.</summary>
    public bool IsDrySalt => Has(KindTrait.DrySalt);

    /// <summary>Whether it is milk or cream.</summary>
    public bool IsDairy => Has(KindTrait.Dairy);

    /// <summary>Whether it is a milk of plants.</summary>
    public bool IsPlantMilk => Has(KindTrait.PlantMilk);

    /// <summary>Whether it is egg.</summary>
    public bool IsEgg => Has(KindTrait.Egg);

    /// <summary>Whether it is fat or oil.</summary>
    public bool IsFat => Has(KindTrait.Fat);

    /// <summary>Whether it is nuts.</summary>
    public bool IsNut => Has(KindTrait.Nut);

    /// <summary>Whether it is added to foam.</summary>
    public bool Foams => Has(KindTrait.Foams);

    /// <summary>Whether it is a preservative.</summary>
    public bool Preserves => Has(KindTrait.Preserves);

    /// <summary>Whether it is water.</summary>
    public bool IsWater => Has(KindTrait.Water);

    /// <summary>Whether it is ice.</summary>
    public bool IsIce => Has(KindTrait.Ice);

    /// <summary>Whether it is a gas.</summary>
    public bool IsGas => Has(KindTrait.Gas);

    /// <summary>Whether it is tea or coffee.</summary>
    public bool IsBrew => Has(KindTrait.Brew);

    /// <summary>Whether a little of it does a lot, so that it is weighed.</summary>
    public bool IsPotentPowder => Has(KindTrait.PotentPowder);

    /// <summary>Whether it dissolves, so that too little for the scale can go in as a solution.</summary>
    public bool IsSoluble => Has(KindTrait.Soluble);

    /// <summary>Whether its ions come with their counter-ions and its file gives no pH to fit.</summary>
    public bool BindsIons => Has(KindTrait.BoundIons);

    /// <summary>Whether it is dosed by drops and spoons.</summary>
    public bool IsDosed => Has(KindTrait.Dosed);

    /// <summary>Whether it feeds nothing that grows.</summary>
    public bool FeedsNothing => Has(KindTrait.FeedsNothing);

    /// <summary>Whether it has no acid to speak of.</summary>
    public bool IsAcidFree => Has(KindTrait.AcidFree);

    /// <summary>Whether strong spirit keeps it from yeasts and moulds.</summary>
    public bool IsKeptBySpirit => Has(KindTrait.KeptBySpirit);

    /// <summary>Whether it is left out of a batch and added at service.</summary>
    public bool IsAddedAtService => Has(KindTrait.AddedAtService);

    /// <summary>Whether it is a food, and not an added substance.</summary>
    public bool IsFood => Has(KindTrait.FoodOfItsOwn);

    /// <summary>Whether it is what sulphite comes with.</summary>
    public bool MayBringSulphite => Has(KindTrait.MayBringSulphite);

    /// <summary>Whether its caffeine may be added.</summary>
    public bool MayHoldAddedCaffeine => Has(KindTrait.MayHoldAddedCaffeine);

    /// <summary>Whether it holds air, so that volumes say little.</summary>
    public bool HoldsAir => Has(KindTrait.HoldsAir);

    /// <summary>Whether it is bought in bottles, made by somebody who answers for what is in it.</summary>
    public bool IsBottled => Has(KindTrait.Bottled);

    /// <summary>Whether it is beer.</summary>
    public bool IsBeer => Has(KindTrait.Beer);

    /// <summary>Whether a drink stays clear with it.</summary>
    public bool IsClear => Has(KindTrait.Clear);

    /// <summary>Whether such products often hold an allergen.</summary>
    public bool MayHoldAllergen => Has(KindTrait.MayHoldAllergen);

    private bool Has(KindTrait trait) => traits.Has((int)trait);
}

/// <summary>The yes-or-no traits of a kind; each has its property in <see cref="ItemKind"/>.</summary>
internal enum KindTrait
{
    Spirit,
    Strong,
    StrengthGiven,
    Burns,
    Manifold,
    BoughtReady,
    Liqueur,
    Bitters,
    Sparkling,
    Lengthens,
    Juice,
    Puree,
    Sours,
    PouredInPart,
    Botanical,
    FreshPlant,
    NamedOnMenus,
    Pieces,
    MayBePieces,
    PhOfPlants,
    PerishablePlant,
    PerishableBrew,
    PerishesWet,
    Seed,
    Gum,
    Spice,
    LiveCulture,
    MayHoldSugar,
    MayHoldAcid,
    UnknownComposition,
    Sugar,
    Syrup,
    Honey,
    Sweetens,
    SweetPour,
    Acid,
    Salt,
    DrySalt,
    Dairy,
    PlantMilk,
    Egg,
    Fat,
    Nut,
    Foams,
    Preserves,
    Water,
    Ice,
    Gas,
    Brew,
    PotentPowder,
    Soluble,
    BoundIons,
    Dosed,
    FeedsNothing,
    AcidFree,
    KeptBySpirit,
    AddedAtService,
    FoodOfItsOwn,
    MayBringSulphite,
    MayHoldAddedCaffeine,
    HoldsAir,
    Bottled,
    Beer,
    Clear,
    MayHoldAllergen,
}
