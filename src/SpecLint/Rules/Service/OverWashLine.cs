using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8002", "over-wash-line", "A drink filled above the wash line of its glass", Level.Warning,
    Needs = [Fact.ServedVolume], IsConsequence = true)]
internal sealed partial class OverWashLine : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Glass is not { } glass || double.IsNaN(glass.WashLine)) return;

        // Foam may stand over the line.
        if (glass.Fill.Low - glass.Foam <= glass.WashLine || GlassOverflows.Overflows(glass)) return;
        var served = context.Fact(Fact.ServedVolume);
        var remedy = Resize.To(context, glass.WashLine - glass.Ice, "Pour it into a larger glass");
        context.Report(new(Rule)
        {
            At = context.At(drink.Glass.Span, "glass"),
            Message = $"It comes to {glass.Words(served)}, above the {Say.With(glass.WashLine, "mL")} to which {glass.Name} is filled "
                + "(bar.json, wash line).",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence =
            [
                Proof.Of(Fact.ServedVolume, served), Proof.Of("ice displaces", glass.Ice, "mL"),
                Proof.Of("washLine", glass.WashLine, "mL", "bar.json"),
            ],
            Related = glass.SeeHouse(context.Settings),
        });
    }
}
