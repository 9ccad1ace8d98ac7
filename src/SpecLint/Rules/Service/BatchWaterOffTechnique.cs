using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8013", "batch-water-off-technique", "A batch with far less water than shaking the drink would add, or with more water than drink",
    Level.Note, Needs = [Fact.Abv, Fact.Dilution], IsConsequence = true)]
[Limit("shaken-dilution-least", "Least")]
[Limit("batch-water-low", "Low")]
[Limit("batch-water-most", "Most")]
internal sealed partial class BatchWaterOffTechnique : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (Batch.Is(prep)
            && prep.Family.OrNone() is { IsBatch: true, IsCarbonated: false }
            && !prep.Method.Any(static s => s.Verb.Slushes || s.Verb.Carbonates))
        {
            var (all, share) = Batch.Water(context.Profile);
            if (all is not null && all.Line.Amount.IsGiven && share > Most.Value) Drowned(context, all, share);
        }

        if (Batch.Of(context, prep) is not { } batch || batch.DrinkProfile.Technique != TechniqueKind.Shaken) return;
        var (water, percent) = Batch.Water(context.Profile);
        if (water is null || !water.Line.Amount.IsGiven || percent < Low.Value * Guards.WateredBatch || percent >= Least.Value) return;
        var dilution = batch.DrinkProfile.Get(Fact.Dilution);
        if (!dilution.IsKnown || percent >= dilution.Low) return;
        var amount = water.Line.Amount.Value;
        double rounded = Rounding.ToStep(amount.Base * dilution.Value / percent, amount, context.Settings);
        string words = Rounding.Words(rounded, amount);
        context.Report(new(Rule)
        {
            At = context.AmountOf(water.Line),
            Message = $"The water is {Say.With(Math.Round(percent, 1), "%")} of the rest, but shaking `{batch.Drink.Id}` adds "
                + $"{Say.Fact(Fact.Dilution, dilution)} ({Least.Source}).",
            Advice = $"Take {words} of {water.Line.Item.Or("water")} to match shaking, or taste it and say why it is less.",
            Evidence = [Proof.Of("water of the rest", percent, "%"), Proof.Of(Fact.Dilution, dilution), Proof.Of(Least)],
            Related = [new RelatedPlace(batch.Drink.Head, "the drink that it is a batch of")],
            Corrections = context.Write(
                water.Line.Amount.Span, Batch.LosesItsHold(context, rounded - amount.Base) ? null : words),
        });
    }

    private static void Drowned(RecipeContext context, Part water, double percent) => context.Report(new(Rule)
    {
        AskedLevel = Level.Warning,
        At = context.AmountOf(water.Line),
        Message = $"The water is {Say.With(Math.Round(percent), "%")} of the rest: more water than drink. Ice adds far less "
            + $"({Most.Source}).",
        Advice = "Check the amount of water: a digit or a unit may have slipped. What is lengthened is a carbonated batch, or a drink "
            + "with a top.",
        Evidence = [Proof.Of("water of the rest", percent, "%"), Proof.Of(Most)],
    });
}
