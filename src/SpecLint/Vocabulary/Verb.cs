namespace SpecLint.Vocabulary;

/// <summary>What a verb is for, in the run of a method.</summary>
public enum VerbGroup
{
    /// <summary>Not known.</summary>
    Unknown,

    /// <summary>Mixes with ice and dilutes.</summary>
    Chill,

    /// <summary>Brings together what the recipe lists.</summary>
    Gather,

    /// <summary>Extracts, dissolves, heats or grows.</summary>
    Work,

    /// <summary>Takes solids out.</summary>
    Strain,

    /// <summary>Pours out what is there, with its ice and its solids.</summary>
    Pour,

    /// <summary>Tops, dresses or garnishes.</summary>
    Finish,

    /// <summary>Cools, stores or labels.</summary>
    Keep,
}

/// <summary>How finely a verb strains.</summary>
public enum Straining
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Holds ice, peel and pieces back.</summary>
    Coarse,

    /// <summary>Holds pulp back.</summary>
    Fine,

    /// <summary>Leaves it clear.</summary>
    Clear,
}

/// <summary>The verb of a step, with all that rules ask about it. A new verb is a row of <c>verbs.json</c>.</summary>
public sealed class Verb : Word
{
    private readonly Traits traits;
    private readonly string onIce = "";

    private Verb(string word)
        : base(word, isKnown: false)
    {
    }

    internal Verb(string id, VerbGroup group, Traits traits, Straining straining, TechniqueKind technique, string past, string onIce)
        : base(id, isKnown: true)
    {
        Group = group;
        this.traits = traits;
        Straining = straining;
        Technique = technique;
        Past = past;
        this.onIce = onIce;
    }

    /// <summary>The verb of a step that gives none.</summary>
    public static Verb None { get; } = new("");

    /// <summary>All verbs, in the order of the table.</summary>
    public static FixedList<Verb> All => VerbTable.All;

    /// <summary>All words for verbs: ids, and behind them the synonyms.</summary>
    public static IReadOnlyCollection<string> Words => VerbTable.Words;

    /// <summary>The verb that a word means; a verb without traits where the table does not have it.</summary>
    public static Verb Of(string word) => VerbTable.Find(word) ?? new Verb(word);

    /// <summary>What it is for.</summary>
    public VerbGroup Group { get; }

    /// <summary>How a drink is chilled by it; <see cref="TechniqueKind.NoIce"/> where it does not chill.</summary>
    public TechniqueKind Technique { get; } = TechniqueKind.NoIce;

    /// <summary>
    /// What the same word means in a step that names ice: a julep is churned with a
    /// spoon, a sorbet in a machine. Itself for most verbs.
    /// </summary>
    internal Verb OnIce => onIce.Length == 0 ? this : Of(onIce);

    /// <summary>How finely it strains.</summary>
    public Straining Straining { get; }

    /// <summary>The participle, as in "the drink is shaken".</summary>
    public string Past { get; } = "mixed";

    /// <summary>Whether it mixes with ice: it chills and dilutes.</summary>
    public bool Chills => Group == VerbGroup.Chill;

    /// <summary>Whether it mixes, extracts or chills: there is something to strain after it.</summary>
    public bool Works => Group is VerbGroup.Chill or VerbGroup.Gather or VerbGroup.Work;

    /// <summary>Whether it takes solids out.</summary>
    public bool Strains => Straining != Straining.None;

    /// <summary>Whether it only stores, cools or labels: nothing goes in.</summary>
    public bool Keeps => Group == VerbGroup.Keep;

    /// <summary>Whether it brings in water: from ice, or as such.</summary>
    public bool Dilutes => Has(VerbTrait.Dilutes);

    /// <summary>Whether what it works on is shut in: a shaker, a blender, a bag.</summary>
    public bool ClosesVessel => Has(VerbTrait.ClosesVessel);

    /// <summary>Whether it drives gas out by moving the liquid hard.</summary>
    public bool Agitates => Has(VerbTrait.Agitates);

    /// <summary>Whether it beats air in.</summary>
    public bool Aerates => Has(VerbTrait.Aerates);

    /// <summary>Whether it is a shake without ice by its very word, as a dry shake is: shut in, beaten, and nothing chilled.</summary>
    public bool ShakesDry => ClosesVessel && Aerates && LeavesIce && !Chills;

    /// <summary>Whether the ice that the step names stays behind and does not stand in the glass.</summary>
    public bool LeavesIce => Has(VerbTrait.LeavesIce);

    /// <summary>Whether a step that names no item takes in all that the recipe lists.</summary>
    public bool TakesAll => Has(VerbTrait.TakesAll);

    /// <summary>Whether it puts in what it names, and does nothing else.</summary>
    public bool Adds => Has(VerbTrait.Adds);

    /// <summary>Whether it puts a drink together in its glass.</summary>
    public bool Builds => Has(VerbTrait.Builds);

    /// <summary>Whether ice that the step names stands in the glass.</summary>
    public bool IcesGlass => Has(VerbTrait.IcesGlass);

    /// <summary>Whether it strains with a strainer, sieve or filter, so that something must have been mixed before.</summary>
    public bool UsesStrainer => Has(VerbTrait.UsesStrainer);

    /// <summary>Whether it brings the liquid into another vessel or the glass.</summary>
    public bool Pours => Has(VerbTrait.Pours);

    /// <summary>Whether it draws from a keg, a tap or a cold bottle.</summary>
    public bool Draws => Has(VerbTrait.Draws);

    /// <summary>Whether it lengthens a drink after its technique.</summary>
    public bool Tops => Has(VerbTrait.Tops);

    /// <summary>Whether it lays a part on the finished drink.</summary>
    public bool Floats => Has(VerbTrait.Floats);

    /// <summary>Whether it adds after the technique: it tops or floats.</summary>
    public bool AddsLast => Tops || Floats;

    /// <summary>Whether it warms, however little.</summary>
    public bool Heats => Has(VerbTrait.Heats);

    /// <summary>Whether it heats until what it works on is cooked.</summary>
    public bool Cooks => Has(VerbTrait.Cooks);

    /// <summary>Whether it brings to the boil.</summary>
    public bool Boils => Has(VerbTrait.Boils);

    /// <summary>Whether it drives off water as steam, so that the yield decides how strong it becomes.</summary>
    public bool BoilsDown => Has(VerbTrait.BoilsDown);

    /// <summary>Whether it dries.</summary>
    public bool Dries => Has(VerbTrait.Dries);

    /// <summary>Whether it heats in air and not in a liquid.</summary>
    public bool HeatsDry => Has(VerbTrait.HeatsDry);

    /// <summary>Whether it drives the gas out.</summary>
    public bool Degasses => Has(VerbTrait.Degasses);

    /// <summary>Whether the word claims a pasteurisation.</summary>
    public bool Pasteurises => Has(VerbTrait.Pasteurises);

    /// <summary>Whether it is a treatment that is made to kill germs.</summary>
    public bool KillsGerms => Has(VerbTrait.KillsGerms);

    /// <summary>Whether it ends a fermentation.</summary>
    public bool StopsFerment => Has(VerbTrait.StopsFerment);

    /// <summary>Whether it cools without ice in the drink.</summary>
    public bool Cools => Has(VerbTrait.Cools);

    /// <summary>Whether it freezes.</summary>
    public bool Freezes => Has(VerbTrait.Freezes);

    /// <summary>Whether it makes a slush.</summary>
    public bool Slushes => Has(VerbTrait.Slushes);

    /// <summary>Whether it lets microbes work.</summary>
    public bool Ferments => Has(VerbTrait.Ferments);

    /// <summary>Whether it dissolves carbon dioxide under pressure.</summary>
    public bool Carbonates => Has(VerbTrait.Carbonates);

    /// <summary>Whether a gum takes up water by it.</summary>
    public bool Hydrates => Has(VerbTrait.Hydrates);

    /// <summary>Whether it dissolves a solid.</summary>
    public bool Dissolves => Has(VerbTrait.Dissolves);

    /// <summary>Whether it draws flavour out of a solid.</summary>
    public bool Extracts => Has(VerbTrait.Extracts);

    /// <summary>Whether it takes out what clouds.</summary>
    public bool Clarifies => Has(VerbTrait.Clarifies);

    /// <summary>Whether it shuts the vessel in which it is kept.</summary>
    public bool Seals => Has(VerbTrait.Seals);

    /// <summary>Whether it sets something alight.</summary>
    public bool SetsAlight => Has(VerbTrait.SetsAlight);

    /// <summary>Whether it uses dry ice.</summary>
    public bool UsesDryIce => Has(VerbTrait.UsesDryIce);

    /// <summary>Whether it uses liquid nitrogen.</summary>
    public bool UsesLiquidNitrogen => Has(VerbTrait.UsesLiquidNitrogen);

    /// <summary>Whether it takes a few seconds only.</summary>
    public bool IsBrief => Has(VerbTrait.Brief);

    /// <summary>Whether it opens what was closed.</summary>
    public bool Opens => Has(VerbTrait.Opens);

    /// <summary>Whether it distils.</summary>
    public bool Distils => Has(VerbTrait.Distils);

    /// <summary>Whether it fills with the smoke of something that smoulders.</summary>
    public bool Smokes => Has(VerbTrait.Smokes);

    /// <summary>Whether it coats the rim of the glass.</summary>
    public bool Rims => Has(VerbTrait.Rims);

    /// <summary>Whether it crushes with a muddler.</summary>
    public bool Muddles => Has(VerbTrait.Muddles);

    /// <summary>Whether it works in a bag or under vacuum.</summary>
    public bool Bags => Has(VerbTrait.Bags);

    /// <summary>Whether its purpose is to leave less: a reduction.</summary>
    public bool Reduces => Has(VerbTrait.Reduces);

    /// <summary>Whether it chills the empty glass.</summary>
    public bool CoolsGlass => Has(VerbTrait.CoolsGlass);

    /// <summary>Whether it warms the empty glass.</summary>
    public bool WarmsGlass => Has(VerbTrait.WarmsGlass);

    private bool Has(VerbTrait trait) => traits.Has((int)trait);
}

/// <summary>The yes-or-no traits of a verb; each has its property in <see cref="Verb"/>.</summary>
internal enum VerbTrait
{
    Dilutes,
    ClosesVessel,
    Agitates,
    Aerates,
    LeavesIce,
    TakesAll,
    Adds,
    Builds,
    IcesGlass,
    UsesStrainer,
    Pours,
    Draws,
    Tops,
    Floats,
    Heats,
    Cooks,
    Boils,
    BoilsDown,
    Dries,
    HeatsDry,
    Pasteurises,
    KillsGerms,
    StopsFerment,
    Cools,
    Freezes,
    Slushes,
    Ferments,
    Carbonates,
    Hydrates,
    Dissolves,
    Extracts,
    Clarifies,
    Seals,
    SetsAlight,
    UsesDryIce,
    UsesLiquidNitrogen,
    Brief,
    Opens,
    Distils,
    Smokes,
    Rims,
    Muddles,
    Bags,
    Reduces,
    Degasses,
    CoolsGlass,
    WarmsGlass,
}
