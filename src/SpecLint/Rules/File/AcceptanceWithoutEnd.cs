using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.File;

[Rule("SL1025", "accepts-without-end", "An acceptance of a rule that guards against harm, without a last day within a year", Level.Warning)]
internal sealed partial class AcceptanceWithoutEnd : AcceptanceRule
{
    /// <summary>What is wrong with the last day of an acceptance that is void for it; an end that is over has a rule of its own.</summary>
    internal static string? Lacks(BookContext context, Acceptance acceptance)
    {
        if (context.FindRule(acceptance.Rule.Or("")) is not { Safety: true }) return null;
        if (acceptance.Until.IsGiven && acceptance.Until.Value < context.On) return null;
        return SettingAside.Missing(acceptance.Until.IsGiven ? acceptance.Until.Value : null, context.On);
    }

    public override void Check(BookContext context, AcceptanceUse use)
    {
        var acceptance = use.Acceptance;
        if (!acceptance.Rule.IsGiven || Lacks(context, acceptance) is not { } lacks) return;
        if (!acceptance.Because.IsGiven || string.IsNullOrWhiteSpace(acceptance.Because.Value)) return;
        context.Report(new(Rule)
        {
            At = new(use.File.At(acceptance.Until.IsGiven ? acceptance.Until.Span : acceptance.Span), $"accept[{acceptance.Rule.Value}]"),
            Message = $"{acceptance.Rule.Value} guards against harm, and its acceptance {lacks}, so it covers nothing.",
            Advice = $"Give `until` the day on which someone reviews it, no later than {SettingAside.LatestEnd(context.On)}.",
            Caution = "Local food and licensing law decides what may be served, whatever is accepted here.",
        });
    }
}
