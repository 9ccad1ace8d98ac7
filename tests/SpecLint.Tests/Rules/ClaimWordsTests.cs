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
    [InlineData("nut safe", "orgeat", true)]
    [InlineData("nut-less", "orgeat", true)]
    [InlineData("Nutless", "orgeat", true)]
    [InlineData("almonds: none", "orgeat", true)]
    [InlineData("0 % almond", "orgeat", true)]
    [InlineData("not made with almonds", "orgeat", true)]
    [InlineData("neither milk nor almond", "orgeat", true)]
    [InlineData("devoid of nuts", "orgeat", true)]
    [InlineData("safe for guests with a nut allergy", "orgeat", true)]
    [InlineData("suitable for nut allergy sufferers", "orgeat", true)]
    [InlineData("ok for those allergic to almonds", "orgeat", true)]
    [InlineData("Allergy friendly", "orgeat", true)]
    [InlineData("hypoallergenic", "orgeat", true)]
    [InlineData("Almond and gin (NF)", "orgeat", true)]
    [InlineData("not suitable for nut allergy sufferers", "orgeat", false)]
    [InlineData("Milkless", "whole-milk", true)]
    [InlineData("dairyfree", "whole-milk", true)]
    [InlineData("non-dairy", "whole-milk", true)]
    [InlineData("Pareve", "whole-milk", true)]
    [InlineData("Gin [DF/GF]", "whole-milk", true)]
    [InlineData("suitable for vegans", "whole-milk", true)]
    [InlineData("ok for the lactose intolerant", "whole-milk", true)]
    [InlineData("eggless", "egg-white", true)]
    [InlineData("suitable for coeliacs", "lager", true)]
    [InlineData("celiac friendly", "lager", true)]
    [InlineData("halal", "simple-syrup", true)]
    [InlineData("safe in pregnancy", "simple-syrup", true)]
    [InlineData("pregnancy-safe", "simple-syrup", true)]
    [InlineData("kid friendly", "simple-syrup", true)]
    [InlineData("good for drivers", "simple-syrup", true)]
    [InlineData("0.0 %", "simple-syrup", true)]
    [InlineData("0,0 % vol", "simple-syrup", true)]
    [InlineData("Tide 0.0", "simple-syrup", true)]
    [InlineData("alcohol: 0 %", "simple-syrup", true)]
    [InlineData("Virgin", "simple-syrup", true)]
    [InlineData("a drop of extra virgin olive oil", "simple-syrup", false)]
    [InlineData("rested in virgin oak", "simple-syrup", false)]
    [InlineData("10.0 % off before six", "simple-syrup", false)]
    [InlineData("0 % fat", "simple-syrup", false)]
    [InlineData("flawless, timeless, more or less", "simple-syrup", false)]
    [InlineData("no ice", "orgeat", false)]
    [InlineData("Almond, no milk", "orgeat", false)]
    [InlineData("Gin, almond, lime", "orgeat", false)]
    public void The_words_of_a_menu_are_held_against_the_parts(string words, string item, bool isFalse)
    {
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", item)), ("tonight.menu.json", Menu(words)));
        var told = result.Findings.Flat().Where(f => f.Rule.Id == "SL9012").Select(f => $"{f.Answer}: {f.Message}").ToList();
        Assert.True(
            isFalse == told.Exists(t => t.StartsWith("Broken", StringComparison.Ordinal)),
            string.Join("\n", told) + " of " + string.Join(
                " | ", SpecLint.Rules.Labels.ClaimReader.Read(words, ClaimPlace.Anywhere, result.Book)));
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

    /// <summary>The staff reads the notes and answers guests by them; a note that tells of another drink claims nothing of this one.</summary>
    [Theory]
    [InlineData("Milkless.", "SL7016")]
    [InlineData("Dairy-free.", "SL7016")]
    [InlineData("Shake hard. No milk.", "SL7016")]
    [InlineData("no dairy in it", "SL7016")]
    [InlineData("Contains no milk; strain twice.", "SL7016")]
    [InlineData("Virgin.", "SL7012")]
    [InlineData("Halal.", "SL7012")]
    [InlineData("safe in pregnancy", "SL7012")]
    [InlineData("0.0 %", "SL7012")]
    [InlineData("Vegan", "SL7013")]
    [InlineData("allergy friendly", "SL7031")]
    [InlineData("Kosher.", "SL7032")]
    [InlineData("Vegan if made with oat milk.", "")]
    [InlineData("For a dairy-free version use oat milk.", "")]
    [InlineData("Not suitable for vegans.", "")]
    [InlineData("Add the milk, no sugar yet.", "")]
    [InlineData("Pour without milk first", "")]
    [InlineData("Kosher salt on the rim.", "")]
    [InlineData("No ice, no garnish.", "")]
    [InlineData("Shake until lump-free.", "")]
    public void A_claim_in_a_note_is_held_against_the_parts(string note, string rule)
    {
        string drink = Drink("Low Tide", "whole-milk").Replace("\"glass\"", $"\"notes\": \"{note}\", \"glass\"", StringComparison.Ordinal);
        var told = Books.Check(("low-tide.drink.json", drink)).Findings
            .Flat()
            .Where(f => f.Path == "notes" && f.Rule.Id is "SL7012" or "SL7013" or "SL7015" or "SL7016" or "SL7017" or "SL7031" or "SL7032")
            .ToList();
        Assert.Equal(rule.Length == 0 ? [] : [rule], told.Select(f => f.Rule.Id));
        Assert.All(told, f => Assert.True(f.Level <= Level.Warning));
    }

    /// <summary>A claim of two words is no id, so that its list cannot be read; it is held against the parts all the same.</summary>
    [Fact]
    public void A_claim_that_is_no_id_is_checked()
    {
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", "orgeat", "nut safe")));
        Assert.Contains(result.Findings.Flat(), f => f is { Rule.Id: "SL7031", Level: Level.Error });
    }

    [Fact]
    public void The_notes_of_a_menu_are_read()
    {
        string menu = Menu("Gin").Replace("\"covers\": 30", "\"covers\": 30, \"notes\": \"Nut-free.\"", StringComparison.Ordinal);
        var result = Books.Check(("low-tide.drink.json", Drink("Low Tide", "orgeat")), ("tonight.menu.json", menu));
        Assert.Contains(result.Findings.Flat(), f => f is { Rule.Id: "SL9012", Level: Level.Warning });
    }

    [Fact]
    public void The_name_of_a_menu_is_a_claim_about_every_drink()
    {
        var result = Books.Check(
            ("low-tide.drink.json", Drink("Low Tide", "orgeat")),
            ("tonight.menu.json", Menu("Gin").Replace("Tonight", "The nut-free list", StringComparison.Ordinal)));
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
            Assert.Contains(
                result.Findings.Flat(),
                f => f.Path == $"declares.claims[{claim}]"
                    && f.Rule.Id is "SL7012" or "SL7013" or "SL7015" or "SL7016" or "SL7017" or "SL7031");
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
    [InlineData("seasme-free", Level.Warning)]
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
            foreach (string words in new[] { $"{token}-free", $"{word} free", $"no {word}", $"without {word}", $"contains no {word}", $"free from {word}", $"{token}-less", $"{word}: none", $"safe for {word} allergy", $"{word} safe" })
            {
                var result = Books.Check(
                    ("low-tide.drink.json", Drink("Low Tide", "shore-drops")), ("shore-drops.ingredient.json", own),
                    ("tonight.menu.json", Menu(words)));
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
