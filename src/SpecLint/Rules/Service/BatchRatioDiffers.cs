using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

[Rule("SL8016", "batch-ratio-differs", "A batch whose ratios differ from those of its drink", Level.Warning, IsConsequence = true)]
[Limit("batch-ratio-tolerance", "Off")]
internal sealed partial class BatchRatioDiffers : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (Batch.Of(context, prep) is not { } batch) return;
        if (!double.IsNaN(batch.Factor)) CheckRatios(context, batch);
        CheckMissing(context, prep, batch);
    }

    private static void CheckRatios(RecipeContext context, Batch batch)
    {
        foreach (var (ofDrink, ofBatch, factor) in batch.Pairs)
        {
            if (Batch.IsSeasoning(ofDrink) || !ofBatch.Line.Amount.IsGiven || Agrees(factor, batch)) continue;
            var amount = ofBatch.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * batch.Factor / factor, amount, context.Settings);
            string item = ofBatch.Line.Item.Or("it"), words = Rounding.Words(rounded, amount);

            // Where no two parts agree, nobody knows which of them is right.
            bool solved = batch.Pairs.Count(p => !Batch.IsSeasoning(p.OfDrink) && Agrees(p.Factor, batch)) >= 2
                && !(ofBatch.Material is { Kind.IsStrong: true } && factor > batch.Factor && Batch.HoldsFood(context));
            context.Report(new(Rule)
            {
                At = context.AmountOf(ofBatch.Line),
                Message = $"{item} is {Say.Number(factor, 1)} times that of `{batch.Drink.Id}`, and the other parts are "
                    + $"{Say.Number(batch.Factor, 1)} times: {Say.Number(100 * Math.Abs((factor / batch.Factor) - 1), 0)} % "
                    + $"{(factor > batch.Factor ? "too much" : "too little")}, past the {Say.With(Off.Value, "%")} of "
                    + $"measuring ({Off.Source}).",
                Advice = (factor > 0 ? $"Take {words}" : "Say how much of it the batch takes") + ", or bring the drink in line.",
                Evidence = [Proof.Of($"factor of {item}", factor, "1"), Proof.Of("factor of the batch", batch.Factor, "1"), Proof.Of(Off)],
                Related = [new RelatedPlace(batch.Drink.At(ofDrink.Line.Span), "the line in the drink")],
                Corrections = context.Write(ofBatch.Line.Amount.Span, solved ? words : null),
            });
        }
    }

    private static bool Agrees(double factor, Batch batch) => Math.Abs(factor - batch.Factor) <= batch.Factor * Off.Value / 100;

    private static void CheckMissing(RecipeContext context, Prep prep, Batch batch)
    {
        foreach (var part in batch.DrinkProfile.Parts)
        {
            // What is fresh, sparkling or beaten goes in at service.
            if (part.Phase != PartPhase.Mix
                || part.Line.Optional
                || part.Item is null
                || Substances.IsWater(part.Material)
                || Substances.IsSparkling(part.Material)
                || part.Material is { Kind.IsAddedAtService: true }
                || context.Profile.Parts.Any(p => p.Item?.Id == part.Item.Id))
                continue;
            double millilitres = Math.Round(part.Millilitres / batch.Drink.ServesOrOne * batch.Factor, 1);
            string amount = part.Line.Amount.IsGiven && !double.IsNaN(batch.Factor) && !double.IsNaN(part.Millilitres)
                ? $" ({Say.With(millilitres, "mL")} for {Say.Number(batch.Factor, 1)} drinks)"
                : "";
            context.Report(new(Rule)
            {
                At = context.At(prep.IngredientsSpan, "ingredients"),
                Key = part.Item.Id,
                Message = $"`{batch.Drink.Id}` holds {part.Item.Id}, and its batch does not.",
                Advice = $"Add it{amount}, or say in the notes that it goes in at service.",
                Related = [new RelatedPlace(batch.Drink.At(part.Line.Span), "the line in the drink")],
            });
        }
    }
}
