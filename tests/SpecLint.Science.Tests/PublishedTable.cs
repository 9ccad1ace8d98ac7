using System.Globalization;
using System.Reflection;
using System.Text;

namespace SpecLint.Science.Tests;

/// <summary>A table of published figures kept beside the tests as Data/*.csv: first line the column names, # opens a comment line.</summary>
public sealed class PublishedTable
{
    private readonly Dictionary<string, int> _columns;

    private PublishedTable(string[] header) =>
        _columns = header.Select((name, index) => (name, index)).ToDictionary(c => c.name, c => c.index, StringComparer.Ordinal);

    public List<Row> Rows { get; } = [];

    /// <summary>Reads a table by its file name, for example "freezing-points.csv".</summary>
    public static PublishedTable Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new FileNotFoundException($"No embedded table {name}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        PublishedTable? table = null;
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#')
                continue;
            var cells = Split(line);
            if (table is null)
                table = new PublishedTable(cells);
            else if (cells.Length == table._columns.Count)
                table.Rows.Add(new Row(table, cells));
            else
                throw new InvalidDataException($"{name}: {cells.Length} cells for {table._columns.Count} columns: {line}");
        }

        return table ?? throw new InvalidDataException($"{name} is empty.");
    }

    private static string[] Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (c == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
                cell.Append(line[++i]);
            else if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
                cell.Append(c);
        }

        cells.Add(cell.ToString());
        return [.. cells];
    }

    /// <summary>One line of the table.</summary>
    public sealed class Row(PublishedTable table, string[] cells)
    {
        public string this[string column] => cells[table._columns[column]];

        public bool Has(string column) => this[column].Length > 0;

        public double Number(string column) => double.Parse(this[column], NumberStyles.Float, CultureInfo.InvariantCulture);

        public override string ToString() => string.Join(',', cells);
    }
}
