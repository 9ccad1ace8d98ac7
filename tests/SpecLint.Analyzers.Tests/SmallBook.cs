using System.Text;
using SpecLint.Reading;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers.Tests;

/// <summary>A book of three files, with mistakes behind accents and an emoji, and what the library finds in it.</summary>
internal static class SmallBook
{
    public const string Day = "2026-11-25";

    public const string Bar = """
        {
          "name": "The Saltmarsh Room",
          "jurisdictions": [ "IE" ]
        }
        """;

    /// <summary>Orange juice in place of lime: a sour without acid (a warning); a property that does not exist stands behind an emoji.</summary>
    public const string Drink = """
        {
          "name": "Café Brûlé 🍹", "colour": "réd",
          "style": "shaken-sour",
          "ingredients": [
            { "item": "gin", "amount": "60 ml" },
            { "item": "orange-juice", "amount": "22.5 ml" },
            { "item": "simple-syrup", "amount": "22.5 ml" }
          ],
          "method": [
            { "do": "shake", "ice": "cubed" },
            { "do": "fine-strain" }
          ],
          "declares": { "allergens": [] }
        }
        """;

    /// <summary>The same drink with lime juice, and nothing that is not known.</summary>
    public static readonly string BetterDrink = Drink.Replace("orange-juice", "lime-juice", StringComparison.Ordinal)
        .Replace(", \"colour\": \"réd\"", "", StringComparison.Ordinal);

    /// <summary>An item that nobody knows, in a folder below.</summary>
    public const string Prep = """
        {
          "name": "Dune syrup",
          "ingredients": [
            { "item": "dune-berries", "amount": "100 g" },
            { "item": "sugar", "amount": "100 g" },
            { "item": "water", "amount": "100 g" }
          ],
          "method": [ { "do": "stir" } ],
          "storage": { "at": "4 °C", "for": "5 days" }
        }
        """;

    public static readonly (string Path, string Text)[] Files =
    [
        ("bar.json", Bar),
        ("drinks/cafe-brule.drink.json", Drink),
        ("preps/dune-syrup.prep.json", Prep),
    ];

    /// <summary>Rule, path, line and column of each finding of the library, in order.</summary>
    public static List<(string Id, string Path, int Line, int Column, Level Level)> Expected(params (string Path, string Text)[] files) =>
        Expected([.. files.Select(f => (f.Path, Encoding.UTF8.GetBytes(f.Text)))]);

    public static List<(string Id, string Path, int Line, int Column, Level Level)> Expected(params (string Path, byte[] Bytes)[] files)
    {
        var input = new BookInput([.. files.Select(f => new SourceFile(f.Path, f.Bytes))], CalendarDate.Parse(Day)!.Value);
        var found = Checker.Check(input).Findings;
        return [.. found.Concat(found.SelectMany(f => f.Folded.Where(g => g.Level > f.Level)))
            .Select(f => (f.Rule.Id, f.Place.File.Path, f.Place.Start.Line, f.Place.Start.Column, f.Level)).OrderBy(f => f.ToString(), StringComparer.Ordinal)];
    }
}
