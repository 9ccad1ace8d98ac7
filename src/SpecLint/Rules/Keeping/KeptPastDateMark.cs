using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5001", "kept-past-date-mark", "Food that needs cold is kept longer than its date mark allows", Level.Error, Safety = true,
    IsConsequence = true, Needs = [Fact.Ph, Fact.WaterActivity, Fact.Life])]
[Limit("food-code-date-mark", "Mark")]
[Limit("vacuum-pack-days", "Guidance")]
internal sealed partial class KeptPastDateMark : PrepRule
{
    /// <summary>Whether this rule speaks of a preparation.</summary>
    internal static bool Speaks(RecipeContext context, Prep prep)
    {
        if (!(Storage.Days(prep) > Mark.Value) || SpecialCases.IsMilkPunch(prep)) return false;
        var state = context.Profile.Keeping!;
        if (state.StaysDry
            || !state.HoldsPerishable
            || state.Verdict == KeepingVerdict.NotControlled
            || !(state.IsShownControlled || state.IsLowAcid || IsUnsouredNut(state) || IsHardlySour(prep, state)))
            return false;
        double celsius = Storage.Celsius(prep, context.Settings);
        if (Storage.IsFrozen(celsius)
            || (Storage.IsAtRoom(celsius) && !IsFermentUnread(prep, state))
            || context.Profile.KeepingTerms!.Safety.From != Mark.Id)
            return false;
        return !SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings)
            && !SpecialCases.IsPlantInOil(context.Profile, out _)
            && RawEggKept.EggOf(context, prep) is null;
    }

    /// <summary>
    /// Whether it is a ferment without a reading: how warm it stands, the rule of storage leaves to its acid, so its days are judged there
    /// too.
    /// </summary>
    private static bool IsFermentUnread(Prep prep, KeepingState state) =>
        SpecialCases.IsFerment(prep) && !KeepingVerdicts.IsMeasured(state.Ph);

    private static bool IsUnsouredNut(KeepingState state) => state.What == Perishable.NutOrPulse && !state.IsSour;

    /// <summary>
    /// Whether only a reading that does not show it sour speaks against a ferment, while its water activity is open: neither is shown, so
    /// that it is a warning.
    /// </summary>
    private static bool IsHardlySour(Prep prep, KeepingState state) =>
        state.IsOpen
            && !state.IsSour
            && !state.IsLowAcid
            && !IsUnsouredNut(state)
            && SpecialCases.IsFerment(prep)
            && KeepingVerdicts.IsMeasured(state.Ph);

    /// <summary>Outside of the US the seven days are a yardstick: up to the ten days of the British guidance they are a warning.</summary>
    internal static bool IsYardstick(Settings settings, double days) => !Mark.AppliesIn(settings) && days <= Guidance.Value;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!Speaks(context, prep)) return;
        var state = context.Profile.Keeping!;
        double days = Storage.Days(prep);
        var place = KeepingWords.At(context, prep);
        context.Report(new(Rule)
        {
            At = new(place, "keep.for"),
            AskedLevel = state.IsStrong
                || IsHardlySour(prep, state)
                || (IsYardstick(context.Settings, days) && !AcidityNotMeasured.IsSealedUnsoured(prep, state))
                || KeepingWords.HoldsListeria(context.Settings, state)
                ? Level.Warning
                : null,
            AllowedDays = Math.Min(Mark.Value, KeepingLife.DaysOfBase(prep, context.Profile, context.Settings)),
            Message = $"It is kept {KeepingWords.Days(days)}, but {KeepingWords.Because(state)}: at most "
                + $"{KeepingWords.Days(Mark.Value)}, counting the day it is made ({Mark.Source}).",
            Advice = $"Keep it at most {KeepingWords.Days(Mark.Value)} and freeze what is not used by then, or show by a measured pH "
                + $"or water activity that it does not need a date mark{KeepingWords.Variance(context.Settings)}.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of("keep.for", days, "d"), Proof.Of(Mark)],
            Corrections = [new Correction(
                CorrectionGrade.Proposed, $"Keep it {KeepingWords.Days(Mark.Value)}.",
                [new TextEdit(place, $"\"{KeepingWords.Days(Mark.Value)}\"")]) { KeepsTheThing = true }],
        });
    }
}
