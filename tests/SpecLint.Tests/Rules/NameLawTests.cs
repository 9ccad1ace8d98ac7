using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Names and claims that a law reserves, by country.</summary>
public sealed class NameLawTests
{
    /// <summary>"Cassis" names a fruit; the term of the law is "crème de cassis".</summary>
    [Theory]
    [InlineData("IE", "Cassis sorbet base", 0)]
    [InlineData("IE", "Crème de cassis", 1)]
    [InlineData("IE", "House liqueur", 1)]
    [InlineData("IE", "Liqueur soaking syrup", 0)]
    [InlineData("CA", "House liqueur", 0)]
    [InlineData("AU", "House liqueur", 0)]
    public void A_liqueur_has_the_least_sugar_of_its_name(string country, string name, int expected)
    {
        var result = Books.Check(("bar.json", Bar(country)), ("a.prep.json", Prep(name, "vodka", "400 ml", "blackcurrant-puree", "200 ml")));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7020"));
    }

    /// <summary>A bitter is a beer in Britain, and anis a spice, until a spirit is in it.</summary>
    [Theory]
    [InlineData("GB", "Grapefruit Bitter", "lager", 0)]
    [InlineData("IE", "Lemon and anis", "simple-syrup", 0)]
    [InlineData("CA", "Garden gin", "gin-weak", 1)]
    [InlineData("AU", "Garden gin", "gin-weak", 1)]
    [InlineData("IE", "Plum brandy", "gin-weak", 1)]
    [InlineData("IE", "Cherry brandy", "gin-weak", 0)]
    [InlineData("US", "Cherry brandy", "gin-weak", 1)]
    public void A_spirit_name_is_held_where_a_spirit_is_in_it(string country, string name, string item, int expected)
    {
        var result = Books.Check(
            ("bar.json", Bar(country)),
            ("gin-weak.ingredient.json", """{ "name": "Weak", "like": "gin", "strength": "25 % v/v", "allergens": { "contains": [] } }"""),
            ("a.prep.json", Prep(name, item, "400 ml", "water", "100 ml")));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7019"));
    }

    [Theory]
    [InlineData("IE", "Gin alkoholfrei", 1)]
    [InlineData("IE", "Virgin scotch", 1)]
    [InlineData("GB", "Virgin scotch", 1)]
    [InlineData("US", "Virgin scotch", 0)]
    [InlineData("IE", "Juniper drink, without alcohol", 0)]
    public void A_spirit_name_without_alcohol_is_found_in_its_languages(string country, string name, int expected)
    {
        var found = Books.Check(
            ("bar.json", Bar(country)), ("a.prep.json", Prep(name, "water", "400 ml", "simple-syrup", "20 ml"))).Findings
            .Where(f => f.Rule.Id == "SL7021")
            .ToList();
        Assert.Equal(expected, found.Count);
        if (country == "GB") Assert.All(found, f => Assert.Equal(Level.Warning, f.Level));
    }

    /// <summary>Names of the table, each where it is protected; on a preparation as well as on a menu.</summary>
    [Theory]
    [InlineData("IE", "White rum, Rioja", 1)]
    [InlineData("IE", "White rum, Islay", 1)]
    [InlineData("IE", "White rum, ouzo", 1)]
    [InlineData("US", "White rum, champagne", 0)]
    [InlineData("AU", "White rum, champagne", 1)]
    [InlineData("CA", "White rum, cognac", 1)]
    [InlineData("GB", "White rum, tequila", 1)]
    [InlineData("GB", "White rum, lime", 0)]
    public void A_protected_name_is_held_where_it_is_protected(string country, string words, int expected)
    {
        var result = Books.Check(
            ("bar.json", Bar(country)),
            ("a.drink.json", """{ "name": "A", "ingredients": [ { "item": "white-rum", "amount": "45 ml" }, { "item": "lime-juice", "amount": "20 ml" } ], "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [] } }"""),
            ("m.menu.json", $$"""{ "name": "M", "drinks": [ { "drink": "a", "words": "{{words}}" } ] }"""));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7022"));
    }

    [Fact]
    public void A_protected_name_on_a_preparation_that_is_not_sold_is_noted()
    {
        var result = Books.Check(("a.prep.json", """
            { "name": "House champagne", "family": "syrup", "ingredients": [ { "item": "water", "amount": "500 ml" }, { "item": "white-sugar", "amount": "50 g" } ], "method": [ { "do": "stir" } ] }
            """));
        Assert.Equal(Level.Note, Assert.Single(result.Findings, f => f.Rule.Id == "SL7022").Level);
    }

    [Theory]
    [InlineData("AU", "Immune-boosting, healing", 1)]
    [InlineData("IE", "Detoxifying", 1)]
    [InlineData("IE", "Rich, healthy, wholesome", 1)]
    [InlineData("IE", "Skinny and low-calorie", 1)]
    [InlineData("US", "Healthy gin", 1)]
    [InlineData("AU", "Gin, lime", 0)]
    public void Health_words_are_barred_where_the_law_bars_them(string country, string words, int expected)
    {
        var result = Books.Check(
            ("bar.json", Bar(country)),
            ("a.drink.json", """{ "name": "A", "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "20 ml" } ], "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ], "style": "shaken-sour", "declares": { "allergens": [] } }"""),
            ("m.menu.json", $$"""{ "name": "M", "drinks": [ { "drink": "a", "words": "{{words}}" } ] }"""));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7018"));
    }

    /// <summary>Oats and malted cereals bar the claim in Australia and New Zealand; elsewhere oats are not shown.</summary>
    [Theory]
    [InlineData("AU", "oat-milk", Answer.Broken)]
    [InlineData("NZ", "oat-milk", Answer.Broken)]
    [InlineData("AU", "lager", Answer.Broken)]
    [InlineData("IE", "oat-milk", Answer.NotShown)]
    [InlineData("IE", "glucose-syrup", null)]
    [InlineData("US", "glucose-syrup", Answer.NotShown)]
    [InlineData("US", "corn-syrup", null)]
    public void Gluten_free_means_what_the_country_says(string country, string item, Answer? answer)
    {
        string text = "{ \"name\": \"A\", \"ingredients\": [ { \"item\": \"" + item + "\", \"amount\": \"50 g\" } ], \"method\": [ { "
            + "\"do\": \"build\", \"into\": \"glass\" } ], \"declares\": { \"claims\": [\"gluten-free\"] } }";
        var result = Books.Check(("bar.json", Bar(country)), ("a.drink.json", text));
        Assert.Equal(answer, result.Findings.SingleOrDefault(f => f.Rule.Id == "SL7015")?.Answer);
    }

    /// <summary>Citric acid may go into a juice up to the limit, tartaric not at all.</summary>
    [Theory]
    [InlineData("citric-acid", 0)]
    [InlineData("tartaric-acid", 1)]
    public void Another_acid_than_citric_makes_it_no_juice(string acid, int expected)
    {
        var result = Books.Check(("a.prep.json", $$"""
            { "name": "Apple juice", "family": "juice", "ingredients": [ { "item": "apple-juice", "amount": "1 l" }, { "item": "{{acid}}", "amount": "2 g" } ], "method": [ { "do": "stir" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" } }
            """));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7023"));
    }

    private static string Bar(string country) => $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{country}}"] }""";

    private static string Prep(string name, string first, string much, string second, string more) => $$"""
        { "name": "{{name}}", "family": "batch", "ingredients": [ { "item": "{{first}}", "amount": "{{much}}" }, { "item": "{{second}}", "amount": "{{more}}" } ],
          "method": [ { "do": "stir" }, { "do": "bottle" } ], "yield": "500 ml", "portions": { "count": 5, "each": "100 ml" }, "declares": { "allergens": [] } }
        """;
}
