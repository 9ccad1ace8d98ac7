using System.Text.Json;

namespace SpecLint.Catalogue;

/// <summary>The tables A and B of the Food Code (1-201.10): pairs of water activity and pH and what they say of a food.</summary>
internal static class KeepingTables
{
    private static readonly Lazy<Dictionary<string, Cell[]>> ById = new(Load);

    /// <summary>Where the tables are printed.</summary>
    public const string Source = "US FDA Food Code 2022, 1-201.10, tables A and B";

    /// <summary>What a box of possible values meets in a table.</summary>
    /// <param name="table"><c>A</c> (heated and then packed) or <c>B</c>.</param>
    /// <param name="waterActivity">What the water activity may be.</param>
    /// <param name="ph">What the pH may be.</param>
    /// <returns>Whether every cell that the box touches says not controlled, and whether any does.</returns>
    public static (bool All, bool Any) NotControlled(string table, Reach waterActivity, Reach ph)
    {
        bool all = true, any = false;
        foreach (var cell in ById.Value[table])
        {
            if (!cell.WaterActivity.Meets(waterActivity) || !cell.Ph.Meets(ph)) continue;
            all &= cell.NotControlled;
            any |= cell.NotControlled;
        }

        return (all && any, any);
    }

    private static Dictionary<string, Cell[]> Load()
    {
        var tables = new Dictionary<string, Cell[]>(StringComparer.Ordinal);
        using var document = Tables.Open("keeping-tables");
        foreach (var row in Tables.Rows(document))
            tables.Add(row.Text("id"), [.. row.GetProperty("cells").EnumerateArray().Select(Cell.Read)]);
        return tables;
    }

    private readonly record struct Interval(double Low, bool LowIncluded, double High, bool HighIncluded)
    {
        public static Interval Read(JsonElement side) => new(
            side.Number("low"), side.GetProperty("lowIncluded").GetBoolean(), side.Number("high"), side.GetProperty("highIncluded").GetBoolean());

        public bool Meets(Reach band) =>
            (band.High > Low || (LowIncluded && band.High == Low)) && (band.Low < High || (HighIncluded && band.Low == High));
    }

    private readonly record struct Cell(Interval WaterActivity, Interval Ph, bool NotControlled)
    {
        public static Cell Read(JsonElement cell) =>
            new(Interval.Read(cell.GetProperty("waterActivity")), Interval.Read(cell.GetProperty("ph")), cell.Text("verdict") == "not controlled");
    }
}

/// <summary>What a value may be: a closed range.</summary>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
internal readonly record struct Reach(double Low, double High);
