using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>What a gelling agent needs to dissolve.</summary>
/// <param name="Least">Least temperature, °C.</param>
/// <param name="Use">That, as a clause.</param>
/// <param name="IsProtein">Whether it is a protein, which an enzyme of raw fruit takes apart.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record Gelling(double Least, string Use, bool IsProtein, string Source);

/// <summary>An enzyme of raw fruit that takes protein apart.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kills">Temperature from which it does not last, °C.</param>
/// <param name="Source">Where it is printed.</param>
internal sealed record Protease(string Name, double Kills, string Source);

/// <summary>Gelling agents with what dissolves them, and the fruit that keeps gelatine from setting (<c>gelling.json</c>).</summary>
internal static class GellingTable
{
    private static readonly Lazy<(Dictionary<string, Gelling> Agents, Dictionary<string, Protease> Fruit)> Rows = new(Load);

    /// <summary>The agent of an item; <see langword="null"/> where it is none.</summary>
    public static Gelling? Agent(Item item) => Rows.Value.Agents.TryGetValue(item.CountsAs, out var agent) ? agent : null;

    /// <summary>The enzyme of an item; <see langword="null"/> where it has none.</summary>
    public static Protease? Enzyme(Item item) => Rows.Value.Fruit.TryGetValue(item.CountsAs, out var enzyme) ? enzyme : null;

    private static (Dictionary<string, Gelling>, Dictionary<string, Protease>) Load()
    {
        using var document = Tables.Open("gelling");
        return (
            ByItem(
                document.Root.Get("gelling"),
                static row => new Gelling(row.Number("least"), row.Text("use"), row.Flag("protein"), row.Text("source"))),
            ByItem(document.Root.Get("proteases"), static row => new Protease(row.Text("use"), row.Number("kills"), row.Text("source"))));
    }

    private static Dictionary<string, T> ByItem<T>(TableValue rows, Func<TableValue, T> make)
    {
        var all = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var row in rows.Items)
        {
            var made = make(row);
            foreach (string item in row.Texts("items")) all.Add(item, made);
        }

        return all;
    }
}
