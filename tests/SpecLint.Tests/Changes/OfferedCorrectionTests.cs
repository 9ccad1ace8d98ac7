using System.Text;
using SpecLint.Findings;
using SpecLint.Live;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

/// <summary>What does not put its file right is not offered, by the check, to the editor or in a report: all read the findings.</summary>
public sealed class OfferedCorrectionTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""";

    private const string Drink = """
        {
          "name": "Low Tide",
          "ingredients": [
            { "item": "gin", "amount": "45 ml" },
            { "item": "simple-syrup", "amount": "20 ml" }
          ],
          "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" } ],
          "declares": { "allergens": [] }
        }
        """;

    [Theory]
    [InlineData("45 ml", "50 ml", 1)]
    [InlineData("45 ml", "450 ml", 0)]
    [InlineData("simple-syrup", "orgeat", 0)]
    [InlineData("simple-syrup", "simple-sirup-of-nowhere", 0)]
    [InlineData("Low Tide", "High Tide", 0)]
    public void What_brings_an_error_or_leaves_the_finding_is_not_offered(string from, string to, int offered)
    {
        var files = new[] { ("low-tide.drink.json", Drink), ("bar.json", Bar) };
        var input = Books.Input(files) with { HouseRules = [new Wants(from, to)] };
        Assert.Equal(offered, Assert.Single(Checker.Check(input).Findings.Flat(), f => f.Rule.Id == "HR3999").Corrections.Count);
        Assert.Equal(offered, Assert.Single(new LiveBook(input).Result().Findings.Flat(), f => f.Rule.Id == "HR3999").Corrections.Count);
    }

    /// <summary>Finds fault with a drink until its first part is 50 ml and above, or its second one another.</summary>
    private sealed class Wants(string from, string to) : DrinkRule
    {
        public override RuleInfo Info { get; } = new("HR3999", "house-wants", "The house wants it otherwise", Level.Warning);

        public override void Check(RecipeContext context, SpecLint.Book.Drink drink)
        {
            if (drink.Ingredients[0].Amount.Value.Base > 45 || drink.Ingredients[1].Item.Value != "simple-syrup") return;
            int at = context.File.Source.Utf8.Span.IndexOf(Encoding.UTF8.GetBytes(from));
            context.Report(new Finding(Info)
            {
                Message = "The house wants it otherwise.",
                Corrections = [new Correction(
                    CorrectionGrade.Proposed, "Write it so.",
                    [new TextEdit(context.At(new TextSpan(at, Encoding.UTF8.GetByteCount(from))), to)])],
            });
        }
    }
}
