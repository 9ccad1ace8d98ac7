using SpecLint.Book;
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
            bool isOfSyrup = context.Recipe is Prep prep && AcidAndSugar.SyrupByVolume.IsOf(prep);
            if (!material.Kind.IsPotentPowder && (!Written.IsMetricVolume(amount.Unit) || isOfSyrup)) continue;
            double byShare = Written.GramsMeant(context.Profile, part);
            string grams = part.IsWeighed ? Say.Range(part.Grams.Typical, part.Grams.Low, part.Grams.High, "g") : "an unknown mass";
            bool isFree = part.IsWeighed && context.Recipe is not Prep { Target: { } };
            string? typical = isFree ? $"{Written.Number(part.Grams.Typical)} g" : null;
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} is a powder measured by volume: `{Written.Text(context, line.Amount.Span)}` weighs "
                    + $"{grams}, depending on how it is packed (bulk densities differ by 15 %; common practice, no source).",
                Advice = "Weigh it, and write grams.",
                Evidence = [Written.Given(context, line)],
                Corrections = !double.IsNaN(byShare) ? Written.Rest(context, line, byShare)
                    : context.Write(line.Amount.Span, typical, $"Write the typical weight, {typical}; weigh once to be sure."),
            });
        }
    }
}
