using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Corrections of slips are tried in order: the unit, a factor of ten, of a hundred; and only what holds is offered.</summary>
public sealed class SlipTests
{
    [Theory]
    [InlineData("60 oz", "60 ml")]
    [InlineData("45 cl", "45 ml")]
    [InlineData("450 ml", "45 ml")]
    public void A_pour_far_too_large_is_read_as_another_unit_first(string amount, string meant)
    {
        var result = Books.Check(("low-tide.drink.json", $$"""
            { "name": "Low Tide", "ingredients": [ { "item": "gin", "amount": "{{amount}}" }, { "item": "lemon-juice", "amount": "25 ml" }, { "item": "simple-syrup", "amount": "20 ml" } ],
              "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ], "declares": { "allergens": [] } }
            """));
        Assert.Equal($"\"{meant}\"", Assert.Single(Flat(result), f => f.Rule.Id == "SL2007").Corrections[0].Edits[0].NewText);
    }

    [Theory]
    [InlineData("1 g", "1 kg", "1 kg")]
    [InlineData("100 g", "1000 g", "1000 g")]
    [InlineData("1000 g", "1 g", "1 kg")]
    public void A_syrup_off_its_name_by_a_slip_gets_the_slip_back(string sugar, string water, string meant)
    {
        var result = Books.Check(("plain-syrup.prep.json", $$"""
            { "name": "Plain syrup 1:1", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "{{sugar}}" }, { "item": "water", "amount": "{{water}}" } ],
              "method": [ { "do": "stir", "until": "dissolved" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "14 d" }, "declares": { "allergens": [] } }
            """));
        Assert.Equal($"\"{meant}\"", Assert.Single(Flat(result), f => f.Rule.Id == "SL4015").Corrections[0].Edits[0].NewText);
    }

    private static IEnumerable<Finding> Flat(CheckResult result) => result.Findings.SelectMany(f => f.Folded.Prepend(f));
}
