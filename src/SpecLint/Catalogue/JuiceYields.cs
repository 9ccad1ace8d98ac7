namespace SpecLint.Catalogue;

/// <summary>How much juice whole fruit gives.</summary>
/// <param name="Of">The fruit.</param>
/// <param name="Typical">Typical, % of the mass as bought.</param>
/// <param name="Low">Least.</param>
/// <param name="High">Most.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record JuiceYield(string Of, double Typical, double Low, double High, string Source);

/// <summary>The table of juice from whole fruit (<c>juice-yields.json</c>), by the id of the juice.</summary>
internal static class JuiceYields
{
    private static readonly Lazy<Dictionary<string, JuiceYield>> ByItem = new(Load);

    /// <summary>What the fruit of a juice gives; <see langword="null"/> where the table has none.</summary>
    public static JuiceYield? Find(string item) => ByItem.Value.TryGetValue(item, out var found) ? found : null;

    private static Dictionary<string, JuiceYield> Load()
    {
        var items = new Dictionary<string, JuiceYield>(StringComparer.Ordinal);
        using var document = Tables.Open("juice-yields");
        foreach (var row in Tables.Rows(document))
        {
            var found = new JuiceYield(row.Text("of"), row.Number("typical"), row.Number("low"), row.Number("high"), row.Text("source"));
            foreach (string item in row.Texts("items")) items.Add(item, found);
        }

        return items;
    }
}
