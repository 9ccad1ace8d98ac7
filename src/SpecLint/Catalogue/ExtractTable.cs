
namespace SpecLint.Catalogue;

/// <summary>Dry matter other than sugar (acids, glycerol, salts, phenols, dextrins) that a kind of drink usually has.</summary>
/// <param name="Typical">Typical, g/L.</param>
/// <param name="Low">Low end of about 95 %, g/L.</param>
/// <param name="High">High end, g/L.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record KindExtract(double Typical, double Low, double High, string Source, Mark Mark);

/// <summary>The table of extracts by kind: used where an ingredient gives neither dry matter, water nor density.</summary>
internal static class ExtractTable
{
    private static readonly Lazy<Dictionary<string, KindExtract>> ByKind = new(Load);

    /// <summary>The extract of a kind; <see langword="null"/> where the table has none.</summary>
    public static KindExtract? Find(string kind) => ByKind.Value.TryGetValue(kind, out var extract) ? extract : null;

    private static Dictionary<string, KindExtract> Load()
    {
        var kinds = new Dictionary<string, KindExtract>(StringComparer.Ordinal);
        using var document = Tables.Open("extracts");
        foreach (var row in Tables.Rows(document))
            kinds.Add(
                row.Text("kind"),
                new KindExtract(row.Number("typical"), row.Number("low"), row.Number("high"), row.Text("source"), row.Mark()));
        return kinds;
    }
}
