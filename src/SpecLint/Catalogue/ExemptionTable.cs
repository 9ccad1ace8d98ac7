namespace SpecLint.Catalogue;

/// <summary>A use that a law exempts of an allergen.</summary>
/// <param name="What">The use, as the law names it.</param>
/// <param name="Words">Beginnings of words that a reason has which names it.</param>
/// <param name="Kinds">The kinds in which alone it holds; none where it holds in all.</param>
/// <param name="OfDistillates">Whether it is for what went through a still.</param>
internal sealed record ExemptedUse(string What, FixedList<string> Words, FixedList<ItemKind> Kinds, bool OfDistillates)
{
    /// <summary>Whether a reason names it.</summary>
    public bool IsNamedIn(string reason)
    {
        foreach (string word in Words)
        {
            if (reason.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0) return true;
        }

        return false;
    }
}

/// <summary>What the law of each jurisdiction exempts of what it lists as allergens (<c>allergens.json</c>).</summary>
internal static class ExemptionTable
{
    private static readonly Lazy<Dictionary<(string Jurisdiction, string Token), List<ExemptedUse>>> Uses = new(Load);

    /// <summary>The uses that a jurisdiction exempts of an allergen; empty where it exempts none.</summary>
    public static IReadOnlyList<ExemptedUse> Of(string jurisdiction, string token) =>
        Uses.Value.TryGetValue((jurisdiction, token), out var uses) ? uses : [];

    private static Dictionary<(string, string), List<ExemptedUse>> Load()
    {
        var all = new Dictionary<(string, string), List<ExemptedUse>>();
        using var document = Tables.Open("allergens");
        foreach (var row in Tables.Rows(document))
        {
            if (!row.TryGet("exemptions", out var exemptions)) continue;
            foreach (var one in exemptions.Items)
            {
                if (one.Texts("words").Count == 0) continue;
                FixedList<ItemKind> kinds = [.. one.Texts("kinds").Select(ItemKind.Of)];
                var use = new ExemptedUse(one.Text("what"), one.Texts("words"), kinds, one.Text("process") is "distilled");
                foreach (string token in row.Texts("tokens"))
                {
                    var key = (row.Text("jurisdiction"), token);
                    if (!all.TryGetValue(key, out var uses)) all.Add(key, uses = []);
                    uses.Add(use);
                }
            }
        }

        return all;
    }
}
