using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2015", "below-the-scale", "A weight too small for the bar's scale", Level.Warning)]
[Limit("amount-scale-steps", "Steps")]
internal sealed partial class BelowTheScale : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Settings.Bar is not { Scale: { IsGiven: true, Value.Base: > 0 and var step } scale } bar) return;
        double least = Steps.Value * step;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Phase == PartPhase.Beside || part.Material is not { Kind: var kind }) continue;
            if (line.Amount.Value is not { Dimension: Dimension.Mass, Unit.System: UnitSystem.Metric, Base: > 0 and var grams }) continue;

            // A little of a spice grated into one drink is to taste.
            if (grams >= least * Guards.ScaleRounding || (context.Recipe is Drink && kind.IsBotanical)) continue;
            double error = Math.Min(100, step / grams * 100), stock = grams * 10;
            string times = $"{Written.Number(Math.Ceiling(least / grams))} times as much";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)} is {Say.Number(grams / step, 1)} "
                    + $"steps of the bar's {Written.Number(step)} g scale. One step is {Say.Number(error, 0)} % of it; "
                    + $"{Say.Number(Steps.Value)} steps keep it within 5 % ({Steps.Source}).",
                Advice = kind.IsSoluble && stock >= least
                    ? $"Make a solution of 10 % w/w and weigh {Written.Number(stock)} g of it (use {Written.Number(stock - grams)} g "
                        + $"less water), or make {times}."
                    : $"Make {times}, or weigh on a finer scale.",
                Evidence = [Written.Given(context, line), Proof.Of("scale", scale.Value, bar.At(scale.Span)), Proof.Of(Steps)],
            });
        }
    }
}
