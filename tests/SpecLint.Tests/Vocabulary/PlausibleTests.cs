using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Vocabulary;

/// <summary>The tables of plausible numbers, and what the rules say from them.</summary>
public sealed class PlausibleTests
{
    [Fact]
    public void Rows_name_verbs_of_the_table_by_id() =>
        Assert.Equal([], PlausibleTable.VerbWords.Where(w => Verb.All.All(v => v.Id != w)));

    [Theory]
    [InlineData("toast", "350 °C", "350 °F")]
    [InlineData("pasteurise", "161 °C", "161 °F")]
    [InlineData("dry", "135 °C", "135 °F")]
    [InlineData("heat", "180 °C", "180 °F")]
    [InlineData("carbonate", "36 °C", "36 °F")]
    [InlineData("boil", "212 °C", "212 °F")]
    [InlineData("heat", "72 °F", null)]
    public void Fahrenheit_typed_as_celsius_is_offered_as_such(string verb, string at, string? meant)
    {
        var found = Check($$"""{ "do": "{{verb}}", "at": "{{at}}" }""").Where(f => f.Rule.Id == "SL2033").ToList();
        if (meant is null)
        {
            Assert.Empty(found);
            return;
        }

        Assert.Equal($"\"{meant}\"", Assert.Single(Assert.Single(found).Corrections).Edits[0].NewText);
    }

    [Theory]
    [InlineData("boil", "108 °C")]
    [InlineData("toast", "180 °C")]
    [InlineData("pasteurise", "72 °C")]
    [InlineData("dry", "57 °C")]
    [InlineData("cold-brew", "4 °C")]
    [InlineData("freeze", "-18 °C")]
    public void Usual_temperatures_are_silent(string verb, string at) =>
        Assert.DoesNotContain(Check($$"""{ "do": "{{verb}}", "at": "{{at}}" }"""), f => f.Rule.Id == "SL2033");

    [Fact]
    public void Sugar_that_browns_may_be_as_hot_as_caramel() =>
        Assert.DoesNotContain(Check("""{ "do": "heat", "to": "165 °C", "until": "an amber caramel" }"""), f => f.Rule.Id == "SL2033");

    [Fact]
    public void A_reduction_to_a_temperature_that_does_not_tell_is_not_closed() =>
        Assert.Contains(Check("""{ "do": "reduce", "to": "60 °C" }"""), f => f.Rule.Id == "SL4012");

    private static IEnumerable<Finding> Check(string step)
    {
        var result = Books.Check(("bay-syrup.prep.json", $$"""
            {
              "name": "Bay syrup", "family": "syrup",
              "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ],
              "method": [ {{step}} ],
              "keep": { "at": "4 °C", "in": "bottle", "for": "14 d" }, "declares": { "allergens": [] }
            }
            """));
        return result.Findings.SelectMany(f => f.Folded.Prepend(f));
    }
}
