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
    public static string AtMost(double days) => days >= 1
        ? $"{Say.Number(Math.Floor(days * 10) / 10, 1)} d"
        : $"{Say.Number(Math.Max(1, Math.Floor(days * 24)), 0)} h";

    /// <summary>A temperature in words.</summary>
    public static string Degrees(double celsius) => $"{Say.Number(celsius, 1)} °C";

    /// <summary>How long it is kept, with or without a figure.</summary>
    public static string ForDays(double days) => double.IsNaN(days) ? "for a time that nothing states" : Days(days);

    /// <summary>A fact in words, a pH with the places of its meter.</summary>
    public static string Said(Fact fact, FactValue value) => fact == Fact.Ph ? Say.Ph(value) : Say.Fact(fact, value);

    /// <summary>The pH with how it is known, in words.</summary>
    public static string PhOf(KeepingState state) =>
        $"{(KeepingVerdicts.IsMeasured(state.Ph) ? "a measured" : "a computed")} pH of {Say.Ph(state.Ph)}";

    /// <summary>Whether a reading shows a fact to be at most so much.</summary>
    public static bool IsMeasuredAtMost(FactValue fact, double limit) => KeepingVerdicts.IsMeasured(fact) && fact.High <= limit;

    /// <summary>The temperature to which a step brings what is in it, else at which it holds it; not given where it states none.</summary>
    public static Given<Quantity> HeatOf(Step step) => Temperature(step.To.IsGiven ? step.To : step.At);

    /// <summary>The temperature at which a step holds what is in it, else to which it brings it; not given where it states none.</summary>
    public static Given<Quantity> WarmthOf(Step step) => Temperature(step.At.IsGiven ? step.At : step.To);

    private static Given<Quantity> Temperature(Given<Quantity> stated) =>
        stated is { IsGiven: true, Value.Dimension: Dimension.Temperature } ? stated : default;

    /// <summary>g of a part that are neither water nor ethanol.</summary>
    public static double DryGramsOf(Part part, Material material) =>
        part.Grams.Typical * (1 - material.Of(Science.Component.Water) - material.Of(Science.Component.Ethanol));

    /// <summary>
    /// Place and path of what tells how warm a kept preparation stands: the temperature, else the words of where it stands.
    /// </summary>
    public static Spot WarmthIn(RecipeContext context, Prep prep)
    {
        var keep = prep.Keep!;
        if (keep.At.IsGiven) return context.At(keep.At.Span, "keep.at");
        return context.At(keep.In.IsGiven ? keep.In.Span : keep.Span, "keep.in");
    }

    /// <summary>Place of the storage temperature, else of what is nearest to it.</summary>
    public static Place AtTemperature(RecipeContext context, Prep prep) =>
        prep.Keep is not { } keep ? context.File.Head : context.At(keep.At.IsGiven ? keep.At.Span : keep.Span);

    /// <summary>What the US asks of a house that sours or preserves food so that it needs no cold; empty elsewhere.</summary>
    public static string Variance(Settings settings) =>
        settings.AppliesIn("US")
            ? " (in the US souring or preserving food for that requires a variance and a HACCP plan, Food Code 3-502.11(C))"
            : "";

    /// <summary>
    /// Whether a reading shows what the law of the EU or Canada takes for food in which Listeria does not grow; it says what needs a
    /// study, and clears nothing.
    /// </summary>
    public static bool HoldsListeria(Settings settings, KeepingState state)
    {
        bool ca = PhCa.AppliesIn(settings);
        if (settings.AppliesIn("US") || !(ca || PhEu.AppliesIn(settings))) return false;
        return IsMeasuredAtMost(state.Ph, PhEu.Value)
            || IsMeasuredAtMost(state.WaterActivity, ActivityEu.Value)
            || (IsMeasuredAtMost(state.Ph, PairPhEu.Value) && IsMeasuredAtMost(state.WaterActivity, PairActivityEu.Value));
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
        if (state.Verdict == KeepingVerdict.ListedAsControlled)
            return $"it holds {part}, and no measurement shows that it does not need cold";
        if (!state.Ph.IsKnown) return $"it holds {part}";
        string activity = state.WaterActivity.IsKnown ? $" and a water activity of {Say.Number(state.WaterActivity.Value, 3)}" : "";
        return $"it holds {part} at {PhOf(state)}{activity}";
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
        if (state.Part is { Line.Item.IsGiven: true } part)
            evidence.Add(Proof.Of("part", part.Line.Item.Value, context.At(part.Line.Item.Span)));
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
