using System.Text;

namespace SpecLint.Tool;

/// <summary>Rows of a spreadsheet with one ingredient a row, as the text of recipes that the reader of recipes reads.</summary>
internal static class RecipeRows
{
    private static readonly string[] Recipe = ["recipe", "drink", "cocktail", "name"],
        Item = ["item", "ingredient", "ingredients"],
        Amount = ["amount", "quantity", "qty", "measure"],
        Unit = ["unit", "units"];
    private static readonly string[] Line = ["line"],
        Method = ["method", "directions", "instructions", "preparation"],
        Glass = ["glass", "glassware"],
        Garnish = ["garnish"];

    /// <summary>The text: each recipe under its name, its lines in the order of the rows, then garnish, glass and method, each said once.</summary>
    /// <param name="rows">The rows, the header first.</param>
    /// <param name="file">Name of the file, for what is said of it.</param>
    /// <exception cref="UsageException">The columns are not there.</exception>
    public static string ToText(IReadOnlyList<string[]> rows, string file)
    {
        if (rows.Count < 2) throw new UsageException($"{file} has no rows below its header.");
        string[] header = rows[0];
        int recipe = Find(header, Recipe), item = Find(header, Item), line = Find(header, Line),
            amount = Find(header, Amount), unit = Find(header, Unit);
        if (recipe < 0 || (item < 0 && line < 0))
            throw new UsageException($"{file} needs a first row with the columns recipe and item (or line); amount, unit, garnish, "
                + $"glass and method may follow.");
        var text = new StringBuilder();
        string name = "";
        var tails = new List<string>();
        foreach (string[] cells in rows.Skip(1))
        {
            string named = Cell(cells, recipe);
            if (named.Length > 0 && named != name)
            {
                Close(text, tails);
                name = named;
                text.Append("# ").Append(name).Append('\n');
            }

            string written = line >= 0 ? Cell(cells, line) : $"{Cell(cells, amount)} {Cell(cells, unit)} {Cell(cells, item)}".Trim();
            if (written.Length > 0) text.Append(written).Append('\n');
            Tail(tails, "Garnish: ", Cell(cells, Find(header, Garnish)));
            Tail(tails, "Glass: ", Cell(cells, Find(header, Glass)));
            Tail(tails, "", Cell(cells, Find(header, Method)));
        }

        Close(text, tails);
        return text.ToString();
    }

    private static void Tail(List<string> tails, string before, string text)
    {
        if (text.Length > 0 && !tails.Contains(before + text)) tails.Add(before + text);
    }

    private static void Close(StringBuilder text, List<string> tails)
    {
        foreach (string tail in tails) text.Append(tail).Append('\n');
        if (text.Length > 0) text.Append('\n');
        tails.Clear();
    }

    private static string Cell(string[] cells, int at) => at >= 0 && at < cells.Length ? cells[at].Replace('\r', ' ').Replace('\n', ' ') : "";

    private static int Find(string[] header, string[] names)
    {
        foreach (string name in names)
        {
            int at = Array.FindIndex(header, h => string.Equals(h, name, StringComparison.OrdinalIgnoreCase));
            if (at >= 0) return at;
        }

        return -1;
    }
}
