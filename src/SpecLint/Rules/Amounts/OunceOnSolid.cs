using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2003", "ounce-on-solid", "A fluid ounce on something that does not pour", Level.Error, IsCause = true)]
internal sealed partial class OunceOnSolid : RecipeRule
{
    /// <summary>g in an ounce by weight (NIST Handbook 44, appendix C).</summary>
    private const double OunceByWeight = 28.349523125;

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Material is not { } material || !line.Amount.IsGiven || !Written.IsOunce(line.Amount.Value.Unit)) continue;
            if (material.State is not (MaterialState.Powder or MaterialState.Solid) || PiecesByVolume.IsPiece(material)) continue;
            double grams = Written.Nearest(line.Amount.Value.Value * OunceByWeight, 0.1), byShare = Written.GramsMeant(context.Profile, part);
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} does not pour, but is measured in fluid ounces "
                    + $"(`{Written.Text(context, line.Amount.Span)}`). An ounce by weight is 28.35 g (NIST Handbook 44), which gives "
                    + $"{Written.Number(grams)} g.",
                Advice = $"Write {Written.Number(grams)} g if ounces by weight are meant. If the unit was lost, weigh it.",
                Evidence = [Proof.Of("amount", line.Amount.Value, context.At(line.Amount.Span))],
                Corrections = double.IsNaN(byShare) && context.Recipe is Prep
                    ? []
                    : [double.IsNaN(byShare)
                        ? Written.Set(
                            context, line.Amount.Span, grams, "g", CorrectionGrade.Proposed,
                            $"Read it as ounces by weight: {Written.Number(grams)} g.")
                        : Written.Set(
                            context, line.Amount.Span, byShare, "g", CorrectionGrade.Proposed,
                            $"Write {Written.Number(byShare)} g, which is what the whole leaves for it.")],
            });
        }
    }
}
