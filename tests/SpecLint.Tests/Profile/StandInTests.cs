using System.Text;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>A stand-in is judged by the make-up of its acids, and the correction makes it hold.</summary>
public sealed class StandInTests
{
    private const string Path = "house-acid.prep.json";

    [Theory]
    [InlineData("lime-juice", """{ "item": "citric-acid", "amount": "20 g" }, { "item": "malic-acid", "amount": "40 g" }""")]
    [InlineData("lemon-juice", """{ "item": "malic-acid", "amount": "58 g" }""")]
    [InlineData("lime-juice", """{ "item": "tartaric-acid", "amount": "60 g" }""")]
    [InlineData("lemon-juice", """{ "item": "lactic-acid-powder", "amount": "70 g" }""")]
    public void Other_acids_are_found_and_solved_for(string model, string acids)
    {
        string text = Text(model, acids);
        var finding = Assert.Single(Check(text), f => f.Rule.Id == "SL4021");
        var correction = Assert.Single(finding.Corrections);
        byte[] corrected = TextEdits.Apply(Books.File(Path, text), correction.Edits);
        Assert.DoesNotContain(Check(Encoding.UTF8.GetString(corrected)), f => f.Rule.Id is "SL4021" or "SL4008");
    }

    [Theory]
    [InlineData("lime-juice", """{ "item": "citric-acid", "amount": "40 g" }, { "item": "malic-acid", "amount": "20 g" }""")]
    [InlineData("lime-juice", """{ "item": "citric-acid", "amount": "60 g" }""")]
    [InlineData("lemon-juice", """{ "item": "citric-acid", "amount": "56 g" }, { "item": "malic-acid", "amount": "2 g" }""")]
    public void Usual_make_up_is_silent(string model, string acids) =>
        Assert.DoesNotContain(Check(Text(model, acids)), f => f.Rule.Id == "SL4021");

    private static IEnumerable<Finding> Check(string text) => Books.Check((Path, text)).Findings.SelectMany(f => f.Folded.Prepend(f));

    private static string Text(string model, string acids) => $$"""
        {
          "name": "House acid", "family": "acid-solution",
          "ingredients": [ { "item": "water", "amount": "940 g" }, {{acids}} ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "1000 g",
          "target": { "standsInFor": "{{model}}" },
          "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" }, "declares": { "allergens": [] }
        }
        """;
}
