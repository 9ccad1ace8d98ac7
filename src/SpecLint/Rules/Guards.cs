using SpecLint.Catalogue;

namespace SpecLint.Rules;

/// <summary>
/// Numbers that decide when a rule speaks, or what a part counts as, from the table of limits: what a finding holds against
/// its recipe is a limit of the rule's own.
/// </summary>
internal static class Guards
{
    /// <summary>
    /// Least share of what is written that a corrected amount may come to; under it the part would as good as go, and no amount is offered
    /// (a pure number).
    /// </summary>
    public static readonly double LeastFactor = Limits.Of("guard-least-factor").Value;

    /// <summary>
    /// °Brix from which the density of a syrup sets grams in 100 g and in 100 mL more than the tolerance of a target apart (%).
    /// </summary>
    public static readonly double LeastBrix = Limits.Of("guard-brix-least").Value;

    /// <summary>Largest distance of a figure of °Brix from another that is taken for the same (%).</summary>
    public static readonly double BrixAgrees = Limits.Of("guard-brix-agrees").Value;

    /// <summary>Acid of what a preparation stands in for, under which there is nothing to stand in for (g/100 mL).</summary>
    public static readonly double LeastModelAcid = Limits.Of("guard-model-acid-least").Value;

    /// <summary>Share of tartaric acid by mass over which an acid part counts as tartaric (a pure number).</summary>
    public static readonly double TartaricPart = Limits.Of("guard-tartaric-part").Value;

    /// <summary>Share of potassium by mass over which a part brings potassium as fruit juice does (a pure number).</summary>
    public static readonly double PotassiumOfJuice = Limits.Of("guard-potassium-juice").Value;

    /// <summary>Least cream of tartar that falls and is worth a word (g/100 mL).</summary>
    public static readonly double LeastTartrate = Limits.Of("guard-tartrate-haze-least").Value;

    /// <summary>Share of fat by mass over which a density is not computed from sugar, acid and alcohol (a pure number).</summary>
    public static readonly double FatBendsDensity = Limits.Of("guard-density-fat").Value;

    /// <summary>Least citric acid of a bought dry acid, monohydrate (91.4) and impure ones included (g/100 g).</summary>
    public static readonly double DryCitric = Limits.Of("guard-dry-citric-least").Value;

    /// <summary>Purity under which a lactic, phosphoric or acetic acid is sold as a solution (%).</summary>
    public static readonly double DryAcidPurity = Limits.Of("guard-dry-acid-purity").Value;

    /// <summary>Strength by mass up to which lactic and phosphoric acid are sold as solutions (%).</summary>
    public static readonly double StrongestAcidSolution = Limits.Of("guard-strongest-acid-solution").Value;

    /// <summary>Largest distance of a share written in whole percent from the amounts, rounding allowed for (%).</summary>
    public static readonly double ShareRounding = Limits.Of("guard-share-rounding").Value;

    /// <summary>Most pieces that an amount in ounces is read as (a pure number).</summary>
    public static readonly double CountablePieces = Limits.Of("guard-countable-pieces").Value;

    /// <summary>Highest strength of a kind over which proof can be told from percent (% vol).</summary>
    public static readonly double KindStrength = Limits.Of("guard-kind-strength-least").Value;

    /// <summary>Ethanol by mass over which something named in a text counts as alcoholic (a pure number).</summary>
    public static readonly double TextEthanol = Limits.Of("guard-text-ethanol").Value;

    /// <summary>Strength from which a spirit is rectified alcohol (% vol).</summary>
    public static readonly double RectifiedStrength = Limits.Of("guard-rectified-strength").Value;

    /// <summary>Strength above the overproof rums, from which a spirit's figure is taken for proof (% vol).</summary>
    public static readonly double OverproofStrength = Limits.Of("guard-overproof-strength").Value;

    /// <summary>Strength under which twice the strength says nothing of proof (% vol).</summary>
    public static readonly double LeastStrengthForRatio = Limits.Of("guard-ratio-strength-least").Value;

    /// <summary>Most drops that a spec counts out (a pure number).</summary>
    public static readonly double MostDropsWritten = Limits.Of("guard-drops-written").Value;

    /// <summary>Barspoons from which the size of the spoon weighs (a pure number).</summary>
    public static readonly double SpoonsThatCount = Limits.Of("guard-spoons").Value;

    /// <summary>
    /// Strength under which a spirit or aperitif is one of the alcohol-free kind: the 1.2 % vol of the law on labelling, and rounding (%
    /// vol).
    /// </summary>
    public static readonly double AlcoholFreeStandIn = Limits.Of("guard-alcohol-free-kind").Value;

    /// <summary>Highest strength of a kind over which a slip of the decimal point can be told (% vol).</summary>
    public static readonly double TenfoldKind = Limits.Of("guard-tenfold-kind-least").Value;

    /// <summary>Share of fat by mass over which a part makes a drink creamy, as milk does (a pure number).</summary>
    public static readonly double CreamyFat = Limits.Of("guard-creamy-fat").Value;

    /// <summary>Most millilitres that are taken for drops with the wrong unit (a pure number).</summary>
    public static readonly double MostMillilitresForDrops = Limits.Of("guard-drops-as-millilitres").Value;

    /// <summary>Ratio of two amounts over which a text speaks of another size of batch (a pure number).</summary>
    public static readonly double OtherSize = Limits.Of("guard-other-size").Value;

    /// <summary>Share of benzoic or sorbic acid by mass over which a part is the preservative (a pure number).</summary>
    public static readonly double PreservativePart = Limits.Of("guard-preservative-part").Value;

    /// <summary>Share of acetic acid by mass over which a part sours like vinegar (a pure number).</summary>
    public static readonly double VinegarPart = Limits.Of("guard-vinegar-part").Value;

    /// <summary>Size of a batch over its drink from which dashes are looked at (a pure number).</summary>
    public static readonly double BatchFactor = Limits.Of("guard-batch-factor").Value;

    /// <summary>Distance from a whole number up to which a count is whole (a pure number).</summary>
    public static readonly double WholePiece = Limits.Of("guard-whole-piece").Value;

    /// <summary>Temperature from which down a bottle is kept to be poured frozen cold; a refrigerator is warmer (°C).</summary>
    public static readonly double FreezerWarmest = Limits.Of("guard-freezer-warmest").Value;

    /// <summary>Temperature up to which a drink that is kept cold needs no ice (°C).</summary>
    public static readonly double KeptCold = Limits.Of("guard-kept-cold").Value;

    /// <summary>Share of a solute in water by mass, under which it surely dissolves (a pure number).</summary>
    public static readonly double SolidLeast = Limits.Of("guard-dissolved-least").Value;

    /// <summary>Factor over a solubility up to which a figure is taken for rounding (a pure number).</summary>
    public static readonly double SolubilityRounding = Limits.Of("guard-solubility-rounding").Value;

    /// <summary>Share of sucrose by mass from which a syrup can crystallise (a pure number).</summary>
    public static readonly double SucroseShare = Limits.Of("guard-sucrose-share").Value;

    /// <summary>Other sugars, as a share of the sucrose, over which they keep it from crystallising (a pure number).</summary>
    public static readonly double OtherSugars = Limits.Of("guard-other-sugars").Value;

    /// <summary>Share of ethanol by mass over which the solubility in water does not apply (a pure number).</summary>
    public static readonly double SpiritedSyrup = Limits.Of("guard-spirited-syrup").Value;

    /// <summary>Factor of rounding at a whole number of steps of a scale (a pure number).</summary>
    public static readonly double ScaleRounding = Limits.Of("guard-scale-rounding").Value;

    /// <summary>Bitters over spirit, by volume, up to which the spirit is the base (a pure number).</summary>
    public static readonly double BittersBesideSpirit = Limits.Of("guard-bitters-beside-spirit").Value;

    /// <summary>Citric acid over that of the monohydrate from which the entry cannot be it (%).</summary>
    public static readonly double MonohydrateOver = Limits.Of("guard-monohydrate-over").Value;

    /// <summary>Factor over a purity up to which a content is taken for rounding (a pure number).</summary>
    public static readonly double PurityRounding = Limits.Of("guard-purity-rounding").Value;

    /// <summary>Relative distance up to which an amount is the conversion of another (a pure number).</summary>
    public static readonly double ExactAmount = Limits.Of("guard-exact-amount").Value;

    /// <summary>Relative distance up to which a percentage is the one in the name (a pure number).</summary>
    public static readonly double NamedPercentage = Limits.Of("guard-named-percentage").Value;

    /// <summary>Distance of percentages that rounding to one decimal leaves (%).</summary>
    public static readonly double PercentageRounding = Limits.Of("guard-percentage-rounding").Value;

    /// <summary>Strength over the highest of the kind from which proof is suspected (a pure number).</summary>
    public static readonly double ProofOver = Limits.Of("guard-proof-over").Value;

    /// <summary>Half the strength over the least of the kind, from which it fits (a pure number).</summary>
    public static readonly double ProofLow = Limits.Of("guard-proof-low").Value;

    /// <summary>Half the strength over the highest of the kind, up to which it fits (a pure number).</summary>
    public static readonly double ProofHigh = Limits.Of("guard-proof-high").Value;

    /// <summary>Degrees of US proof in 1 % vol (a pure number).</summary>
    public static readonly double ProofRatio = Limits.Of("guard-proof-ratio").Value;

    /// <summary>Share of protein by mass over which a creamy liqueur can curdle (a pure number).</summary>
    public static readonly double CurdProtein = Limits.Of("guard-curd-protein").Value;

    /// <summary>Share of the top by volume over which the top makes the size (a pure number).</summary>
    public static readonly double MostlyTop = Limits.Of("guard-mostly-top").Value;

    /// <summary>Share of all salt from which one part is what salts it (a pure number).</summary>
    public static readonly double MainSalt = Limits.Of("guard-main-salt").Value;

    /// <summary>Share of sorbitol by mass over which a sugar is a polyol (a pure number).</summary>
    public static readonly double PolyolPowder = Limits.Of("guard-polyol-powder").Value;

    /// <summary>Share of the least water of a batch from which a batch counts as diluted (a pure number).</summary>
    public static readonly double WateredBatch = Limits.Of("guard-watered-batch").Value;

    /// <summary>Share by mass from which a batch is most of a drink and no seasoning (a pure number).</summary>
    public static readonly double BatchShare = Limits.Of("guard-batch-share").Value;

    /// <summary>Factor over the least ice that a proposed temperature reaches (a pure number).</summary>
    public static readonly double SlushColder = Limits.Of("guard-slush-colder").Value;

    /// <summary>Relative distance up to which a yield is the plain sum of the inputs (a pure number).</summary>
    public static readonly double SumYield = Limits.Of("guard-sum-yield").Value;

    /// <summary>Difference of two prices up to which they are the same number (a pure number).</summary>
    public static readonly decimal SamePrice = (decimal)Limits.Of("guard-same-price").Value;

    /// <summary>Relative difference up to which two rates of exchange are the same (a pure number).</summary>
    public static readonly decimal SameRate = (decimal)Limits.Of("guard-same-rate").Value;

    /// <summary>Relative difference up to which two sizes of bottle are one (a pure number).</summary>
    public static readonly double SameBottle = Limits.Of("guard-same-bottle").Value;
}
