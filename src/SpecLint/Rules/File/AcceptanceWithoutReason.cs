using SpecLint.Findings;

namespace SpecLint.Rules.File;

[Rule("SL1022", "accepts-without-reason", "An acceptance without a reason", Level.Warning)]
internal sealed partial class AcceptanceWithoutReason : AcceptanceRule
{
    public override void Check(BookContext context, AcceptanceUse use)
    {
        var acceptance = use.Acceptance;
        if (acceptance.Because.IsGiven && !string.IsNullOrWhiteSpace(acceptance.Because.Value)) return;
        if (!acceptance.Rule.IsGiven || !context.KnowsRule(acceptance.Rule.Value)) return;
        context.Report(new(Rule)
        {
            At = new(use.File.At(acceptance.Span), $"accept[{acceptance.Rule.Value}]"),
            Message = $"The acceptance of {acceptance.Rule.Value} gives no reason, so it covers nothing.",
            Advice = "Write under `because` why it is right here, in words that the next person understands.",
        });
    }
}
