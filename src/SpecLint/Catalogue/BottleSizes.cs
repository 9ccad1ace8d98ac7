namespace SpecLint.Catalogue;

/// <summary>Sizes in which wine and spirits are sold (<c>bottle-sizes.json</c>), mL.</summary>
internal static class BottleSizes
{
    private static readonly Lazy<(HashSet<double> Sizes, string Source)> Rows = new(Load);

    /// <summary>Where they are printed.</summary>
    public static string Source => Rows.Value.Source;

    /// <summary>Whether a bottle of that size is sold.</summary>
    /// <param name="millilitres">mL.</param>
    public static bool Has(double millilitres) => Rows.Value.Sizes.Contains(Math.Round(millilitres, 3));

    private static (HashSet<double> Sizes, string Source) Load()
    {
        var sizes = new HashSet<double>();
        string source = "";
        using var document = Tables.Open("bottle-sizes");
        foreach (var row in Tables.Rows(document))
        {
            sizes.Add(row.Number("millilitres"));
            source = row.Text("source");
        }

        return (sizes, source);
    }
}
