using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5017: a vacuum bag without a factor that controls what grows without air.</summary>
internal sealed class SealedBagTooLong : PrepRule
{
    private static readonly Limit Short = Limits.Of("food-code-reduced-oxygen-short");
    private static readonly Limit Long = Limits.Of("vacuum-pack-days");
    private static readonly Limit Ph = Limits.Of("vacuum-pack-ph");
    private static readonly Limit Activity = Limits.Of("vacuum-pack-water-activity");
    private static readonly Limit Salt = Limits.Of("vacuum-pack-salt");

    private static readonly RuleInfo Rule = new("SL5017", "sealed-bag-too-long", "A vacuum bag is kept with nothing that controls what grows without air", Level.Error)
    {
        Safety = true,
        IsConsequence = true,
        Needs = [Fact.Ph, Fact.WaterActivity, Fact.Abv],
        Limits = [Short.Id, Long.Id, Ph.Id, Activity.Id, Salt.Id, "vacuum-pack-heat-temperature", "vacuum-pack-heat-time"],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>Whether this rule speaks of a preparation.</summary>
    internal static bool Speaks(RecipeContext context, Prep prep) => LimitOf(context, prep) is not null;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (LimitOf(context, prep) is not { } limit) return;
        var state = context.Profile.Keeping!;
        double days = Storage.Days(prep);
        context.Report(new Finding(Rule)
        {
            Answer = state.IsShownControlled || state.IsLowAcid ? Answer.Broken : Answer.NotShown,
            AskedLevel = limit.LevelCap is not null ? Level.Warning : null,
            Place = KeepingWords.At(context, prep),
            Subject = context.Id,
            Path = "keep.for",
            Message = $"It is kept {KeepingWords.Days(days)} in a sealed bag, over {Say.With(limit.Value, limit.Unit)}, and shows none of what controls growth without air: a measured pH of {Say.Number(Ph.Value)} or under, a measured water activity of {Say.Number(Activity.Value)} or under, {Say.Number(Salt.Value)} % of salt in its water, or 10 minutes at 90 °C in the bag ({limit.Source}).",
            Advice = "Shorten the time, measure the pH, or freeze the bag.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(limit), Proof.Of(Ph), Proof.Of(Activity), Proof.Of(Salt)],
        });
    }

    private static Limit? LimitOf(RecipeContext context, Prep prep)
    {
        if (prep.Keep is not { } keep || context.Profile.IsSolid) return null;
        bool bag = keep.In.IsGiven && (Storage.Has(keep.In.Value, "vacuum") || Storage.Has(keep.In.Value, "sous-vide") || (Storage.Has(keep.In.Value, "bag") && Storage.IsSealed(prep)));
        if (!bag) return null;
        double days = Storage.Days(prep);
        var limit = Short.AppliesIn(context.Settings) && days <= Long.Value ? Short : Long;
        double most = limit.Unit == "h" ? limit.Value / 24 : limit.Value;
        if (!(days > most) || Storage.IsFrozen(Storage.Celsius(prep, context.Settings))) return null;
        var state = context.Profile.Keeping!;
        if (!state.HoldsPerishable || state.IsStrong || state.Verdict == KeepingVerdict.NotControlled) return null;
        if (KeepingVerdicts.IsMeasured(state.Ph) && state.Ph.High <= Ph.Value) return null;
        if (KeepingVerdicts.IsMeasured(state.WaterActivity) && state.WaterActivity.High <= Activity.Value) return null;
        var grams = context.Profile.Grams;
        double salt = grams[(int)Component.SodiumChloride], water = grams[(int)Component.Water];
        if (salt > 0 && (context.Profile.Unknown & Unknowns.Water) == 0 && 100 * salt / (salt + water) >= Salt.Value) return null;
        return IsHeated(prep) ? null : limit;
    }

    private static bool IsHeated(Prep prep)
    {
        foreach (var step in prep.Method)
        {
            var heat = step.To.IsGiven ? step.To : step.At;
            if (!heat.IsGiven || heat.Value.Dimension != Dimension.Temperature || !step.For.IsGiven) continue;
            var t = new Celsius(heat.Value.BaseLow);
            ReadOnlySpan<TemperatureReading> record = [new(0, t), new(step.For.Value.BaseLow / 60, t)];
            if (HeatProcesses.Meets(HeatedProduct.ChilledSealedFood, record) == true) return true;
        }

        return false;
    }
}
