using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Which law asks for which allergen, and what is only possible.</summary>
public sealed class AllergenLawTests
{
    /// <summary>A state, a nation and a member state bring the law of what they are part of, and their own rows.</summary>
    [Theory]
    [InlineData("IE", "EU", true)]
    [InlineData("IE", "IE", true)]
    [InlineData("NO", "EU", true)]
    [InlineData("LI", "CH", true)]
    [InlineData("CH", "EU", false)]
    [InlineData("GB-NIR", "EU", true)]
    [InlineData("GB-NIR", "GB", true)]
    [InlineData("XI", "GB-NIR", true)]
    [InlineData("GB", "EU", false)]
    [InlineData("US-NY", "US", true)]
    [InlineData("US-NY", "US-NY", true)]
    [InlineData("US", "US-NY", false)]
    [InlineData("GB-ENG", "GB", true)]
    public void A_code_brings_the_law_of_what_it_is_part_of(string stated, string law, bool applies)
    {
        var result = Books.Check(("bar.json", Bar(stated)), ("a.drink.json", Drink("vodka", "45 ml")));
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id == "SL1010");
        Assert.Equal(applies, result.Book.Settings.AppliesIn(law));
    }

    /// <summary>"Over 10" and "at least 10" are two laws: at 10 mg/kg only the second asks.</summary>
    [Theory]
    [InlineData("EU", 10, false)]
    [InlineData("GB", 10, false)]
    [InlineData("US", 10, true)]
    [InlineData("CA", 10, true)]
    [InlineData("AU", 10, true)]
    [InlineData("EU", 10.1, true)]
    [InlineData("US", 9.9, false)]
    public void A_threshold_that_counts_is_told_from_one_that_does_not(string law, double amount, bool counts) =>
        Assert.Equal(counts, AllergenTable.Of(law, "sulphites")!.Counts(amount));

    /// <summary>Barley in beer is not declared in Australia and New Zealand, wheat is (Standard 1.2.3, as recalled).</summary>
    [Theory]
    [InlineData("AU", "lager", "barley", 0)]
    [InlineData("NZ", "lager", "barley", 0)]
    [InlineData("IE", "lager", "barley", 1)]
    [InlineData("AU", "witbier", "wheat", 1)]
    [InlineData("JP", "buckwheat", "buckwheat", 1)]
    [InlineData("IE", "buckwheat", "buckwheat", 0)]
    [InlineData("CH", "celery-leaf-garnish", "celery", 1)]
    [InlineData("IE", "worcestershire-sauce", "barley", 1)]
    [InlineData("IE", "chitosan", "crustacean", 1)]
    [InlineData("IE", "bloody-mary-mix", "fish", 1)]
    [InlineData("IE", "peanut-whiskey-liqueur", "peanut", 1)]
    [InlineData("IE", "kimchi-brine", "fish", 1)]
    [InlineData("IE", "black-vinegar", "wheat", 1)]
    [InlineData("IE", "asafoetida", "wheat", 1)]
    public void An_allergen_is_asked_where_the_law_lists_it(string country, string item, string token, int expected)
    {
        var result = Books.Check(("bar.json", Bar(country)), ("a.drink.json", Drink(item, "10 g")));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7001" && f.Key == token));
    }

    /// <summary>An error rests on what was read, or follows from what the thing is: an entry whose allergens are recalled gives a warning.</summary>
    [Fact]
    public void No_error_rests_on_an_allergen_that_is_recalled()
    {
        var recalled = BuiltInCatalogue.Ids.Select(id => BuiltInCatalogue.Find(id)!)
            .Where(e => e.Allergens is { Mark: Mark.Memory, Contains.Count: > 0 })
            .Select(e => e.Id)
            .ToList();
        Assert.NotEmpty(recalled);
        string Claiming(string id) =>
            Drink(id, "10 g").Replace(
                "\"allergens\": []", "\"allergens\": [], \"claims\": [\"gluten-free\", \"nut-free\", \"dairy-free\"]",
                StringComparison.Ordinal);
        var files = recalled.SelectMany(id => new[] { ($"{id}-a.drink.json", Drink(id, "10 g")), ($"{id}-b.drink.json", Claiming(id)) }).ToList();
        var findings = Books.Check([("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE", "GB", "US", "CA", "AU"] }"""), .. files]).Findings;
        var aboutAllergens = findings.Where(f => f.Rule.Id is "SL7001" or "SL7003" or "SL7015" or "SL7016" or "SL7031").ToList();
        Assert.NotEmpty(aboutAllergens);
        Assert.Equal([], aboutAllergens.Where(f => f.Level == Level.Error).Select(f => $"{f.Place.File.Path} {f.Rule.Id} {f.Key}"));
    }

    /// <summary>What is the listed substance itself stays an error, also beside a way in that is only recalled.</summary>
    [Theory]
    [InlineData("whole-milk", "milk")]
    [InlineData("whole-egg", "egg")]
    [InlineData("almond", "almond")]
    [InlineData("soy-sauce", "wheat")]
    [InlineData("lager", "barley")]
    [InlineData("celery", "celery")]
    public void A_listed_substance_itself_is_an_error(string item, string token)
    {
        string drink = Drink("worcestershire-sauce", "5 g").Replace("[ {", $"[ {{ \"item\": \"{item}\", \"amount\": \"10 g\" }}, {{", StringComparison.Ordinal);
        foreach (string text in new[] { Drink(item, "10 g"), drink })
        {
            var found = Assert.Single(Books.Check(("bar.json", Bar("IE")), ("a.drink.json", text)).Findings, f => f.Rule.Id == "SL7001" && f.Key == token);
            Assert.Equal(Level.Error, found.Level);
        }
    }

    /// <summary>A compound product that nobody read is not shown to hold none; the wine's egg and milk stay in the profile.</summary>
    [Theory]
    [InlineData("bloody-mary-mix", 1)]
    [InlineData("koji", 1)]
    [InlineData("prawn", 1)]
    [InlineData("beef-stock", 1)]
    [InlineData("rice-horchata", 1)]
    [InlineData("cream-of-coconut", 1)]
    [InlineData("modified-starch", 1)]
    [InlineData("dry-white-wine", 0)]
    [InlineData("sweet-vermouth", 0)]
    [InlineData("amaro", 0)]
    [InlineData("ginger-beer", 0)]
    public void What_makers_differ_in_is_told_once_a_product(string item, int expected)
    {
        var result = Books.Check(("a.drink.json", Drink(item, "10 g")));
        var told = result.Findings.Where(f => f.Rule.Id == "SL7004").ToList();
        Assert.Equal(expected, told.Count);
        Assert.All(told, f => Assert.Equal(Answer.NotShown, f.Answer));
    }

    /// <summary>Without any list the same product asks for one.</summary>
    [Theory]
    [InlineData("koji", 1)]
    [InlineData("vodka", 0)]
    [InlineData("amaro", 0)]
    public void A_recipe_whose_allergens_are_all_possible_is_asked_for_a_list(string item, int expected)
    {
        string drink = Drink(item, "10 g").Replace(", \"declares\": { \"allergens\": [] }", "", StringComparison.Ordinal);
        var result = Books.Check(("a.drink.json", drink));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7002"));
    }

    /// <summary>Coconut is no listed allergen, and a bar that tells of it is not told to take it off.</summary>
    [Theory]
    [InlineData("coconut-cream", "coconut")]
    [InlineData("cream-of-coconut", "coconut")]
    [InlineData("coconut-milk", "coconut")]
    [InlineData("chestnut-liqueur", "chestnut")]
    public void A_true_coconut_is_not_surplus(string item, string token)
    {
        string drink = Drink(item, "30 ml").Replace("\"allergens\": []", $"\"allergens\": [\"{token}\"]", StringComparison.Ordinal);
        var result = Books.Check(("a.drink.json", drink));
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id == "SL7005");
        Assert.DoesNotContain(token, result.Profiles.Of(result.Book.Drinks[0]).Allergens.Contained(result.Book.Settings));
    }

    /// <summary>The duty for poured drinks is not claimed for the packed-food law of the US and Canada.</summary>
    [Theory]
    [InlineData("US", "3-602.12")]
    [InlineData("CA", "on packed food")]
    [InlineData("GB", "also for drinks that are not packed")]
    public void The_scope_of_the_law_is_said(string country, string words)
    {
        string drink = Drink("orgeat", "20 ml").Replace(", \"declares\": { \"allergens\": [] }", "", StringComparison.Ordinal);
        var result = Books.Check(("bar.json", Bar(country)), ("a.drink.json", drink));
        Assert.Contains(words, Assert.Single(result.Findings, f => f.Rule.Id == "SL7002").Message, StringComparison.Ordinal);
    }

    private static string Bar(string country) => $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{country}}"] }""";

    private static string Drink(string item, string amount) =>
        $$"""{ "name": "A", "ingredients": [ { "item": "{{item}}", "amount": "{{amount}}" } ], "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [] } }""";
}
