using System.Globalization;
using System.Text;
using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.OfficialDrinks;

/// <summary>A drink of the official list, as the project's own table of facts has it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Style">The style that fits it; empty where none does.</param>
/// <param name="Method">How it is made, in a word.</param>
/// <param name="Glass">Kind of glass; empty where the list names none.</param>
internal sealed record OfficialDrink(string Name, string Style, string Method, string Glass)
{
    /// <summary>Item, amount and role of each line.</summary>
    public List<(string Item, string Amount, string Role)> Lines { get; } = [];

    /// <summary>The id of its file.</summary>
    public string Id => Catalogue.BuiltInCatalogue.Slug(Name);
}

/// <summary>
/// Turns the table of official drinks into a book. Source: official list of the International Bartenders Association (2025),
/// names and amounts only.
/// </summary>
internal static class OfficialBook
{
    private const string BarFile = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""";

    private static readonly Dictionary<string, string[]> Methods = new(StringComparer.Ordinal)
    {
        ["shaken"] = ["""{ "do": "shake", "ice": "cubed" }""", """{ "do": "strain", "into": "glass" }"""],
        ["shaken-iced"] = ["""{ "do": "shake", "ice": "cubed" }""", """{ "do": "strain", "ice": "cubed", "into": "glass" }"""],
        ["shaken-crushed"] = ["""{ "do": "shake", "ice": "cubed" }""", """{ "do": "strain", "ice": "crushed", "into": "glass" }"""],
        ["stirred"] = ["""{ "do": "stir", "ice": "cubed" }""", """{ "do": "strain", "into": "glass" }"""],
        ["built"] = ["""{ "do": "build", "ice": "cubed", "into": "glass" }"""],
        ["muddled"] = ["""{ "do": "muddle" }""", """{ "do": "build", "ice": "cubed", "into": "glass" }"""],
        ["cold"] = ["""{ "do": "pour", "into": "glass" }"""],
        ["blended"] = ["""{ "do": "blend", "ice": "crushed" }""", """{ "do": "pour", "into": "glass" }"""],
        ["hot"] = ["""{ "do": "pour", "at": "70 °C", "into": "glass" }"""],
    };

    /// <summary>The drinks of the table.</summary>
    public static IReadOnlyList<OfficialDrink> Drinks { get; } = Read();

    /// <summary>
    /// The book, with what a bar owes its guests and the list does not give: the allergens that the parts bring, and a word
    /// where there is raw egg.
    /// </summary>
    public static BookInput Input { get; } = Build(advise: true);

    /// <summary>The book as the list has it but for the allergens: nothing is said of raw egg.</summary>
    public static BookInput WithoutAdvice => Build(advise: false);

    /// <summary>The book with the style of every drink left out.</summary>
    public static BookInput WithoutStyles => Build(advise: true, styled: false);

    /// <summary>One check of the book, shared by the tests.</summary>
    public static Lazy<CheckResult> Checked { get; } = new(() => Checker.Check(Input));

    private static BookInput Build(bool advise, bool styled = true)
    {
        var (book, profiles) = Checker.Profile(new BookInput(Files(null, advise: false, styled), Books.On));
        var allergens = book.Drinks.ToDictionary(d => d.Id, d => profiles.Of(d).Allergens.Contained(book.Settings), StringComparer.Ordinal);
        return new BookInput(Files(allergens, advise, styled), Books.On);
    }

    private static List<SourceFile> Files(Dictionary<string, FixedList<string>>? allergens, bool advise, bool styled)
    {
        var files = new List<SourceFile> { Books.File("bar.json", BarFile) };
        foreach (var drink in Drinks)
            files.Add(Books.File($"{drink.Id}.drink.json", Json(drink, allergens is null ? [] : allergens[drink.Id], advise, styled)));
        return files;
    }

    private static string Json(OfficialDrink drink, IReadOnlyList<string> allergens, bool advise, bool styled)
    {
        var text = new StringBuilder();
        text.Append("{\n  \"name\": ").Append(Quoted(drink.Name)).Append(",\n");
        if (styled && drink.Style.Length > 0) text.Append("  \"style\": ").Append(Quoted(drink.Style)).Append(",\n");
        text.Append("  \"ingredients\": [\n");
        for (int i = 0; i < drink.Lines.Count; i++)
        {
            var (item, amount, role) = drink.Lines[i];
            text.Append("    { \"item\": ").Append(Quoted(item)).Append(", \"amount\": ").Append(Quoted(amount));
            if (role.Length > 0) text.Append(", \"role\": ").Append(Quoted(role));
            text.Append(i < drink.Lines.Count - 1 ? " },\n" : " }\n");
        }

        text.Append("  ],\n  \"method\": [\n    ").Append(string.Join(",\n    ", Steps(drink))).Append("\n  ],\n");
        if (drink.Glass.Length > 0) text.Append("  \"glass\": ").Append(Quoted(drink.Glass)).Append(",\n");
        text.Append("  \"source\": \"International Bartenders Association, official list, 2025\",\n");
        text.Append(
            CultureInfo.InvariantCulture,
            $"  \"declares\": {{ \"allergens\": "
                + $"[{string.Join(", ", allergens.Select(Quoted))}]{(advise && HoldsRawEgg(drink) ? ", \"advisory\": [\"Contains raw egg.\"]" : "")} }}\n}}\n");
        return text.ToString();
    }

    private static bool HoldsRawEgg(OfficialDrink drink) => drink.Lines.Any(l => l.Item is "egg-white" or "egg-yolk" or "whole-egg");

    private static IEnumerable<string> Steps(OfficialDrink drink)
    {
        foreach (string step in Methods[drink.Method]) yield return step;
        if (drink.Lines.Any(l => l.Role == "top")) yield return """{ "do": "top" }""";
        if (drink.Lines.Any(l => l.Role == "float")) yield return """{ "do": "float" }""";
    }

    private static string Quoted(string text) =>
        "\"" + JsonEncodedText.Encode(text, System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";

    private static List<OfficialDrink> Read()
    {
        var drinks = new List<OfficialDrink>();
        var byName = new Dictionary<string, OfficialDrink>(StringComparer.Ordinal);
        bool lines = false;
        foreach (string row in File.ReadLines(Repository.At("tests", "SpecLint.Tests", "OfficialDrinks", "drinks.csv")))
        {
            if (row.Length == 0 || row[0] == '#') continue;
            string[] cells = row.Split(',');
            if (cells[0] == "drink")
            {
                lines = cells[1] == "item";
                continue;
            }

            if (lines)
            {
                byName[cells[0]].Lines.Add((cells[1], cells[2], cells[3]));
            }
            else
            {
                var drink = new OfficialDrink(cells[0], cells[1], cells[2], cells[3]);
                drinks.Add(drink);
                byName.Add(drink.Name, drink);
            }
        }

        return drinks;
    }
}
