using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>A limit that a rule holds a number against.</summary>
/// <param name="Id">Its id in the table.</param>
/// <param name="Value">The number.</param>
/// <param name="Unit">Its unit in UCUM.</param>
/// <param name="Jurisdictions">The jurisdictions it holds in; <c>any</c> for all.</param>
/// <param name="Condition">When it holds, in words.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it: one from memory gives at most a warning.</param>
public sealed record Limit(string Id, double Value, string Unit, FixedList<string> Jurisdictions, string Condition, string Source, Mark Mark)
{
    /// <summary>Whether it applies under the settings of a bar.</summary>
    public bool AppliesIn(Settings settings)
    {
        if (Jurisdictions.Count == 0) return true;
        if (Jurisdictions[0] == "any") return true;
        foreach (string jurisdiction in Jurisdictions)
        {
            if (settings.AppliesIn(jurisdiction)) return true;
        }

        return false;
    }

    /// <summary>The level that a finding may have under this limit: one from memory gives at most a warning.</summary>
    public Level? LevelCap => Mark == Mark.Memory ? Level.Warning : null;
}

/// <summary>The table of limits.</summary>
public static class Limits
{
    private static readonly Dictionary<string, Row> ById = Load();

    /// <summary>All limits.</summary>
    public static IReadOnlyCollection<Limit> All => [.. ById.Values.Select(static row => row.Limit)];

    /// <summary>The limit of an id.</summary>
    /// <exception cref="InvalidOperationException">The table lacks it: a fault of the build.</exception>
    public static Limit Of(string id) =>
        ById.TryGetValue(id, out var row) ? row.Limit : throw new InvalidOperationException($"The table of limits lacks {id}.");

    private static Dictionary<string, Row> Load()
    {
        var limits = new Dictionary<string, Row>(512, StringComparer.Ordinal);
        foreach (string table in Tables.NamesStartingWith("limits"))
        {
            foreach (var row in Tables.Rows(Tables.Open(table))) limits.Add(row.Text("id"), new Row(row));
        }

        return limits;
    }

    /// <summary>A row of a table, which stays open: a run asks for a part of the limits, and only those are made.</summary>
    private sealed class Row(TableValue row)
    {
        private Limit? made;

        public Limit Limit => made ?? Interlocked.CompareExchange(ref made, Make(), null) ?? made;

        private Limit Make() =>
            new(
                row.Text("id"), row.Number("value"), row.Text("unit"), row.RepeatedTexts("jurisdictions"), row.Text("condition"),
                row.Text("source"), row.Mark());
    }
}
