namespace SpecLint.Rules.Service;

/// <summary>The table of what one fruit gives.</summary>
internal static class JuiceOfOne
{
    private static readonly Dictionary<string, (double Typical, double Low, double High, string Source)> ByItem = Load();

    /// <summary>The juice of one fruit, mL; <see langword="null"/> where the table does not know it.</summary>
    public static (double Typical, double Low, double High, string Source)? Find(string item) =>
        ByItem.TryGetValue(item, out var one) ? one : null;

    private static Dictionary<string, (double, double, double, string)> Load()
    {
        var rows = new Dictionary<string, (double, double, double, string)>(StringComparer.Ordinal);
        using var document = Tables.Open("measures");
        foreach (var row in document.Root.Get("pieces").Items)
        {
            string unit = row.Text("unit");
            if (unit.StartsWith("of one", StringComparison.Ordinal))
                rows[row.Text("item")] = (row.Number("typicalMl"), row.Number("lowMl"), row.Number("highMl"), row.Text("source"));
        }

        return rows;
    }
}
