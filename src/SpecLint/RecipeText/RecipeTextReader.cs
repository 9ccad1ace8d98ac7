using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>Reads recipes from a text: names, lines of ingredients, sentences of the method; several recipes one after another.</summary>
internal sealed class RecipeTextReader
{
    private readonly RecipeLineReader lines;
    private readonly DetailReader details;

    /// <summary>A reader for a book.</summary>
    /// <param name="book">The book whose files are known by name; <see langword="null"/> for the catalogue alone.</param>
    /// <param name="measures">The units; the built-in ones where none are given.</param>
    public RecipeTextReader(LinkedBook? book = null, Measures? measures = null)
    {
        var names = new NameResolver(book);
        measures ??= book is null ? Measures.Default : Measures.For(book.Settings.Bar);
        lines = new RecipeLineReader(names, measures);
        details = new DetailReader(names, measures, StepReader.For(book));
    }

    /// <summary>The recipes of a text.</summary>
    /// <param name="text">The text, its lines ended in any way.</param>
    public IReadOnlyList<WrittenRecipe> Read(string text)
    {
        var read = new List<WrittenLine>();
        string[] rows = text.Replace("\r\n", "\n").Replace('\r', '\n').Split('\n');
        for (int i = 0; i < rows.Length; i++)
        {
            if (details.Read(rows[i]) is { } detail)
            {
                read.Add(new WrittenLine(i + 1, rows[i], WrittenLineKind.Detail) { Detail = detail, Certainty = detail.Because.Length == 0 ? Certainty.Certain : Certainty.Unclear, Because = detail.Because });
                continue;
            }

            foreach (string part in Parts(rows[i])) read.Add(lines.Read(part, i + 1));
        }

        var recipes = new List<WrittenRecipe>();
        var gathered = new List<WrittenLine>();
        string name = "";
        for (int i = 0; i < read.Count; i++)
        {
            if (!IsName(read, i))
            {
                if (read[i].Kind != WrittenLineKind.Blank) gathered.Add(read[i]);
                continue;
            }

            Close(recipes, gathered, name);
            name = read[i].Kind == WrittenLineKind.Heading ? read[i].ItemWritten : read[i].Written.Trim();
        }

        Close(recipes, gathered, name);
        return recipes;
    }

    private static void Close(List<WrittenRecipe> recipes, List<WrittenLine> gathered, string name)
    {
        if (gathered.Count > 0) recipes.Add(new WrittenRecipe(name, FixedList.Of(gathered)));
        gathered.Clear();
    }

    /// <summary>A row with commas between amounts, as several lines: <c>2 oz gin, ¾ oz lemon juice</c>.</summary>
    private IEnumerable<string> Parts(string row)
    {
        string[] parts = row.Split(',', ';');
        if (parts.Length < 2) return [row];
        foreach (string part in parts)
        {
            if (lines.Read(part) is not { Kind: WrittenLineKind.Ingredient } line) return [row];
            bool amount = line.NumberWritten.Length > 0 || line.UnitWritten.Length > 0 || line.Role is LineRole.Top or LineRole.Garnish or LineRole.Float || line.Item.Piece.Length > 0;
            if (!amount || line.ItemWritten.Length == 0) return [row];
        }

        return parts;
    }

    /// <summary>Whether a line is the name of a recipe: it stands at the start or behind a blank line, and an amount follows.</summary>
    private static bool IsName(List<WrittenLine> read, int at)
    {
        var line = read[at];
        bool plain = line is { Kind: WrittenLineKind.Ingredient, NumberWritten: "", UnitWritten: "", Role: LineRole.Part } or { Kind: WrittenLineKind.Heading }
            || (line.Kind == WrittenLineKind.Method && IsShort(line.Written));
        if (!plain || (at > 0 && read[at - 1].Kind != WrittenLineKind.Blank) || IsPartOfRecipe(line)) return false;
        for (int next = at + 1; next < read.Count; next++)
        {
            if (read[next].Kind is WrittenLineKind.Blank or WrittenLineKind.Heading or WrittenLineKind.Detail) continue;
            return read[next] is { Kind: WrittenLineKind.Ingredient, Quantity: not null };
        }

        return false;
    }

    /// <summary>Whether a line may be a name that begins with a verb, as Salt Path does.</summary>
    private static bool IsShort(string written) => written.Trim() is var text && text.Length < 40 && text[text.Length - 1] != '.' && text.Split(' ').Length <= 4;

    private static bool IsPartOfRecipe(WrittenLine line) =>
        line.Kind == WrittenLineKind.Heading && line.ItemWritten.ToLowerInvariant() is "ingredients" or "method" or "directions" or "instructions" or "preparation" or "garnish" or "glass" or "notes";
}
