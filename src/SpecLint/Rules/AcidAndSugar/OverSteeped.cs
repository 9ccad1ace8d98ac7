using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4026", "over-steeped", "Tea in water too hot, or in water or spirit for too long", Level.Warning)]
[Limit("hot-drink-from", "Hot")]
[Limit("tea-spirit-least", "Spirit")]
internal sealed partial class OverSteeped : PrepRule
{
    /// <summary>Seconds of a minute and of an hour.</summary>
    private const double Minute = 60, Hour = 3600;

    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not { } leaf || SteepingTable.Find(leaf) is not { } most) continue;
            foreach (var step in prep.Method)
            {
                if (!step.Verb.Extracts || !StepHeat.Takes(step, part.Line.Item.Or(""))) continue;
                if (step.For.IsGiven && step.For.Value.BaseLow > most.SpiritHours * Hour && StrengthAt(context, step) >= Spirit.Value)
                {
                    InSpirit(context, part, step, most);
                    return;
                }

                var heat = step.At.IsGiven ? step.At : step.To;
                if (heat is not { IsGiven: true, Value: { Dimension: Dimension.Temperature } at } || at.BaseLow < Hot.Value) continue;
                bool hot = at.BaseLow > most.Hottest, slow = step.For.IsGiven && step.For.Value.BaseLow > most.Minutes * Minute;
                if (!hot && !slow) continue;
                InWater(context, part, step, most, at, hot);
                return;
            }
        }
    }

    private static void InWater(RecipeContext context, Part part, Step step, Steeping most, Quantity heat, bool hot)
    {
        string hottest = Say.With(most.Hottest, "°C"), minutes = Say.With(most.Minutes, "min");
        string over = hot ? $"above the {hottest}" : $"longer than the {minutes}";
        string time = step.For.IsGiven ? $" for {Say.With(step.For.Value.Base / Minute, "min")}" : "";
        context.Report(new(Rule)
        {
            At = context.VerbOf(step),
            Message = $"`{part.Item!.Id}` steeps at {Say.With(heat.Base, "°C")}{time}, {over} "
                + $"that {most.Use} takes: it turns bitter ({most.Source}).",
            Advice = hot
                ? $"Use water of at most {hottest}, for at most {minutes}."
                : $"Strain it after at most {minutes}, and take more leaf if it is weak.",
            Related = [context.See(part.Line.Span, "the leaf")],
        });
    }

    private static void InSpirit(RecipeContext context, Part part, Step step, Steeping most) => context.Report(new(Rule)
    {
        At = context.VerbOf(step),
        Message = $"`{part.Item!.Id}` steeps in spirit for {Say.With(step.For.Value.Base / Hour, "h")}, longer than the "
            + $"{Say.With(most.SpiritHours, "h")} that {most.Use} takes at most: it turns bitter and dry (common practice, no source).",
        Advice = "Taste it from the first hour on, and strain it as soon as it is strong enough.",
        Related = [context.See(part.Line.Span, "the leaf")],
    });

    /// <summary>g of ethanol in 100 g of what is in the vessel at a step.</summary>
    private static double StrengthAt(RecipeContext context, Step step)
    {
        double ethanol = 0, all = 0;
        var pot = Pot.Of(context.Recipe);
        foreach (var part in context.Profile.Parts)
        {
            if (!part.IsWeighed || part.Material is null || part.Phase == PartPhase.Beside) continue;
            if (!pot.IsInTheVessel(step.Number - 1, part.Line, context.Profile)) continue;
            ethanol += part.Grams.Typical * part.Material.Of(Science.Component.Ethanol);
            all += part.Grams.Typical;
        }

        return all > 0 ? 100 * ethanol / all : double.NaN;
    }
}
