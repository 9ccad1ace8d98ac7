using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>
/// The file of a recipe that was read from a text: of a preparation where the text gives a family, a yield, a keeping or what it stands
/// in for, else of a drink. What is open stays a comment, and the item as it was written: the check then finds that it is not known.
/// Each line of the file knows the line of the text that it comes from.
/// </summary>
internal sealed class RecipeDraft
{
    private readonly StringBuilder text = new();
    private readonly List<int> origins = [];
    private readonly List<List<(string Text, int Line)>> properties = [];
    private readonly Dictionary<int, IReadOnlyList<WrittenStep>> steps = [];
    private readonly WrittenRecipe recipe;

    private RecipeDraft(WrittenRecipe recipe) => this.recipe = recipe;

    /// <summary>Id of the file: the name as an id; empty where the name has no letter.</summary>
    public string Id => Slugs.Of(recipe.Name);

    /// <summary>Name of the file.</summary>
    public string FileName => Id + FileKinds.EndingOf(Kind);

    /// <summary>Drink or preparation.</summary>
    public FileKind Kind { get; private set; }

    /// <summary>The text of the file.</summary>
    public string Text { get; private set; } = "";

    /// <summary>Of each line of the file, the line of the text that it comes from, from 1; 0 where it is of the recipe as a whole.</summary>
    public IReadOnlyList<int> Origins => origins;

    /// <summary>What was understood of each line of the method, by its number in the text.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<WrittenStep>> Steps => steps;

    /// <summary>Writes the file of a recipe.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="reader">Reads the method.</param>
    /// <param name="on">Day of a reading that gives none.</param>
    public static RecipeDraft Of(WrittenRecipe recipe, StepReader reader, CalendarDate on)
    {
        var draft = new RecipeDraft(recipe);
        foreach (var line in recipe.Method) draft.steps[line.Number] = reader.Read(line.Written, recipe.Lines);
        draft.Write(on);
        return draft;
    }

    private IEnumerable<(WrittenDetail Detail, int Line)> Details =>
        recipe.Lines.Where(l => l.Detail is { Because.Length: 0 }).Select(l => (l.Detail!, l.Number));

    private void Write(CalendarDate on)
    {
        bool isPrep = Details.Any(d => d.Detail.Kind is DetailKind.Family or DetailKind.Yield or DetailKind.Keep or DetailKind.StandsInFor);
        Kind = isPrep ? FileKind.Prep : FileKind.Drink;
        Property("name", Quoted(recipe.Name), 0);
        if (isPrep) Single(DetailKind.Family, "family");
        else Single(DetailKind.Style, "style");
        var garnish = recipe.Ingredients.Where(l => l.Role == LineRole.Garnish).ToList();
        Lines("ingredients", [.. recipe.Ingredients.Where(l => l.Role != LineRole.Garnish || isPrep)]);
        Method();
        if (isPrep) OfPreparation(on);
        else OfDrink(garnish);
        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == DetailKind.Allergens).Take(1))
            Property("declares", $"{{ \"allergens\": [{string.Join(", ", detail.Tokens.Select(Quoted))}] }}", line);
        var notes = Details.Where(d => d.Detail.Kind == DetailKind.Note).ToList();
        if (notes.Count > 0) Property("notes", Quoted(string.Join(" ", notes.Select(n => n.Detail.Text))), notes[0].Line);
        Put("{", 0);
        for (int i = 0; i < properties.Count; i++)
        {
            for (int j = 0; j < properties[i].Count; j++) Put(
                properties[i][j].Text + (j + 1 == properties[i].Count && i + 1 < properties.Count ? "," : ""), properties[i][j].Line);
        }

        Put("}", 0);
        Text = text.ToString();
    }

    private void OfDrink(List<WrittenLine> garnish)
    {
        var glass = Details.Where(d => d.Detail.Kind == DetailKind.Glass).Select(d => (d.Detail.Text, d.Line))
            .Concat(steps.SelectMany(s => s.Value.Where(w => w.Glass.Length > 0).Select(w => (w.Glass, s.Key)))).ToList();
        if (glass.Count > 0) Property("glass", Quoted(glass[0].Item1), glass[0].Item2);
        if (garnish.Count > 0) Lines("garnish", garnish);
        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == DetailKind.Serves).Take(1)) Property("serves", Number(detail.Count), line);
    }

    private void OfPreparation(CalendarDate on)
    {
        Single(DetailKind.BatchOf, "batchOf");
        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == DetailKind.Yield).Take(1)) Property("yield", Quoted(detail.Amount), line);
        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == DetailKind.StandsInFor)
            .Take(1)) Property("target", $"{{ \"standsInFor\": {Quoted(detail.Text)} }}", line);
        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == DetailKind.Measured).Take(1))
        {
            var given = new List<string>();
            if (!double.IsNaN(detail.Ph)) given.Add($"\"ph\": {Number(detail.Ph)}");
            if (!double.IsNaN(detail.Brix)) given.Add($"\"brix\": {Number(detail.Brix)}");
            given.Add($"\"on\": \"{detail.On ?? on}\"");
            if (detail.Of.Length > 0) given.Add($"\"of\": {Quoted(detail.Of)}");
            Property("measured", $"{{ {string.Join(", ", given)} }}", line);
        }

        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == DetailKind.Keep).Take(1))
        {
            var given = new List<string>();
            if (detail.At.Length > 0) given.Add($"\"at\": {Quoted(detail.At)}");
            if (detail.Text.Length > 0) given.Add($"\"in\": {Quoted(detail.Text)}");
            if (detail.For.Length > 0) given.Add($"\"for\": {Quoted(detail.For)}");
            Property("keep", $"{{ {string.Join(", ", given)} }}", line);
        }
    }

    private void Single(DetailKind kind, string property)
    {
        foreach (var (detail, line) in Details.Where(d => d.Detail.Kind == kind).Take(1)) Property(property, Quoted(detail.Text), line);
    }

    private void Property(string name, string json, int line) => properties.Add([($"  \"{name}\": {json}", line)]);

    private void Lines(string name, List<WrittenLine> lines)
    {
        var rows = new List<(string, int)> { ($"  \"{name}\": [", 0) };
        for (int i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            if (line.Because.Length > 0)
                rows.Add(("    // " + Comment($"{line.Written.Trim().TrimStart('-', '*', '•', ' ').TrimEnd('.')}: {line.Because}"), line.Number));
            string row = $"    {{ \"item\": {Quoted(line.ItemId)}";
            if (line.Amount.Length > 0) row += $", \"amount\": {Quoted(line.Amount)}";
            if (line.Role is LineRole.Top or LineRole.Float) row += $", \"role\": \"{(line.Role == LineRole.Top ? "top" : "float")}\"";
            rows.Add((row + (i + 1 < lines.Count ? " }," : " }"), line.Number));
        }

        rows.Add(("  ]", 0));
        properties.Add(rows);
    }

    private void Method()
    {
        var rows = new List<(string, int)> { ("  \"method\": [", 0) };
        var all = new List<(string Json, int Line)>();
        foreach (var line in recipe.Method)
        {
            rows.Add(("    // " + Comment(line.Written.Trim()), line.Number));
            foreach (var step in steps[line.Number]) all.Add((Json(step), line.Number));
        }

        for (int i = 0; i < all.Count; i++) rows.Add(($"    {{ {all[i].Json}{(i + 1 < all.Count ? " }," : " }")}", all[i].Line));
        rows.Add(("  ]", 0));
        properties.Add(rows);
    }

    private static string Json(WrittenStep step)
    {
        var given = new List<string> { $"\"do\": {Quoted(step.Verb.Id)}" };
        if (step.Items.Count > 0) given.Add($"\"items\": [ {string.Join(", ", step.Items.Select(Quoted))} ]");
        (string Name, string Value)[] rest =
        [
            ("ice", step.Ice), ("at", step.At), ("to", step.To), ("for", step.For), ("until", step.Until), ("into", step.Into),
            ("note", step.Note),
        ];
        foreach (var (name, value) in rest)
        {
            if (value.Length > 0) given.Add($"\"{name}\": {Quoted(value)}");
        }

        return string.Join(", ", given);
    }

    private void Put(string row, int line)
    {
        text.Append(row).Append('\n');
        origins.Add(line);
    }

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>A text on one line.</summary>
    private static string Comment(string text) => new([.. text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c)]);

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";
}
