using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5002", "acidity-not-measured", "Keeping rests on a pH that is not measured", Level.Warning, Safety = true, IsConsequence = true,
    Needs = [Fact.Ph, Fact.WaterActivity])]
[Limit("acidified-ph", "Sour")]
[Limit("table-b-ph", "TablePh")]
internal sealed partial class AcidityNotMeasured : PrepRule
{
    /// <summary>A range wider than this says nothing to anyone.</summary>
    private const double WidestSaid = 3;

    /// <summary>Whether this rule speaks of a preparation.</summary>
    internal static bool Speaks(RecipeContext context, Prep prep)
    {
        if (!(Storage.Days(prep) > SpecialCases.MarkedFromDays)
            || context.Profile.IsSolid
            || SpecialCases.IsMilkPunch(prep)
            || SpecialCases.IsFerment(prep))
            return false;
        var state = context.Profile.Keeping!;

        // What was soured rests on its acid, also where that is too little to come near the limit.
        bool isSoured = IsSoured(context.Profile);
        if (!(state.IsOpen || (isSoured && state.HoldsPerishable && state.Verdict == KeepingVerdict.AssessmentRequired))
            || state.NearLimit
            || KeepingVerdicts.IsMeasured(state.Ph))
            return false;
        double celsius = Storage.Celsius(prep, context.Settings);
        return !Storage.IsFrozen(celsius)
            && !StoredTooWarm.IsTooWarm(celsius, context.Settings)
            && !SpecialCases.IsPlantInOil(context.Profile, out _)
            && !(state.IsLowAcid && !isSoured)
            && !KeptPastDateMark.Speaks(context, prep)
            && !SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings)
            && !SealedBagTooLong.Speaks(context, prep);
    }

    /// <summary>Whether acid was put in: too little of it is not better than nearly enough.</summary>
    private static bool IsSoured(RecipeProfile profile) => profile.Parts.Any(part => part.Phase != PartPhase.Beside
        && RecipeTree.AnyIn(
            part, profile,
            static m => m.Kind.IsAcid || (m.Kind.Sours && !m.Kind.IsJuice) || m.Of(Science.Component.Acetic) > Guards.VinegarPart));

    /// <summary>
    /// Whether it is sealed from air for longer than a day and nothing shows it to be sour: an error, whichever rule of keeping speaks of
    /// it.
    /// </summary>
    internal static bool IsSealedUnsoured(Prep prep, KeepingState state) =>
        Storage.IsSealed(prep) && !state.IsSour && Storage.Days(prep) > SpecialCases.MarkedFromDays;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!Speaks(context, prep)) return;
        var state = context.Profile.Keeping!;
        double days = Storage.Days(prep);
        bool soft = state.IsStrong || (state.IsSour && OnlyClearedParts(context));
        string known = !state.Ph.IsKnown ? $"Its pH is not known ({state.Ph.OpenBecause})"
            : state.Ph.High - state.Ph.Low > WidestSaid ? "Its pH cannot be computed precisely"
            : $"Its pH is only computed, {Say.Ph(state.Ph)}";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = soft ? Level.Note : IsSealedUnsoured(prep, state) ? Level.Error : null,
            At = new(KeepingWords.At(context, prep), "measured.ph"),
            Message = $"{known}, and it holds {KeepingWords.NameOf(state.Part)}. Keeping it {KeepingWords.Days(days)} rests on a "
                + $"measured pH below {Say.Number(TablePh.Value)}, or at most {Say.Number(Sour.Value)} with little free water "
                + $"({KeepingTables.Source}).",
            Advice = "Measure the pH of the finished, blended preparation with a meter calibrated that day and write it under "
                + $"`measured`{KeepingWords.Variance(context.Settings)}, or use it within 24 h.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of("keep.for", days, "d"), Proof.Of(TablePh), Proof.Of(Sour)],
        });
    }

    private static bool OnlyClearedParts(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Material is null) continue;
            bool isOpen = part.Item?.File is Prep inner
                ? context.Profiles.Of(inner).Keeping is { HoldsPerishable: true, Verdict: not KeepingVerdict.NotControlled }
                : Perishables.Of(part.Material) != Perishable.None;
            if (isOpen) return false;
        }

        return true;
    }
}
