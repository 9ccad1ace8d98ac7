using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5015", "target-not-measured", "A target pH or water activity has no reading", Level.Warning, Safety = true,
    Needs = [Fact.Ph, Fact.WaterActivity])]
internal sealed partial class TargetNotMeasured : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        // A target of taste alone (an acid solution, a sugar syrup) is nobody's safety.
        if (prep.Target is not { } target || (!context.Profile.IsSolid && !context.Profile.Keeping!.HoldsPerishable)) return;
        if (target.WaterActivity.IsGiven && prep.Measured is not { WaterActivity.IsGiven: true })
            Report(
                context, target.WaterActivity.Span, "target.waterActivity", Fact.WaterActivity,
                $"The target is a water activity of {Say.Number(target.WaterActivity.Value.Value, 2)}",
                "Measure the water activity of a cooled sample, or weigh the loss that corresponds to it, and write it under `measured`.");
        if (target.Ph.IsGiven
            && prep.Measured is not { Ph.IsGiven: true }
            && !AcidityNotMeasured.Speaks(context, prep)
            && !SpecialCases.IsFerment(prep))
            Report(
                context, target.Ph.Span, "target.ph", Fact.Ph, $"The target is pH {Say.Number(target.Ph.Value.Value, 2)}",
                "Measure the pH and write it under `measured`.");
    }

    private static void Report(RecipeContext context, Reading.TextSpan span, string path, Fact fact, string what, string advice)
    {
        var computed = context.Fact(fact);
        string worked = computed.IsKnown ? $"; the amounts give {KeepingWords.Said(fact, computed)}, which is not a reading" : "";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(span, path),
            Message = $"{what}, and nothing under `measured` shows that it is met{worked}.",
            Advice = advice,
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(fact, computed)],
        });
    }
}
