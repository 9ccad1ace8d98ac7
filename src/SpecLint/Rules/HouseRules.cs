namespace SpecLint.Rules;

/// <summary>Rules of a bar's own, written in C# against this library: what the engine asks of them.</summary>
public static class HouseRules
{
    /// <summary>
    /// Whether an id has the form of a house's own: two capital letters other than SL, a digit from 1 to 9 (the family) and
    /// three digits, as <c>HR3001</c>.
    /// </summary>
    public static bool IsHouseId(string id) =>
        id.Length == 6 && IsCapital(id[0]) && IsCapital(id[1]) && id[2] is >= '1' and <= '9'
        && id[3] is >= '0' and <= '9' && id[4] is >= '0' and <= '9' && id[5] is >= '0' and <= '9'
        && !id.StartsWith("SL", StringComparison.Ordinal);

    /// <summary>
    /// Why rules cannot run beside the built-in ones, in one sentence; <see langword="null"/> where they can. Ids in SL belong
    /// to the library; an id or a name belongs to one rule of a run.
    /// </summary>
    /// <param name="rules">The house's rules.</param>
    public static string? WhyNot(IReadOnlyList<Rule> rules)
    {
        if (rules.Count == 0) return null;
        var byId = new Dictionary<string, Rule>(StringComparer.Ordinal);
        var byName = RuleRegistry.All.ToDictionary(r => r.Info.Name, r => r.Info.Id, StringComparer.Ordinal);
        foreach (var rule in rules)
        {
            var info = rule.Info;
            if (!IsHouseId(info.Id))
                return $"the rule {rule.GetType().Name} has the id {info.Id}: a house's own are two capital letters other than SL, the "
                    + $"digit of the family from 1 to 9 and three digits, as HR3001.";
            if (byId.TryGetValue(info.Id, out var other))
                return $"the rules {other.GetType().Name} and {rule.GetType().Name} have one id, {info.Id}.";
            if (byName.TryGetValue(info.Name, out string? owner))
                return $"the rule {info.Id} has the name {info.Name}, which is that of {owner}.";
            byId.Add(info.Id, rule);
            byName.Add(info.Name, info.Id);
        }

        return null;
    }

    private static bool IsCapital(char letter) => letter is >= 'A' and <= 'Z';
}
