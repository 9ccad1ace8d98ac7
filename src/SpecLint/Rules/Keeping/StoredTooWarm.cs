using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5005", "stored-too-warm", "Food that needs cold is stored too warm", Level.Error, Safety = true, IsConsequence = true,
    Needs = [Fact.Ph, Fact.WaterActivity, Fact.Abv])]
[Limit("food-code-cold-hold", "Cold")]
[Limit("cold-hold-gb", "ColdInBritain")]
[Limit("food-code-hot-hold", "Hot")]
[Limit("hot-hold-gb", "HotInBritain")]
[Limit("food-code-time-control", "Time")]
internal sealed partial class StoredTooWarm : PrepRule
{
    /// <summary>The limit in force: 5 °C, or 8 °C where only the law of Britain is asked; Scotland has no figure.</summary>
    internal static Limit LimitOf(Settings settings) =>
        settings.Jurisdictions.Count == 1 && settings.AppliesIn("GB") && !settings.StatedJurisdictions.Contains("GB-SCT")
            ? ColdInBritain
            : Cold;

    /// <summary>Whether a storage temperature is over the limit.</summary>
    internal static bool IsTooWarm(double celsius, Settings settings) =>
        celsius > LimitOf(settings).Value && !(celsius >= HotLimitOf(settings).Value);

    /// <summary>From where on food counts as held hot: 57 °C, or 63 °C where the law of Britain is asked.</summary>
    internal static Limit HotLimitOf(Settings settings) => settings.AppliesIn("GB") ? HotInBritain : Hot;

    public override void Check(RecipeContext context, Prep prep)
    {
        double celsius = Storage.Celsius(prep, context.Settings);
        if (!IsTooWarm(celsius, context.Settings) || Storage.Days(prep) <= 0) return;
        var state = context.Profile.Keeping!;
        if (state is not { StaysDry: false, HoldsPerishable: true, Verdict: not KeepingVerdict.NotControlled }
            || SpecialCases.IsPlantInOil(context.Profile, out _)
            || SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings)
            || (SpecialCases.IsFerment(prep) && !KeepingVerdicts.IsMeasured(state.Ph)))
            return;
        var limit = LimitOf(context.Settings);
        bool shown = state.IsShownControlled || state.IsLowAcid;

        // What spirit drew out of a plant that is strained out again is little; it is not shown to be none.
        bool soft = state.IsStrong
            || state.IsThinned
            || (state.IsSour && !Perishables.IsListed(state.What))
            || (!shown && !Storage.IsAtRoom(celsius) && !AcidityNotMeasured.IsSealedUnsoured(prep, state));

        // Time may take the place of cold for a few hours, by a written procedure and a mark.
        bool byTime = Storage.Days(prep) * 24 <= Time.Value;
        string hotter = celsius >= 40 ? $", or hold it at {KeepingWords.Degrees(HotLimitOf(context.Settings).Value)} or hotter" : "";
        string growth = Growth(state, celsius, out double daysPerLog);
        var evidence = KeepingWords.Evidence(context, state);
        evidence.Add(Proof.Of("storage temperature", celsius, "Cel"));
        evidence.Add(Proof.Of(limit));
        if (!double.IsNaN(daysPerLog))
        {
            double off = GrowthModels.DoublingTimeError.At(daysPerLog).Tolerance.HalfWidth;
            evidence.Add(Proof.Of(
                "listeria, days to ten times the number (explains, clears nothing)", daysPerLog, "d", GrowthModels.Listeria.Source) with
            { Low = daysPerLog - off, High = daysPerLog + off });
        }

        context.Report(new(Rule)
        {
            Answer = shown ? Answer.Broken : Answer.NotShown,
            AskedLevel = soft || byTime ? Level.Warning : null,
            At = KeepingWords.WarmthIn(context, prep),
            Message = $"It is stored at {KeepingWords.Degrees(celsius)}, above {KeepingWords.Degrees(limit.Value)} ({limit.Source}), "
                + $"and {KeepingWords.Because(state)}{growth}.",
            Advice = byTime
                ? $"Store it at {KeepingWords.Degrees(limit.Value)} or colder. For at most {Say.Number(Time.Value)} h time may take "
                    + $"the place of cold, with a written procedure, the time marked on it and leftovers discarded ({Time.Source})."
                : $"Store it at {KeepingWords.Degrees(limit.Value)} or colder{hotter}, or show by a measured pH below 4.2 that it does not "
                    + $"need cold{KeepingWords.Variance(context.Settings)}.",
            Caution = KeepingWords.Caution,
            Evidence = evidence,
        });
    }

    private static string Growth(KeepingState state, double celsius, out double daysPerLog)
    {
        daysPerLog = double.NaN;
        if (!state.Ph.IsKnown || !state.WaterActivity.IsKnown) return "";
        if (GrowthModels.Listeria.Rate(
            new Celsius(celsius), new Ph(state.Ph.Value), new WaterActivity(state.WaterActivity.Value)) is not { PerHour: > 0 } rate)
            return "";
        daysPerLog = rate.DaysPerLog10;
        return "; a growth model, which explains and clears nothing, has Listeria grow tenfold there in about "
            + $"{Say.Number(daysPerLog * 24, 0)} h";
    }
}
