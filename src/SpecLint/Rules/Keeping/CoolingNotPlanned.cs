using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

[Rule("SL5021", "cooling-not-planned", "A large volume is made hot and nothing cools it in time", Level.Warning, Safety = true)]
[Limit("cooling-volume", "Volume")]
[Limit("food-code-cooling-first", "FirstHours")]
[Limit("food-code-time-control-cold-temperature", "First")]
[Limit("food-code-cooling-total", "Total")]
[Limit("food-code-hot-hold", "Hot")]
internal sealed partial class CoolingNotPlanned : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        Step? hot = null, cool = null;
        bool told = true;
        foreach (var step in prep.Method)
        {
            if (IsHot(step) is not false and var isHot)
            {
                // What may heat takes nothing away from what is hot and not cooled yet.
                if (isHot is null && hot is not null && cool is null) continue;
                if (cool is not null && Hold(context, hot!, cool, told)) return;
                told = isHot is true;
                hot = step;
                cool = null;
            }
            else if (hot is not null && step.Verb.Cools)
            {
                cool ??= step;
            }
        }

        if (hot is not null) Hold(context, hot, cool, told);
    }

    /// <summary>Holds what was made hot, and the step that cools it, against the two stages.</summary>
    /// <returns>Whether there is a finding.</returns>
    private static bool Hold(RecipeContext context, Step hot, Step? cool, bool told)
    {
        if (!CanSpoil(context) || cool is { Verb.Freezes: true }) return false;
        double litres = context.Profile.InputVolume / 1000;
        if (cool is not { For: { IsGiven: true, Value.Dimension: Dimension.Duration } })
        {
            // What is done in the step nobody knows: the rule of warm food asks.
            if (!(litres > Volume.Value) || (cool is null && !hot.Verb.IsKnown && !told)) return false;
            string cooling = "shallow trays or an ice bath, to 21 °C within 2 h and to 5 °C within 6 h.";
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                At = context.VerbOf(cool ?? hot),
                Message = cool is null
                    ? $"{Say.Number(litres, 1)} L are made hot and no step cools them. A pot of more than {Say.Number(Volume.Value)} L "
                        + $"left to itself stays warm for hours, but it must reach 5 °C within {Say.Number(Total.Value)} h "
                        + $"({Total.Source}; volume: {Volume.Source})."
                    : $"The step that cools {Say.Number(litres, 1)} L does not say how long it takes. It must reach "
                        + $"{Say.Number(First.Value)} °C within {Say.Number(FirstHours.Value)} h and 5 °C within "
                        + $"{Say.Number(Total.Value)} h ({Total.Source}).",
                Advice = cool is null ? $"Add a step that cools it: {cooling}" : $"Write `to` and `for` in the step: {cooling}",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of("volume", litres, "L"), Proof.Of(cool is null ? Volume : FirstHours), Proof.Of(Total)],
            });
            return true;
        }

        // The first stage runs to 21 °C: a step that ends warmer, or there, is all first stage.
        bool aimed = cool.To is { IsGiven: true, Value.Dimension: Dimension.Temperature };
        double hours = cool.For.Value.BaseHigh / 3600;
        bool isFirst = aimed && cool.To.Value.BaseHigh >= First.Value;

        // Of one that does not say how cold it gets, nobody knows either.
        bool mayBeFirst = !aimed && hours <= Total.Value;
        var most = isFirst || mayBeFirst ? FirstHours : Total;
        if (hours <= most.Value) return false;
        string stages = most == Total
            ? $"5 °C within {Say.Number(Total.Value)} h, and at {Say.Number(First.Value)} °C within the first "
                + $"{Say.Number(FirstHours.Value)}"
            : $"{Say.Number(First.Value)} °C within {Say.Number(FirstHours.Value)} h and 5 °C within {Say.Number(Total.Value)} h";
        string end = mayBeFirst ? ", and nothing says how cold it is then"
            : isFirst ? $" to {Say.Number(cool.To.Value.BaseHigh, 0)} °C"
            : "";
        context.Report(new(Rule)
        {
            Answer = told && !mayBeFirst ? Answer.Broken : Answer.NotShown,
            At = context.At(cool.For.Span, context.PathOf(cool)),
            Message = $"It takes {Say.Number(hours, 1)} h to cool{end}. Hot food must reach {stages} ({most.Source}).",
            Advice = "Cool it in shallow trays or an ice bath.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("cooling", hours, "h"), Proof.Of(most)],
        });
        return true;
    }

    /// <summary>Whether the step makes it hot; <see langword="null"/> where it does not say how hot it gets.</summary>
    private static bool? IsHot(Step step)
    {
        if (step.Verb.Boils) return true;
        if (step.Verb.HeatsDry) return false;
        if (KeepingWords.HeatOf(step) is { IsGiven: true } heat) return heat.Value.BaseHigh >= Hot.Value;
        return step.Verb.Cooks || !step.Verb.IsKnown ? null : false;
    }

    /// <summary>Whether something in it feeds what grows: more than sugar, salt, acid, water and spirit.</summary>
    private static bool CanSpoil(RecipeContext context) =>
        context.Profile.Keeping is { StaysDry: false, IsStrong: false, Verdict: not KeepingVerdict.NotControlled }
            && context.Profile.Parts.Any(static p => p.Phase != PartPhase.Beside && p.Material is { Kind.FeedsNothing: false });
}
