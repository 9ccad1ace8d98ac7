using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2017", "shares-not-whole", "Shares that do not add up to 100", Level.Error)]
[Limit("amount-shares-apart", "Apart")]
internal sealed partial class SharesNotWhole : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var reading = ShareReading.Of(context);
        if (reading.Fault != ShareFault.NotWhole) return;
        var corrections = reading.Write(context, "Write the shares computed from the amounts.");
        context.Report(new(Rule)
        {
            At = context.At(context.Recipe.IngredientsSpan, "ingredients"),
            Message = $"The shares add up to {Say.Number(reading.Sum)} %, not to 100 (within {Say.Number(Apart.Value)} for rounding; "
                + $"{Apart.Source}).",
            Advice = corrections.Count > 0
                ? "Compute the shares from the amounts. If the shares are right, correct the amounts."
                : "Correct the share that is wrong, or let water make up the whole.",
            Evidence = [Proof.Of("sum of shares", reading.Sum, "%"), Proof.Of(Apart)],
            Corrections = corrections,
        });
    }
}
