using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5005: food that needs cold is stored too warm.</summary>
internal sealed class StoredTooWarm : PrepRule
{
    private static readonly Limit Cold = Limits.Of("food-code-cold-hold");
    private static readonly Limit ColdInBritain = Limits.Of("cold-hold-gb");

    private static readonly RuleInfo Rule = new("SL5005", "stored-too-warm", "Food that needs cold is stored too warm", Level.Error)
    {
        Safety = true,
        IsConsequence = true,
        Needs = [Fact.Ph, Fact.WaterActivity, Fact.Abv],
        Limits = [Cold.Id, ColdInBritain.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>The limit in force: 5 °C, or 8 °C where only the law of Britain is asked.</summary>
    internal static Limit LimitOf(Settings settings) => settings.Jurisdictions.Count == 1 && settings.AppliesIn("GB") ? ColdInBritain : Cold;

    /// <summary>Whether a storage temperature is over the limit.</summary>
    internal static bool IsTooWarm(double celsius, Settings settings) => celsius > LimitOf(settings).Value;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        double celsius = Storage.Celsius(prep, context.Settings);
        if (!IsTooWarm(celsius, context.Settings) || Storage.Days(prep) <= 0 || context.Profile.IsSolid) return;
        var state = context.Profile.Keeping!;
        if (!state.HoldsPerishable || state.Verdict == KeepingVerdict.NotControlled) return;
        if (SpecialCases.IsPlantInOil(context.Profile, out _) || SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings)) return;
        if (SpecialCases.IsFerment(prep) && !KeepingVerdicts.IsMeasured(state.Ph)) return;
        var limit = LimitOf(context.Settings);
        bool shown = state.IsShownControlled || state.IsLowAcid;
        bool soft = state.IsStrong || (state.IsSour && !Perishables.IsListed(state.What)) || (!shown && !Storage.IsAtRoom(celsius));
        var keep = prep.Keep!;
        string growth = Growth(state, celsius, out double daysPerLog);
        var evidence = KeepingWords.Evidence(context, state);
        evidence.Add(Proof.Of("storage temperature", celsius, "Cel"));
        evidence.Add(Proof.Of(limit));
        if (!double.IsNaN(daysPerLog)) evidence.Add(Proof.Of("listeria, days to ten times the number (explains, clears nothing)", daysPerLog, "d", GrowthModels.Listeria.Source));
        context.Report(new Finding(Rule)
        {
            Answer = shown ? Answer.Broken : Answer.NotShown,
            AskedLevel = soft || limit.LevelCap is not null ? Level.Warning : null,
            Place = context.At(keep.At.IsGiven ? keep.At.Span : keep.In.IsGiven ? keep.In.Span : keep.Span),
            Subject = context.Id,
            Path = keep.At.IsGiven ? "keep.at" : "keep.in",
            Message = $"It is stored at {KeepingWords.Degrees(celsius)}, over {KeepingWords.Degrees(limit.Value)} ({limit.Source}), while {KeepingWords.Because(state)}{growth}.",
            Advice = $"Store it at {KeepingWords.Degrees(limit.Value)} or colder, or show by a measured pH under 4.2 that it need not be.",
            Caution = KeepingWords.Caution,
            Evidence = evidence,
        });
    }

    private static string Growth(KeepingState state, double celsius, out double daysPerLog)
    {
        daysPerLog = double.NaN;
        if (!state.Ph.IsKnown || !state.WaterActivity.IsKnown) return "";
        if (GrowthModels.Listeria.Rate(new Celsius(celsius), new Ph(state.Ph.Value), new WaterActivity(state.WaterActivity.Value)) is not { PerHour: > 0 } rate) return "";
        daysPerLog = rate.DaysPerLog10;
        return $"; a growth model, which explains and clears nothing, has Listeria grow tenfold there in about {Say.Number(daysPerLog * 24, 0)} h";
    }
}
