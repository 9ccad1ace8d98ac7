using System.Text;

namespace SpecLint.Tests.Text;

/// <summary>A line of a drink of a published list, with what the list's own columns say of it.</summary>
internal sealed record PublishedLine(string List, string Drink, string Line, string Amount, string Unit, string Item);

/// <summary>The data files of published lists.</summary>
internal static class PublishedLines
{
    /// <summary>All lines, in the order of the file.</summary>
    public static IReadOnlyList<PublishedLine> All { get; } =
        [.. Rows("recipe-lines.csv").Select(r => new PublishedLine(r[0], r[1], r[2], r[3], r[4], r[5]))];

    /// <summary>The rows of a data file, without remarks and heading.</summary>
    public static IEnumerable<string[]> Rows(string name) =>
        File.ReadLines(Repository.At("tests", "SpecLint.Tests", "Text", "Data", name)).Where(l => l.Length > 0 && l[0] != '#').Skip(1).Select(Cells);

    private static string[] Cells(string row)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < row.Length; i++)
        {
            if (row[i] == '"' && quoted && i + 1 < row.Length && row[i + 1] == '"') cell.Append(row[i++]);
            else if (row[i] == '"') quoted = !quoted;
            else if (row[i] == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(row[i]);
            }
        }

        cells.Add(cell.ToString());
        return [.. cells];
    }
}
