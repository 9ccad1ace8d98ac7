namespace SpecLint.Catalogue;

/// <summary>How much of a fruit or vegetable as bought is left to use.</summary>
/// <param name="Used">What is done to it.</param>
/// <param name="Typical">Typical, % of the mass as bought.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
/// <param name="Source">Where it is printed; the ends are SpecLint's own.</param>
internal sealed record Trimming(string Used, double Typical, double Low, double High, string Source);

/// <summary>The table of trimmings, by item.</summary>
internal static class TrimmingTable
{
    private static readonly Lazy<Dictionary<string, Trimming>> ByItem = new(Load);

    /// <summary>The trimming of an item; <see langword="null"/> where the table has none.</summary>
    public static Trimming? Find(string item) => ByItem.Value.TryGetValue(item, out var trimming) ? trimming : null;

    private static Dictionary<string, Trimming> Load()
    {
        var items = new Dictionary<string, Trimming>(StringComparer.Ordinal);
        using var document = Tables.Open("trimmings");
        foreach (var row in document.Root.Get("trimmings").Items)
        {
            var trimming = new Trimming(row.Text("used"), row.Number("typical"), row.Number("low"), row.Number("high"), row.Text("source"));
            foreach (string item in row.Texts("items")) items.Add(item, trimming);
        }

        return items;
    }
}
