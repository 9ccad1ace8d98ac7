using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2008", "grams-for-millilitres", "A dense liquid in grams in a drink that is poured", Level.Warning, IsCause = true)]
[Limit("amount-density-apart", "Apart")]
internal sealed partial class GramsForMillilitres : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        int poured = 0, weighed = 0;
        double millilitresPoured = 0, gramsWeighed = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Amount.IsGiven || part.Phase == PartPhase.Beside || part.Material is not { State: MaterialState.Liquid }) continue;
            if (part.Line.Amount.Value.Dimension == Dimension.Volume)
            {
                poured++;
                millilitresPoured += part.Line.Amount.Value.Base;
            }
            else if (part.Line.Amount.Value.Dimension == Dimension.Mass)
            {
                weighed++;
                gramsWeighed += part.Line.Amount.Value.Base;
            }
        }

        // One of each: the drink is poured where the larger part is.
        if (weighed == 0 || poured < weighed || (poured == weighed && millilitresPoured < gramsWeighed)) return;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Phase == PartPhase.Beside || part.Material is not { State: MaterialState.Liquid } material) continue;
            if (line.Amount.Value.Dimension != Dimension.Mass || double.IsNaN(material.Density) || Written.Number(line.Amount.Value.Base) == "0") continue;

            // A foam has no volume of its own to pour: it is weighed.
            if (material.Kind.HoldsAir) continue;
            double apart = (material.Density - 1) * 100;
            if (Math.Abs(apart) <= Apart.Value) continue;
            double grams = line.Amount.Value.Base, millilitres = grams / material.Density;
            double step = context.Settings.Bar is { Jigger.IsGiven: true } bar ? bar.Jigger.Value.Base : 0;
            double pour = step > 0 && millilitres >= step ? Written.Nearest(millilitres, step) : Written.Nearest(millilitres, 0.5);
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} is given as {Say.With(grams, "g")} in a drink poured by volume. At "
                    + $"{Say.Number(material.Density)} g/mL that is {Say.With(millilitres, "mL")}, "
                    + $"{Say.Number(Math.Abs(millilitres - grams) / grams * 100, 0)} % {(millilitres < grams ? "less" : "more")} than "
                    + $"the number poured with a jigger (differences under {Say.Number(Apart.Value)} % are ignored; {Apart.Source}).",
                Advice = $"Write {Written.Number(grams)} ml if that is poured, or {Written.Number(pour)} ml if it is weighed.",
                Evidence = [Proof.Of("amount", line.Amount.Value, context.At(line.Amount.Span)), Proof.Of("density", material.Density, "g/mL")],
                Corrections =
                [
                    Written.Set(
                        context, line.Amount.Span, grams, "ml", CorrectionGrade.Proposed,
                        $"Write {Written.Number(grams)} ml: the number was meant for the jigger."),
                    Written.Set(
                        context, line.Amount.Span, pour, "ml", CorrectionGrade.Proposed,
                        $"Write {Written.Number(pour)} ml, the volume of {Written.Number(grams)} g."),
                ],
            });
        }
    }
}
