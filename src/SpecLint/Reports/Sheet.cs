using System.Globalization;

namespace SpecLint.Reports;

/// <summary>
/// A table for a spreadsheet: columns with names, rows of texts and numbers. A text that a spreadsheet could take for a formula gets an
/// apostrophe in front, so that no cell ever runs (OWASP, CSV injection).
/// </summary>
/// <param name="columns">Names of the columns, each once.</param>
public sealed class Sheet(params string[] columns)
{
    private readonly List<string[]> rows = [];

    /// <summary>Names of the columns.</summary>
    public IReadOnlyList<string> Columns => columns;

    /// <summary>The rows; each has as many cells as there are columns.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows => rows;

    /// <summary>Adds a row: texts, numbers, money, whether something is so; <see langword="null"/> and what is no number stay empty.</summary>
    /// <param name="cells">As many as there are columns.</param>
    /// <exception cref="ArgumentException">More or fewer than there are columns.</exception>
    public void Add(params object?[] cells)
    {
        if (cells.Length != columns.Length)
            throw new ArgumentException($"A row has {cells.Length} cells, the sheet {columns.Length} columns.", nameof(cells));
        rows.Add([.. cells.Select(Cell)]);
    }

    /// <summary>A cell as it is written.</summary>
    public static string Cell(object? value) => value switch
    {
        null => "",
        bool flag => flag ? "yes" : "no",
        decimal money => Math.Round(money, 4).ToString("0.00##", CultureInfo.InvariantCulture),
        double number => double.IsNaN(number) || double.IsInfinity(number) ? "" : JsonOutput.Number(number),
        int count => count.ToString(CultureInfo.InvariantCulture),
        _ => Harmless(value.ToString() ?? ""),
    };

    /// <summary>
    /// A text that no spreadsheet runs. Blanks and signs that are not printed before a sign of a formula hide it from the eye but not
    /// from the program.
    /// </summary>
    private static string Harmless(string text)
    {
        string clean = JsonOutput.WellFormed(text).Replace("\0", "");
        foreach (char c in clean)
        {
            if (char.IsWhiteSpace(c) || char.IsControl(c) || CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.Format) continue;
            return c is '=' or '+' or '-' or '@' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20' or '\u2212' ? "'" + clean : clean;
        }

        return clean.Length > 0 && clean[0] is '\t' or '\r' or '\n' ? "'" + clean : clean;
    }
}
