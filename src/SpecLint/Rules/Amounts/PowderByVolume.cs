using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2004", "powder-by-volume", "A powder measured by volume", Level.Warning)]
internal sealed partial class PowderByVolume : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Material is not { State: MaterialState.Powder } material || !line.Amount.IsGiven) continue;
            var amount = line.Amount.Value;
            if (amount.Dimension != Dimension.Volume || Written.IsOunce(amount.Unit) || part.Phase == PartPhase.Beside) continue;

            // A spoon of sugar is the trade's own measure; how a syrup's sugar is measured is a matter of family 4.
            bool potent = material.Kind.IsPotentPowder;
            if (!potent && (!Written.IsMetricVolume(amount.Unit) || (context.Recipe is Prep prep && AcidAndSugar.SyrupByVolume.IsOf(prep)))) continue;
            double byShare = Written.GramsMeant(context.Profile, part);
            string grams = part.IsWeighed ? Say.Range(part.Grams.Typical, part.Grams.Low, part.Grams.High, "g") : "an unknown mass";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} is a powder measured by volume: `{Written.Text(context, line.Amount.Span)}` weighs "
                    + $"{grams}, depending on how it is packed (bulk densities differ by 15 %; common practice, no source).",
                Advice = "Weigh it, and write grams.",
                Evidence = [Proof.Of("amount", amount, context.At(line.Amount.Span))],
                Corrections = !double.IsNaN(byShare) ? [Written.Set(
                    context, line.Amount.Span, byShare, "g", CorrectionGrade.Proposed,
                    $"Write {Written.Number(byShare)} g, which is what the whole leaves for it.")]
                    : part.IsWeighed && context.Recipe is not Prep { Target: { } }
                    ? [Written.Set(
                        context,
                        line.Amount.Span,
                        part.Grams.Typical,
                        "g",
                        CorrectionGrade.Proposed,
                        $"Write the typical weight, {Written.Number(part.Grams.Typical)} g; weigh once to be sure.")]
                    : [],
            });
        }
    }
}
