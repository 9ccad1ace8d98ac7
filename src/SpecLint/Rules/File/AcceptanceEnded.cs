using SpecLint.Findings;

namespace SpecLint.Rules.File;

[Rule("SL1023", "acceptance-ended", "An acceptance whose last day is over", Level.Warning)]
internal sealed partial class AcceptanceEnded : AcceptanceRule
{
    public override void Check(BookContext context, AcceptanceUse use)
    {
        var acceptance = use.Acceptance;
        if (!acceptance.Until.IsGiven
            || !(acceptance.Until.Value < context.On)
            || !acceptance.Rule.IsGiven
            || !context.KnowsRule(acceptance.Rule.Value))
            return;
        context.Report(new(Rule)
        {
            At = new(use.File.At(acceptance.Until.Span), $"accept[{acceptance.Rule.Value}]"),
            Message = $"The acceptance of {acceptance.Rule.Value} ended on {acceptance.Until.Value}. What it covered is reported again.",
            Advice = "Review it: correct the recipe, or give the acceptance a new last day.",
        });
    }
}
