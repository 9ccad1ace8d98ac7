using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Words against facts: what a recipe or a menu says is not in a drink is held against its parts.</summary>
public sealed class ClaimWordsTests
{
    [Theory]
    [InlineData("Nut-free gin sour", "orgeat", true)]
    [InlineData("Gin sour, contains no almonds", "orgeat", true)]
    [InlineData("Gin sour; no nuts, eggs or milk", "orgeat", true)]
    [InlineData("Gin sour; no eggs, milk or nuts", "orgeat", true)]
    [InlineData("Free from milk, egg and almond", "orgeat", true)]
    [InlineData("egg and nut free", "orgeat", true)]
    [InlineData("without almonds", "orgeat", true)]
    [InlineData("allergen-free", "orgeat", true)]
    [InlineData("does not contain nuts", "orgeat", true)]
    [InlineData("Egg-free", "egg-white", true)]
    [InlineData("no egg white", "egg-white", true)]
    [InlineData("Vegan", "egg-white", true)]
    [InlineData("vegan on request", "egg-white", false)]
    [InlineData("not vegan", "egg-white", false)]
    [InlineData("Dairy-free", "whole-milk", true)]
    [InlineData("no lactose", "whole-milk", true)]
    [InlineData("Alcohol-free", "simple-syrup", true)]
    [InlineData("no honey", "honey-syrup", true)]
    [InlineData("honey-free", "honey-syrup", true)]
    [InlineData("no ginger", "ginger-syrup", true)]
    [InlineData("no ice", "orgeat", false)]
    [InlineData("Almond, no milk", "orgeat", false)]
    [InlineData("Gin, almond, lime", "orgeat", false)]
    public void The_words_of_a_menu_are_held_against_the_parts(string words, string item, bool isFalse)
    {
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", item)), ("tonight.menu.json", Menu(words)));
        var told = result.Findings.Flat().Where(f => f.Rule.Id == "SL9012").Select(f => $"{f.Answer}: {f.Message}").ToList();
        Assert.True(isFalse == told.Exists(t => t.StartsWith("Broken", StringComparison.Ordinal)), string.Join("\n", told) + " of " + string.Join(" | ", SpecLint.Rules.Labels.ClaimReader.Read(words, ClaimPlace.Anywhere, result.Book)));
        Assert.DoesNotContain(result.Findings.Flat(), f => f.Rule.Id == "SL9023");
    }

    [Theory]
    [InlineData("Nut-free Low Tide")]
    [InlineData("Low Tide (no almonds)")]
    public void The_name_of_a_drink_is_a_claim(string name)
    {
        var result = Books.Check(("low-tide.drink.json", Drink(name, "orgeat")));
        Assert.Contains(result.Findings.Flat(), f => f is { Rule.Id: "SL7031", Level: Level.Error });
    }

    [Fact]
    public void The_name_of_a_menu_is_a_claim_about_every_drink()
    {
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", "orgeat")), ("tonight.menu.json", Menu("Gin").Replace("Tonight", "The nut-free list", StringComparison.Ordinal)));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL9012");
    }

    [Theory]
    [InlineData("nut-free")]
    [InlineData("vegan")]
    [InlineData("dairy-free")]
    [InlineData("gluten-free")]
    [InlineData("alcohol-free")]
    [InlineData("sugar-free")]
    [InlineData("no-honey")]
    [InlineData("no-ginger")]
    [InlineData("lactose-free")]
    [InlineData("caffeine-free")]
    public void A_part_that_is_not_known_leaves_every_claim_not_shown(string claim)
    {
        string own = """{ "name": "Shore drops", "kind": "other" }""";
        foreach (string item in new[] { "no-such-thing", "shore-drops" })
        {
            var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", item, claim)), ("shore-drops.ingredient.json", own));
            if (item == "shore-drops" && claim == "no-ginger") continue;
            Assert.Contains(result.Findings.Flat(), f => f.Path == $"declares.claims[{claim}]" && f.Rule.Id is "SL7012" or "SL7013" or "SL7015" or "SL7016" or "SL7017" or "SL7031");
        }
    }

    [Fact]
    public void What_may_be_in_a_part_leaves_the_claim_not_shown()
    {
        string own = """{ "name": "Shore drops", "kind": "syrup", "like": "simple-syrup", "allergens": { "contains": [], "mayContain": ["hazelnut"] } }""";
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", "shore-drops", "nut-free")), ("shore-drops.ingredient.json", own));
        Assert.Contains(result.Findings.Flat(), f => f is { Rule.Id: "SL7031", Answer: Answer.NotShown });
    }

    [Theory]
    [InlineData("kosher", Level.Note)]
    [InlineData("sesam-free", Level.Warning)]
    [InlineData("free-from-fodmaps", Level.Warning)]
    public void A_claim_that_is_not_known_is_said_not_to_be_checked(string claim, Level level)
    {
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", "simple-syrup", claim)));
        Assert.Equal(level, result.Findings.Flat().Single(f => f.Rule.Id == "SL7032").Level);
    }

    [Fact]
    public void Every_allergen_is_known_behind_every_negation()
    {
        // Each token of the laws, in each form, on a drink that contains it.
        foreach (string token in AllergenTable.Tokens)
        {
            string own = $$"""{ "name": "Shore drops", "kind": "syrup", "like": "simple-syrup", "allergens": { "contains": ["{{token}}"] } }""";
            string word = token.Replace('-', ' ');
            foreach (string words in new[] { $"{token}-free", $"{word} free", $"no {word}", $"without {word}", $"contains no {word}", $"free from {word}" })
            {
                var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", "shore-drops")), ("shore-drops.ingredient.json", own), ("tonight.menu.json", Menu(words)));
                Assert.True(result.Findings.Flat().Any(f => f.Rule.Id == "SL9012"), words);
            }
        }
    }

    private static string Drink(string name, string item, string? claim = null) => $$"""
        {
          "name": "{{name}}",
          "ingredients": [
            { "item": "gin", "amount": "45 ml" },
            { "item": "lime-juice", "amount": "25 ml" },
            { "item": "{{item}}", "amount": "20 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe"{{(claim is null ? "" : $$""", "declares": { "claims": ["{{claim}}"] }""")}}
        }
        """;

    private static string Menu(string words) => $$"""{ "name": "Tonight", "drinks": [ { "drink": "low-tide", "words": "{{words}}", "covers": 30 } ] }""";
}
