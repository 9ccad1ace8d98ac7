using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>A book of a few files in which everything that can be named is named.</summary>
internal static class SmallBar
{
    public const string Bar = """
        { "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "meters": { "bench": { "ph": 0.05 } } },
          "glasses": { "tide-glass": { "brim": "150 ml" } }, "limits": { "alcoholPerServe": "24 g" }, "rules": { "SL3004": "note" } }
        """;

    public const string Drink = """
        {
          "name": "Mudflat",
          "style": "shaken-sour",
          "ingredients": [
            { "item": "gin", "amount": "45 ml" },
            { "item": "tide-cordial", "amount": "25 ml" },
            { "item": "lime-juice", "amount": "25 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "tide-glass",
          "declares": { "allergens": [] }
        }
        """;

    public const string Cordial = """
        {
          "name": "Tide cordial",
          "family": "cordial",
          "ingredients": [
            { "item": "lime-juice", "amount": "400 g" },
            { "item": "white-sugar", "amount": "400 g" } // from the back bar
          ],
          "method": [ { "do": "stir", "until": "dissolved" }, { "do": "strain" } ],
          "yield": "790 g",
          "measured": { "ph": 2.6, "on": "2026-11-20", "meter": "bench" },
          "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" },
          "byProducts": [ { "id": "tide-pulp", "amount": "10 g" } ],
          "declares": { "allergens": [] }
        }
        """;

    public const string Menu = """
        { "name": "Tonight", "drinks": [ { "drink": "mudflat", "words": "Gin, lime cordial", "covers": 10 } ] }
        """;

    public const string Stock = """
        { "on": "2026-11-25", "lots": [ { "item": "tide-cordial", "made": "2026-11-24", "amount": "600 ml", "at": "3 °C", "lot": "TC-1" } ] }
        """;

    public static TestFolder Make()
    {
        var folder = new TestFolder();
        folder.Write("bar.json", Bar);
        folder.Write("mudflat.drink.json", Drink);
        folder.Write("tide-cordial.prep.json", Cordial);
        folder.Write("tonight.menu.json", Menu);
        folder.Write("fridge.stock.json", Stock);
        return folder;
    }
}
