using SpecLint.Catalogue;
using SpecLint.Linking;

namespace SpecLint.Tests.Text;

/// <summary>Names as people write them.</summary>
public sealed class NameResolverTests
{
    private static readonly NameResolver Resolver = new();

    [Theory]
    [InlineData("Fresh mint leaves", "mint")]
    [InlineData("fresh-mint-leaves", "mint")]
    [InlineData("Blanco tequila", "tequila-blanco")]
    [InlineData("Straight rye whiskey", "rye-whiskey")]
    [InlineData("Cherry-flavored brandy", "cherry-liqueur")]
    [InlineData("Juice of a Lemon", "lemon-juice")]
    [InlineData("juice-of-a-lime", "lime-juice")]
    [InlineData("freshly squeezed orange juice", "orange-juice")]
    [InlineData("Rum, light", "white-rum")]
    [InlineData("peel of a lemon", "lemon-peel")]
    [InlineData("Egg yolk (1 oz)", "egg-yolk")]
    [InlineData("Orange bitters, if desired", "orange-bitters")]
    [InlineData("Dry gin", "gin")]
    [InlineData("Tomato catsup", "ketchup")]
    [InlineData("crème de cassis", "creme-de-cassis")]
    [InlineData("Curaçao", "curacao")]
    [InlineData("Cachaça", "cachaca")]
    [InlineData("mango slice", "mango")]
    [InlineData("cream of coconut", "cream-of-coconut")]
    public void A_name_with_words_around_it_resolves(string written, string id)
    {
        var name = Resolver.Resolve(written);
        Assert.Equal((NameAnswer.Resolved, id), (name.Answer, name.Id));
    }

    [Theory]
    [InlineData("rum", "white-rum")]
    [InlineData("Whiskey", "bourbon")]
    [InlineData("sherry", "fino-sherry")]
    [InlineData("Wine", "red-wine")]
    [InlineData("lemonade", "still-lemonade")]
    [InlineData("vermouth", "dry-vermouth")]
    [InlineData("food coloring", "red-food-colour")]
    [InlineData("limeade", "lime-cordial")]
    [InlineData("Lemon or lime juice", "lime-juice")]
    [InlineData("Bourbon or rye whiskey", "rye-whiskey")]
    [InlineData("White or dark crème de cacao", "creme-de-cacao-brown")]
    [InlineData("each triple sec, simple syrup", "simple-syrup")]
    [InlineData("Orange wheel, maraschino cherry", "cocktail-cherry")]
    [InlineData("each simple syrup, grenadine", "grenadine")]
    public void A_name_that_leaves_something_open_is_asked_about(string written, string among)
    {
        var name = Resolver.Resolve(written);
        Assert.Equal(NameAnswer.Unclear, name.Answer);
        Assert.Contains(among, name.Choices);
        Assert.NotEqual("", name.Because);
    }

    [Theory]
    [InlineData("Angostura Bitters", "aromatic-bitters")]
    [InlineData("Campari", "red-bitter-aperitif")]
    [InlineData("Tanqueray gin", "gin")]
    [InlineData("Old Mr. Boston Apricot Flavored Brandy", "apricot-liqueur")]
    [InlineData("Bacardi", "")]
    [InlineData("Jell-O", "")]
    [InlineData("Oreo cookie", "")]
    [InlineData("Malibu rum", "coconut-rum-liqueur")]
    [InlineData("Tabasco sauce", "hot-sauce")]
    [InlineData("Jägermeister", "herbal-bitter-liqueur")]
    public void A_makers_name_is_called_one(string written, string kind)
    {
        var name = Resolver.Resolve(written);
        Assert.Equal((NameAnswer.Maker, kind), (name.Answer, name.Id));
    }

    [Theory]
    [InlineData("warm oat thing")]
    [InlineData("vegan mascarpone")]
    [InlineData("dry milk")]
    [InlineData("alcohol-free gin and tonic essence")]
    [InlineData("egg-free mayonnaise")]
    [InlineData("chocolate milk")]
    [InlineData("sugar-free grenadine")]
    [InlineData("grandmother's secret")]
    public void What_changes_the_thing_is_never_left_out(string written) => Assert.Equal(NameAnswer.NotKnown, Resolver.Resolve(written).Answer);

    [Fact]
    public void Words_around_a_name_of_the_catalogue_never_lead_elsewhere()
    {
        var faults = new List<string>();
        foreach (string id in BuiltInCatalogue.Ids)
        {
            foreach (string written in new[] { "fresh " + id.Replace('-', ' '), id.Replace('-', ' ') + " (chilled)", id.Replace('-', ' ') + ", if desired" })
            {
                var name = Resolver.Resolve(written);
                if (name.Id != id && name.Answer == NameAnswer.Resolved && BuiltInCatalogue.Find("fresh-" + id) is null) faults.Add($"{written} -> {name.Id}");
                if (name.Answer == NameAnswer.NotKnown) faults.Add($"{written} is not known");
            }
        }

        Assert.Equal([], faults);
    }

    [Fact]
    public void No_neutral_word_names_an_allergen_or_a_thing()
    {
        using var table = Tables.Open("allergen-words");
        var allergens = Tables.Rows(table).Select(r => r.Text("word")).ToHashSet(StringComparer.Ordinal);
        Assert.Equal([], NameWords.Neutral.Where(w => allergens.Contains(w) || (BuiltInCatalogue.Find(w) is not null && w != "wine")));
    }

    /// <summary>Every item of the published lists: known or asked about, as a share of names and of uses.</summary>
    [Fact]
    public void Names_of_published_lists_are_understood()
    {
        var uses = PublishedLines.All.Where(l => l.Item.Length > 0).GroupBy(l => l.Item.Trim().ToLowerInvariant(), StringComparer.Ordinal)
            .Select(g => (Name: g.Key, Uses: g.Count(), Means: Resolver.Resolve(g.Key))).ToList();
        var generic = uses.Where(u => u.Means.Answer != NameAnswer.Maker).ToList();
        var known = generic.Where(u => u.Means.Answer != NameAnswer.NotKnown).ToList();
        double names = 100.0 * known.Count / generic.Count, byUse = 100.0 * known.Sum(u => u.Uses) / generic.Sum(u => u.Uses);
        string open = string.Join("; ", generic.Except(known).OrderByDescending(u => u.Uses).Select(u => $"{u.Name} ({u.Uses})"));
        Assert.True(names >= 93 && byUse >= 98, $"{names:F1} % of {generic.Count} names, {byUse:F1} % by use; not known: {open}");
    }

    /// <summary>
    /// A hundred names of the published lists drawn at random from those that are not names of the catalogue as they stand, each
    /// answer judged by hand. At most one in twenty may be wrong, and what was judged is what is answered.
    /// </summary>
    [Fact]
    public void At_most_one_answer_in_twenty_is_wrong()
    {
        var judged = PublishedLines.Rows("names-judged.csv").ToList();
        Assert.Equal(100, judged.Count);
        Assert.Equal([], judged.Where(j => Said(Resolver.Resolve(j[0])) != (j[1], j[2])).Select(j => $"{j[0]}: {Said(Resolver.Resolve(j[0]))}"));
        Assert.True(judged.Count(j => j[3] == "wrong") <= 5);
        Assert.All(judged, j => Assert.Contains(j[3], new[] { "right", "debatable", "wrong" }));
    }

    private static (string, string) Said(WrittenName name) => (name.Answer.ToString(), name.Id.Length > 0 ? name.Id : string.Join(' ', name.Choices));
}
