using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8025", "fruit-count-for-juice", "Juice measured in fruit", Level.Warning, IsCause = true)]
internal sealed partial class FruitCountForJuice : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            // A can or a bottle of juice is no fruit: its size is asked for elsewhere.
            if (part.Phase == PartPhase.Beside
                || part.Line.Amount is not { IsGiven: true, Value: { Dimension: Dimension.Count, Unit.Name: not "can" } amount }
                || part is not { Material: { Kind.IsJuice: true, State: MaterialState.Liquid }, Item.Id: var item })
                continue;
            var one = JuiceOfOne.Find(item);
            double typical = one is { } o ? Math.Max(1, Math.Round(o.Typical * amount.Value / 2.5)) * 2.5 : double.NaN;
            context.Report(new(Rule)
            {
                At = context.AmountOf(part.Line),
                Message = one is { } range
                    ? $"One fruit gives {Say.Number(range.Low)} to {Say.With(range.High, "mL")} of {item} ({range.Source}), so the "
                        + "acidity of the drink depends on the crate."
                    : $"{item} is given by the number of fruit, and the amount of juice differs from crate to crate.",
                Advice = one is null
                    ? "Measure it in millilitres."
                    : $"Measure it: {Say.With(typical, "mL")} is what {Say.Number(amount.Value, 1)} usually "
                        + $"{(amount.Value <= 1 ? "gives" : "give")}.",
                Evidence = one is { } e ? [new Evidence($"{item} of one", e.Typical, e.Low, e.High, "mL", e.Source)] : [],
                Corrections = one is null
                    ? []
                    : [new Correction(
                        CorrectionGrade.Proposed, $"Write {Say.Number(typical, 1)} ml.",
                        [context.Rewrite(part.Line.Amount.Span, $"{Say.Number(typical, 1)} ml")]) { KeepsTheThing = true }],
            });
        }
    }
}
