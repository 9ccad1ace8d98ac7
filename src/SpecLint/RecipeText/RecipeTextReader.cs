using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>Reads recipes from a text: names, lines of ingredients, sentences of the method; several recipes one after another.</summary>
internal sealed class RecipeTextReader
{
    /// <summary>Lines of items behind a name, of which one has an amount.</summary>
    private const int LinesToAmount = 3;

    private const string Ounce = "oz";
    private const double QuarterOunce = 0.25;

    private readonly RecipeLineReader lines;
    private readonly DetailReader details;

    /// <summary>A reader for a book.</summary>
    /// <param name="book">The book whose files are known by name; <see langword="null"/> for the catalogue alone.</param>
    /// <param name="measures">The units; the built-in ones where none are given.</param>
    public RecipeTextReader(LinkedBook? book = null, Measures? measures = null)
    {
        var names = new NameResolver(book);
        measures ??= book is null ? Measures.Default : Measures.For(book.Settings.Bar?.Measures);
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
                read.Add(new WrittenLine(i + 1, rows[i], WrittenLineKind.Detail)
                {
                    Detail = detail,
                    Certainty = detail.Because.Length == 0 ? Certainty.Certain : Certainty.Unclear,
                    Because = detail.Because,
                });
                continue;
            }

            foreach (string part in Sentences(rows[i]).SelectMany(Garnishes).SelectMany(Parts)) read.Add(lines.Read(part, i + 1));
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

    private void Close(List<WrittenRecipe> recipes, List<WrittenLine> gathered, string name)
    {
        if (gathered.Count > 0)
        {
            if (OfName(ref name) is { } said) gathered.Insert(0, said with { Number = gathered[0].Number });
            for (int i = 0; i < gathered.Count; i++) gathered[i] = InPlace(gathered, i);
            recipes.Add(new WrittenRecipe(name, FixedList.Of(gathered)));
        }

        gathered.Clear();
    }

    /// <summary>What a name says in brackets of the whole: <c>Pisco Sour (serves 2)</c>.</summary>
    private WrittenLine? OfName(ref string name)
    {
        int open = name.LastIndexOf('(');
        if (open < 1
            || name[name.Length - 1] != ')'
            || details.Read(name.Substring(open + 1, name.Length - open - 2)) is not { Because.Length: 0 } detail)
            return null;
        string written = name.Substring(open);
        name = name.Substring(0, open).TrimEnd();
        return new WrittenLine(0, written, WrittenLineKind.Detail) { Detail = detail };
    }

    /// <summary>
    /// A line as the others of its recipe let it be read: a twist without an amount is the garnish; what a sentence garnishes with and a
    /// line has already is not another line; juice counted in fruit is poured in the unit of the other lines.
    /// </summary>
    private static WrittenLine InPlace(List<WrittenLine> recipe, int at)
    {
        var line = recipe[at];
        if (line.Kind != WrittenLineKind.Ingredient) return line;
        if (line is { Role: LineRole.Part, Quantity: null, Item.Answer: NameAnswer.Resolved }
            && NameWords.IsPiece(NameWords.Canonical(LastWord(line.ItemWritten))))
            return line with { Role = LineRole.Garnish, Certainty = Certainty.Likely, Because = "it has no amount and is taken for the garnish" };
        if (line.Role == LineRole.Garnish && recipe.Take(at).Any(l => l.Kind == WrittenLineKind.Ingredient && l.ItemId == line.ItemId))
            return new WrittenLine(line.Number, line.Written, WrittenLineKind.Method);
        if (line is not { Quantity: { Dimension: Dimension.Volume } juice, UnitWritten: "", Certainty: Certainty.Likely }) return line;
        var poured = recipe.Where(l => l.UnitWritten.Length > 0 && l.Quantity is { Dimension: Dimension.Volume })
            .Select(l => l.Quantity!.Value.Unit)
            .Where(u => u.Name == Ounce || u.System != UnitSystem.Trade)
            .ToList();
        if (poured.Count == 0 || poured.Exists(u => u.Name != Ounce)) return line;
        double ounces = Math.Max(QuarterOunce, Math.Round(juice.Base / poured[0].Factor / QuarterOunce) * QuarterOunce);
        return line with
        {
            Amount = ounces.ToString(System.Globalization.CultureInfo.InvariantCulture) + " oz",
            Quantity = juice with { Value = ounces, Low = ounces, High = ounces, Unit = poured[0] },
        };
    }

    private static string LastWord(string text) => text.Substring(text.LastIndexOf(' ') + 1).ToLowerInvariant();

    /// <summary>A row of sentences, with one that says only the garnish as a line of its own.</summary>
    private IEnumerable<string> Sentences(string row)
    {
        string[] sentences = row.Split([". "], StringSplitOptions.RemoveEmptyEntries);
        if (sentences.Length < 2 || lines.Read(row).Kind != WrittenLineKind.Method) return [row];
        bool garnishes = false;
        var parts = new List<string>();
        foreach (string sentence in sentences)
        {
            string rest = sentence.TrimStart();
            bool now = LineWords.TakeFront(ref rest, LineWords.Garnish) && lines.Read(sentence).Kind == WrittenLineKind.Ingredient;
            if (parts.Count > 0 && !now && !garnishes) parts[parts.Count - 1] += ". " + sentence;
            else parts.Add(sentence);
            garnishes = now;
        }

        return parts;
    }

    /// <summary>A garnish of several things, as a line each: <c>garnish with a blackberry and a slice of lemon</c>.</summary>
    private IEnumerable<string> Garnishes(string row)
    {
        string rest = row.Trim().TrimStart('-', '*', '•', ' ').TrimEnd('.', ' ');
        if (lines.Read(row) is not { Kind: WrittenLineKind.Ingredient, Role: LineRole.Garnish, Item.Answer: not NameAnswer.Resolved }
            || !LineWords.TakeFront(ref rest, LineWords.Garnish))
            return [row];
        string[] things = rest.Split([" and ", " & ", " + ", ", "], StringSplitOptions.RemoveEmptyEntries);
        string[] each = [.. things.Select(t => "Garnish: " + (t.StartsWith("and ", StringComparison.OrdinalIgnoreCase) ? t.Substring(4) : t).Trim())];
        return each.Length > 1 && each.All(t => lines.Read(t) is { Certainty: not Certainty.Unclear }) ? each : [row];
    }

    /// <summary>A row with commas between amounts, as several lines: <c>2 oz gin, ¾ oz lemon juice</c>.</summary>
    private IEnumerable<string> Parts(string row)
    {
        string[] parts = row.Split(',', ';');
        if (parts.Length < 2) return [row];
        foreach (string part in parts)
        {
            if (lines.Read(part) is not { Kind: WrittenLineKind.Ingredient } line) return [row];
            bool amount = line.NumberWritten.Length > 0
                || line.UnitWritten.Length > 0
                || line.Role is LineRole.Top or LineRole.Garnish or LineRole.Float
                || line.Item.Piece.Length > 0;
            if (!amount || line.ItemWritten.Length == 0) return [row];
        }

        return parts;
    }

    /// <summary>Whether a line is the name of a recipe: it stands at the start or behind a blank line, and an amount follows.</summary>
    private static bool IsName(List<WrittenLine> read, int at)
    {
        var line = read[at];
        bool plain = line is { Kind: WrittenLineKind.Ingredient, NumberWritten: "", UnitWritten: "", Role: LineRole.Part }
            or { Kind: WrittenLineKind.Heading }
            || (line.Kind == WrittenLineKind.Method && IsShort(line.Written));
        if (!plain || (at > 0 && read[at - 1].Kind != WrittenLineKind.Blank) || IsPartOfRecipe(line)) return false;
        int seen = 0;
        for (int next = at + 1; next < read.Count && seen < LinesToAmount; next++)
        {
            if (read[next].Kind is WrittenLineKind.Heading or WrittenLineKind.Detail
                || (seen == 0 && read[next].Kind == WrittenLineKind.Blank)) continue;
            if (read[next].Kind != WrittenLineKind.Ingredient) return false;
            if (read[next].Quantity is not null) return true;
            seen++;
        }

        return false;
    }

    /// <summary>Whether a line may be a name that begins with a verb, as Salt Path does.</summary>
    private static bool IsShort(string written) =>
        written.Trim() is var text && text.Length < 40 && text[text.Length - 1] != '.' && text.Split(' ').Length <= 4;

    private static bool IsPartOfRecipe(WrittenLine line) =>
        line.Kind == WrittenLineKind.Heading
            && line.ItemWritten.ToLowerInvariant() is "ingredients" or "method" or "directions" or "instructions" or "preparation"
                or "garnish" or "glass" or "notes";
}
