using System.Text;

namespace SpecLint.Tests.Support;

/// <summary>Reads tables of test data: comma-separated, quotes doubled within quotes (RFC 4180), one record a line.</summary>
internal static class Csv
{
    /// <summary>The records after the heading.</summary>
    public static IEnumerable<string[]> Read(string path)
    {
        foreach (string line in File.ReadLines(path).Skip(1))
        {
            if (line.Length > 0) yield return Cells(line);
        }
    }

    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (c == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"') cell.Append(line[++i]);
            else if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted) cells.Add(Take());
            else cell.Append(c);
        }

        cells.Add(Take());
        return [.. cells];

        string Take()
        {
            string text = cell.ToString();
            cell.Clear();
            return text;
        }
    }
}
