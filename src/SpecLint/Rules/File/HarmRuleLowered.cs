using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.File;

/// <summary>SL1029: bar.json lowers a rule that guards against harm without a reason or without a last day within a year.</summary>
internal sealed class HarmRuleLowered : FileRule
{
    private static readonly RuleInfo Rule = new("SL1029", "lowered-without-reason", "A rule that guards against harm, lowered without a reason or a last day within a year", Level.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context)
    {
        if (context.File is not Bar bar) return;
        foreach (var entry in bar.Rules)
        {
            var set = entry.Value.Value;
            if (context.FindRule(entry.Key) is not { Safety: true } rule || set.Level >= rule.Level || set.Missing(context.On) is not { } missing) continue;
            context.Report(new Finding(Rule)
            {
                Place = context.At(entry.Value.Span),
                Subject = context.Id,
                Path = $"rules.{entry.Key}",
                Message = $"{entry.Key} guards against harm, and the level `{Reports.ReportWords.Of(set.Level)}` set for it {missing}, so the rule keeps its own level.",
                Advice = $"Delete it, or write an object with `level`, `because` and `until`, no later than {SettingAside.LatestEnd(context.On)}.",
                Caution = "Local food and licensing law decides what may be served, whatever is set here.",
            });
        }
    }
}
