using System.Text;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>What a drink outside its bands is told: one finding, with a correction that brings all of it in.</summary>
public sealed class BandTests
{
    private const string File = "low-tide.drink.json";
    private static readonly string[] Bands = ["SL3001", "SL3002", "SL3003", "SL3004"];

    [Theory]
    [InlineData("60 ml", "60 ml", "60 ml")]
    [InlineData("30 ml", "45 ml", "45 ml")]
    [InlineData("90 ml", "12 ml", "10 ml")]
    public void Two_bands_broken_are_one_finding_whose_correction_mends_both(string gin, string lemon, string syrup)
    {
        string text = Sour(gin, lemon, syrup);
        var finding = Assert.Single(Check(text), f => Bands.Contains(f.Rule.Id) && f.Level >= Level.Warning);
        var correction = Assert.Single(finding.Corrections);
        string mended = Encoding.UTF8.GetString(TextEdits.Apply(Books.File(File, text), correction.Edits));
        Assert.DoesNotContain(Check(mended), f => Bands.Contains(f.Rule.Id) && f.Level >= Level.Warning);
    }

    [Fact]
    public void A_correction_never_halves_a_part_below_half()
    {
        var finding = Assert.Single(Check(Sour("60 ml", "90 ml", "22.5 ml")), f => Bands.Contains(f.Rule.Id) && f.Level >= Level.Warning);
        foreach (var edit in finding.Corrections.SelectMany(c => c.Edits))
            Assert.DoesNotContain(edit.NewText, new[] { "\"7.5 ml\"", "\"10 ml\"", "\"12.5 ml\"" });
    }

    [Fact]
    public void Five_millilitres_of_white_are_egg_in_an_egg_white_sour() =>
        Assert.DoesNotContain(
            Check(Sour("60 ml", "25 ml", "20 ml", "egg-white-sour", """, { "item": "egg-white", "amount": "5 ml" }""")),
            f => f.Rule.Id == "SL3010");

    [Fact]
    public void What_is_built_stirred_and_strained_is_stirred()
    {
        var result = Books.Check(("redshank.drink.json", """
            { "name": "Redshank", "glass": "coupe", "ingredients": [ { "item": "gin", "amount": "60 ml" }, { "item": "dry-vermouth", "amount": "20 ml" } ],
              "method": [ { "do": "build", "ice": "cubed" }, { "do": "stir" }, { "do": "strain" } ] }
            """));
        Assert.Equal(TechniqueKind.Stirred, result.Profiles.Of(result.Book.Drinks[0]).Technique);
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id == "SL8028");
    }

    [Theory]
    [InlineData("US", Level.Note)]
    [InlineData("IE", Level.Warning)]
    public void Sulphites_of_a_poured_drink_are_a_note_where_only_labels_name_them(string country, Level level)
    {
        var result = Books.Check(
            ("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{country}}"] }"""),
            ("redshank.drink.json", """{ "name": "Redshank", "ingredients": [ { "item": "dry-vermouth", "amount": "60 ml" } ], "method": [ { "do": "pour" } ], "declares": { "allergens": [] } }"""));
        Assert.Equal(level, Assert.Single(result.Findings, f => f.Rule.Id == "SL7001").Level);
    }

    [Fact]
    public void A_long_drink_without_spirit_is_not_told_to_take_more_of_it()
    {
        var result = Books.Check(("ebb.drink.json", """
            { "name": "Ebb", "style": "highball", "ingredients": [ { "item": "lime-juice", "amount": "20 ml" }, { "item": "simple-syrup", "amount": "20 ml" }, { "item": "soda-water", "amount": "120 ml", "role": "top" } ],
              "method": [ { "do": "build", "ice": "cubed" }, { "do": "top" } ], "declares": { "allergens": [] } }
            """));
        var finding = Assert.Single(result.Findings, f => f.Rule.Id == "SL3001");
        Assert.Equal(Level.Note, finding.Level);
        Assert.DoesNotContain("more spirit", finding.Advice, StringComparison.Ordinal);
    }

    private static IEnumerable<Finding> Check(string text) => Books.Check((File, text)).Findings.SelectMany(f => f.Folded.Prepend(f));

    private static string Sour(string gin, string lemon, string syrup, string style = "shaken-sour", string more = "") => $$"""
        {
          "name": "Low Tide", "style": "{{style}}",
          "ingredients": [ { "item": "gin", "amount": "{{gin}}" }, { "item": "lemon-juice", "amount": "{{lemon}}" }, { "item": "simple-syrup", "amount": "{{syrup}}" }{{more}} ],
          "method": [ { "do": "shake", "ice": "cubed" }, { "do": "fine-strain" } ], "declares": { "allergens": [] }
        }
        """;
}
