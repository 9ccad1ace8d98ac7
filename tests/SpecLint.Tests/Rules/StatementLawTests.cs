using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Statements and strengths that a law asks for, by country.</summary>
public sealed class StatementLawTests
{
    /// <summary>"Alcohol-free" is none at all in North America, Australia and New Zealand; beer has figures of its own in Italy and Spain.</summary>
    [Theory]
    [InlineData("US", "alcohol-free", "aromatic-bitters", "1 ml", Level.Error)]
    [InlineData("CA", "alcohol-free", "aromatic-bitters", "1 ml", Level.Warning)]
    [InlineData("AU", "alcohol-free", "aromatic-bitters", "1 ml", Level.Warning)]
    [InlineData("NZ", "non-alcoholic", "aromatic-bitters", "1 ml", Level.Warning)]
    [InlineData("US", "non-alcoholic", "aromatic-bitters", "1 ml", null)]
    [InlineData("GB", "mocktail", "aromatic-bitters", "1 ml", Level.Warning)]
    [InlineData("GB", "alcohol-free", "aromatic-bitters", "1 ml", Level.Error)]
    [InlineData("NL", "alcoholvrij", "aromatic-bitters", "1 ml", Level.Warning)]
    [InlineData("IT", "alcohol-free", "vodka", "3 ml", Level.Warning)]
    [InlineData("IT", "alcohol-free", "lager", "20 ml", null)]
    [InlineData("ES", "alcohol-free", "vodka", "3 ml", Level.Warning)]
    [InlineData("GB", "de-alcoholised", "vodka", "3 ml", Level.Error)]
    [InlineData("CA", "low-alcohol", "vodka", "4 ml", Level.Error)]
    [InlineData("IE", "low-alcohol", "vodka", "2 ml", null)]
    [InlineData("US", "alcohol-free", "lime-juice", "20 ml", null)]
    public void Words_about_alcohol_mean_what_the_country_says(string country, string claim, string item, string amount, Level? level)
    {
        var result = Check(country, $$"""
            { "name": "Sea Road", "ingredients": [ { "item": "{{item}}", "amount": "{{amount}}" }, { "item": "soda-water", "amount": "120 ml" } ],
              "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [], "claims": ["{{claim}}"] } }
            """);
        Assert.Equal(level, result.Findings.SingleOrDefault(f => f.Rule.Id == "SL7012")?.Level);
    }

    /// <summary>The tolerance is that of the bar's law and of what is in the bottle.</summary>
    [Theory]
    [InlineData("IE", "lager", "5.45 % v/v", false)]
    [InlineData("IE", "lager", "6.3 % v/v", true)]
    [InlineData("IE", "vodka", "41 % v/v", true)]
    [InlineData("AU", "vodka", "51 % v/v", true)]
    public void Strength_has_the_tolerance_of_its_kind(string country, string item, string declared, bool found)
    {
        var result = Books.Check(
            ("bar.json", Bar(country)),
            ("own.ingredient.json", $$"""{ "name": "Own", "like": "{{item}}", "strength": "{{(item == "lager" ? "5" : "40")}} % v/v", "allergens": { "contains": [] } }"""),
            ("a.prep.json", $$"""{ "name": "A", "family": "batch", "ingredients": [ { "item": "own", "amount": "700 ml" } ], "method": [ { "do": "bottle" } ], "yield": "700 ml", "declares": { "allergens": [], "abv": "{{declared}}" } }"""));
        Assert.Equal(found, result.Findings.Any(f => f.Rule.Id == "SL7009"));
    }

    [Fact]
    public void A_bottle_with_cherries_in_it_has_the_tolerance_of_macerated_fruit()
    {
        const string Prep = """
            { "name": "Cherries", "family": "infusion", "ingredients": [ { "item": "own", "amount": "500 ml" }, { "item": "cherry", "amount": "300 g" } ],
              "method": [ { "do": "stir" } ], "declares": { "allergens": [], "abv": "DECLARED % v/v" } }
            """;
        var result = Books.Check(Files("26"));
        var strength = result.Profiles.Of(result.Book.Preps[0]).Get(SpecLint.Vocabulary.Fact.Abv);
        string near = (strength.High + 1.2).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
        Assert.DoesNotContain(Books.Check(Files(near)).Findings, f => f.Rule.Id == "SL7009");
        string far = (strength.High + 2).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains("1.5 % vol", Assert.Single(Books.Check(Files(far)).Findings, f => f.Rule.Id == "SL7009").Message, StringComparison.Ordinal);

        (string, string)[] Files(string declared) =>
        [
            ("own.ingredient.json", """{ "name": "Own", "like": "vodka", "strength": "40 % v/v", "allergens": { "contains": [] } }"""),
            ("a.prep.json", Prep.Replace("DECLARED", declared, StringComparison.Ordinal)),
        ];
    }

    /// <summary>Phenylalanine, by the words of the country; of a bought sugar-free soda it is not shown.</summary>
    [Theory]
    [InlineData("IE", "aspartame", "contains a source of phenylalanine", Answer.Broken)]
    [InlineData("US", "aspartame", "PHENYLKETONURICS", Answer.Broken)]
    [InlineData("CA", "aspartame", "contains phenylalanine", Answer.Broken)]
    [InlineData("AU", "aspartame", "contains phenylalanine", Answer.Broken)]
    [InlineData("IE", "diet-cola", "phenylalanine", Answer.NotShown)]
    [InlineData("US", "diet-cola", "PHENYLALANINE", Answer.NotShown)]
    [InlineData("IE", "tonic-water-sugar-free", "phenylalanine", Answer.NotShown)]
    public void Phenylalanine_is_told(string country, string item, string words, Answer answer)
    {
        var found = Check(country, Soft(item, item == "aspartame" ? "0.1 g" : "150 ml")).Findings;
        Assert.Contains(found, f => f.Rule.Id == "SL7029" && f.Advice.Contains(words, StringComparison.Ordinal) && f.Answer == answer);
    }

    [Theory]
    [InlineData("simple-syrup", "with sugar and sweetener")]
    [InlineData("lime-juice", "\"with sweetener\"")]
    public void Sugar_beside_a_sweetener_is_said_too(string beside, string words)
    {
        var found = Check("IE", $$"""
            { "name": "A", "ingredients": [ { "item": "stevia", "amount": "0.1 g" }, { "item": "{{beside}}", "amount": "20 ml" }, { "item": "soda-water", "amount": "100 ml" } ],
              "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [] } }
            """).Findings;
        Assert.Contains(found, f => f.Rule.Id == "SL7029" && f.Advice.Contains(words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("25 g", true)]
    [InlineData("5 g", false)]
    public void Polyols_over_a_tenth_are_told(string amount, bool told)
    {
        var found = Check("IE", Soft("xylitol", amount)).Findings;
        Assert.Equal(told, found.Any(f => f.Rule.Id == "SL7029" && f.Message.Contains("polyols", StringComparison.Ordinal)));
    }

    /// <summary>40 g of root in 0.9 L of gin is over 300 mg/L by the content of the table, and "contains liquorice" does not tell of blood pressure.</summary>
    [Theory]
    [InlineData("contains liquorice", 1)]
    [InlineData("contains liquorice – people suffering from hypertension should avoid excessive consumption", 0)]
    public void Much_liquorice_tells_of_blood_pressure(string said, int expected)
    {
        var result = Books.Check(("a.prep.json", $$"""
            { "name": "Root gin", "family": "infusion", "ingredients": [ { "item": "gin", "amount": "900 ml" }, { "item": "liquorice-root", "amount": "40 g" } ],
              "method": [ { "do": "steep", "for": "2 d" }, { "do": "strain" } ], "yield": "850 ml", "declares": { "allergens": [], "advisory": ["{{said}}"] } }
            """));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7028" && f.Advice.Contains("hypertension", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_name_that_says_liquorice_needs_no_second_word()
    {
        var result = Books.Check(("a.prep.json", """
            { "name": "Liquorice gin", "family": "infusion", "ingredients": [ { "item": "gin", "amount": "900 ml" }, { "item": "liquorice-root", "amount": "1 g" } ],
              "method": [ { "do": "steep", "for": "1 h" }, { "do": "strain" } ], "yield": "890 ml", "declares": { "allergens": [] } }
            """));
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id == "SL7028");
    }

    /// <summary>The excuse is a drink based on coffee or tea whose name says so.</summary>
    [Theory]
    [InlineData("Midnight", "espresso", "60 ml", true)]
    [InlineData("Coffee Flip", "espresso", "60 ml", false)]
    [InlineData("Tea Time", "energy-drink", "200 ml", true)]
    public void Caffeine_is_excused_by_the_name_and_the_drink(string name, string item, string amount, bool told)
    {
        var result = Check("IE", $$"""
            { "name": "{{name}}", "ingredients": [ { "item": "vodka", "amount": "45 ml" }, { "item": "{{item}}", "amount": "{{amount}}" }, { "item": "black-tea", "amount": "1 ml" } ],
              "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [] } }
            """);
        Assert.Equal(told, result.Findings.Any(f => f.Rule.Id == "SL7028" && f.Key == "caffeine"));
    }

    /// <summary>Quinine and kola's caffeine are told of in Australia and New Zealand (Food Standards Code, S9-2), unless the name does.</summary>
    [Theory]
    [InlineData("AU", "Long Ebb", "tonic-water", 1)]
    [InlineData("AU", "Gin and Tonic", "tonic-water", 0)]
    [InlineData("NZ", "Long Ebb", "cola", 1)]
    [InlineData("IE", "Long Ebb", "tonic-water", 0)]
    public void Bought_quinine_and_caffeine_are_told_down_under(string country, string name, string item, int expected)
    {
        string drink = Soft(item, "120 ml").Replace("\"name\": \"A\"", $"\"name\": \"{name}\"", StringComparison.Ordinal);
        var found = Check(country, drink).Findings.Where(f => f.Rule.Id == "SL7028").ToList();
        Assert.Equal(expected, found.Count);
        Assert.All(found, f => Assert.Equal(Level.Note, f.Level));
    }

    /// <summary>The US warning is asked of every bottled drink that holds raw juice, and to the letter.</summary>
    [Theory]
    [InlineData("Not pasteurised", 1)]
    [InlineData(
        "WARNING: This product has not been pasteurized and, therefore, may contain harmful bacteria that can cause serious illness in "
            + "children, the elderly, and persons with weakened immune systems.",
        0)]
    public void Raw_juice_in_a_bottle_needs_the_warning_of_the_law(string said, int expected)
    {
        var result = Books.Check(("bar.json", Bar("US")), ("a.prep.json", $$"""
            { "name": "Lemonade", "family": "cordial", "ingredients": [ { "item": "lemon-juice", "amount": "200 ml" }, { "item": "simple-syrup", "amount": "200 ml" }, { "item": "water", "amount": "600 ml" } ],
              "method": [ { "do": "stir" }, { "do": "bottle" } ], "yield": "1 l", "portions": { "count": 4, "each": "250 ml" }, "declares": { "allergens": [], "advisory": ["{{said}}"] } }
            """));
        Assert.Equal(expected, result.Findings.Count(f => f.Rule.Id == "SL7027"));
    }

    private static string Soft(string item, string amount) => $$"""
        { "name": "A", "ingredients": [ { "item": "{{item}}", "amount": "{{amount}}" }, { "item": "soda-water", "amount": "120 ml" } ],
          "method": [ { "do": "build", "into": "glass" } ], "declares": { "allergens": [] } }
        """;

    private static string Bar(string country) => $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{country}}"] }""";

    private static CheckResult Check(string country, string drink) => Books.Check(("bar.json", Bar(country)), ("a.drink.json", drink));
}
