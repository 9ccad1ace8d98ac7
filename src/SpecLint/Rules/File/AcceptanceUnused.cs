using SpecLint.Findings;

namespace SpecLint.Rules.File;

[Rule("SL1024", "acceptance-unused", "An acceptance that covers nothing", Level.Note)]
internal sealed partial class AcceptanceUnused : AcceptanceRule
{
    public override void Check(BookContext context, AcceptanceUse use)
    {
        var acceptance = use.Acceptance;
        if (use.Covered > 0 || !acceptance.Rule.IsGiven || !context.KnowsRule(acceptance.Rule.Value)) return;

        // One that is void has a finding that says why.
        if (!acceptance.Because.IsGiven || string.IsNullOrWhiteSpace(acceptance.Because.Value)) return;
        if (acceptance.Until.IsGiven && acceptance.Until.Value < context.On) return;
        if (AcceptanceWithoutEnd.Lacks(context, acceptance) is not null) return;
        context.Report(new(Rule)
        {
            At = new(use.File.At(acceptance.Rule.Span), $"accept[{acceptance.Rule.Value}]"),
            Message = $"The acceptance of {acceptance.Rule.Value} covers no finding of this file. What it was for is corrected, or is in "
                + "another file.",
            Advice = "Delete it, so that it does not cover the next mistake of its kind.",
        });
    }
}
