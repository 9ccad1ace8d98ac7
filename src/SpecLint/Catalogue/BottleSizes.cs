namespace SpecLint.Catalogue;

/// <summary>Sizes in which bottled things are sold (<c>bottle-sizes.json</c>), mL.</summary>
internal static class BottleSizes
{
    private static readonly Lazy<(HashSet<double> All, HashSet<(double Size, string Kind)> OfKind, string Source)> Rows = new(Load);

    /// <summary>Where they are printed.</summary>
    public static string Source => Rows.Value.Source;

    /// <summary>Whether a bottle of that size is sold of a kind.</summary>
    /// <param name="millilitres">mL.</param>
    /// <param name="kind">The kind of thing in it.</param>
    public static bool Has(double millilitres, ItemKind kind)
    {
        double size = Math.Round(millilitres, 3);
        return Rows.Value.All.Contains(size) || Rows.Value.OfKind.Contains((size, kind.Id));
    }

    /// <summary>Whether a bottle of about that size is sold of a kind.</summary>
    /// <param name="millilitres">mL.</param>
    /// <param name="kind">The kind of thing in it.</param>
    /// <param name="share">How far it may be off.</param>
    public static bool IsNear(double millilitres, ItemKind kind, double share) =>
        Rows.Value.All.Any(size => Math.Abs(size - millilitres) <= share * size)
        || Rows.Value.OfKind.Any(row => row.Kind == kind.Id && Math.Abs(row.Size - millilitres) <= share * row.Size);

    private static (HashSet<double> All, HashSet<(double Size, string Kind)> OfKind, string Source) Load()
    {
        var all = new HashSet<double>();
        var ofKind = new HashSet<(double Size, string Kind)>();
        string source = "";
        using var document = Tables.Open("bottle-sizes");
        foreach (var row in Tables.Rows(document))
        {
            var kinds = row.Texts("kinds");
            if (kinds.Count == 0) all.Add(row.Number("millilitres"));
            else foreach (string kind in kinds) ofKind.Add((row.Number("millilitres"), kind));
            if (source.Length == 0) source = row.Text("source");
        }

        return (all, ofKind, source);
    }
}
