using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1021", "accepts-no-rule", "An acceptance of a rule that does not exist", Level.Warning)]
internal sealed partial class AcceptanceOfNoRule : AcceptanceRule
{
    public override void Check(BookContext context, AcceptanceUse use)
    {
        var rule = use.Acceptance.Rule;
        if (!rule.IsGiven || context.KnowsRule(rule.Value) || context.MayBeElsewhere(rule.Value)) return;
        string? near = NearestName.Of(rule.Value, RuleRegistry.All.Select(r => r.Info.Id));
        context.Report(new(Rule)
        {
            At = new(use.File.At(rule.Span), $"accept[{rule.Value}]"),
            Message = $"There is no rule {rule.Value}, so the acceptance covers nothing.",
            Advice = near is null
                ? "Check the list of rules, and write the id as the finding prints it."
                : $"Write the id as the finding prints it. Did you mean {near}?",
        });
    }
}
