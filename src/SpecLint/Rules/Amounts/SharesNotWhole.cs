using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2017: shares that do not add up to 100.</summary>
internal sealed class SharesNotWhole : RecipeRule
{
    private static readonly Limit Apart = Limits.Of("amount-shares-apart");

    private static readonly RuleInfo Rule = new("SL2017", "shares-not-whole", "Shares that do not add up to 100", Level.Error) { Limits = [Apart.Id] };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        var reading = ShareReading.Of(context);
        if (reading.Fault != ShareFault.NotWhole) return;
        var edits = reading.Edits(context);
        context.Report(new Finding(Rule)
        {
            Place = context.At(context.Recipe.IngredientsSpan),
            Subject = context.Id,
            Path = "ingredients",
            Message = $"The shares add up to {Say.Number(reading.Sum)} %, not to 100 (within {Say.Number(Apart.Value)} for rounding; {Apart.Source}).",
            Advice = edits.Count > 0 ? "Compute the shares from the amounts. If the shares are right, correct the amounts." : "Correct the share that is wrong, or let water make up the whole.",
            Evidence = [Proof.Of("sum of shares", reading.Sum, "%"), Proof.Of(Apart)],
            Corrections = edits.Count > 0 ? [new Correction(CorrectionGrade.Assured, "Write the shares computed from the amounts.", edits)] : [],
        });
    }
}
