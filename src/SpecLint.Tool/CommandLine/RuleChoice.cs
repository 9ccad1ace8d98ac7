using System.CommandLine;
using System.CommandLine.Completions;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reports;
using SpecLint.Rules;

namespace SpecLint.Tool;

/// <summary><c>--rule</c> and <c>--not-rule</c>: which rules' findings are shown and counted.</summary>
internal sealed class RuleChoice
{
    private readonly Option<string[]> only = new("--rule")
    {
        Description = "Show and count findings of this rule or family only, by id, name, family or its digit; may be given more than once.",
        HelpName = "RULE",
    };
    private readonly Option<string[]> not = new("--not-rule")
    {
        Description = "Leave out findings of this rule or family; may be given more than once.",
        HelpName = "RULE",
    };

    public RuleChoice()
    {
        foreach (var option in Options)
            option.CompletionSources.Add(static _ => RuleRegistry.All.Select(r => new CompletionItem(r.Info.Id))
                .Concat(Families.Select(f => new CompletionItem(NameOf(f)))));
    }

    public IReadOnlyList<Option> Options => [only, not];

    /// <summary>Whether one of the options is given.</summary>
    public bool IsMade(ParseResult parsed) => parsed.GetValue(only) is { Length: > 0 } || parsed.GetValue(not) is { Length: > 0 };

    private static IEnumerable<RuleFamily> Families => Enum.GetValues<RuleFamily>();

    /// <summary>A result with the findings that are wanted, and a sentence that counts the others; empty where there are none.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="result">The result.</param>
    /// <param name="houseRules">Rules of the house's own, which can be named too.</param>
    /// <exception cref="UsageException">A word names neither a rule nor a family.</exception>
    public (CheckResult Result, string Remark) Apply(ParseResult parsed, CheckResult result, IReadOnlyList<Rule> houseRules)
    {
        if (!IsMade(parsed)) return (result, "");
        string[] wanted = parsed.GetValue(only) ?? [], unwanted = parsed.GetValue(not) ?? [];
        var all = RuleRegistry.All.Concat(houseRules).Select(r => r.Info).ToList();
        var shown = (wanted.Length == 0 ? all : [.. wanted.SelectMany(w => Named(w, all))]).ToHashSet();
        shown.ExceptWith(unwanted.SelectMany(w => Named(w, all)));
        var hidden = result.Findings.Flat().Where(f => !shown.Contains(f.Rule)).ToList();
        if (hidden.Count == 0) return (result, "");
        int harm = hidden.Count(f => f.Rule.Safety);
        string ofHarm = harm == 0 ? "" : $", {harm} of them of rules that guard against harm";
        return (result.Only(f => shown.Contains(f.Rule)), $"{ReportWords.Count(hidden.Count, "finding", "findings")} of other rules "
            + $"{(hidden.Count == 1 ? "is" : "are")} not shown{ofHarm}.");
    }

    /// <summary>The rules that a word names.</summary>
    internal static IEnumerable<RuleInfo> Named(string word, IReadOnlyList<RuleInfo> all)
    {
        var found = all.Where(i => i.Id.Equals(word, StringComparison.OrdinalIgnoreCase) || i.Name.Equals(word, StringComparison.OrdinalIgnoreCase)
            || NameOf(i.Family).Equals(word, StringComparison.OrdinalIgnoreCase) || (word.Length == 1 && word[0] - '0' == (int)i.Family)).ToList();
        if (found.Count > 0) return found;
        var words = all.Select(i => i.Id).Concat(all.Select(i => i.Name)).Concat(Families.Select(NameOf));
        throw new UsageException($"{word} is neither a rule nor a family of rules.{Suggestion.For(word, words)} 'speclint rules' lists them.");
    }

    private static string NameOf(RuleFamily family) => ReportWords.Of(family);
}
