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
        if (context.Settings.Bar is not { Scale.IsGiven: true } bar) return;
        double step = bar.Scale.Value.Base;
        if (!(step > 0)) return;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Phase == PartPhase.Beside || part.Material is not { } material) continue;
            var amount = line.Amount.Value;
            if (amount.Dimension != Dimension.Mass || amount.Unit.System != UnitSystem.Metric || amount.Base <= 0 || amount.Base >= Steps.Value * step * Guards.ScaleRounding) continue;

            // A little of a spice grated into one drink is to taste.
            if (context.Recipe is Drink && material.Kind.IsBotanical) continue;
            double error = Math.Min(100, step / amount.Base * 100);
            bool dissolves = material.Kind.IsSoluble;
            double stock = amount.Base * 10;
            string advice = dissolves && stock >= Steps.Value * step
                ? $"Make a solution of 10 % w/w and weigh {Written.Number(stock)} g of it (use {Written.Number(stock - amount.Base)} g less water), or make {Written.Number(Math.Ceiling(Steps.Value * step / amount.Base))} times as much."
                : $"Make {Written.Number(Math.Ceiling(Steps.Value * step / amount.Base))} times as much, or weigh on a finer scale.";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)} is {Say.Number(amount.Base / step, 1)} steps of the bar's {Written.Number(step)} g scale. One step is {Say.Number(error, 0)} % of it; {Say.Number(Steps.Value)} steps keep it within 5 % ({Steps.Source}).",
                Advice = advice,
                Evidence = [Proof.Of("amount", amount, context.At(line.Amount.Span)), Proof.Of("scale", bar.Scale.Value, bar.At(bar.Scale.Span)), Proof.Of(Steps)],
            });
        }
    }
}
