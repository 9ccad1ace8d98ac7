using SpecLint.Reports;
using nietras.SeparatedValues;

namespace SpecLint.Tool;

/// <summary>Comma-separated values (RFC 4180): sheets out, rows of a spreadsheet in.</summary>
internal static class CsvFile
{
    private const int MostRows = 100_000;

    /// <summary>Writes a sheet: UTF-8, a header, cells quoted where needed, CRLF.</summary>
    public static void Write(TextWriter to, Sheet sheet)
    {
        using var text = new StringWriter { NewLine = "\r\n" };
        using (var writer = Sep.New(',').Writer(static options => options with { Escape = true }).To(text))
        {
            if (sheet.Rows.Count == 0) to.Write(string.Join(",", sheet.Columns) + "\r\n");
            foreach (var cells in sheet.Rows)
            {
                using var row = writer.NewRow();
                for (int i = 0; i < cells.Count; i++) row[sheet.Columns[i]].Set(cells[i]);
            }
        }

        to.Write(text.ToString());
    }

    /// <summary>Reads rows as a spreadsheet writes them: comma, semicolon, tab or bar between the cells, found by the first line.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Its name, for what is said of it.</param>
    /// <returns>The rows, the header among them; cells without blanks around them.</returns>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static List<string[]> Read(string text, string file)
    {
        var rows = new List<string[]>();
        if (string.IsNullOrWhiteSpace(text)) return rows;
        try
        {
            using var reader = Sep.Reader(static options => options with { HasHeader = false, Unescape = true, DisableColCountCheck = true })
                .FromText(text.TrimStart('\uFEFF'));
            foreach (var row in reader)
            {
                if (rows.Count >= MostRows) throw new UsageException($"{file} has more than {MostRows} rows.");
                var cells = new string[row.ColCount];
                for (int i = 0; i < cells.Length; i++) cells[i] = row[i].ToString().Trim();
                if (cells.Any(c => c.Length > 0)) rows.Add(cells);
            }
        }
        catch (Exception e) when (e is InvalidDataException or ArgumentException or NotSupportedException or InvalidOperationException)
        {
            throw new UsageException($"{file} cannot be read as comma-separated values: {e.Message.Split('\n')[0].TrimEnd('.', '\r')}.", e);
        }

        return rows;
    }
}
