using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8031", "reduced-without-loss", "Reduced, and the yield is what went in", Level.Warning, IsConsequence = true)]
[Limit("reduction-loss-least", "Least")]
internal sealed partial class ReducedWithoutLoss : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Yield.IsGiven || prep.Yield.Value.Dimension is not (Dimension.Mass or Dimension.Volume)) return;
        Step? reduces = null;
        foreach (var step in prep.Method)
        {
            // What is reduced by itself and then added to the rest says little of the whole.
            if (step.Items.Count > 0 && step.Items.Count < prep.Ingredients.Count) continue;
            if (step.Verb.Reduces
                || (step.Verb.BoilsDown && step.Until.IsGiven && AcidAndSugar.BoiledWithoutEndPoint.SaysReduced(step.Until.Value)))
                reduces = step;
        }

        if (reduces is null) return;
        var (all, _, unit) = Yields.Most(context, prep);
        double left = all * (1 - (Least.Value / 100));
        if (!(all > 0) || prep.Yield.Value.BaseLow <= left) return;
        context.Report(new(Rule)
        {
            At = context.At(prep.Yield.Span, "yield"),
            Message = $"It is reduced{(reduces.Until.IsGiven ? $" (\"{reduces.Until.Value}\")" : "")}, but the yield is "
                + $"{Say.With(prep.Yield.Value.Base, unit)} from {Say.With(all, unit)} at most: a reduction takes at least "
                + $"{Say.With(Least.Value, "%")} out ({Least.Source}).",
            Advice = "Weigh what is left in the pot, and write that.",
            Evidence = [Yields.ProofOf(context, prep), Proof.Of("went in at most", all, unit), Proof.Of(Least)],
            Related = [context.See(reduces.Do.Span, "the step that reduces it")],
        });
    }
}
