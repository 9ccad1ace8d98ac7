namespace SpecLint.Catalogue;

/// <summary>How much of an agent a preparation usually takes, by mass of the whole.</summary>
/// <param name="Group"><c>gel</c> (gums, gels, foaming agents), <c>acid</c> (dry acids and salt) or <c>plant</c> (what is steeped).</param>
/// <param name="Families">Families of preparation it holds for; empty for all others.</param>
/// <param name="Low">Usual least, % w/w.</param>
/// <param name="High">Usual most, % w/w.</param>
/// <param name="Use">What for, in words.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record AgentUse(
    string Group, FixedList<string> Families, double Low, double High, TableText Use, TableText Source, SpecLint.Vocabulary.Mark Mark);

/// <summary>The table of agents.</summary>
internal static class AgentTable
{
    private static readonly Lazy<Dictionary<string, List<AgentUse>>> ByItem = new(Load);

    /// <summary>The use of an item in a family; <see langword="null"/> where the table has none.</summary>
    public static AgentUse? Find(string item, string family)
    {
        if (!ByItem.Value.TryGetValue(item, out var uses)) return null;
        AgentUse? general = null;
        foreach (var use in uses)
        {
            if (use.Families.Count == 0)
            {
                general ??= use;
                continue;
            }

            for (int i = 0; i < use.Families.Count; i++)
            {
                if (use.Families[i] == family) return use;
            }
        }

        return general;
    }

    private static Dictionary<string, List<AgentUse>> Load()
    {
        var uses = new Dictionary<string, List<AgentUse>>(StringComparer.Ordinal);
        using var document = Tables.Open("agents");
        foreach (var row in Tables.Rows(document))
        {
            var use = new AgentUse(
                row.Text("group"), row.Texts("families"), row.Number("low"), row.Number("high"), row.TextLater("use"),
                row.TextLater("source"), row.Mark());
            foreach (string item in row.Texts("items"))
            {
                if (!uses.TryGetValue(item, out var list)) uses.Add(item, list = []);
                list.Add(use);
            }
        }

        return uses;
    }
}
