using SpecLint.Book;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Service;

public sealed class PackedLabelTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["GB"] }""";

    private static PackedLabel? Of(string prep, out string why, params (string Path, string Text)[] more)
    {
        var verdicts = Verdicts.Of(Books.Check([("bar.json", Bar), ("thing.prep.json", prep), .. more]));
        var label = LotLabel.OfMade(verdicts, [((Prep)verdicts.Profiles.Book.Resolve("thing")!.File, Books.On)], "NK")[0];
        return PackedLabel.Of(label, verdicts.Profiles, out why);
    }

    private static string Text(PackedLabel packed) => string.Concat(packed.Ingredients.Select(r => r.IsStrong ? $"*{r.Text}*" : r.Text));

    [Fact]
    public void Ingredients_stand_in_descending_order_with_those_of_preparations_in_brackets_and_allergens_emphasised()
    {
        const string syrup = """{ "name": "House syrup", "family": "syrup", "ingredients": [ { "item": "water", "amount": "100 g" }, { "item": "white-sugar", "amount": "200 g" } ], "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "300 g", "keep": { "at": "4 °C", "in": "bottle", "for": "14 d" } }""";
        const string prep = """
            { "name": "Thing", "family": "cordial", "ingredients": [
                { "item": "house-syrup", "amount": "300 g" }, { "item": "celery-base", "amount": "50 g" }, { "item": "water", "amount": "400 g" }, { "item": "nutty-syrup", "amount": "100 g" } ],
              "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "850 g", "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" } }
            """;
        var packed = Of(
            prep, out string why, ("house-syrup.prep.json", syrup),
            ("celery-base.ingredient.json", """{ "name": "Celery base, mild", "like": "water", "allergens": { "contains": ["celery"] } }"""),
            ("nutty-syrup.ingredient.json", """{ "name": "Marsh syrup", "like": "simple-syrup", "allergens": { "contains": ["almond", "celery"] } }"""));
        Assert.True(packed is not null, why);
        Assert.Equal("Water, House syrup (White sugar, Water), Marsh syrup (*ALMOND, CELERY*), *CELERY* base mild", Text(packed!));
    }

    [Fact]
    public void What_was_washed_or_strained_out_is_named_too()
    {
        const string prep = """
            { "name": "Thing", "family": "milk-punch", "ingredients": [
                { "item": "white-rum", "amount": "500 ml" }, { "item": "lemon-juice", "amount": "100 ml" }, { "item": "whole-milk", "amount": "200 ml", "role": "wash" } ],
              "method": [ { "do": "stir" }, { "do": "strain" } ], "yield": "600 ml", "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" } }
            """;
        var packed = Of(prep, out string why);
        if (packed is null) Assert.Matches("not be used|no use-by", why);
        else Assert.Contains("made with Whole *MILK*", Text(packed), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "item": "mystery", "amount": "10 g" }""", "mystery")]
    [InlineData("""{ "item": "no-such-thing", "amount": "10 g" }""", "")]
    public void Where_the_recipe_does_not_know_enough_there_is_none_and_it_says_of_what(string line, string named)
    {
        string prep = $$"""{ "name": "Thing", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" }, {{line}} ], "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "210 g", "keep": { "at": "4 °C", "in": "bottle", "for": "3 d" } }""";
        Assert.Null(Of(prep, out string why, ("mystery.ingredient.json", """{ "name": "Mystery", "kind": "syrup" }""")));
        Assert.NotEqual("", why);
        Assert.Contains(named, why, StringComparison.Ordinal);
    }
}
