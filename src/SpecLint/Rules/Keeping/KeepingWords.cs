using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

/// <summary>What the rules of keeping say and look for alike.</summary>
internal static class KeepingWords
{
    // Canada's figures are those of the EU (Health Canada, policy on Listeria; Regulation (EC) 2073/2005, Annex I).
    private static readonly Catalogue.Limit PhCa = Catalogue.Limits.Of("listeria-ph-ca");
    private static readonly Catalogue.Limit PhEu = Catalogue.Limits.Of("listeria-ph-eu");
    private static readonly Catalogue.Limit ActivityEu = Catalogue.Limits.Of("listeria-water-activity-eu");
    private static readonly Catalogue.Limit PairPhEu = Catalogue.Limits.Of("listeria-pair-ph-eu");
    private static readonly Catalogue.Limit PairActivityEu = Catalogue.Limits.Of("listeria-pair-water-activity-eu");

    /// <summary>The caution of this family.</summary>
    public const string Caution =
        "Food can make people ill without looking, smelling or tasting wrong. The local food code and its inspector decide, and for "
            + "preserving and sealing a licensed process authority. This checks what is written, not what is in the bottle.";

    /// <summary>Days in words.</summary>
    public static string Days(double days) => $"{Say.Number(days, 1)} d";

    /// <summary>A time to write, never longer than given: in whole hours below a day.</summary>
    public static string AtMost(double days) => days >= 1 ? $"{Say.Number(Math.Floor(days * 10) / 10, 1)} d" : $"{Say.Number(Math.Max(1, Math.Floor(days * 24)), 0)} h";

    /// <summary>A temperature in words.</summary>
    public static string Degrees(double celsius) => $"{Say.Number(celsius, 1)} °C";

    /// <summary>How long it is kept, with or without a figure.</summary>
    public static string ForDays(double days) => double.IsNaN(days) ? "for a time that nothing states" : Days(days);

    /// <summary>Place of the storage temperature, else of what is nearest to it.</summary>
    public static Place AtTemperature(RecipeContext context, Prep prep) =>
        prep.Keep is not { } keep ? context.File.Head : context.At(keep.At.IsGiven ? keep.At.Span : keep.Span);

    /// <summary>What the US asks of a house that sours or preserves food so that it needs no cold; empty elsewhere.</summary>
    public static string Variance(Settings settings) =>
        settings.AppliesIn("US") ? " (in the US souring or preserving food for that requires a variance and a HACCP plan, Food Code 3-502.11(C))" : "";

    /// <summary>
    /// Whether a reading shows what the law of the EU or Canada takes for food in which Listeria does not grow; it says what needs a
    /// study, and clears nothing.
    /// </summary>
    public static bool HoldsListeria(Settings settings, KeepingState state)
    {
        bool ca = PhCa.AppliesIn(settings);
        if (settings.AppliesIn("US") || !(ca || PhEu.AppliesIn(settings))) return false;
        double ph = KeepingVerdicts.IsMeasured(state.Ph) ? state.Ph.High : double.PositiveInfinity;
        double activity = KeepingVerdicts.IsMeasured(state.WaterActivity) ? state.WaterActivity.High : double.PositiveInfinity;
        return ph <= PhEu.Value || activity <= ActivityEu.Value || (ph <= PairPhEu.Value && activity <= PairActivityEu.Value);
    }

    /// <summary>Place of the keeping time, else of what is nearest to it.</summary>
    public static Place At(RecipeContext context, Prep prep)
    {
        if (prep.Keep is not { } keep) return context.File.Head;
        if (keep.For.IsGiven) return context.At(keep.For.Span);
        return context.At(keep.At.IsGiven ? keep.At.Span : keep.Span);
    }

    /// <summary>Why a preparation needs cold, as the beginning of a sentence.</summary>
    public static string Because(KeepingState state)
    {
        string part = NameOf(state.Part);
        if (state.Verdict == KeepingVerdict.ListedAsControlled) return $"it holds {part}, and no measurement shows that it does not need cold";
        if (!state.Ph.IsKnown) return $"it holds {part}";
        string activity = state.WaterActivity.IsKnown ? $" and a water activity of {Say.Number(state.WaterActivity.Value, 3)}" : "";
        return $"it holds {part} at {(KeepingVerdicts.IsMeasured(state.Ph) ? "a measured" : "a computed")} pH of "
            + $"{Say.Ph(state.Ph)}{activity}";
    }

    /// <summary>The id of a part in quotes.</summary>
    public static string NameOf(Part? part) => part is { Line.Item.IsGiven: true } ? $"`{part.Line.Item.Value}`" : "food that needs cold";

    /// <summary>The figures that a verdict of keeping rests on.</summary>
    public static List<Evidence> Evidence(RecipeContext context, KeepingState state)
    {
        var evidence = new List<Evidence>
        {
            Proof.Of(Fact.Ph, state.Ph),
            Proof.Of(Fact.WaterActivity, state.WaterActivity),
            Proof.Of("table", state.Table),
            Proof.Of("verdict", state.Verdict.ToString()),
        };
        if (state.Abv.IsKnown) evidence.Add(Proof.Of(Fact.Abv, state.Abv));
        if (state.Part is { Line.Item.IsGiven: true } part) evidence.Add(Proof.Of("part", part.Line.Item.Value, context.At(part.Line.Item.Span)));
        return evidence;
    }

    /// <summary>
    /// The first text of a preparation about itself that holds one of some words: the keeping claim, notes, remarks of steps.
    /// </summary>
    /// <param name="prep">The preparation.</param>
    /// <param name="words">Words, any case.</param>
    /// <param name="path">JSON path of the text.</param>
    /// <param name="word">The word found.</param>
    /// <returns>The text; not given where none holds one.</returns>
    public static Given<string> Find(Prep prep, string[] words, out string path, out string word)
    {
        if (prep.Keep is { Claim.IsGiven: true } keep && Holds(keep.Claim.Value, words, out word))
        {
            path = "keep.claim";
            return keep.Claim;
        }

        for (int i = 0; i < prep.Notes.Count; i++)
        {
            if (!Holds(prep.Notes[i].Value, words, out word)) continue;
            path = $"notes[{i}]";
            return prep.Notes[i];
        }

        foreach (var step in prep.Method)
        {
            if (step.Note.IsGiven && Holds(step.Note.Value, words, out word))
            {
                path = $"method[{(step.Do.IsGiven ? step.Written : "step")}].note";
                return step.Note;
            }

            if (step.Until.IsGiven && Holds(step.Until.Value, words, out word))
            {
                path = $"method[{(step.Do.IsGiven ? step.Written : "step")}].until";
                return step.Until;
            }
        }

        path = word = "";
        return default;
    }

    private static bool Holds(string text, string[] words, out string found)
    {
        foreach (string word in words)
        {
            if (!Storage.Has(text, word)) continue;
            found = word;
            return true;
        }

        found = "";
        return false;
    }
}

/// <summary>Cases that have a rule of their own, so that the general rules are silent about them.</summary>
internal static class SpecialCases
{
    private static readonly Catalogue.Limit DateMark = Catalogue.Limits.Of("food-code-date-mark");
    private static readonly Catalogue.Limit LowAcidActivity = Catalogue.Limits.Of("low-acid-water-activity");
    private static readonly Catalogue.Limit OilShare = Catalogue.Limits.Of("guard-oil-share");

    private static readonly string[] Cultures =
    [
        "yeast", "scoby", "ginger bug", "ginger-bug", "kefir grain", "kefir-grain", "kefir-grains", "starter", "lees", "sourdough",
    ];

    private static readonly string[] NotLive = ["nutritional-yeast", "nutritional yeast", "yeast-extract", "yeast extract", "dead"];

    private static readonly Catalogue.Limit DateMarkFrom = Catalogue.Limits.Of("food-code-date-mark-from");

    /// <summary>Days from which a date mark is asked.</summary>
    public static double MarkedFromDays => DateMarkFrom.Value / 24;

    /// <summary>
    /// Whether it is food low in acid without animal parts that is sealed from air and kept, or kept long: botulism's food, whatever
    /// it is called.
    /// </summary>
    public static bool IsLowAcidJuiceKept(Prep prep, KeepingState state, Settings settings) => IsLowAcidJuiceKept(prep, state, settings, Storage.IsSealed(prep));

    /// <summary>The same, sealed or not.</summary>
    public static bool IsLowAcidJuiceKept(Prep prep, KeepingState state, Settings settings, bool isSealed)
    {
        if (!state.IsLowAcid || state.Verdict == KeepingVerdict.NotControlled || IsFerment(prep)) return false;
        if (state.What is not (Perishable.Juice or Perishable.Plant or Perishable.ListedPlant or Perishable.NutOrPulse) || state.IsStrong) return false;
        if (state.WaterActivity.IsKnown && state.WaterActivity.High <= LowAcidActivity.Value) return false;
        double days = Storage.Days(prep), celsius = Storage.Celsius(prep, settings);
        if (Storage.IsFrozen(celsius)) return false;

        // Cold and packed without air is a case of its own.
        if (Storage.IsReducedOxygen(prep) && !StoredTooWarm.IsTooWarm(celsius, settings) && !double.IsNaN(celsius)) return false;
        bool isJuice = state.What != Perishable.NutOrPulse;
        return (isSealed && !(days <= MarkedFromDays) && (isJuice || StoredTooWarm.IsTooWarm(celsius, settings))) || (isJuice && days > DateMark.Value);
    }

    /// <summary>
    /// Whether it is a plant part under oil: fresh, and with a layer of oil, in its own lines or in those of a preparation in it.
    /// </summary>
    public static bool IsPlantInOil(RecipeProfile profile, out Part? plant)
    {
        plant = null;
        if (profile.Keeping is { IsStrong: true }) return false;
        double oil = 0, all = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Material is null || part.Phase == PartPhase.Beside) continue;
            if (part.IsWeighed) all += part.Grams.Typical;
            if (part.Item?.File is Prep inner && profile.Set.TryBefore(inner, profile) is { } below)
            {
                if (HoldsOil(below) && part.IsWeighed) oil += part.Grams.Typical * part.Material.Of(Science.Component.Fat);
                if (FreshPlantIn(below)) plant ??= part;
            }
            else if (part.Material.Kind.IsFat)
            {
                // Oil that nobody has weighed covers what is in it.
                oil += part.IsWeighed ? part.Grams.Typical : double.PositiveInfinity;
                if (NamesPlant(part.Material)) plant ??= part;
            }
            else if (IsFreshPlant(part.Material))
            {
                plant ??= part;
            }
        }

        return plant is not null && oil > OilShare.Value / 100 * all && oil > 0;
    }

    private static bool IsFreshPlant(Material material) =>
        (IsFresh(material.Kind) || material.TakesAfter.Any(static t => IsFresh(t.IngredientKind.OrNone()))) && Perishables.Of(material) is Perishable.Plant or Perishable.ListedPlant or Perishable.Juice;

    private static bool IsFresh(Vocabulary.ItemKind kind) => kind.IsFreshPlant || kind.IsPuree;

    /// <summary>
    /// Whether an oil of the bar's own is named by the vegetable or herb in it, and its file does not say that it needs no cold.
    /// </summary>
    internal static bool NamesPlant(Material oil) =>
        oil is { IsOwn: true, Ingredient: { KeepsCold.IsGiven: false } own } && Namesakes.InWords(own).Any(static e => e.IngredientKind.OrNone() is { IsFreshPlant: true, MayHoldSugar: false, IsSpice: false, IsPerishableBrew: false });

    private static bool FreshPlantIn(RecipeProfile profile) =>
        profile.Keeping is not { Verdict: KeepingVerdict.NotControlled } && profile.Parts.Any(p => p.Phase != PartPhase.Beside && p.Material is { } material && IsFreshPlant(material));

    private static bool HoldsOil(RecipeProfile profile) => profile.Parts.Any(static p => p.Phase != PartPhase.Beside && p.Material is { Kind.IsFat: true });

    /// <summary>Whether it is milk that was curdled and strained: called so, and strained.</summary>
    public static bool IsMilkPunch(Prep prep) =>
        prep.Family.OrNone().IsMilkWash && prep.Method.Any(static s => s.Verb.Strains || s.Verb.Clarifies);

    /// <summary>Whether it ferments: called so, made so, or with yeast or a live culture in sugar that nothing has killed.</summary>
    public static bool IsFerment(Prep prep, RecipeProfile profile) => IsFerment(prep) || IsPitched(prep, profile);

    /// <summary>Whether yeast or a live culture is among its lines and nothing kills it afterwards.</summary>
    public static bool IsPitched(Prep prep, RecipeProfile profile)
    {
        var pot = Pot.Of(prep);
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !IsCulture(part) || pot.Any(part.Line, static s => s.Verb.StopsFerment)) continue;
            return true;
        }

        return false;
    }

    private static bool IsCulture(Part part)
    {
        if (part.Material is { Kind.IsLiveCulture: true } && part.Item?.File is Ingredient) return true;
        string id = part.Line.Item.Or("");
        return Phrases.HasAny(id, Cultures) && !Phrases.HasAny(id, NotLive);
    }

    /// <summary>Whether it ferments, by its family or its method.</summary>
    public static bool IsFerment(Prep prep)
    {
        if (prep.Family.OrNone().Ferments) return true;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Ferments) return true;
        }

        return false;
    }
}
