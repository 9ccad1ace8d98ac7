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
            if (part.Material is not { Kind.IsEgg: true }
                || part.Line.Amount is not { IsGiven: true, Value: { Dimension: Dimension.Count } amount }
                || Math.Abs(amount.Value - Math.Round(amount.Value)) < Guards.WholePiece
                || amount.Low != amount.High)
                continue;
            string item = part.Line.Item.Or("the egg"), exact = "";
            string? grams = null;
            if (part.IsWeighed)
            {
                grams = $"{Say.Number(Math.Round(part.Grams.Typical))} g";
                exact = $"; it is {Say.Range(part.Grams.Typical, part.Grams.Low, part.Grams.High, "g")} of {item}";
            }

            context.Report(new(Rule)
            {
                At = context.AmountOf(part.Line),
                Message = $"{Say.Number(amount.Value, 2)} of an egg cannot be counted out{exact}.",
                Advice = $"Beat it and weigh {grams ?? "it"}.",
                Evidence = [Proof.Of(item, amount, context.At(part.Line.Amount.Span))],
                Corrections = context.Write(part.Line.Amount.Span, grams),
            });
        }
    }
}
