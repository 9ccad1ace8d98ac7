using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1026", "level-of-no-rule", "A level in bar.json for a rule that does not exist", Level.Warning)]
internal sealed partial class LevelOfNoRule : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is not Bar bar) return;
        foreach (var entry in bar.Rules)
        {
            if (context.KnowsRule(entry.Key) || context.MayBeElsewhere(entry.Key)) continue;
            context.Report(new(Rule)
            {
                At = context.At(entry.Value.Name.Length > 0 ? entry.Value.Name : entry.Value.Span, $"rules.{entry.Key}"),
                Message = $"There is no rule {entry.Key}, so its level changes nothing.",
                Advice = NearestName.Of(entry.Key, RuleRegistry.All.Select(r => r.Info.Id)) is { } near
                    ? $"Write the id as the finding prints it. Did you mean {near}?"
                    : "Delete it, or write the id as the finding prints it.",
            });
        }
    }
}
