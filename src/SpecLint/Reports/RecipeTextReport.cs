using SpecLint.Catalogue;
using SpecLint.RecipeText;

namespace SpecLint.Reports;

/// <summary>What was understood of a text: each line as written, and beside it what it is read as and how certain that is.</summary>
internal static class RecipeTextReport
{
    private const int WrittenColumns = 34;

    /// <summary>Writes the report.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="recipes">The recipes.</param>
    /// <param name="columns">Columns of a line.</param>
    public static void Write(TextWriter writer, IReadOnlyList<WrittenRecipe> recipes, int columns = DisplayText.Columns)
    {
        foreach (var recipe in recipes)
        {
            writer.Write(recipe.Name.Length == 0 ? "(no name)\n" : DisplayText.Escape(recipe.Name) + "\n");
            foreach (var line in recipe.Lines) WriteLine(writer, line, columns);
            writer.Write('\n');
        }

        int items = recipes.Sum(r => r.Ingredients.Count()),
            open = OpenIn(recipes),
            likely = recipes.Sum(r => r.Ingredients.Count(l => l.Certainty == Certainty.Likely));
        writer.Write($"{items} {(items == 1 ? "line" : "lines")} with an item: {items - open - likely} certain, {likely} likely, {open} unclear.\n");
    }

    /// <summary>How many lines are unclear.</summary>
    public static int OpenIn(IReadOnlyList<WrittenRecipe> recipes) => recipes.Sum(r => r.Ingredients.Count(l => l.Certainty == Certainty.Unclear));

    private static void WriteLine(TextWriter writer, WrittenLine line, int columns)
    {
        string written = DisplayText.Escape(line.Written.Trim()), read = DisplayText.Escape(Read(line));
        string first = "  " + written + new string(' ', Math.Max(0, WrittenColumns - DisplayText.Width(written))) + "  ";
        bool fits = DisplayText.Width(written) <= WrittenColumns;
        string rest = new(' ', WrittenColumns + 4);
        if (!fits)
        {
            foreach (string row in DisplayText.Wrap(written, "  ", "    ", columns)) writer.Write(row + "\n");
        }

        foreach (string row in DisplayText.Wrap(read, fits ? first : rest, rest, columns)) writer.Write(row + "\n");
    }

    private static string Read(WrittenLine line)
    {
        if (line.Kind == WrittenLineKind.Detail) return line.Because.Length == 0 ? "(of the whole)" : $"? (unclear: {line.Because})";
        if (line.Kind != WrittenLineKind.Ingredient) return line.Kind == WrittenLineKind.Method ? "(method)" : "(heading)";
        string item = line.Item.Answer is NameAnswer.Resolved or NameAnswer.Maker && line.Item.Id.Length > 0 ? line.Item.Id : "?";
        string amount = line.Amount.Length > 0 ? line.Amount + " " : line.Role == Book.LineRole.Garnish ? "" : "? ";
        string what = amount + item;
        return line.Certainty switch
        {
            Certainty.Certain => what,
            Certainty.Likely => $"{what} (likely: {line.Because})",
            _ => $"{what} (unclear: {line.Because})",
        };
    }
}
