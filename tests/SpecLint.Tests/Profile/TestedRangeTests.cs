using System.Text;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>A fact that its model gives where it was not held against measurement says so.</summary>
public sealed class TestedRangeTests
{
    [Theory]
    [InlineData("""{ "item": "sugar", "amount": "80 g" }, { "item": "water", "amount": "20 g" }""", Fact.Density, true)]
    [InlineData("""{ "item": "sugar", "amount": "80 g" }, { "item": "water", "amount": "20 g" }""", Fact.Brix, true)]
    [InlineData("""{ "item": "sugar", "amount": "80 g" }, { "item": "water", "amount": "20 g" }""", Fact.WaterActivity, true)]
    [InlineData("""{ "item": "sugar", "amount": "65 g" }, { "item": "water", "amount": "35 g" }""", Fact.Density, false)]
    [InlineData("""{ "item": "sugar", "amount": "65 g" }, { "item": "water", "amount": "35 g" }""", Fact.Brix, false)]
    [InlineData("""{ "item": "sugar", "amount": "65 g" }, { "item": "water", "amount": "35 g" }""", Fact.WaterActivity, false)]
    [InlineData("""{ "item": "erythritol", "amount": "50 g" }, { "item": "water", "amount": "50 g" }""", Fact.Brix, true)]
    [InlineData("""{ "item": "erythritol", "amount": "30 g" }, { "item": "water", "amount": "70 g" }""", Fact.Brix, false)]
    [InlineData("""{ "item": "citric-acid", "amount": "70 g" }, { "item": "water", "amount": "30 g" }""", Fact.Density, true)]
    [InlineData("""{ "item": "citric-acid", "amount": "30 g" }, { "item": "water", "amount": "70 g" }""", Fact.Density, false)]
    [InlineData("""{ "item": "lactic-acid-88", "amount": "100 g" }""", Fact.Brix, true)]
    [InlineData("""{ "item": "salt", "amount": "24 g" }, { "item": "water", "amount": "76 g" }""", Fact.FreezingPoint, true)]
    [InlineData("""{ "item": "salt", "amount": "10 g" }, { "item": "water", "amount": "90 g" }""", Fact.FreezingPoint, false)]
    [InlineData("""{ "item": "water", "amount": "100 g" }""", Fact.Density, false)]
    [InlineData("""{ "item": "vodka", "amount": "100 g" }""", Fact.Abv, false)]
    public void Beyond_its_tables_a_fact_is_marked_or_open(string ingredients, Fact fact, bool beyond)
    {
        var value = Checked($$"""{ "name": "Stock", "ingredients": [ {{ingredients}} ], "method": [ { "do": "stir" } ] }""").Profile.Get(fact);
        if (!beyond) Assert.True(value.IsKnown, value.OpenBecause);
        Assert.Equal(beyond, !value.IsKnown || value.IsOutsideTestedRange);
        if (value.IsKnown) Assert.Equal(beyond, value.From.Contains("outside the tested range", StringComparison.Ordinal));
    }

    [Fact]
    public void The_profile_says_so_in_JSON()
    {
        var (profile, verdicts) = Checked("""{ "name": "Stock", "ingredients": [ { "item": "sugar", "amount": "80 g" }, { "item": "water", "amount": "20 g" } ], "method": [ { "do": "stir" } ] }""");
        using var to = new MemoryStream();
        ProfileReport.WriteJson(to, [verdicts.Profiles.Book.Resolve(profile.Recipe.Id)!], verdicts, single: true);
        using var json = JsonDocument.Parse(Encoding.UTF8.GetString(to.ToArray()));
        var facts = json.RootElement.GetProperty("facts");
        Assert.True(facts.GetProperty("density").GetProperty("outsideTestedRange").GetBoolean());
        Assert.False(facts.GetProperty("sugar").TryGetProperty("outsideTestedRange", out _));
        foreach (string name in (string[])["value", "low", "high", "unit", "from"]) Assert.True(facts.GetProperty("density").TryGetProperty(name, out _), name);
    }

    [Fact]
    public void Energy_and_alcohol_of_100_mL_are_open_where_the_volume_is()
    {
        var profile = Checked("""{ "name": "Stock", "ingredients": [ { "item": "sugar", "amount": "100 g" }, { "item": "water", "amount": "300 g" } ], "method": [ { "do": "reduce" } ] }""").Profile;
        Assert.False(profile.Get(Fact.Density).IsKnown);
        Assert.False(profile.Get(Fact.Energy).IsKnown);
        Assert.False(profile.Get(Fact.Alcohol).IsKnown);
    }

    private static (RecipeProfile Profile, Verdicts Verdicts) Checked(string prep)
    {
        var verdicts = Verdicts.Of(Checker.Check(Books.Input(("stock.prep.json", prep))));
        return (verdicts.Profiles.Of((Recipe)verdicts.Profiles.Book.Resolve("stock")!.File), verdicts);
    }
}
