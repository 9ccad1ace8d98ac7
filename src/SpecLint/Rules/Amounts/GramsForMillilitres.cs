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
            if (!IsLiquid(part)) continue;
            var amount = part.Line.Amount.Value;
            if (amount.Dimension == Dimension.Volume) (poured, millilitresPoured) = (poured + 1, millilitresPoured + amount.Base);
            else if (amount.Dimension == Dimension.Mass) (weighed, gramsWeighed) = (weighed + 1, gramsWeighed + amount.Base);
        }

        // One of each: the drink is poured where the larger part is.
        if (weighed == 0 || poured < weighed || (poured == weighed && millilitresPoured < gramsWeighed)) return;
        foreach (var part in context.Profile.Parts)
        {
            // A foam has no volume of its own to pour: it is weighed.
            if (!IsLiquid(part) || part.Material!.Kind.HoldsAir || part.Line.Amount.Value.Dimension != Dimension.Mass) continue;
            double density = part.Material.Density, grams = part.Line.Amount.Value.Base;
            if (double.IsNaN(density) || Written.Number(grams) == "0" || Math.Abs((density - 1) * 100) <= Apart.Value) continue;
            Report(context, part.Line, density, grams);
        }
    }

    private static void Report(RecipeContext context, Line line, double density, double grams)
    {
        double millilitres = grams / density, step = context.Settings.Bar is { Jigger.IsGiven: true } bar ? bar.Jigger.Value.Base : 0;
        double pour = Written.Nearest(millilitres, step > 0 && millilitres >= step ? step : 0.5);
        string same = $"{Written.Number(grams)} ml", right = $"{Written.Number(pour)} ml";
        context.Report(new(Rule)
        {
            At = context.AmountOf(line),
            Message = $"{Written.Item(line)} is given as {Say.With(grams, "g")} in a drink poured by volume. At "
                + $"{Say.Number(density)} g/mL that is {Say.With(millilitres, "mL")}, "
                + $"{Say.Number(Math.Abs(millilitres - grams) / grams * 100, 0)} % {(millilitres < grams ? "less" : "more")} than "
                + $"the number poured with a jigger (differences under {Say.Number(Apart.Value)} % are ignored; {Apart.Source}).",
            Advice = $"Write {same} if that is poured, or {right} if it is weighed.",
            Evidence = [Written.Given(context, line), Proof.Of("density", density, "g/mL")],
            Corrections =
            [
                .. context.Write(line.Amount.Span, same, $"Write {same}: the number was meant for the jigger."),
                .. context.Write(line.Amount.Span, right, $"Write {right}, the volume of {Written.Number(grams)} g."),
            ],
        });
    }

    private static bool IsLiquid(Part part) =>
        part.Line.Amount.IsGiven && part.Phase != PartPhase.Beside && part.Material is { State: MaterialState.Liquid };
}
