using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2003: a fluid ounce on something that does not pour.</summary>
internal sealed class OunceOnSolid : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL2003", "ounce-on-solid", "A fluid ounce on something that does not pour", Level.Error) { IsCause = true };

    /// <summary>g in an ounce by weight (NIST Handbook 44, appendix C).</summary>
    private const double OunceByWeight = 28.349523125;

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Material is not { } material || !line.Amount.IsGiven || !Written.IsOunce(line.Amount.Value.Unit)) continue;
            if (material.State is not (MaterialState.Powder or MaterialState.Solid) || PiecesByVolume.IsPiece(material)) continue;
            double grams = Written.Nearest(line.Amount.Value.Value * OunceByWeight, 0.1);
            context.Report(new Finding(Rule)
            {
                Place = context.At(line.Amount.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(line, "amount"),
                Message = $"{Written.Item(line)} does not pour, but is measured in fluid ounces (`{Written.Text(context, line.Amount.Span)}`). An ounce by weight is 28.35 g (NIST Handbook 44), which gives {Written.Number(grams)} g.",
                Advice = $"Write {Written.Number(grams)} g if ounces by weight are meant. If the unit was lost, weigh it.",
                Evidence = [Proof.Of("amount", line.Amount.Value, context.At(line.Amount.Span))],
                Corrections = [Written.Set(context, line.Amount.Span, grams, "g", CorrectionGrade.Proposed, $"Read it as ounces by weight: {Written.Number(grams)} g.")],
            });
        }
    }
}
