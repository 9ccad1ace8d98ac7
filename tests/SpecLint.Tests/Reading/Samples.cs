using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

/// <summary>The example files of the format's description, and short ways to read texts.</summary>
internal static class Samples
{
    public const string Drink = """
        // low-tide.drink.json
        {
          "$schema": "./schemas/drink.schema.json",
          "name": "Low Tide",
          "style": "shaken-sour",
          "ingredients": [
            { "item": "gin", "amount": "45 ml" },
            { "item": "sour-cucumber", "amount": "25 ml" },
            { "item": "honey-syrup-3-1", "amount": "15 ml" },
            { "item": "saline-20", "amount": "2 drops" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "small-coupe",
          "garnish": [ { "item": "dill", "amount": "1 sprig" } ],
          "serves": 1,
          "declares": { "allergens": [], "abv": "15 % v/v" }
        }
        """;

    public const string Prep = """
        // sour-cucumber.prep.json
        {
          "name": "Sour cucumber",
          "family": "acid-adjusted-juice",
          "ingredients": [
            { "item": "cucumber-juice", "amount": "440 g", "share": "92.6 % w/w" },
            { "item": "citric-acid", "amount": "25 g", "share": "5.3 % w/w" },
            { "item": "malic-acid", "amount": "10 g", "share": "2.1 % w/w" }
          ],
          "method": [ { "do": "stir", "until": "dissolved" }, { "do": "strain" } ],
          "yield": "475 g",
          "target": { "acid": "7 % w/w", "standsInFor": "lime-juice" },
          "measured": { "ph": 2.4, "brix": 8.9, "on": "2026-11-20" },
          "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" },
          "byProducts": [ { "id": "cucumber-pulp", "amount": "160 g" } ],
          "declares": { "allergens": [] }
        }
        """;

    public const string Menu = """
        // tonight.menu.json
        { "name": "Tonight", "drinks": [ { "drink": "low-tide", "words": "Gin, soured cucumber, honey", "covers": 30 } ] }
        """;

    public const string Stock = """
        // fridge.stock.json
        { "on": "2026-11-25", "lots": [
          { "item": "sour-cucumber", "made": "2026-11-24", "amount": "1.2 l", "at": "3 °C", "measured": { "ph": 2.4, "meter": "bar-meter" } } ] }
        """;

    public const string Bar = """
        // bar.json
        { "name": "The Saltmarsh Room", "jurisdictions": ["IE"],
          "measures": { "dash": "0.8 ml", "barspoon": "5 ml", "oz": "30 ml" },
          "tools": { "scale": "1 g", "jigger": "2.5 ml", "fridge": "4 °C", "freezer": "-18 °C",
                     "meters": { "bar-meter": { "ph": 0.05, "calibrated": "2026-11-25" } } },
          "glasses": { "small-coupe": { "brim": "150 ml", "washLine": "130 ml" } },
          "limits": { "alcoholPerServe": "24 g" },
          "costs": { "currency": "EUR", "mostPerServe": 2.4, "pricesHold": "180 d" },
          "rules": { "SL3004": "note" } }
        """;

    public const string Ingredient = """
        {
          "name": "Lime juice, fresh",
          "aliases": ["fresh lime juice", "lime, juice of"],
          "kind": "juice",
          "state": "liquid",
          "per": "100 g",
          "density": "1.035 g/ml",
          "ph": { "value": 2.35, "range": "2.2–2.5", "mark": "read", "source": "a table" },
          "titratableAcidity": "5.8 g",
          "water": "90 g",
          "sugars": { "glucose": "0.8 g", "fructose": "0.8 g" },
          "acids": { "citric": { "range": "4–5 g" }, "malic": "0.4 g" },
          "potassium": "110 mg",
          "yields": "28 ml",
          "allergens": { "contains": [], "exempt": [ { "allergen": "wheat", "in": ["EU", "GB"], "because": "distilled" } ] },
          "animal": "none",
          "life": { "opened": "3 d", "at": "4 °C" },
          "keepsCold": true,
          "mark": "memory",
          "source": "the notebook",
          "open": { "acids.tartaric": "not analysed" },
          "notes": ["squeezed", "strained"],
        }
        """;

    public const string Prices = """
        {
          // what the bar pays
          "$schema": "./schemas/prices.schema.json",
          "name": "Autumn prices",
          "on": "2026-10-01",
          "from": "Quay Drinks",
          "prices": [
            { "item": "fogbank-gin", "price": 24.9, "for": "700 ml" },
            { "item": "lime", "price": 18, "for": "60 pieces", "yield": "90–100 % w/w", "on": "2026-10-20", "from": "market", "note": "size 54" },
          ],
          "accept": [ { "rule": "SL9027", "because": "confirmed by telephone", "until": "2026-12-31" } ],
          "notes": "net",
        }
        """;

    public static string Of(FileKind kind) => kind switch
    {
        FileKind.Drink => Drink,
        FileKind.Prep => Prep,
        FileKind.Ingredient => Ingredient,
        FileKind.Menu => Menu,
        FileKind.Stock => Stock,
        FileKind.Prices => Prices,
        _ => Bar,
    };

    public static SourceFile File(string text, string path = "a.drink.json") => new(path, Encoding.UTF8.GetBytes(text));

    public static BookFile Read(FileKind kind, string text, Measures? measures = null) =>
        BookReader.Read(File(text, kind == FileKind.Bar ? "bar.json" : "sample" + FileKinds.EndingOf(kind)), kind, measures ?? Measures.Default);

    public static Drink ReadDrink(string text) => (Drink)Read(FileKind.Drink, text);

    public static (JsonTree Tree, List<ReadingProblem> Problems) Parse(string text) => Parse(Encoding.UTF8.GetBytes(text));

    public static (JsonTree Tree, List<ReadingProblem> Problems) Parse(byte[] bytes)
    {
        var problems = new List<ReadingProblem>();
        return (JsonTree.Parse(new SourceFile("a.drink.json", bytes), problems), problems);
    }

    public static string List(IEnumerable<ReadingProblem> problems) => string.Join("\n", problems.Select(p => $"{p.Kind} {p.Path}: {p.Message} {p.Advice}"));
}
