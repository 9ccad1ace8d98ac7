using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Vocabulary;

/// <summary>The table of verbs, and that what depends on a verb does so alike for every verb of a trait.</summary>
public sealed class VerbTests
{
    [Fact]
    public void Every_synonym_is_the_verb_itself_and_needs_no_finding()
    {
        foreach (string word in Verb.Words)
        {
            Assert.True(Verb.Of(word).IsKnown, word);
            Assert.Same(Verb.Of(word), Verb.Of(Verb.Of(word).Id));
        }

        Assert.Equal(Verb.All.Count, Verb.Words.Select(Verb.Of).Distinct().Count());
    }

    [Theory]
    [InlineData("pasteurise", "pasteurize")]
    [InlineData("homogenise", "homogenize")]
    [InlineData("caramelise", "caramelize")]
    [InlineData("sterilise", "sterilize")]
    [InlineData("distil", "distill")]
    public void Both_spellings_are_one_verb(string british, string american) => Assert.Same(Verb.Of(british), Verb.Of(american));

    [Fact]
    public void A_word_of_no_table_has_no_trait()
    {
        var verb = Verb.Of("wobble");
        Assert.False(verb.IsKnown);
        Assert.Equal("wobble", verb.Id);
        Assert.Equal((VerbGroup.Unknown, Straining.None, TechniqueKind.NoIce), (verb.Group, verb.Straining, verb.Technique));
        Assert.False(verb.ClosesVessel || verb.Works || verb.Heats || verb.AddsLast);
    }

    [Fact]
    public void All_that_chills_has_a_technique_and_nothing_else_has()
    {
        foreach (var verb in Verb.All) Assert.True(verb.Chills == (verb.Technique != TechniqueKind.NoIce), verb.Id);
    }

    [Fact]
    public void All_of_the_straining_group_strains()
    {
        foreach (var verb in Verb.All.Where(v => v.Group == VerbGroup.Strain)) Assert.True(verb.Strains, verb.Id);
    }

    [Fact]
    public void Every_verb_that_strains_takes_the_solids_out_of_the_sugar()
    {
        double strained = SugarAfter("strain"), kept = SugarAfter("rest");
        Assert.NotEqual(strained, kept, tolerance: 0.5);
        foreach (string word in Verb.Words)
        {
            var verb = Verb.Of(word);
            if (verb.BoilsDown || verb.Dries || verb.Ferments) continue;
            double sugar = SugarAfter(word);
            Assert.True(Math.Abs(sugar - (verb.Strains ? strained : kept)) < 1e-9, $"{word}: {sugar}");
        }

        static double SugarAfter(string verb)
        {
            var result = Checker.Profile(Books.Input(("steeped.prep.json", $$"""
                { "name": "Steeped", "family": "syrup",
                  "ingredients": [ { "item": "water", "amount": "500 g" }, { "item": "caster-sugar", "amount": "400 g" }, { "item": "strawberry", "amount": "300 g" } ],
                  "method": [ { "do": "steep", "for": "2 h" }, { "do": "{{verb}}" } ] }
                """)));
            return result.Profiles.Of(result.Book.Preps[0]).Get(Fact.Sugar).Value;
        }
    }

    [Fact]
    public void Every_verb_that_shakes_in_a_closed_vessel_is_found_with_something_sparkling_and_no_other()
    {
        foreach (string word in Verb.Words)
        {
            var verb = Verb.Of(word);
            Assert.True(Finds("SL8008", ("shingle.drink.json", $$"""
                { "name": "Shingle", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "soda-water", "amount": "90 ml" } ],
                  "method": [ { "do": "{{word}}", "ice": "cubed" } ] }
                """)) == (verb.ClosesVessel && verb.Agitates), word);
        }

        foreach (string word in (string[])["shake", "whip", "roll", "reverse-dry-shake", "flash-blend"])
            Assert.True(Verb.Of(word) is { ClosesVessel: true, Agitates: true }, word);
    }

    [Fact]
    public void Every_verb_that_chills_dilutes_a_batch_a_second_time()
    {
        foreach (string word in Verb.Words)
        {
            Assert.True(Finds("SL8012", ("batch.prep.json", $$"""
                { "name": "Batch", "family": "batch", "ingredients": [ { "item": "gin", "amount": "500 ml" }, { "item": "sweet-vermouth", "amount": "250 ml" }, { "item": "water", "amount": "180 ml" } ],
                  "method": [ { "do": "build" }, { "do": "{{word}}", "ice": "cubed" } ] }
                """)) == Verb.Of(word).OnIce.Chills, word);
        }
    }

    /// <summary>A julep is churned with crushed ice and a spoon, a sorbet in a machine: common practice, no source.</summary>
    [Fact]
    public void Churned_on_ice_is_swizzled_and_in_a_machine_frozen()
    {
        Assert.Equal(Served("swizzle", "crushed"), Served("churn", "crushed"));
        Assert.True(Verb.Of("churn").Slushes);
        Assert.False(Verb.Of("churn").OnIce.Slushes);
        Assert.Same(Verb.Of("shake"), Verb.Of("shake").OnIce);

        static FactValue Served(string word, string ice)
        {
            var result = Books.Check(("bulrush.drink.json", $$"""
                { "name": "Bulrush", "ingredients": [ { "item": "bourbon", "amount": "60 ml" }, { "item": "simple-syrup", "amount": "10 ml" } ],
                  "method": [ { "do": "build" }, { "do": "{{word}}", "ice": "{{ice}}", "for": "15 s" } ] }
                """));
            return result.Profiles.Of(result.Book.Drinks[0]).Get(Fact.Abv);
        }
    }

    [Fact]
    public void Only_a_word_of_no_table_is_found_and_the_nearest_is_offered()
    {
        foreach (string word in Verb.Words) Assert.False(Finds("SL1015", Method(word)), word);
        var finding = Books.Check(Method("strein")).Findings.Single(f => f.Rule.Id == "SL1015");
        Assert.Contains("`strain`", finding.Advice, StringComparison.Ordinal);

        static (string, string) Method(string word) =>
            ("plain.drink.json", $$"""{ "name": "Plain", "ingredients": [ { "item": "gin", "amount": "50 ml" } ], "method": [ { "do": "{{word}}" } ] }""");
    }

    private static bool Finds(string rule, params (string Path, string Text)[] files) => Books.Check(files).Findings.Flat().Any(f => f.Rule.Id == rule);
}
