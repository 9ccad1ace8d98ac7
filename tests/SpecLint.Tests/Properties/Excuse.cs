using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Service;

namespace SpecLint.Tests.Properties;

/// <summary>A book after something was taken out of it.</summary>
/// <param name="After">The checked book.</param>
/// <param name="Path">The file that it was taken out of.</param>
/// <param name="Subject">The id of what the finding was about.</param>
internal sealed record Forgotten(CheckResult After, string Path, string Subject)
{
    /// <summary>The preparation that the finding was about, else the one that something was taken out of.</summary>
    public Prep? Prep => After.Book.Preps.FirstOrDefault(p => p.Id == Subject) ?? After.Book.Preps.FirstOrDefault(p => p.Source.Path == Path);

    /// <summary>Whether another finding of a rule stands on the subject.</summary>
    public bool Has(string rule, Level least) => After.Findings.Flat().Any(f => f.Rule.Id == rule && f.Subject == Subject && f.Level >= least);

    /// <summary>Whether the preparation is not shown to hold anything that needs cold.</summary>
    public bool NeedsNoCold =>
        Prep is { } prep
            && After.Profiles.Of(prep).Keeping is { } state
            && (!state.HoldsPerishable || state.Verdict == KeepingVerdict.NotControlled || state.IsDried);
}

/// <summary>
/// A harm finding that may go when something is no longer known, why, and where. Each is about the very thing taken out, and of
/// nothing that stays; the condition is checked on the book as it is afterwards.
/// </summary>
/// <param name="Rule">The rule whose finding may go.</param>
/// <param name="Words">Properties of which one was taken out.</param>
/// <param name="Because">Why nobody is worse off.</param>
/// <param name="If">What must hold afterwards.</param>
internal sealed record Excuse(string Rule, string[] Words, string Because, Func<Forgotten, bool> If)
{
    private static readonly double HotPour = global::SpecLint.Catalogue.Limits.Of("hot-pour").Value;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Excuse> All { get; } =
    [
        new(
            "SL8033", ["to", "at"], "Nothing says any more that something hot goes into the glass.",
            static f => f.After.Book.Recipes.Any(r => r.Source.Path == f.Path
                && !r.Method.Any(static s => (s.At.IsGiven && s.At.Value.Base >= HotPour) || (s.To.IsGiven && s.To.Value.Base >= HotPour)))),
        new(
            "SL8033", ["vessel", "into", "glass"],
            "Nothing says any more that it is the glass that is chilled: a step that chills a vessel not named chills the drink.", Always),
        new(
            "SL5004",
            ["measured", "brix", "ph", "mass", "volume", "abv", "density", "yield"],
            "The reading or the yield that contradicts the amounts is gone, and it clears nothing any more.",
            Always),
        new(
            "SL5004",
            ["until", "to", "at", "for", "file"],
            "The method or a part is another one now, so that the reading is of the recipe before the change and clears nothing.",
            static f => f.After.Findings.Flat().Any(x => x.Rule.Id == "SL5033" && x.Subject == f.Subject) || f.Prep?.Measured is null),
        new(
            "SL5038", ["until", "to", "at", "for", "file", "yield"],
            "The method or a part is another one now, so that the reading is of the recipe before the change and clears nothing.",
            static f => f.After.Findings.Flat().Any(x => x.Rule.Id == "SL5033" && x.Subject == f.Subject)),
        new(
            "SL5038", ["measured", "brix", "ph", "mass", "volume", "abv", "waterActivity", "until"],
            "The impossible reading is gone, and it clears nothing any more.", Always),
        new(
            "SL5003",
            ["measured", "ph", "waterActivity"],
            "A reading next to the limit cleared nothing, and neither does none: the rules that ask for one speak where it matters.",
            static f => f.NeedsNoCold || Asks(f) || IsKeptCold(f)),
        new("SL5013", ["measured", "waterActivity"], "The reading said that it holds more free water than its amounts come to; what stays asks for one.", Asks),
        new(
            "SL5025",
            ["measured", "brix"],
            "The reading that said that it is thin is gone, and by its amounts it is a rich syrup.",
            static f => f.Prep is { } prep
                && f.After.Profiles.Of(prep).Get(global::SpecLint.Vocabulary.Fact.Brix) is { IsKnown: true, Low: > 65 }),
        new("SL5011", ["measured", "ph", "meter"], "The reading whose meter is not known is gone, and it clears nothing any more.", Always),
        new("SL5015", ["target"], "Nothing says any more what it should come to; what it must come to is asked by the rules of keeping.", Always),
        new(
            "SL5023",
            ["measured", "waterActivity", "yield"],
            "The reading or the yield was all that said that it is moist: its parts are dry, or the rule of drying asks how dry it is.",
            static f => AllDry(f)
                || f.Has("SL5022", Level.Warning)
                || f.Prep is { } prep && f.After.Profiles.Of(prep).Keeping is { IsDried: true }),
        new(
            "SL5022", ["until", "amount"], "The end that could not be is gone, and another is asked for.",
            static f => f.Has("SL5022", Level.Warning) || f.Has("SL5015", Level.Warning)),
        new("SL5024", ["keep", "claim"], "The claim that it keeps by a preservative is gone.", Always),
        new(
            "SL7040", ["allergens", "exempt", "allergen", "in", "because"],
            "Without its exemption nothing is exempted, and the list or the asking for one says what is in it.",
            static f => f.Has("SL7008", Level.Note) || f.After.Profiles.MaterialOf(f.Subject) is { Ingredient.Allergens: { SaysWhatItContains: true } }),
        new(
            "SL7038", ["allergens", "exempt", "allergen", "because"],
            "The exemption that could not be is gone: the allergens of what it is like stand again, or are asked for.",
            static f => f.Has("SL7008", Level.Note) || f.After.Profiles.MaterialOf(f.Subject) is { Ingredient.Allergens: { SaysWhatItContains: true } }),
        .. new[] { "SL5001", "SL5013", "SL5025" }.Select(static rule => new Excuse(
            rule,
            ["measured", "ph"],
            "The reading that said that it is not sour is gone, and by its amounts it is: a rule of keeping asks for one, or tells of "
                + "yeasts and moulds.",
            static f => f.After.Findings.Flat().Any(x => x.Rule.Id is "SL5001" or "SL5002" or "SL5013" or "SL5025" or "SL5026" && x.Subject == f.Subject))),
        new(
            "SL5032",
            ["measured", "ph"],
            "The reading that said that it is not sour is gone, and by its amounts it is.",
            static f => f.After.Book.Preps.Any(p => p.Source.Path == f.Path && f.After.Profiles.Of(p).Keeping is { IsSour: true })),
        new(
            "SL5032",
            ["for"],
            "A step that heats up to a temperature and says no more is done in minutes: only its time said that it stood there.",
            static f => f.Prep is { } prep && prep.Method.Any(static s => s.Verb.Heats && s.To.IsGiven && !s.At.IsGiven && !s.For.IsGiven)),
        new(
            "SL5039",
            ["keep"],
            "Nothing says any more that it is held hot: it is judged as what stands in the cold, or where nobody knows.",
            static f => f.Prep is { Keep: null }),
        new(
            "SL5002",
            ["strength", "keepsCold"],
            "Without its strength, or the word that it keeps, it is food that needs cold by what it is made of, and has its date mark.",
            static f => Asks(f) || IsKeptCold(f)),
        new(
            "SL5021", ["to", "at"], "Nothing says any more that it is made hot: no step of it is one that heats.",
            static f => f.After.Book.Recipes.Any(r => r.Source.Path == f.Path && !r.Method.Any(static s => s.Verb.Heats))),
        new("SL5030", ["keep", "claim"], "The claim that goes too far is gone.", Always),
        new(
            "SL5017",
            ["in", "keep"],
            "Without the bag nothing says that it is packed without air, and the rules for any food that needs cold hold.",
            static f => f.NeedsNoCold || Asks(f) || IsKeptCold(f)),
        new(
            "SL5005",
            ["at"],
            "For at most four hours time takes the place of cold, and no temperature is asked for (Food Code 3-501.19).",
            static f => f.Prep is { } prep && Storage.Days(prep) * 24 <= 4),
        new(
            "SL5039",
            ["at"],
            "For at most four hours time takes the place of heat, and no temperature is asked for (Food Code 3-501.19); or nothing says any more "
                + "that it is held hot, and strong spirit or what it is made of keeps it.",
            static f => f.Prep is { } prep
                && (Storage.Days(prep) * 24 <= 4 || f.NeedsNoCold || f.After.Profiles.Of(prep).Keeping is { IsStrong: true })),
        .. new[] { "SL5001", "SL5002", "SL5005", "SL5013", "SL5019" }.Select(static rule => new Excuse(
            rule,
            ["allergens", "contains"],
            "No nut is named any more, and who writes no list of allergens for an own file is asked for it.",
            Always)),
        new(
            "SL6024",
            ["strength"],
            "What states no strength has that of its kind, which is none.",
            static f => f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path && !i.IngredientKind.Or(ItemKind.None).GivesStrength)),
        new(
            "SL5013",
            ["ph"],
            "A vinegar that states no pH has that of vinegar.",
            static f => f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path && i.IngredientKind.Or(ItemKind.None).Id == "vinegar")),
        new(
            "SL7001",
            ["allergens", "contains"],
            "An own file without a list is asked for one (SL7008), unless it has that of what it is like, or is a fruit, herb, juice, spirit, "
                + "sugar, acid or salt, which holds none that its name does not say.",
            static f => f.After.Findings.Flat().Any(x => x.Rule.Id == "SL7008" && x.Place.File.Path == f.Path)
                || f.After.Book.Ingredients.Any(i =>
                    i.Source.Path == f.Path && (i.Like.IsGiven || i.IngredientKind.OrNone() is { IsKnown: true, MayHoldAllergen: false }))),
        new(
            "SL5007", ["keep", "for"], "The part no longer says how long it keeps; what needs cold has the date mark.",
            f => f.NeedsNoCold || IsKeptCold(f) || Asks(f)),
        new("SL5027", ["sealed"], "The words of what it is kept in say that it is not shut.", static f => f.Prep is { } prep && !Storage.MayBeSealed(prep)),
        new(
            "SL5036",
            ["at", "keep"],
            "The recipe no longer says that it stands colder, or the lot where it stands; what needs cold by its parts "
                + "has the rule of lots.",
            Always),
        new("SL5008", ["at"], "Where a lot stands is not said: it then stands where its recipe keeps it, or its temperature is asked for.", Always),
        new("SL5008", ["to"], "A time in the freezer without an end runs to the day of the check: it is still there, and its days stand still.", Always),
        new(
            "SL9015",
            ["to"],
            "A time in the freezer without an end runs to the day of the check: it is still there, or it is asked for.",
            NoneIsReadyOutOfTheFreezer),
        new("SL5008", ["opened"], "What does not say that it is open is closed, and its label stands.", static f => f.Prep is null),
        new(
            "SL5008",
            ["made"],
            "A use-by day alone is what the law asks for (Food Code 3-501.17(A)). One later than a batch made today could "
                + "have stays an error.",
            Always),
        new("SL5008", ["keep", "for"], "The recipe no longer says how long it keeps; what needs cold has the date mark.", static f => f.NeedsNoCold),
        new("SL5010", ["opened", "made"], "What does not say that it is open is closed, and its label stands.", Always),
        new("SL9015", ["keep", "for"], "The recipe no longer says how long it keeps; what needs cold has the date mark.", static f => f.NeedsNoCold),
        new(
            "SL9015",
            ["made"],
            "A use-by day alone is what the law asks for (Food Code 3-501.17(A)). One later than a batch made today could "
                + "have stays an error.",
            Always),
        new("SL6012", ["glass", "vessel", "into", "in", "keep"], "The metal is no longer named: what nobody names is the glass of the bar.", Always),
        new(
            "SL6012",
            ["target", "pressure"],
            "Nothing says that there is gas in it: no step carbonates it, and water is not sour.",
            static f => f.Prep is { } prep && !prep.Method.Any(static s => s.Verb.Carbonates)),
        new("SL9033", ["in"], "The words of the label are gone: nothing says any more that it bears another name.", Always),
        new("SL6031", ["in"], "The vessel of the lot is no longer named: what nobody names is a bottle or tub of the bar.", Always),
        new("SL6027", ["in"], "The vessel of the lot is no longer named: what nobody names is a bottle or tub of the bar.", Always),
        new("SL8021", ["keep"], "The vessel is no longer named, so nothing says that it is too small.", Always),
        new("SL8021", ["yield"], "Nothing says how much there is, or what its parts come to leaves room.", Always),
        new(
            "SL8022",
            ["target", "pressure"],
            "Nothing says that it is put under pressure; a step that carbonates is asked for the figure.",
            static f => f.Prep is { } prep && !prep.Method.Any(static s => s.Verb.Carbonates)),
        new("SL6026", ["yield"], "A serve is then a share of all that went in, and no drink of the book takes it.", Always),
        new(
            "SL5021",
            ["for"],
            "A small pot cools fast enough by itself; of a large one, or where the step says nothing, the time is asked for.",
            f => f.Prep is { } prep
                && !(f.After.Profiles.Of(prep).InputVolume / 1000 > SpecLint.Catalogue.Limits.Of("cooling-volume").Value)),
        new("SL5023", ["yield"], "Without a yield nothing says that it was boiled down to a solid, and the rules of liquids hold.", Always),
        new(
            "SL6015",
            ["to", "at"],
            "Nothing says any more that it is heated: no step of it is one that heats.",
            static f => f.After.Book.Recipes.Any(r => r.Source.Path == f.Path && !r.Method.Any(static s => s.Verb.Heats))),
        new(
            "SL3017", ["strength"], "A bought spirit without a strength of its own has that of the catalogue, with its range.",
            static f => f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path && i.Like.IsGiven)),
        .. new[] { "SL5004", "SL5038" }.Select(static rule => new Excuse(
            rule,
            ["strength"],
            "Of a bottle that states no strength nobody knows how strong it is: the reading stands against nothing, and clears nothing that "
                + "needs cold.",
            static f => f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path && i.IngredientKind.Or(ItemKind.None).GivesStrength))),
        .. new[] { "SL7012", "SL7013", "SL7014", "SL7015", "SL7016", "SL7031" }.Select(static rule => new Excuse(
            rule,
            ["file"],
            "Without the file its name is that of an item of the catalogue, which tells what it holds.",
            static f => f.After.Book.Resolve(f.Path[..f.Path.IndexOf('.', StringComparison.Ordinal)]) is { IsBuiltIn: true })),
        .. new[] { "SL5001", "SL5002", "SL5005", "SL5013", "SL5027", "SL5030", "SL5032" }.Select(static rule => new Excuse(
            rule, ["strength"], "A bought spirit without a strength of its own has that of the catalogue, with its range.",
            static f => f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path && i.Like.IsGiven))),
        .. new[] { "SL5001", "SL5002", "SL5005", "SL5013", "SL5007", "SL5017", "SL5039", "SL6011" }.Select(static rule => new Excuse(
            rule, ["keepsCold"], "Its file no longer says that it needs cold, and states the water of a dry good.", IsDryByItsFile)),
        .. new[] { "SL5001", "SL5002", "SL5005", "SL5013", "SL5007", "SL5017", "SL5019", "SL5039" }.Select(static rule => new Excuse(
            rule, ["keepsCold"], "Only its file said that it needs cold: it is of a kind that is dry, or an oil, and states no water.", IsDryByItsKind)),
        .. new[] { "SL5001", "SL5002", "SL5005", "SL5013", "SL5007", "SL5017", "SL5019", "SL5039" }.Select(static rule => new Excuse(
            rule, ["keepsCold"], "Only its file said that it needs cold, and by the pH or the strength that the file states it needs none.", IsSourOrStrongByItsFile)),
        new(
            "SL5027",
            ["measured", "brix"],
            "The reading that said that there is sugar in it is gone, and nothing that is weighed brings more than a trace.",
            static f => f.Prep is { } prep && f.After.Profiles.Of(prep).Get(global::SpecLint.Vocabulary.Fact.Sugar) is not { IsKnown: true, High: > 2 }),
        new(
            "SL6006",
            ["quinine"],
            "A bottle without quinine of its own has that of what it is like, or none that anybody knows of: its maker is within the law.",
            Always),
        new("SL5040", ["measured", "ph", "brix", "abv"], "The reading that was off is gone, and it clears nothing any more.", Always),
        new("SL7008", ["allergens"], "An own file without a list of allergens has that of what it is like.", Always),
        new("SL7002", ["allergens"], "An own file without a list of allergens has that of what it is like.", Always),
        new("SL7004", ["allergens"], "An own file without a list of allergens has that of what it is like.", Always),
    ];

    private static bool Always(Forgotten forgotten) => true;

    /// <summary>Whether a rule of keeping asks for something on the preparation, or forbids it.</summary>
    private static bool Asks(Forgotten f) => f.Prep is { } prep && Verdicts.Of(f.After).Of(prep).Answer != Readiness.Ready;

    /// <summary>Whether its verdict is that of food that needs cold: no longer than its date mark, no warmer than a refrigerator.</summary>
    private static bool IsKeptCold(Forgotten f) => f.Prep is { } prep && Verdicts.Of(f.After).Of(prep) is { Days: <= 7, StorageCelsius: <= 5 };

    /// <summary>Whether no lot of the file that is said to be in the freezer still passes as ready at another temperature.</summary>
    private static bool NoneIsReadyOutOfTheFreezer(Forgotten f)
    {
        var verdicts = Verdicts.Of(f.After);
        return !f.After.Book.Stocks.Where(s => s.Source.Path == f.Path).Any(s => s.Lots.Any(l =>
            l.Frozen.Any(static t => t.To is null)
                && !(l.At.IsGiven && Storage.IsFrozen(l.At.Value.Base))
                && LotCheck.Of(l, s, verdicts).Readiness == Readiness.Ready));
    }

    /// <summary>
    /// Whether the file that something was taken out of is that of a dry good: a quarter of water at most, as dried fruit and honey may
    /// have (water activity under 0.85: common practice, no source), or a powder that no water reaches.
    /// </summary>
    private static bool IsDryByItsFile(Forgotten f) =>
        f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path && ((i.Values.TryGetValue("water", out var water) && water.High <= 25)
        || (f.After.Profiles.MaterialOf(i.Id) is { State: MaterialState.Powder }
            && f.Prep is { } prep
            && f.After.Profiles.Of(prep).Parts
                .All(p => p.Item?.Id == i.Id
                    || p.Material is { } m && (m.Of(Science.Component.Water) <= 0.1 || m.Of(Science.Component.Ethanol) > 0.2)))));

    /// <summary>Whether the file states a pH of at most 4.2 (Food Code 1-201.10, tables A and B) or the strength of a spirit.</summary>
    private static bool IsSourOrStrongByItsFile(Forgotten f) =>
        f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path
            && ((i.Values.TryGetValue("ph", out var ph) && ph.High <= 4.2) || (i.Values.TryGetValue("strength", out var strength) && strength.Low >= 20)));

    /// <summary>
    /// Whether the file that something was taken out of is that of an acid, a salt or a preservative, on which nothing grows, or of an oil or a
    /// dry good that is no fresh plant and states no water.
    /// </summary>
    private static bool IsDryByItsKind(Forgotten f) =>
        f.After.Book.Ingredients.Any(i => i.Source.Path == f.Path
            && i.IngredientKind.OrNone() is { IsKnown: true, IsFreshPlant: false, IsDairy: false, IsEgg: false, IsNut: false, IsPlantMilk: false } kind
            && (kind.IsAcid
                || kind.IsSalt
                || kind.Id == "preservative"
                || (!i.Values.ContainsKey("water") && (kind.IsFat || f.After.Profiles.MaterialOf(i.Id) is { State: MaterialState.Powder or MaterialState.Solid }))));

    private static bool AllDry(Forgotten f) =>
        f.Prep is { } prep
            && f.After.Profiles.Of(prep).Parts.All(static p => p.Material is null || p.Material.Of(Science.Component.Water) <= 0.1);
}
