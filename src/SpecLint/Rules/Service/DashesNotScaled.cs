using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

[Rule("SL8014", "dashes-not-scaled", "Dashes or drops that were not scaled into the batch", Level.Warning, IsConsequence = true)]
[Limit("dash-factor-least", "Least")]
internal sealed partial class DashesNotScaled : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (Batch.Of(context, prep) is not { } batch || double.IsNaN(batch.Factor) || batch.Factor < Guards.BatchFactor) return;
        foreach (var (ofDrink, ofBatch, factor) in batch.Pairs)
        {
            if (!Batch.IsSeasoning(ofDrink)
                || factor >= batch.Factor * Least.Value / 100
                || !ofBatch.Line.Amount.IsGiven
                || !ofDrink.Line.Amount.IsGiven)
                continue;
            bool mass = double.IsNaN(ofDrink.Millilitres);
            double full = (mass ? ofDrink.Grams.Typical : ofDrink.Millilitres) / batch.Drink.ServesOrOne * batch.Factor;
            double half = Round(full / 2), whole = Round(full);
            string unit = mass ? "g" : "ml", item = ofBatch.Line.Item.Or("it");
            context.Report(new(Rule)
            {
                At = context.AmountOf(ofBatch.Line),
                Message = $"The batch holds {Say.Number(batch.Factor, 1)} times `{batch.Drink.Id}` and {Times(factor)} its {item} "
                    + $"({Rounding.Words(ofBatch.Line.Amount.Value.Base, ofBatch.Line.Amount.Value)} for "
                    + $"{Rounding.Words(ofDrink.Line.Amount.Value.Base, ofDrink.Line.Amount.Value)} a drink), below the "
                    + $"{Say.With(Least.Value, "%")} of the factor that still seasons ({Least.Source}).",
                Advice = $"Add {Say.Number(half)} {unit}, taste, and add up to {Say.Number(whole)} {unit}.",
                Evidence =
                    [Proof.Of("factor of the batch", batch.Factor, "1"), Proof.Of($"factor of {item}", factor, "1"), Proof.Of(Least)],
                Related = [new RelatedPlace(batch.Drink.At(ofDrink.Line.Span), "the line in the drink")],
                Corrections = context.Write(
                    ofBatch.Line.Amount.Span, $"{Say.Number(whole)} {unit}", $"Write {Say.Number(whole)} {unit}, scaled in full."),
            });
        }
    }

    private static string Times(double factor)
    {
        string number = Say.Number(factor, 1);
        return number == "1" ? "only once" : $"{number} times";
    }

    private static double Round(double value) => value >= 10 ? Math.Round(value) : Math.Round(value, 1);
}
