
namespace SpecLint.Catalogue;

/// <summary>How much one drink takes of what seasons it, or of what it is made of.</summary>
/// <param name="Name">The class in words: <c>a hot sauce</c>.</param>
/// <param name="Least">The least that one drink takes, in the unit; NaN where there is none.</param>
/// <param name="Most">The most that one drink takes, in the unit; NaN where there is none.</param>
/// <param name="Unit"><c>mL</c> or <c>g</c>.</param>
/// <param name="IsHarsh">Whether far more of it cannot be drunk.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record Dose(string Name, double Least, double Most, string Unit, bool IsHarsh, TableText Source, Mark Mark);

/// <summary>The table of doses.</summary>
internal static class DoseTable
{
    private static readonly Lazy<Dictionary<string, Dose>> ByItem = new(Load);

    /// <summary>The dose of an item; <see langword="null"/> where the table has none.</summary>
    public static Dose? Find(string item) => ByItem.Value.TryGetValue(item, out var dose) ? dose : null;

    /// <summary>All items of the table.</summary>
    public static IReadOnlyCollection<string> Items => ByItem.Value.Keys;

    private static Dictionary<string, Dose> Load()
    {
        var doses = new Dictionary<string, Dose>(StringComparer.Ordinal);
        using var document = Tables.Open("doses");
        foreach (var row in Tables.Rows(document))
        {
            var dose = new Dose(
                row.Text("name"), row.Number("least"), row.Number("most"), row.Text("unit"), row.Flag("harsh"), row.TextLater("source"),
                row.Mark());
            foreach (string item in row.Texts("items")) doses.Add(item, dose);
        }

        return doses;
    }
}
