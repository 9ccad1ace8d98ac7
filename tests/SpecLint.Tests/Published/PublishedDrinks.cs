using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.RecipeText;
using SpecLint.Tests.Support;
using SpecLint.Tests.Text;

namespace SpecLint.Tests.Published;

/// <summary>
/// The drinks of published lists as a book, made of their lines alone: no style and no glass is given to them. The lists say
/// nothing of the method either; it is what the lines ask for in any bar (see <see cref="Method"/>).
/// </summary>
internal static class PublishedDrinks
{
    /// <summary>The bar's file, which sizes what lists leave to the house.</summary>
    public static SourceFile Bar { get; } = Books.File("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "measures": { "oz": "30 ml", "dash": "0.8 ml", "tsp": "5 ml", "splash": "10 ml", "drop": "0.05 ml" } }""");

    private static readonly RecipeLineReader Reader = new(new NameResolver(), Measures.Default);

    /// <summary>The drinks of which every line is understood: its amount is written, its item is known or one of a few that are named.</summary>
    public static IReadOnlyList<SourceFile> Files { get; } = Declared(Write());

    /// <summary>One book a list: what one list calls by a name, another may make otherwise.</summary>
    public static IReadOnlyList<BookInput> Lists { get; } = [.. Files.GroupBy(f => ListOf(f.Path[..f.Path.IndexOf('.', StringComparison.Ordinal)])).Select(g => new BookInput([Bar, .. g], Books.On))];

    /// <summary>The list that a drink is of, by its id.</summary>
    public static string ListOf(string id) => id[..id.LastIndexOf("-of-", StringComparison.Ordinal)] is var name && id.Length > name.Length ? id[(name.Length + 4)..] : "";

    private static List<(string Id, string List, string Name, List<Line> Lines)> Write()
    {
        var drinks = new List<(string, string, string, List<Line>)>();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var drink in PublishedLines.All.GroupBy(l => (l.List, l.Drink)))
        {
            var lines = drink.Select(l => Understood(l.Line)).ToList();
            if (lines.Contains(null)) continue;
            var parts = lines.Where(l => l!.Item != "ice").Select(l => l!).ToList();
            if (parts.Count(l => !l.Garnish) < 2 || parts.GroupBy(l => l.Item).Any(g => g.Count() > 1)) continue;
            string id = $"{BuiltInCatalogue.Slug(drink.Key.Drink)}-of-{drink.Key.List}";
            if (ids.Add(id)) drinks.Add((id, drink.Key.List, drink.Key.Drink, parts));
        }

        return drinks;
    }

    /// <summary>A line with an amount and an item; <see langword="null"/> where the list leaves one of them open.</summary>
    private static Line? Understood(string written)
    {
        // "1/4 oz each gin, rum" is several lines in one.
        if (written.Contains(" each ", StringComparison.OrdinalIgnoreCase)) return null;
        var line = Reader.Read(written);
        if (line.Kind != WrittenLineKind.Ingredient) return null;
        string item = line.Item.Answer is NameAnswer.Unclear ? (line.Item.Choices is [var first, ..] ? first : "") : line.Item.Id;
        if (item.Length == 0 || BuiltInCatalogue.Find(item) is not { } entry) return null;
        var kind = entry.IngredientKind.Or(ItemKind.None);
        bool sparkles = entry.Values.ContainsKey("carbonDioxide") || kind.Id is "soda" or "sparkling-wine" or "tonic";
        bool garnish = line.Role == LineRole.Garnish || line.Quantity is null && (kind.IsBotanical || kind.ComesInPieces || kind.MayComeInPieces);
        if (item.Contains("ice", StringComparison.Ordinal) && kind.Id == "ice") return new Line("ice", "", false, false);
        string amount = line.Amount;
        bool top = line.Role == LineRole.Top || (sparkles && line.Quantity is null);
        if (top && line.Quantity is null) amount = "top";
        if (amount.Length == 0 && garnish) amount = kind.Id == "spice" ? "1 pinch" : "1 piece";
        return amount.Length == 0 || line.Quantity is { Unit.Name: "part" } ? null : new Line(item, amount, top || sparkles, garnish);
    }

    /// <summary>What a bar does with such lines: what is cloudy or thick is shaken, what is clear is stirred, what sparkles goes on top of what is built.</summary>
    private static string[] Method(List<Line> lines)
    {
        bool shaken = lines.Exists(l => !l.Garnish && BuiltInCatalogue.Find(l.Item)!.IngredientKind.Or(ItemKind.None).Id is "juice" or "egg" or "dairy" or "plant-milk" or "puree" or "sugar" or "fruit");
        bool topped = lines.Exists(l => l.Top);
        if (shaken) return topped ? ["""{ "do": "shake", "ice": "cubed" }""", """{ "do": "strain", "ice": "cubed", "into": "glass" }""", """{ "do": "top" }"""] : ["""{ "do": "shake", "ice": "cubed" }""", """{ "do": "strain", "into": "glass" }"""];
        return topped ? ["""{ "do": "build", "ice": "cubed", "into": "glass" }""", """{ "do": "top" }"""] : ["""{ "do": "stir", "ice": "cubed" }""", """{ "do": "strain", "into": "glass" }"""];
    }

    /// <summary>With what a bar owes its guests and a list does not give: the allergens that the parts bring, and a word where there is raw egg.</summary>
    private static List<SourceFile> Declared(List<(string Id, string List, string Name, List<Line> Lines)> drinks)
    {
        var (book, profiles) = Checker.Profile(new BookInput([Bar, .. drinks.Select(d => File(d, []))], Books.On));
        var allergens = book.Drinks.ToDictionary(d => d.Id, d => profiles.Of(d).Allergens.Contained(book.Settings), StringComparer.Ordinal);
        return drinks.ConvertAll(d => File(d, allergens[d.Id]));
    }

    private static SourceFile File((string Id, string List, string Name, List<Line> Lines) drink, IReadOnlyList<string> allergens)
    {
        var text = new StringBuilder("{\n").Append("  \"name\": ").Append(Quoted(drink.Name)).Append(",\n  \"ingredients\": [\n");
        text.AppendJoin(",\n", drink.Lines.Where(l => !l.Garnish).Select(Written)).Append("\n  ],\n  \"method\": [\n    ");
        text.AppendJoin(",\n    ", Method(drink.Lines)).Append("\n  ],\n");
        if (drink.Lines.Exists(l => l.Garnish)) text.Append("  \"garnish\": [\n").AppendJoin(",\n", drink.Lines.Where(l => l.Garnish).Select(Written)).Append("\n  ],\n");
        bool rawEgg = drink.Lines.Exists(l => l.Item is "egg-white" or "egg-yolk" or "whole-egg");
        text.Append("  \"source\": ").Append(Quoted(drink.List)).Append(",\n  \"declares\": { \"allergens\": [").AppendJoin(", ", allergens.Select(Quoted)).Append(']');
        return Books.File(drink.Id + ".drink.json", text.Append(rawEgg ? ", \"advisory\": [\"Contains raw egg.\"] }\n}\n" : " }\n}\n").ToString());
    }

    private static string Written(Line line) => $"    {{ \"item\": {Quoted(line.Item)}, \"amount\": {Quoted(line.Amount)}{(line.Top && !line.Garnish ? ", \"role\": \"top\"" : "")} }}";

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";

    private sealed record Line(string Item, string Amount, bool Top, bool Garnish);
}
