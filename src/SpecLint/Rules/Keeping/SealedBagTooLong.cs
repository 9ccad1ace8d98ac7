using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5017", "sealed-bag-too-long", "Food packed without air is kept with nothing that controls what grows there", Level.Error,
    Safety = true, IsConsequence = true, Needs = [Fact.Ph, Fact.WaterActivity, Fact.Abv])]
[Limit("food-code-reduced-oxygen-short", "Short")]
[Limit("vacuum-pack-days", "Long")]
[Limit("vacuum-pack-ph", "Ph")]
[Limit("vacuum-pack-water-activity", "Activity")]
[Limit("vacuum-pack-salt", "Salt")]
[Limit("food-code-cook-chill-days", "Plan")]
[Limit("food-code-reduced-oxygen-ph", "PlanPh")]
[Limit("food-code-reduced-oxygen-activity", "PlanActivity")]
[Limit("vacuum-pack-heat-temperature")]
[Limit("vacuum-pack-heat-time")]
internal sealed partial class SealedBagTooLong : PrepRule
{
    /// <summary>Whether this rule speaks of a preparation.</summary>
    internal static bool Speaks(RecipeContext context, Prep prep) => LimitOf(context, prep) is not null;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (LimitOf(context, prep) is not { } limit) return;
        var state = context.Profile.Keeping!;
        bool us = Short.AppliesIn(context.Settings);
        double days = Storage.Days(prep);
        bool soft = (limit.LevelCap is not null
                && !(days > Plan.Value)
                && !(IsOpen(state) && AcidityNotMeasured.IsSealedUnsoured(prep, state)))
            || HasHurdle(state)
            || (state.IsSour && !Perishables.IsListed(state.What));
        string time = double.IsNaN(days) ? "for an unstated time" : KeepingWords.Days(days);
        context.Report(new(Rule)
        {
            Answer = state.IsShownControlled || state.IsLowAcid ? Answer.Broken : Answer.NotShown,
            AskedLevel = soft ? Level.Warning : null,
            At = new(KeepingWords.At(context, prep), "keep.for"),
            Message = us
                ? $"It is kept {time} packed without air, more than {Say.With(limit.Value, limit.Unit)}. Beyond that US law requires a "
                    + $"HACCP plan with a pH of at most {Say.Number(PlanPh.Value)} or a water activity of at most "
                    + $"{Say.Number(PlanActivity.Value)}, or a variance ({limit.Source})."
                : $"It is kept {time} packed without air, more than {Say.With(limit.Value, limit.Unit)}, with nothing that controls "
                    + $"growth without air: a measured pH of at most {Say.Number(Ph.Value)}, a measured water activity of at most "
                    + $"{Say.Number(Activity.Value)}, {Say.Number(Salt.Value)} % salt in its water, or 10 minutes at 90 °C in the "
                    + $"pack ({limit.Source}).",
            Advice = us
                ? "Shorten the time, freeze it, or have the plan approved and accept this finding with its number."
                : "Shorten the time, measure the pH, or freeze the pack.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(limit), Proof.Of(Ph), Proof.Of(Activity), Proof.Of(Salt)],
        });
    }

    private static Limit? LimitOf(RecipeContext context, Prep prep)
    {
        var state = context.Profile.Keeping!;
        if (prep.Keep is null || state.StaysDry || !Storage.IsReducedOxygen(prep)) return null;
        double days = Storage.Days(prep);
        bool us = Short.AppliesIn(context.Settings);
        var limit = us && !(days > Long.Value) ? Short : Long;
        double most = limit.Unit == "h" ? limit.Value / 24 : limit.Value;

        // For how long is not written: for longer.
        if (days <= most || Storage.IsFrozen(Storage.Celsius(prep, context.Settings))) return null;
        if (state is not { HoldsPerishable: true, IsStrong: false, Verdict: not KeepingVerdict.NotControlled }
            || SpecialCases.IsFerment(prep))
            return null;

        // The British factors clear nothing where US law asks for a plan.
        if (us) return limit;
        if (KeepingWords.IsMeasuredAtMost(state.Ph, Ph.Value) || KeepingWords.IsMeasuredAtMost(state.WaterActivity, Activity.Value))
            return null;
        var grams = context.Profile.Grams;
        double salt = grams[(int)Component.SodiumChloride], water = grams[(int)Component.Water];
        if (salt > 0 && (context.Profile.Unknown & Unknowns.Water) == 0 && 100 * salt / (salt + water) >= Salt.Value) return null;
        return IsHeatedInPack(prep) ? null : limit;
    }

    /// <summary>Whether it is heated in the closed pack; heat before the pack is closed leaves what falls in afterwards.</summary>
    private static bool IsHeatedInPack(Prep prep)
    {
        bool closed = false;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Seals || step.Verb.Bags) closed = true;
            if (closed && HeatedFood.Meets(HeatedProduct.ChilledSealedFood, step)) return true;
        }

        return false;
    }

    /// <summary>Whether nothing tells how sour it is: shut off from air, that is an error after a day already (SL5002).</summary>
    private static bool IsOpen(KeepingState state) => state.IsOpen && !state.Ph.IsKnown;

    /// <summary>Whether a measured pH or water activity meets the hurdle that the US code asks for beside the plan.</summary>
    private static bool HasHurdle(KeepingState state) =>
        KeepingWords.IsMeasuredAtMost(state.Ph, PlanPh.Value)
            || KeepingWords.IsMeasuredAtMost(state.WaterActivity, PlanActivity.Value);
}
