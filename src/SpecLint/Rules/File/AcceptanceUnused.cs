using SpecLint.Findings;

namespace SpecLint.Rules.File;

/// <summary>SL1024: an acceptance that covers nothing any more.</summary>
internal sealed class AcceptanceUnused : AcceptanceRule
{
    private static readonly RuleInfo Rule = new("SL1024", "acceptance-unused", "An acceptance that covers nothing", Level.Note);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(BookContext context, AcceptanceUse use)
    {
        var acceptance = use.Acceptance;
        if (use.Covered > 0 || !acceptance.Rule.IsGiven || !context.KnowsRule(acceptance.Rule.Value)) return;

        // One that is void has a finding that says why.
        if (!acceptance.Because.IsGiven || string.IsNullOrWhiteSpace(acceptance.Because.Value)) return;
        if (acceptance.Until.IsGiven && acceptance.Until.Value < context.On) return;
        if (AcceptanceWithoutEnd.Lacks(context, acceptance) is not null) return;
        context.Report(new Finding(Rule)
        {
            Place = use.File.At(acceptance.Rule.Span),
            Subject = use.File.Id,
            Path = $"accept[{acceptance.Rule.Value}]",
            Message = $"The acceptance of {acceptance.Rule.Value} covers no finding of this file. What it was for is corrected, or is in another file.",
            Advice = "Delete it, so that it does not cover the next mistake of its kind.",
        });
    }
}
