using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.File;

/// <summary>SL1025: an acceptance of a rule that guards against harm, without a last day.</summary>
internal sealed class AcceptanceWithoutEnd : AcceptanceRule
{
    private static readonly RuleInfo Rule = new("SL1025", "accepts-without-end", "An acceptance of a rule that guards against harm, without a last day", Level.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>Whether an acceptance is void for want of its last day.</summary>
    internal static bool Lacks(BookContext context, Acceptance acceptance) => !acceptance.Until.IsGiven && context.FindRule(acceptance.Rule.Or("")) is { Safety: true };

    /// <inheritdoc/>
    public override void Check(BookContext context, AcceptanceUse use)
    {
        var acceptance = use.Acceptance;
        if (!acceptance.Rule.IsGiven || !Lacks(context, acceptance)) return;
        if (!acceptance.Because.IsGiven || string.IsNullOrWhiteSpace(acceptance.Because.Value)) return;
        context.Report(new Finding(Rule)
        {
            Place = use.File.At(acceptance.Span),
            Subject = use.File.Id,
            Path = $"accept[{acceptance.Rule.Value}]",
            Message = $"{acceptance.Rule.Value} guards against harm, and its acceptance names no last day, so it covers nothing.",
            Advice = "Give `until` a day on which someone looks at it again.",
            Caution = "Local food and licensing law decides what may be served, whatever is accepted here.",
        });
    }
}
