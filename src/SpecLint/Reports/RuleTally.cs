using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>How often a rule found something.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Level">The highest level among its findings.</param>
/// <param name="Count">Number of findings, those that stand beneath their cause included.</param>
/// <param name="Files">Paths of the files that they are in, in order.</param>
public sealed record RuleTally(RuleInfo Rule, Level Level, int Count, IReadOnlyList<string> Files)
{
    /// <summary>The rules of a report: those that guard against harm with an error first, then by level and number.</summary>
    public static IReadOnlyList<RuleTally> Of(ReportContent content) =>
    [
        .. content.Findings.Flat().GroupBy(f => f.Rule)
            .Select(g => new RuleTally(
                g.Key,
                g.Max(f => f.Level),
                g.Count(),
                [.. g.Select(f => f.Place.File.Path).Distinct(StringComparer.Ordinal).OrderBy(p => p, StringComparer.Ordinal)]))
            .OrderByDescending(r => r.Rule.Safety && r.Level == Level.Error)
            .ThenByDescending(r => r.Level)
            .ThenByDescending(r => r.Count)
            .ThenBy(r => r.Rule.Id, StringComparer.Ordinal),
    ];
}
