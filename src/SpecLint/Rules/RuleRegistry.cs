using SpecLint.Findings;

namespace SpecLint.Rules;

public static partial class RuleRegistry
{
    private static readonly Lazy<Rule[]> Sorted = new(static () =>
    {
        var rules = Found();
        string[] ids = Array.ConvertAll(rules, static r => r.Info.Id);
        Array.Sort(ids, rules, StringComparer.Ordinal);
        return rules;
    });
    private static readonly Lazy<Dictionary<string, RuleInfo>> ById =
        new(() => All.ToDictionary(r => r.Info.Id, r => r.Info, StringComparer.Ordinal));

    /// <summary>All rules, by id.</summary>
    public static IReadOnlyList<Rule> All => Sorted.Value;

    /// <summary>What a rule is, by its id; <see langword="null"/> where there is no such rule.</summary>
    public static RuleInfo? Find(string id) => ById.Value.TryGetValue(id, out var info) ? info : null;
}
