namespace SpecLint.Catalogue;

/// <summary>How long a family of preparations is usually kept.</summary>
/// <param name="Id">The family.</param>
/// <param name="LowDays">Fewest days.</param>
/// <param name="HighDays">Most days.</param>
/// <param name="CeilingDays">Most days that safety allows; NaN where the table has none.</param>
/// <param name="KeepsCold">Whether the days are of storage in the cold.</param>
/// <param name="Source">Where the figures come from.</param>
internal sealed record FamilyLife(string Id, double LowDays, double HighDays, double CeilingDays, bool KeepsCold, TableText Source)
{
    /// <summary>Strength from which the life holds, % vol; NaN where it asks for none.</summary>
    public double LeastStrength { get; init; } = double.NaN;
}

/// <summary>The table of families of preparations, as far as keeping goes.</summary>
internal static class FamilyTable
{
    private static readonly Lazy<Dictionary<string, FamilyLife>> Families = new(LoadFamilies);
    private static readonly Lazy<Dictionary<string, FamilyLife>> Lives = new(LoadLives);

    /// <summary>The life of a family; <see langword="null"/> where the table has none.</summary>
    public static FamilyLife? Of(string family) => Families.Value.TryGetValue(family, out var life) ? life : null;

    /// <summary>A row of the table of lives.</summary>
    public static FamilyLife Row(string id) =>
        Lives.Value.TryGetValue(id, out var life) ? life : throw new InvalidOperationException($"The table of lives lacks {id}.");

    private static Dictionary<string, FamilyLife> LoadFamilies()
    {
        var table = new Dictionary<string, FamilyLife>(StringComparer.Ordinal);
        using var document = Tables.Open("families");
        foreach (var row in Tables.Rows(document))
        {
            if (!row.TryGet("keep", out var keep)) continue;
            string id = row.Text("id");
            table.Add(
                id,
                new FamilyLife(
                    id, keep.Number("lowDays"), keep.Number("highDays"), keep.Number("ceilingDays"),
                    keep.TryGet("keepsCold", out var cold)
                        && cold.IsTrue, row.TextLater("source"))
                { LeastStrength = keep.Number("strengthAtLeast") });
        }

        return table;
    }

    private static Dictionary<string, FamilyLife> LoadLives()
    {
        var table = new Dictionary<string, FamilyLife>(StringComparer.Ordinal);
        using var document = Tables.Open("life");
        foreach (var row in Tables.Rows(document))
        {
            string id = row.Text("id");
            table.Add(id, new FamilyLife(
                id, row.Number("lowDays"), row.Number("highDays"), row.Number("ceilingDays"), false, row.TextLater("source")));
        }

        return table;
    }
}
