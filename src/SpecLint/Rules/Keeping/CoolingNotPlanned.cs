using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5021: a large volume made hot, without a step that cools it in time.</summary>
internal sealed class CoolingNotPlanned : PrepRule
{
    private static readonly Limit Volume = Limits.Of("cooling-volume");
    private static readonly Limit Total = Limits.Of("food-code-cooling-total");
    private static readonly Limit Hot = Limits.Of("food-code-hot-hold");

    private static readonly RuleInfo Rule = new("SL5021", "cooling-not-planned", "A large volume is made hot and nothing cools it in time", Level.Warning)
    {
        Safety = true,
        Limits = [Volume.Id, Total.Id, Hot.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        Step? hot = null, cool = null;
        foreach (var step in prep.Method)
        {
            if (IsHot(step))
            {
                hot = step;
                cool = null;
            }
            else if (hot is not null && step.Verb.Cools)
            {
                cool ??= step;
            }
        }

        if (hot is null || !CanSpoil(context)) return;
        double litres = context.Profile.InputVolume / 1000;
        if (cool is null)
        {
            if (!(litres > Volume.Value)) return;
            context.Report(new Finding(Rule)
            {
                Answer = Answer.NotShown,
                Place = context.At(hot.Do.Span),
                Subject = context.Id,
                Path = context.PathOf(hot),
                Message = $"{Say.Number(litres, 1)} L are made hot and no step cools them; over {Say.Number(Volume.Value)} L a pot left to itself stays warm for hours, where it has to be at 5 °C within {Say.Number(Total.Value)} h ({Total.Source}; volume: {Volume.Source}).",
                Advice = "Add a step that cools it: shallow trays or an ice bath, to 21 °C within 2 h and to 5 °C within 6 h.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of("volume", litres, "L"), Proof.Of(Volume), Proof.Of(Total)],
            });
            return;
        }

        if (!cool.For.IsGiven || cool.For.Value.Dimension != Dimension.Duration || cool.For.Value.BaseHigh / 3600 <= Total.Value || cool.Verb.Freezes) return;
        context.Report(new Finding(Rule)
        {
            Place = context.At(cool.For.Span),
            Subject = context.Id,
            Path = context.PathOf(cool),
            Message = $"It takes {Say.Number(cool.For.Value.BaseHigh / 3600, 1)} h to cool; hot food has to be at 5 °C within {Say.Number(Total.Value)} h ({Total.Source}).",
            Advice = "Cool it in shallow trays or an ice bath.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("cooling", cool.For.Value.BaseHigh / 3600, "h"), Proof.Of(Total)],
        });
    }

    private static bool IsHot(Step step)
    {
        if (step.Verb.Boils) return true;
        var heat = step.To.IsGiven ? step.To : step.At;
        return heat is { IsGiven: true, Value.Dimension: Dimension.Temperature } && heat.Value.BaseHigh >= Hot.Value && !step.Verb.HeatsDry;
    }

    /// <summary>Whether something in it feeds what grows: more than sugar, salt, acid, water and spirit.</summary>
    private static bool CanSpoil(RecipeContext context)
    {
        if (context.Profile.IsSolid || context.Profile.Keeping!.IsStrong || context.Profile.Keeping.Verdict == KeepingVerdict.NotControlled) return false;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Material is null) continue;
            if (part.Material.Kind is not ("sugar" or "honey" or "water" or "ice" or "salt" or "saline" or "acid" or "spirit" or "gum" or "gel")) return true;
        }

        return false;
    }
}
