using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Vocabulary;

/// <summary>The tables of kinds, families and ice, and that what depends on a trait does so alike for every word that has it.</summary>
public sealed class KindTests
{
    [Fact]
    public void Every_word_is_known_and_every_family_is_a_kind_of_item()
    {
        Assert.All(ItemKind.Words, w => Assert.True(ItemKind.Of(w).IsKnown));
        Assert.All(Family.Words, w => Assert.True(Family.Of(w).IsKnown));
        Assert.All(Family.All, f => Assert.True(f.Kind.IsKnown, f.Id));
        Assert.Same(ItemKind.Of("colour"), ItemKind.Of("color"));
        Assert.Same(Family.Of("flavoured-salt"), Family.Of("flavored-salt"));
        Assert.False(Family.Of("wobble").IsKnown || Family.Of("wobble").IsBatch || Family.Of("wobble").Kind.IsKnown);
    }

    [Theory]
    [InlineData("none", true, false, false)]
    [InlineData("no ice", true, false, false)]
    [InlineData("cubed", false, false, false)]
    [InlineData("crushed ice, packed", false, false, false)]
    [InlineData("one large clear cube", false, true, false)]
    [InlineData("2 spears", false, true, false)]
    [InlineData("Dry ice in the outer bowl", false, false, true)]
    [InlineData("something cold", false, false, false)]
    public void Ice_is_read_from_a_few_words(string text, bool none, bool block, bool dry)
    {
        var ice = Ice.Of(text);
        Assert.Equal((none, block, dry), (ice.IsNone, ice.IsBlock, ice.IsDryIce));
        Assert.Equal(text != "something cold", ice.IsKnown);
    }

    [Fact]
    public void Every_kind_that_sparkles_is_found_in_a_shaker_and_tops_a_drink_that_is_topped()
    {
        foreach (var kind in ItemKind.All.Where(k => !k.IsMade))
        {
            var files = new[] { Bought(kind.Id), ("shingle.drink.json", """{ "name": "Shingle", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "fizz", "amount": "90 ml" } ], "method": [ { "do": "shake", "ice": "cubed" } ] }""") };
            Assert.True(Books.Check(files).Findings.Flat().Any(f => f.Rule.Id == "SL8008") == (kind.IsSparkling || kind.IsLiveCulture), kind.Id);
            if (kind.IsSparkling) Assert.True(kind.Lengthens, kind.Id);
            if (!kind.Lengthens) continue;
            var result = Checker.Profile(Books.Input(
                Bought(kind.Id),
                ("long.drink.json", """{ "name": "Long", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "fizz", "amount": "90 ml" } ], "method": [ { "do": "build", "ice": "cubed" }, { "do": "top" } ] }""")));
            Assert.Equal(PartPhase.Top, result.Profiles.Of(result.Book.Drinks[0]).Parts[1].Phase);
        }
    }

    [Fact]
    public void What_is_built_in_is_not_told_by_the_folder_of_the_file()
    {
        const string Prep = """{ "name": "Mix", "family": "other", "ingredients": [ { "item": "house-syrup", "amount": "100 g" }, { "item": "water", "amount": "100 g" } ], "method": [ { "do": "stir" } ] }""";
        const string Syrup = """{ "name": "House syrup", "kind": "syrup", "density": "1.2 g/ml" }""";
        foreach (string folder in (string[])["", "bought/", "catalogue/"])
        {
            var result = Checker.Profile(Books.Input((folder + "house-syrup.ingredient.json", Syrup), ("mix.prep.json", Prep)));
            var sugar = result.Profiles.Of(result.Book.Preps[0]).Get(Fact.Sugar);
            Assert.False(sugar.IsKnown, folder);
        }
    }

    private static (string Path, string Text) Bought(string kind) =>
        ("fizz.ingredient.json", $$"""{ "name": "Fizz", "kind": "{{kind}}", "density": "1 g/ml", "state": "liquid" }""");
}
