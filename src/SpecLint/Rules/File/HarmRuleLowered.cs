using SpecLint.Book;

namespace SpecLint.Rules.File;

[Rule(
    "SL1029", "lowered-without-reason", "A rule that guards against harm, lowered without a reason or a last day within a year",
    Level.Warning)]
internal sealed partial class HarmRuleLowered : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is not Bar bar) return;
        foreach (var entry in bar.Rules)
        {
            var set = entry.Value.Value;
            if (context.FindRule(entry.Key) is not { Safety: true } rule
                || set.Level >= rule.Level
                || set.Missing(context.On) is not { } missing)
                continue;
            context.Report(new(Rule)
            {
                At = context.At(entry.Value.Span, $"rules.{entry.Key}"),
                Message = $"{entry.Key} guards against harm, and the level `{LevelNames.Of(set.Level)}` set for it {missing}, so the rule "
                    + "keeps its own level.",
                Advice = "Delete it, or write an object with `level`, `because` and `until`, no later than "
                    + $"{SettingAside.LatestEnd(context.On)}.",
                Caution = "Local food and licensing law decides what may be served, whatever is set here.",
            });
        }
    }
}
