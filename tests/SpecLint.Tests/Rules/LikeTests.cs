using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>What an ingredient is like: what is not an ingredient makes it unknown, never empty.</summary>
public sealed class LikeTests
{
    private const string House = """
        { "name": "House orgeat", "family": "syrup", "ingredients": [ { "item": "orgeat", "amount": "100 ml" } ], "method": [ { "do": "stir" } ] }
        """;

    private const string Drink = """
        {
          "name": "Low Tide",
          "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "25 ml" }, { "item": "shore-syrup", "amount": "20 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ]
        }
        """;

    [Theory]
    [InlineData("house-orgeat")]
    [InlineData("low-tide")]
    [InlineData("shore-syrup")]
    [InlineData("orgeta")]
    [InlineData("round-about")]
    public void What_is_not_an_ingredient_is_a_finding_and_leaves_all_unknown(string like)
    {
        var result = Check($$"""{ "name": "Shore syrup", "kind": "syrup", "like": "{{like}}" }""");
        Assert.Contains(result.Findings.Flat(), f => f is { Rule.Id: "SL9024", Level: Level.Error, Subject: "shore-syrup" });
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL7008");
        var profile = result.Profiles.Of(result.Book.Drinks[0]);
        Assert.Contains(profile.Allergens.Unknown, u => u.Through.Contains("shore-syrup"));
        Assert.False(profile.Get(Fact.Sugar).IsKnown);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "mayContain": ["sesame"] }""")]
    public void An_empty_statement_says_nothing(string statement)
    {
        var result = Check($$"""{ "name": "Shore syrup", "kind": "syrup", "allergens": {{statement}} }""");
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL7008");
        Assert.Contains(result.Profiles.Of(result.Book.Drinks[0]).Allergens.Unknown, u => u.Through.Contains("shore-syrup"));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "mayContain": ["sesame"] }""")]
    public void An_empty_statement_clears_nothing_that_is_inherited(string statement)
    {
        var result = Check($$"""{ "name": "Shore syrup", "like": "orgeat", "allergens": {{statement}} }""");
        Assert.Contains(result.Profiles.Of(result.Book.Drinks[0]).Allergens.Origins, o => o is { Token: "almond", Certain: true });
    }

    [Theory]
    [InlineData("no-such-thing")]
    [InlineData("other-drink")]
    public void A_part_that_resolves_to_nothing_has_unknown_allergens(string item)
    {
        var result = Books.Check(
            ("low-tide.drink.json", Drink.Replace("shore-syrup", item, StringComparison.Ordinal)),
            ("other-drink.drink.json", Drink.Replace("shore-syrup", "orgeat", StringComparison.Ordinal)));
        Assert.Contains(result.Profiles.Of(result.Book.Drinks.Single(d => d.Id == "low-tide")).Allergens.Unknown, u => u.Through.Contains(item));
    }

    private static CheckResult Check(string ingredient) => Books.Check(
        ("low-tide.drink.json", Drink),
        ("house-orgeat.prep.json", House),
        ("shore-syrup.ingredient.json", ingredient),
        ("round-about.ingredient.json", """{ "name": "Round about", "like": "shore-syrup" }"""));
}
