using System.Text;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.RecipeText;

namespace SpecLint.Service;

/// <summary>What a new file is to be.</summary>
/// <param name="Kind">Kind of file; not the bar.</param>
/// <param name="Name">Name, as people say it.</param>
/// <param name="Lines">Lines as somebody says them: <c>50 ml gin</c>, <c>2 dashes aromatic bitters</c>.</param>
internal sealed record NewFileRequest(FileKind Kind, string Name, IReadOnlyList<string> Lines)
{
    /// <summary>Style of a drink; empty where none is given.</summary>
    public string Style { get; init; } = "";

    /// <summary>Family of a preparation; empty where none is given.</summary>
    public string Family { get; init; } = "";

    /// <summary>Glass of a drink; empty where none is given.</summary>
    public string Glass { get; init; } = "";
}

/// <summary>
/// Writes the first text of a file of a book. What is certain stands in it; what is not stands in it as a comment that says what is
/// open, so that nothing is guessed in silence.
/// </summary>
internal sealed class NewFile
{
    private readonly ProfileSet profiles;
    private readonly LinkedBook book;
    private readonly NewFileRequest request;
    private readonly List<string> open = [];
    private readonly List<Entry> entries = [];

    private NewFile(ProfileSet profiles, NewFileRequest request)
    {
        this.profiles = profiles;
        book = profiles.Book;
        this.request = request;
    }

    /// <summary>The file's id: its name as an id.</summary>
    public string Id { get; private init; } = "";

    /// <summary>Its text, JSON with comments, LF line ends.</summary>
    public string Text { get; private set; } = "";

    /// <summary>What is left open, a sentence each.</summary>
    public IReadOnlyList<string> Open => open;

    /// <summary>Whether every line is understood.</summary>
    public bool IsUnderstood => entries.TrueForAll(e => e.Doubt.Length == 0);

    /// <summary>Writes a file.</summary>
    /// <param name="profiles">The profiles of the book that it is for.</param>
    /// <param name="request">What it is to be.</param>
    /// <param name="allergens">Its allergens, once they are worked out; <see langword="null"/> leaves them open.</param>
    public static NewFile Of(ProfileSet profiles, NewFileRequest request, IReadOnlyList<string>? allergens = null)
    {
        var file = new NewFile(profiles, request) { Id = BuiltInCatalogue.Slug(request.Name) };
        file.Write(allergens);
        return file;
    }

    private void Write(IReadOnlyList<string>? allergens)
    {
        var reader = new RecipeLineReader(book.NameResolver, book.Settings.Measures);
        foreach (string line in request.Lines) entries.Add(Understand(line, reader));
        var text = new StringBuilder("{\n");
        text.Append($"  \"$schema\": \"./schemas/{KeyOf(request.Kind)}.schema.json\",\n");
        switch (request.Kind)
        {
            case FileKind.Drink: Drink(text, allergens); break;
            case FileKind.Prep: Prep(text, allergens); break;
            case FileKind.Ingredient: Ingredient(text); break;
            case FileKind.Menu: Menu(text); break;
            default: Stock(text); break;
        }

        Text = text.Append("}\n").ToString();
    }

    private void Drink(StringBuilder text, IReadOnlyList<string>? allergens)
    {
        Property(text, "name", Quoted(request.Name));
        var style = request.Style.Length > 0 ? Vocabulary.Style.Of(request.Style) : null;
        if (style is { IsKnown: true }) Property(text, "style", Quoted(style.Id));
        else Leave(text, "style", "\"…\"", "the style, by which its balance is judged: shaken-sour, stirred, highball …");
        Lines(text, "ingredients");
        string how = style is { IsKnown: true, Techniques.Count: > 0 } ? style.Techniques[0].Id : Shaken() ? "shake" : Sparkling() ? "build" : "stir";
        Comment(text, "Usual for what is in it; write what the bar does.");
        text.Append(how switch
        {
            "shake" =>
                "  \"method\": [\n    { \"do\": \"shake\", \"ice\": \"cubed\", \"for\": \"12 s\" },\n    { \"do\": \"fine-strain\", "
                    + "\"into\": \"glass\" }\n  ],\n",
            "stir" =>
                "  \"method\": [\n    { \"do\": \"stir\", \"ice\": \"cubed\", \"for\": \"30 s\" },\n    { \"do\": \"strain\", \"into\": "
                    + "\"glass\" }\n  ],\n",
            "build" => "  \"method\": [\n    { \"do\": \"build\", \"ice\": \"cubed\" }\n  ],\n",
            _ => $"  \"method\": [\n    {{ \"do\": \"{how}\" }}\n  ],\n",
        });
        if (request.Glass.Length > 0) Property(text, "glass", Quoted(request.Glass));
        else
            Leave(
                text,
                "glass",
                "\"…\"",
                book.Settings.Bar is { Glasses.Count: > 0 } bar
                    ? $"the glass: {string.Join(", ", bar.Glasses.Keys.OrderBy(g => g, StringComparer.Ordinal))}"
                    : "the glass, by an id that bar.json gives under glasses");
        Leave(text, "garnish", "[ { \"item\": \"…\", \"amount\": \"1 piece\" } ]", "the garnish, if there is one: it can bring allergens");
        Declares(text, allergens);
        Property(text, "date", Quoted(book.On.ToString()));
        text.Append("  \"serves\": 1\n");
    }

    private void Prep(StringBuilder text, IReadOnlyList<string>? allergens)
    {
        Property(text, "name", Quoted(request.Name));
        Property(text, "family", Quoted(request.Family));
        Lines(text, "ingredients");
        Comment(text, "Usual for what is in it; write what the bar does. A step that matters for keeping says its temperature and time.");
        text.Append("  \"method\": [\n    { \"do\": \"stir\", \"until\": \"dissolved\" },\n    { \"do\": \"fine-strain\", \"into\": "
            + "\"bottle\" },\n    { \"do\": \"chill\", \"to\": \"4 °C\" }\n  ],\n");
        double grams = entries.Count > 0 && entries.TrueForAll(e => e.Doubt.Length == 0 && e.Amount is { Dimension: Dimension.Mass })
            ? entries.Sum(e => e.Amount!.Value.Base)
            : double.NaN;
        if (double.IsNaN(grams)) Leave(text, "yield", "\"… g\"", "what it makes, weighed");
        else Property(text, "yield", Quoted($"{Say.Number(grams, 1)} g"), "what goes in; weigh what comes out");
        Leave(
            text, "keep", "{ \"at\": \"4 °C\", \"in\": \"bottle, dated\", \"for\": \"… d\" }",
            "how and how long it is kept; check holds it against the rules of keeping");
        Declares(text, allergens);
        text.Append($"  \"date\": {Quoted(book.On.ToString())}\n");
    }

    private void Ingredient(StringBuilder text)
    {
        Property(text, "name", Quoted(request.Name));
        var like = entries.Count > 0 ? entries[0] : Understand(request.Name, new RecipeLineReader(book.NameResolver, book.Settings.Measures));
        if (like.Doubt.Length == 0 && like.Id.Length > 0 && like.Id != Id)
        {
            Property(text, "like", Quoted(like.Id));
            Leave(text, "strength", "\"… % v/v\"", "the strength on its label, where it differs from what it is like");
            Leave(text, "allergens", "{ \"contains\": [] }", "the allergens on its label or specification, where they differ", last: true);
        }
        else
        {
            Leave(
                text,
                "like",
                "\"…\"",
                like.Doubt.Length > 0
                    ? $"an entry of the catalogue that it is like ({like.Doubt})"
                    : "an entry of the catalogue that it is like: speclint find shows them");
            Leave(text, "kind", "\"…\"", "what it is: gin, syrup, juice …");
            Leave(
                text,
                "allergens",
                "{ \"contains\": [] }",
                "the allergens on its label or specification: until they are given, they count as not known",
                last: true);
        }

        text.Append($"  \"notes\": {Quoted("Written on " + book.On + ".")}\n");
    }

    private void Menu(StringBuilder text)
    {
        Property(text, "name", Quoted(request.Name));
        text.Append("  \"drinks\": [\n");
        var rows = new List<(string Row, string Remark)>();
        foreach (string line in request.Lines)
        {
            string said = line.Trim();
            int blank = said.IndexOf(' ');
            bool counted = blank > 0
                && int.TryParse(
                    said.Substring(0, blank), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture,
                    out _);
            string covers = counted ? $", \"covers\": {said.Substring(0, blank)}" : "";
            string slug = BuiltInCatalogue.Slug(counted ? said.Substring(blank) : said);
            var drink = book.Drinks.FirstOrDefault(d => d.Id == slug || BuiltInCatalogue.Slug(d.Name.Or("")) == slug);
            if (drink is not null) rows.Add(($"{{ \"drink\": \"{drink.Id}\"{covers} }}", ""));
            else rows.Add(("", Left($"{said}: no drink of the book is called that")));
        }

        Rows(text, rows);
        text.Append("  ]\n");
    }

    private void Stock(StringBuilder text)
    {
        Property(text, "on", Quoted(book.On.ToString()));
        if (entries.Count > 0)
            Comment(
                text,
                Left("the day made or opened of each lot (made, opened), and where it stands (at): without them it cannot be told how "
                    + "long it is good for"));
        text.Append("  \"lots\": [\n");
        Rows(
            text,
            [.. entries.Select(e => e.Doubt.Length > 0
                ? ("", Left($"{e.Said}: {e.Doubt}"))
                : ($"{{ \"item\": \"{e.Id}\"{(e.Written.Length > 0 ? $", \"amount\": {Quoted(e.Written)}" : "")} }}", ""))]);
        text.Append("  ]\n");
    }

    /// <summary>A line as somebody says it, read as any line of a written recipe is: what is not certain is not guessed.</summary>
    private Entry Understand(string line, RecipeLineReader reader)
    {
        var read = reader.Read(line);
        var meant = read.Item;
        if (read.ItemWritten.Length == 0) return new Entry(line, "", read.Quantity, read.Amount, "it names nothing");
        bool isClear = read.Certainty != Certainty.Unclear || (read.Amount.Length == 0 && meant.Piece.Length == 0);
        if (isClear && meant.Answer == NameAnswer.Resolved && book.Resolve(meant.Id) is { } item && item.File is not Book.Drink)
            return new Entry(line, item.Id, read.Quantity, read.Amount, "") { IsTop = read.Role == LineRole.Top };
        string perhaps = meant.Choices.Count > 0 ? $": {string.Join(", ", meant.Choices)}" : meant.Id.Length > 0 ? $": perhaps {meant.Id}" : "";
        string because = meant.Because.Length > 0
            ? meant.Because
            : meant.Answer == NameAnswer.NotKnown
                ? "neither the book nor the catalogue knows it"
                : read.Because.Length > 0 ? read.Because : "it is not clear which is meant";
        return new Entry(line, "", read.Quantity, read.Amount, because + perhaps);
    }

    private void Lines(StringBuilder text, string property)
    {
        text.Append($"  \"{property}\": [\n");
        var rows = new List<(string, string)>();
        foreach (var entry in entries)
        {
            if (entry.Doubt.Length > 0) rows.Add(("", Left($"{entry.Said}: {entry.Doubt}")));
            else if (entry.Written.Length == 0) rows.Add(("", Left($"{entry.Said} ({entry.Id}): how much?")));
            else
            {
                bool isTop = request.Kind == FileKind.Drink && (entry.IsTop || (IsFizzy(entry) && !entries.TrueForAll(IsFizzy)));
                string role = isTop ? ", \"role\": \"top\"" : "";
                rows.Add(($"{{ \"item\": \"{entry.Id}\", \"amount\": {Quoted(entry.Written)}{role} }}", ""));
            }
        }

        if (rows.Count == 0) rows.Add(("", Left("what goes in: { \"item\": \"…\", \"amount\": \"… ml\" }")));
        Rows(text, rows);
        text.Append("  ],\n");
    }

    private void Declares(StringBuilder text, IReadOnlyList<string>? allergens)
    {
        if (allergens is not null && IsUnderstood)
            text.Append($"  \"declares\": {{ \"allergens\": [{string.Join(", ", allergens.Select(Quoted))}] }},\n");
        else Leave(text, "declares", "{ \"allergens\": [ … ] }", "its allergens, once every line is clear and the labels are read");
    }

    private static void Rows(StringBuilder text, List<(string Row, string Remark)> rows)
    {
        int last = rows.FindLastIndex(r => r.Row.Length > 0);
        for (int i = 0; i < rows.Count; i++)
            text.Append(rows[i].Row.Length == 0 ? $"    // {OneLine(rows[i].Remark)}\n" : $"    {rows[i].Row}{(i < last ? "," : "")}\n");
    }

    private static void Property(StringBuilder text, string name, string value, string remark = "") =>
        text.Append($"  \"{name}\": {value},{(remark.Length > 0 ? " // " + OneLine(remark) : "")}\n");

    /// <summary>A property that is left open: a comment that shows how it is written.</summary>
    private void Leave(StringBuilder text, string name, string example, string what, bool last = false)
    {
        open.Add(what);
        text.Append($"  // \"{name}\": {example}{(last ? "" : ",")}  {OneLine(what)}\n");
    }

    private static void Comment(StringBuilder text, string remark) => text.Append($"  // {OneLine(remark)}\n");

    private string Left(string what)
    {
        open.Add(OneLine(what));
        return what;
    }

    private bool Shaken() =>
        entries.Exists(e => e.Id.Length > 0 && KindOf(e) is { IsJuice: true } or { IsAcid: true } or { IsEgg: true } or { IsDairy: true });

    private bool Sparkling() => entries.Exists(IsFizzy);

    private bool IsFizzy(Entry entry) =>
        entry.Id.Length > 0
            && (KindOf(entry) is { IsSparkling: true }
                || (profiles.MaterialOf(entry.Id)?.Ingredient is { } ingredient
                    && ingredient.Values.TryGetValue("carbonDioxide", out var gas)
                    && gas.Typical > 0));

    private ItemKind? KindOf(Entry entry) => profiles.MaterialOf(entry.Id)?.Kind;

    private static string KeyOf(FileKind kind) => kind == FileKind.Prep ? "prep" : kind.ToString().ToLowerInvariant();

    private static string OneLine(string text) =>
        string.Join(" ", text.Split(['\r', '\n', '\u2028', '\u2029', '\u0085'], StringSplitOptions.RemoveEmptyEntries));

    private static string Quoted(string text) =>
        "\"" + System.Text.Json.JsonEncodedText.Encode(text, System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";

    /// <summary>A line that was understood, or what is doubtful of it.</summary>
    private sealed record Entry(string Said, string Id, Quantity? Amount, string Written, string Doubt)
    {
        /// <summary>Whether it is said to top the drink.</summary>
        public bool IsTop { get; init; }
    }
}
