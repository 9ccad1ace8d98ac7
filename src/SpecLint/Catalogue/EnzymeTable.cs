using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>An enzyme or a live culture that is added, and the heat that ends it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Kills">Temperature above which it no longer works, °C.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record AddedEnzyme(string Name, double Kills, string Source);

/// <summary>Enzymes and live cultures that a bar adds (<c>enzymes.json</c>).</summary>
internal static class EnzymeTable
{
    private static readonly Lazy<Dictionary<string, AddedEnzyme>> Rows = new(Load);

    /// <summary>The enzyme that an item is; <see langword="null"/> where the table does not have it.</summary>
    public static AddedEnzyme? Find(Item item) => Rows.Value.TryGetValue(item.CountsAs, out var row) ? row : null;

    private static Dictionary<string, AddedEnzyme> Load()
    {
        var all = new Dictionary<string, AddedEnzyme>(StringComparer.Ordinal);
        using var document = Tables.Open("enzymes");
        foreach (var row in Tables.Rows(document))
        {
            var made = new AddedEnzyme(row.Text("name"), row.Number("kills"), row.Text("source"));
            foreach (string item in row.Texts("items")) all.Add(item, made);
        }

        return all;
    }
}
