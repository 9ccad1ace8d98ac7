using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8017", "egg-in-fractions", "Part of an egg", Level.Note)]
internal sealed partial class EggInFractions : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { Kind.IsEgg: true } || !part.Line.Amount.IsGiven || part.Line.Amount.Value.Dimension != Dimension.Count) continue;
            var amount = part.Line.Amount.Value;
            double nearest = Math.Round(amount.Value);
            if (Math.Abs(amount.Value - nearest) < Guards.WholePiece || amount.Low != amount.High) continue;
            string item = part.Line.Item.Or("the egg");
            double grams = part.IsWeighed ? Math.Round(part.Grams.Typical) : double.NaN;
            context.Report(new(Rule)
            {
                At = context.AmountOf(part.Line),
                Message = $"{Say.Number(amount.Value, 2)} of an egg cannot be counted "
                    + $"out{(part.IsWeighed ? $"; it is {Say.Range(part.Grams.Typical, part.Grams.Low, part.Grams.High, "g")} of {item}" : "")}.",
                Advice = part.IsWeighed ? $"Beat it and weigh {Say.Number(grams)} g." : "Beat it and weigh it.",
                Evidence = [Proof.Of(item, amount, context.At(part.Line.Amount.Span))],
                Corrections = part.IsWeighed
                    ? [new Correction(
                        CorrectionGrade.Proposed, $"Write {Say.Number(grams)} g.",
                        [new TextEdit(context.At(part.Line.Amount.Span), $"\"{Say.Number(grams)} g\"")])]
                    : [],
            });
        }
    }
}
