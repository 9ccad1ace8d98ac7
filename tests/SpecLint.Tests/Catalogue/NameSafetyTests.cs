using System.Globalization;
using System.Text.RegularExpressions;
using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Tests.BuiltIn;

/// <summary>
/// A name or a synonym never leads to an entry with fewer allergens, hazards or animal sources, or another strength, than what
/// the words of the name mean. The words are those of the trade and of the lists of allergens, not those of the entries.
/// </summary>
public sealed partial class NameSafetyTests
{
    /// <summary>Words that mean an allergen, by its token. Whole words of a name; the longest phrase wins.</summary>
    private static readonly Dictionary<string, string> AllergenWords = new(StringComparer.Ordinal)
    {
        ["milk"] = "milk",
        ["malted-milk"] = "milk",
        ["cream"] = "milk",
        ["butter"] = "milk",
        ["cheese"] = "milk",
        ["parmesan"] = "milk",
        ["cheddar"] = "milk",
        ["pecorino"] = "milk",
        ["mascarpone"] = "milk",
        ["yogurt"] = "milk",
        ["yoghurt"] = "milk",
        ["whey"] = "milk",
        ["buttermilk"] = "milk",
        ["custard"] = "milk",
        ["lactose"] = "milk",
        ["egg"] = "egg",
        ["eggs"] = "egg",
        ["yolk"] = "egg",
        ["meringue"] = "egg",
        ["mayonnaise"] = "egg",
        ["brioche"] = "egg",
        ["frangipane"] = "egg",
        ["eggnog"] = "egg",
        ["wheat"] = "wheat",
        ["rye"] = "rye",
        ["barley"] = "barley",
        ["malt"] = "barley",
        ["malted"] = "barley",
        ["oat"] = "oats",
        ["oats"] = "oats",
        ["spelt"] = "wheat",
        ["bread"] = "wheat",
        ["toast"] = "wheat",
        ["pretzel"] = "wheat",
        ["biscuit"] = "wheat",
        ["soy"] = "soybean",
        ["soya"] = "soybean",
        ["soybean"] = "soybean",
        ["tofu"] = "soybean",
        ["miso"] = "soybean",
        ["tamari"] = "soybean",
        ["hoisin"] = "soybean",
        ["almond"] = "almond",
        ["marzipan"] = "almond",
        ["orgeat"] = "almond",
        ["hazelnut"] = "hazelnut",
        ["praline"] = "hazelnut",
        ["walnut"] = "walnut",
        ["cashew"] = "cashew",
        ["pecan"] = "pecan",
        ["pistachio"] = "pistachio",
        ["macadamia"] = "macadamia",
        ["brazil-nut"] = "brazil-nut",
        ["peanut"] = "peanut",
        ["sesame"] = "sesame",
        ["tahini"] = "sesame",
        ["mustard"] = "mustard",
        ["celery"] = "celery",
        ["celeriac"] = "celery",
        ["lupin"] = "lupin",
        ["fish"] = "fish",
        ["anchovy"] = "fish",
        ["bonito"] = "fish",
        ["furikake"] = "fish",
        ["caviar"] = "fish",
        ["worcester"] = "fish",
        ["worcestershire"] = "fish",
        ["prawn"] = "crustacean",
        ["shrimp"] = "crustacean",
        ["crab"] = "crustacean",
        ["lobster"] = "crustacean",
        ["oyster"] = "mollusc",
        ["clam"] = "mollusc",
        ["squid"] = "mollusc",
        ["seafood-seasoning"] = "celery",
    };

    /// <summary>Phrases in which such a word means something else, with what it means.</summary>
    private static readonly Dictionary<string, string> OtherMeanings = new(StringComparer.Ordinal)
    {
        ["coconut-milk"] = "of a nut",
        ["almond-milk"] = "of a nut",
        ["oat-milk"] = "of a cereal",
        ["soy-milk"] = "of a bean",
        ["soya-milk"] = "of a bean",
        ["rice-milk"] = "of a cereal",
        ["cashew-milk"] = "of a nut",
        ["hazelnut-milk"] = "of a nut",
        ["pea-milk"] = "of a pulse",
        ["hemp-milk"] = "of a seed",
        ["walnut-milk"] = "of a nut",
        ["macadamia-milk"] = "of a nut",
        ["pistachio-milk"] = "of a nut",
        ["peanut-milk"] = "of a nut",
        ["sesame-milk"] = "of a seed",
        ["quinoa-milk"] = "of a seed",
        ["plant-milk"] = "of a plant",
        ["tiger-nut-milk"] = "of a tuber",
        ["flax-milk"] = "of a seed",
        ["banana-milk"] = "of a fruit",
        ["potato-milk"] = "of a tuber",
        ["coconut-cream"] = "of a nut",
        ["cream-of-coconut"] = "of a nut",
        ["oat-cream"] = "of a cereal",
        ["soy-cream"] = "of a bean",
        ["cream-sherry"] = "a sweet sherry",
        ["cream-soda"] = "vanilla soda",
        ["cream-of-tartar"] = "a salt",
        ["creme-de"] = "a liqueur",
        ["vegan-cream"] = "of a plant",
        ["cocoa-butter"] = "a fat of cocoa",
        ["cacao-butter"] = "a fat of cocoa",
        ["peanut-butter"] = "a paste",
        ["almond-butter"] = "a paste",
        ["nut-butter"] = "a paste",
        ["shea-butter"] = "a fat",
        ["malt-vinegar"] = "told apart by its own row",
        ["barley-free"] = "without",
        ["egg-free"] = "without",
        ["vegan"] = "without",
        ["milk-thistle"] = "a plant",
        ["milk-free"] = "without",
        ["dairy-free"] = "without",
        ["oyster-mushroom"] = "a mushroom",
        ["oyster-leaf"] = "a plant",
        ["celery-bitters"] = "a seed, in drops",
        ["malted-barley-free"] = "without",
        ["single-malt"] = "a distillate",
        ["malt-whisky"] = "a distillate",
        ["malt-whiskey"] = "a distillate",
        ["wheat-whiskey"] = "a distillate",
        ["rye-whiskey"] = "a distillate",
        ["rye-whisky"] = "a distillate",
        ["rye-whiskey-50"] = "a distillate",
        ["rye"] = "a distillate where it stands alone",
        ["mustard-leaf"] = "told apart by its own row",
        ["wheat-vodka"] = "a distillate",
        ["rye-vodka"] = "a distillate",
        ["butter-fat"] = "told apart by its own row",
        ["buttercup"] = "a plant",
        ["butterfly-pea"] = "a plant",
        ["soy-lecithin"] = "told apart by its own row",
        ["pine-nut"] = "named by few laws",
        ["pumpkin-seed-orgeat"] = "of a seed",
        ["hazelnut-orgeat"] = "of another nut",
        ["pistachio-orgeat"] = "of another nut",
        ["sesame-orgeat"] = "of a seed",
        ["walnut-orgeat"] = "of another nut",
        ["cashew-orgeat"] = "of another nut",
        ["macadamia-orgeat"] = "of another nut",
        ["peanut-orgeat"] = "of another nut",
        ["pecan-orgeat"] = "of another nut",
        ["sunflower-orgeat"] = "of a seed",
        ["tiger-nut-orgeat"] = "of a tuber",
        ["coconut-orgeat"] = "of a nut that few laws name",
        ["bitter-almond"] = "told apart by its own row",
        ["cashew-cream"] = "of a nut",
        ["caviar-lime"] = "a fruit",
        ["chestnut-cream"] = "a paste",
        ["coconut-condensed-milk"] = "of a nut",
        ["coconut-yoghurt"] = "of a nut",
        ["cream-charger"] = "a gas",
        ["cream-siphon-charger"] = "a gas",
        ["ice-cream-cone"] = "told apart by what it is made of",
        ["melon-seed-orgeat"] = "of a seed",
        ["milk-oolong"] = "a tea",
        ["oat-whipping-cream"] = "of a cereal",
        ["pepita-orgeat"] = "of a seed",
        ["pistachio-butter"] = "a paste",
        ["plant-cream"] = "of a plant",
        ["plant-yoghurt"] = "of a plant",
        ["plant-yogurt"] = "of a plant",
        ["seed-orgeat"] = "of a seed",
        ["sunflower-seed-orgeat"] = "of a seed",
        ["soya-cream"] = "of a bean",
        ["vegan-condensed-milk"] = "of a plant",
        ["vegan-egg-white-powder"] = "of a plant",
        ["vegan-yoghurt"] = "of a plant",
        ["wheat-free-soy-sauce"] = "without wheat",
        ["wheat-grass-juice"] = "of the leaf, not the grain",
        ["date-honey"] = "of a fruit",
        ["lactose-free"] = "milk all the same",
        ["black-walnut-bitters"] = "told apart by its own row",
        ["whey-permeate"] = "milk all the same",
        ["coconut-butter"] = "a fat",
        ["apple-butter"] = "a paste of fruit",
        ["fruit-butter"] = "a paste of fruit",
        ["butter-extract"] = "an aroma",
        ["malt-extract"] = "barley all the same",
        ["oat-straw"] = "a plant",
        ["lupin-free"] = "without",
        ["coconut-yogurt"] = "of a nut",
        ["soy-yogurt"] = "of a bean",
        ["oat-yogurt"] = "of a cereal",
    };

    /// <summary>Words of an animal, with the sources that the entry may state.</summary>
    private static readonly Dictionary<string, string[]> AnimalWords = new(StringComparer.Ordinal)
    {
        ["beef"] = ["meat", "gelatine"],
        ["pork"] = ["meat", "gelatine"],
        ["bacon"] = ["meat"],
        ["chicken"] = ["meat"],
        ["duck"] = ["meat", "egg"],
        ["goose"] = ["meat"],
        ["chorizo"] = ["meat"],
        ["salami"] = ["meat"],
        ["nduja"] = ["meat"],
        ["lard"] = ["meat"],
        ["tallow"] = ["meat"],
        ["ham"] = ["meat"],
        ["honey"] = ["honey"],
        ["honeycomb"] = ["honey"],
        ["gelatine"] = ["gelatine", "fish"],
        ["gelatin"] = ["gelatine", "fish"],
        ["isinglass"] = ["fish"],
        ["egg"] = ["egg", "milk"],
        ["cheese"] = ["milk"],
        ["anchovy"] = ["fish"],
        ["oyster"] = ["mollusc"],
        ["prawn"] = ["crustacean"],
        ["shrimp"] = ["crustacean"],
        ["cochineal"] = ["insect"],
        ["carmine"] = ["insect"],
        ["shellac"] = ["insect"],
    };

    private static readonly HashSet<string> FlavourOnly = new(StringComparer.Ordinal) { "syrup", "liqueur", "bitters", "soda", "spirit", "beer", "infusion", "other", "sugar", "colour" };

    [Fact]
    public void No_name_leads_to_an_entry_without_the_allergen_that_it_means()
    {
        var faults = new List<string>();
        foreach (var (entry, name) in Names())
        {
            string rest = Without(name, OtherMeanings.Keys);
            foreach (var pair in AllergenWords)
            {
                if (!Holds(rest, pair.Key) || entry.Allergens is not { } allergens) continue;
                bool declared = allergens.Contains.Contains(pair.Value);

                // A flavour may be made without what it tastes of; then the label decides, and the entry says that it may be there.
                bool perhaps = allergens.MayContain.Contains(pair.Value) && FlavourOnly.Contains(entry.IngredientKind.Or(ItemKind.Other).Id);
                bool exempt = allergens.Exempt.Any(e => e.Allergen == pair.Value);
                if (!declared && !perhaps && !exempt) faults.Add($"{name} -> {entry.Id}: {pair.Value}");
            }
        }

        None(faults);
    }

    [Fact]
    public void No_name_of_an_animal_leads_to_an_entry_without_it()
    {
        string[] meanings = [.. OtherMeanings.Keys, "oyster-sauce-vegan", "honeydew", "duck-sauce", "honey-mushroom", "eggplant", "chicken-of-the-woods", "vegan-honey", "honeyed", "honey-locust", "beef-tomato"];
        var faults = new List<string>();
        foreach (var (entry, name) in Names())
        {
            string rest = Without(name, meanings);
            foreach (var pair in AnimalWords)
            {
                if (Holds(rest, pair.Key) && entry.Animal.Or("none") is var animal && animal is not "unknown" && !pair.Value.Contains(animal)) faults.Add($"{name} -> {entry.Id}: {animal}");
            }
        }

        None(faults);
    }

    [Fact]
    public void No_name_of_a_hazard_leads_to_an_entry_without_it()
    {
        var faults = new List<string>();
        using var table = Tables.Open("hazards");
        var words = new List<(string Word, string Id)>();
        foreach (var row in Tables.Rows(table))
        {
            if (row.Text("kind") is not "toxic plant") continue;
            words.Add((row.Text("id"), row.Text("id")));
            foreach (string alias in row.Texts("aliases")) words.Add((BuiltInCatalogue.Slug(alias), row.Text("id")));
        }

        foreach (var (entry, name) in Names())
        {
            foreach (var (word, id) in words)
            {
                if (word.Length > 3 && Holds(name, word) && !entry.Hazard.IsGiven && !HarmlessNamesakes.Contains(entry.Id)) faults.Add($"{name} -> {entry.Id}: {id}");
            }
        }

        None(faults);
    }

    /// <summary>Entries whose name is also that of a poisonous plant and means another.</summary>
    private static readonly HashSet<string> HarmlessNamesakes = new(StringComparer.Ordinal) { "pea", "sweet-pea" };

    [Fact]
    public void No_name_leads_to_an_entry_of_another_strength()
    {
        var faults = new List<string>();
        foreach (var entry in Entries)
        {
            if (!entry.Values.TryGetValue("strength", out var strength) || strength.High < 1.2) continue;
            foreach (string name in entry.Aliases.Select(a => a.Value).Append(entry.Name.Value))
            {
                var match = Percent().Match(name);
                if (!match.Success) continue;
                double number = double.Parse(match.Groups["n"].Value, CultureInfo.InvariantCulture);
                double vol = match.Groups["u"].Value.Contains("proof", StringComparison.OrdinalIgnoreCase) ? number / 2 : number;
                // "100 % agave" is of what it is made.
                if (vol < 100 && (vol < strength.Low - 0.3 || vol > strength.High + 0.3)) faults.Add($"{name} -> {entry.Id}: {strength.Low}–{strength.High} % vol");
            }
        }

        None(faults);
        Assert.Equal(75.5, BuiltInCatalogue.Find("151-rum")!.Values["strength"].Typical);
    }

    /// <summary>Names that say too little stay out of the index, so that the rule of unclear names can ask.</summary>
    [Theory]
    [InlineData("triple-sec")]
    [InlineData("saline")]
    [InlineData("super-juice")]
    [InlineData("lactic-acid")]
    [InlineData("rum")]
    [InlineData("sherry")]
    [InlineData("lemonade")]
    public void An_unclear_name_is_asked_about(string name)
    {
        Assert.Null(BuiltInCatalogue.Find(name));
        Assert.NotNull(UnclearNames.Find(name));
    }

    /// <summary>
    /// Entries of one kind that share every value of their composition say so: each is <c>like</c> another or a class value with a
    /// range. A spirit is its strength and a fat is fat: there the same numbers are no copy.
    /// </summary>
    [Fact]
    public void Copied_compositions_are_class_values()
    {
        var groups = new Dictionary<string, List<Ingredient>>(StringComparer.Ordinal);
        foreach (var entry in Entries)
        {
            string kind = entry.IngredientKind.Or(ItemKind.Other).Id;
            if (kind is "spirit" or "fat" or "ice" or "gas" || entry.Like.IsGiven) continue;
            var contents = entry.Values.Where(v => IsContent(v.Key)).OrderBy(v => v.Key, StringComparer.Ordinal).ToList();
            if (contents.Count < 3) continue;
            string key = kind + ": " + string.Join(", ", contents.Select(v => string.Create(CultureInfo.InvariantCulture, $"{v.Key} {v.Value.Typical:R}")));
            if (!groups.TryGetValue(key, out var group)) groups.Add(key, group = []);
            group.Add(entry);
        }

        var copied = groups.Values.Where(g => g.Count > 1).SelectMany(g => g).ToList();
        Assert.NotEmpty(copied);
        Assert.Equal([], copied.Where(e => !IsClassValue(e)).Select(e => e.Id));
        Assert.Equal([], copied.Where(e => e.Values.Where(v => v.Key.StartsWith("sugars.", StringComparison.Ordinal) && v.Value.Typical > 0).Any(v => v.Value.Low >= v.Value.High)).Select(e => e.Id + ": a class value without a range"));
    }

    private static void None(List<string> faults) => Assert.True(faults.Count == 0, string.Join('\n', faults.OrderBy(f => f, StringComparer.Ordinal)));

    private static bool IsContent(string path) =>
        path is "water" or "strength" or "protein" or "fat" or "fibre" or "salt" or "ph" or "potassium" || path.StartsWith("sugars.", StringComparison.Ordinal) || path.StartsWith("acids.", StringComparison.Ordinal);

    private static bool IsClassValue(Ingredient entry) => entry.Notes.Any(n => n.Value.Contains("Class value", StringComparison.Ordinal));

    private static IEnumerable<Ingredient> Entries => BuiltInCatalogue.Ids.Select(id => BuiltInCatalogue.Find(id)!);

    private static IEnumerable<(Ingredient Entry, string Name)> Names()
    {
        foreach (var entry in Entries)
        {
            foreach (string name in entry.Aliases.Select(a => BuiltInCatalogue.Slug(a.Value)).Append(BuiltInCatalogue.Slug(entry.Name.Value)).Append(entry.Id).Distinct(StringComparer.Ordinal))
                yield return (entry, name);
        }
    }

    private static bool Holds(string slug, string phrase) => ("-" + slug + "-").Contains("-" + phrase + "-", StringComparison.Ordinal);

    private static string Without(string slug, IEnumerable<string> phrases)
    {
        string text = "-" + slug + "-";
        foreach (string phrase in phrases.OrderByDescending(p => p.Length))
        {
            if (slug == phrase || phrase.Contains('-')) text = text.Replace("-" + phrase + "-", "--", StringComparison.Ordinal);
        }

        return text.Trim('-');
    }

    [GeneratedRegex(@"(?<n>\d+(\.\d+)?) ?-?(?<u>%|(US )?proof)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Percent();
}
