using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Science;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>A composition is one thing: its parts add up, and an entry that takes after another works out what its own values change.</summary>
public sealed class EntryCompositionTests
{
    private static readonly string[] Parents = ["gin", "vodka", "white-rum", "overproof-rum", "bourbon", "orange-liqueur", "sweet-vermouth", "ruby-port", "red-wine", "absinthe"];

    public static TheoryData<string, double> Strengths
    {
        get
        {
            var data = new TheoryData<string, double>();
            foreach (string parent in Parents.Where(p => BuiltInCatalogue.Find(p) is not null))
            {
                foreach (double strength in new[] { 37.5, 40, 57, 63, 80, 96 }) data.Add(parent, strength);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Strengths))]
    public void A_new_strength_is_the_strength_that_is_printed(string parent, double strength)
    {
        // Sugar and spirit of 96 % do not fit into one bottle.
        if (strength > 60 && parent is "orange-liqueur" or "sweet-vermouth" or "ruby-port") return;
        var profile = Of($$"""{ "name": "Typed", "like": "{{parent}}", "strength": "{{strength}} % v/v" }""", "60 ml");
        Assert.InRange(profile.Get(Fact.Abv).Value, strength - 0.1, strength + 0.1);
        Assert.InRange(profile.Get(Fact.MixVolume).Value, 59.9, 60.1);
    }

    [Theory]
    [InlineData("gin", 57)]
    [InlineData("vodka", 96)]
    public void Water_of_a_new_strength_is_that_of_the_legal_table(string parent, double strength)
    {
        var material = Of($$"""{ "name": "Typed", "like": "{{parent}}", "strength": "{{strength}} % v/v" }""", "100 g").Material;
        double share = EthanolWater.MassFractionOf(AlcoholByVolume.FromPercent(strength))!.Value.Value;
        Assert.InRange(material.Of(Component.Ethanol) / (material.Of(Component.Ethanol) + material.Of(Component.Water)), share - 0.001, share + 0.001);
    }

    [Fact]
    public void Equal_volumes_of_spirit_and_water_contract_as_the_legal_table_says()
    {
        var profile = Of("""{ "name": "Typed", "like": "vodka", "strength": "96 % v/v" }""", "500 ml", """, { "item": "water", "amount": "500 ml" }""");
        var legal = EthanolWater.Mix(new Millilitres(500), AlcoholByVolume.FromPercent(96), new Millilitres(500), new AlcoholByVolume(0))!.Value;
        Assert.InRange(profile.Get(Fact.MixVolume).Value, legal.Volume.Value - 3, legal.Volume.Value + 3);
        Assert.InRange(profile.Get(Fact.Abv).Value, legal.Abv.Percent - 0.2, legal.Abv.Percent + 0.2);
    }

    [Theory]
    [InlineData("sweet-vermouth", 12)]
    [InlineData("orange-liqueur", 30)]
    public void A_new_sugar_is_the_sugar_that_is_printed_and_moves_the_density(string parent, double sugar)
    {
        var typed = Of($$"""{ "name": "Typed", "like": "{{parent}}", "sugars": { "sucrose": "{{sugar}} g" } }""", "60 ml");
        var own = Of($$"""{ "name": "Typed", "like": "{{parent}}" }""", "60 ml");
        Assert.InRange(typed.Get(Fact.Sugar).Value, sugar - 0.05, sugar + 0.05);
        Assert.InRange(typed.Get(Fact.Abv).Value, own.Get(Fact.Abv).Value - 0.05, own.Get(Fact.Abv).Value + 0.05);
        double change = typed.Get(Fact.Density).Value - own.Get(Fact.Density).Value, expected = 0.0037 * (sugar - own.Get(Fact.Sugar).Value);
        Assert.InRange(change, expected - 0.003, expected + 0.003);
    }

    [Fact]
    public void A_new_water_content_scales_the_sugars()
    {
        var profile = Of("""{ "name": "Typed", "like": "honey", "water": "21 g" }""", "100 g");
        var grams = profile.MixGrams;
        Assert.InRange(grams[(int)Component.Water], 20.5, 21.5);
        Assert.InRange(grams[(int)Component.Fructose] / grams[(int)Component.Glucose], 1.10, 1.20);
    }

    [Fact]
    public void A_density_that_is_given_tells_the_extract()
    {
        var profile = Of("""{ "name": "Typed", "kind": "liqueur", "per": "100 ml", "strength": "20 % v/v", "sugars": { "sucrose": "15 g" }, "density": "1.045 g/ml" }""", "100 ml");
        Assert.InRange(profile.Get(Fact.Density).Value, 1.0449, 1.0451);
        Assert.InRange(profile.Get(Fact.Abv).Value, 19.95, 20.05);
        Assert.True(profile.MixGrams[(int)Component.OtherDissolved] > 1);
    }

    /// <summary>
    /// A juice or a fruit that is less sour has no more acid for it: its minerals hold more of the same (strong-ion difference, Stewart,
    /// How to Understand Acid–Base, 1981). Titrated, it has less.
    /// </summary>
    [Theory]
    [InlineData("mango")]
    [InlineData("mango-puree")]
    [InlineData("kiwi")]
    [InlineData("apricot")]
    [InlineData("orange-juice")]
    [InlineData("lemon-juice")]
    [InlineData("red-wine")]
    public void A_higher_ph_leaves_the_acids_what_they_are(string id)
    {
        var material = MaterialBuilder.Of(BuiltInCatalogue.Find(id)!, isBuiltIn: true);
        var ph = Assert.Single(material.Inputs.ToArray(), i => i.Name == $"{id}: pH");
        double acids = 0, change = 0;
        double[] high = new double[Components.Count], typical = new double[Components.Count];
        for (int c = 0; c < high.Length; c++)
        {
            typical[c] = material.Of((Component)c);
            high[c] = Math.Max(0, typical[c] + (ph.Changes.ToArray()[c] * ph.Up * Propagation.Coverage));
            if ((Component)c is < Components.FirstAcid or > Components.LastAcid) continue;
            acids += typical[c];
            change += high[c] - typical[c];
        }

        Assert.InRange(change, -0.01 * acids, 0.01 * acids);
        Assert.True(Titrated(high) < Titrated(typical));

        static double Titrated(double[] grams) => AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)!.Value.Value;
    }

    /// <summary>Every way in which an entry varies adds up to nothing: what one part gains, another loses.</summary>
    [Fact]
    public void Variations_of_the_catalogue_keep_the_whole()
    {
        var faults = new List<string>();
        foreach (string id in BuiltInCatalogue.Ids)
        {
            var material = MaterialBuilder.Of(BuiltInCatalogue.Find(id)!, isBuiltIn: true);
            foreach (var input in material.Inputs)
            {
                if (Math.Abs(input.Changes.ToArray().Sum()) > 1e-9) faults.Add($"{input.Name}: {input.Changes.ToArray().Sum()}");
            }
        }

        Assert.Equal([], faults);
    }

    private static RecipeProfile Of(string ingredient, string amount, string more = "")
    {
        var (book, profiles) = Checker.Profile(Books.Input(
            ("typed.ingredient.json", ingredient),
            ("trial.prep.json", $$"""{ "name": "Trial", "family": "other", "ingredients": [ { "item": "typed", "amount": "{{amount}}" }{{more}} ] }""")));
        Assert.Equal([], book.Files.SelectMany(f => f.Problems).Select(p => p.Message));
        return profiles.Of(book.Preps[0]);
    }
}
