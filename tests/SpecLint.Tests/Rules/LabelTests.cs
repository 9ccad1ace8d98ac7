using System.Text;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tests.Demo;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Allergens and words: facts of the trade and of the law.</summary>
public sealed class LabelTests
{
    private const string CeleryLeaf = """
        { "name": "Marsh Sour",
          "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "25 ml" }, { "item": "simple-syrup", "amount": "20 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ],
          "garnish": [ { "item": "celery-leaf-garnish", "amount": "1 piece" } ],
          "declares": { "allergens": [] } }
        """;

    /// <summary>A celery leaf as garnish is an allergen in the EU and GB and is not on the list of the US (common practice, no source).</summary>
    [Theory]
    [InlineData("EU", 1)]
    [InlineData("IE", 1)]
    [InlineData("GB", 1)]
    [InlineData("US", 0)]
    [InlineData("CA", 0)]
    [InlineData("AU", 0)]
    public void A_celery_leaf_counts_where_the_law_lists_celery(string jurisdiction, int expected)
    {
        var result = Check(jurisdiction, ("marsh-sour.drink.json", CeleryLeaf));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7001"));
        var profile = result.Profiles.Of(result.Book.Drinks[0]);
        Assert.Contains(profile.Allergens.DeclarableIn("EU"), f => f.Token == "celery");
        Assert.DoesNotContain(profile.Allergens.DeclarableIn("US"), f => f.Token == "celery");
    }

    /// <summary>What washes a spirit is strained out, and stays an allergen of it (Regulation (EU) 1169/2011, Annex II exempts distillates alone).</summary>
    [Fact]
    public void A_wash_carries_its_allergen_into_every_drink_above()
    {
        var result = Check(
            "IE",
            ("washed-rum.prep.json", """
                { "name": "Washed rum", "family": "fat-wash",
                  "ingredients": [ { "item": "aged-rum", "amount": "700 ml" }, { "item": "butter", "amount": "100 g", "role": "wash" } ],
                  "method": [ { "do": "rest", "at": "-18 °C", "for": "12 h" }, { "do": "filter" } ],
                  "yield": "680 ml", "declares": { "allergens": ["milk"] } }
                """),
            ("wrack.drink.json", """
                { "name": "Wrack",
                  "ingredients": [ { "item": "washed-rum", "amount": "60 ml" }, { "item": "demerara-syrup", "amount": "7.5 ml" } ],
                  "method": [ { "do": "stir", "ice": "cubed" }, { "do": "strain" } ],
                  "declares": { "allergens": [] } }
                """));
        var finding = Assert.Single(result.Findings, f => f.Rule.Id == "SL7001");
        Assert.Equal("wrack", finding.Subject);
        Assert.Equal("milk", finding.Key);
        Assert.Contains("butter", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Spirits distilled from cereals are exempt in the EU (Regulation (EU) 1169/2011, Annex II, 1(d)); beer is not.</summary>
    [Fact]
    public void A_distillate_of_grain_is_exempt_and_beer_is_not()
    {
        var result = Check(
            "IE",
            ("malt.drink.json", """{ "name": "Malt", "ingredients": [ { "item": "scotch-single-malt", "amount": "50 ml" } ], "declares": { "allergens": [] } }"""),
            ("ale.drink.json", """{ "name": "Ale", "ingredients": [ { "item": "pale-ale", "amount": "300 ml" } ], "declares": { "allergens": [] } }"""));
        Assert.Equal("ale", Assert.Single(result.Findings, f => f.Rule.Id == "SL7001").Subject);
    }

    /// <summary>
    /// Sulphites are named over 10 mg/kg (Regulation (EU) 1169/2011, Annex II, 12): a splash of wine is not shown, a pinch of
    /// metabisulphite is over.
    /// </summary>
    [Theory]
    [InlineData("potassium-metabisulphite", "0.5 g", Answer.Broken)]
    [InlineData("dry-white-wine", "10 ml", Answer.NotShown)]
    public void Sulphites_are_held_against_their_threshold(string item, string amount, Answer expected)
    {
        var result = Check("IE", ("salt.drink.json", $$"""
            { "name": "Salt",
              "ingredients": [ { "item": "{{item}}", "amount": "{{amount}}" }, { "item": "soda-water", "amount": "100 ml" } ],
              "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [] } }
            """));
        var finding = Assert.Single(result.Findings, f => f.Rule.Id == "SL7001");
        Assert.Equal(expected, finding.Answer);
        Assert.Equal(expected == Answer.Broken ? Level.Error : Level.Warning, finding.Level);
    }

    /// <summary>Each correction of an allergen leaves a file that reads as before but for the declared word, and the finding goes.</summary>
    [Theory]
    [InlineData("[]")]
    [InlineData("[ ]")]
    [InlineData("[\"milk\"]")]
    [InlineData("[\n    \"milk\",\n    \"egg\"\n  ]")]
    public void The_correction_declares_the_allergen_and_nothing_else(string list)
    {
        string text = CeleryLeaf.Replace("\"allergens\": []", "\"allergens\": " + list, StringComparison.Ordinal);
        var finding = Assert.Single(Check("IE", ("marsh-sour.drink.json", text)).Findings, f => f.Rule.Id == "SL7001");
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        var edit = Assert.Single(Assert.Single(finding.Corrections).Edits);
        string after = Encoding.UTF8.GetString(bytes, 0, edit.Place.Span.Start) + edit.NewText + Encoding.UTF8.GetString(
            bytes, edit.Place.Span.End, bytes.Length - edit.Place.Span.End);
        var again = Check("IE", ("marsh-sour.drink.json", after));
        Assert.DoesNotContain(again.Findings, f => f.Rule.Id is "SL7001" || f.Rule.Id.StartsWith("SL1", StringComparison.Ordinal));
        Assert.Contains("celery", again.Book.Drinks[0].Declares!.Allergens.Value.Select(w => w.Value));
    }

    /// <summary>Of the demo book these two families find what is planted for them, and nothing on a file where nothing is planted.</summary>
    [Fact]
    public void In_the_demo_book_only_what_is_planted_is_found()
    {
        var files = DemoBook.FileNames.Select(name => new SourceFile(name, Encoding.UTF8.GetBytes(DemoBook.Read(name)))).ToList();
        var result = Checker.Check(new BookInput(files, Books.On));
        var found = result.Findings.SelectMany(f => f.Folded.Prepend(f)).Where(f => f.Rule.Id[2] is '7' or '9').ToList();
        var planted = DemoBook.Expected.Select(e => e.File).ToHashSet(StringComparer.Ordinal);
        Assert.Equal([], found.Where(f => !planted.Contains(f.Place.File.Path)).Select(f => $"{f.Place.File.Path} {f.Rule.Id} {f.Message}"));
        Assert.Equal(
            [],
            DemoBook.Expected.Where(e => e.Family is 7 or 9
                && !found.Any(f => f.Place.File.Path == e.File && f.Rule.Id[2] - '0' == e.Family))
                .Select(e => e.File));
    }

    private static CheckResult Check(string jurisdiction, params (string Path, string Text)[] files) =>
        Books.Check([.. files, ("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{jurisdiction}}"] }""")]);
}
