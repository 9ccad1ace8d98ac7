
namespace SpecLint.Catalogue;

/// <summary>The strengths that a kind of ingredient can have.</summary>
/// <param name="Low">Least, % vol.</param>
/// <param name="High">Most, % vol.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record KindStrength(double Low, double High, string Source, Mark Mark);

/// <summary>The table of strengths by kind.</summary>
internal static class StrengthTable
{
    private static readonly Lazy<Dictionary<string, KindStrength>> ByKind = new(Load);

    /// <summary>The strengths of a kind; <see langword="null"/> where the table has none.</summary>
    public static KindStrength? Find(string kind) => ByKind.Value.TryGetValue(kind, out var strength) ? strength : null;

    private static Dictionary<string, KindStrength> Load()
    {
        var kinds = new Dictionary<string, KindStrength>(StringComparer.Ordinal);
        using var document = Tables.Open("strengths");
        foreach (var row in Tables.Rows(document))
            kinds.Add(row.Text("kind"), new KindStrength(row.Number("low"), row.Number("high"), row.Text("source"), row.Mark()));
        return kinds;
    }
}
