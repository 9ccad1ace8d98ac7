using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>How a leaf is steeped in hot water at most.</summary>
/// <param name="Hottest">Hottest water, °C.</param>
/// <param name="Minutes">Longest time in hot water, min.</param>
/// <param name="SpiritHours">Longest time in spirit, h.</param>
/// <param name="Use">What it is, in words.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record Steeping(double Hottest, double Minutes, double SpiritHours, string Use, string Source);

/// <summary>Leaves that turn bitter, with what they take (<c>steeping.json</c>).</summary>
internal static class SteepingTable
{
    private static readonly Lazy<Dictionary<string, Steeping>> Rows = new(Load);

    /// <summary>What an item takes; <see langword="null"/> where the table does not have it.</summary>
    public static Steeping? Find(Item item) => Rows.Value.TryGetValue(item.CountsAs, out var row) ? row : null;

    private static Dictionary<string, Steeping> Load()
    {
        var all = new Dictionary<string, Steeping>(StringComparer.Ordinal);
        using var document = Tables.Open("steeping");
        foreach (var row in Tables.Rows(document))
        {
            var made = new Steeping(row.Number("hottest"), row.Number("minutes"), row.Number("spiritHours"), row.Text("use"), row.Text("source"));
            foreach (string item in row.Texts("items")) all.Add(item, made);
        }

        return all;
    }
}
