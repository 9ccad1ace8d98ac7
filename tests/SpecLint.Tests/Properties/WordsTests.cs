using System.Text.Json.Nodes;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Agreement of words with facts: whatever a recipe or a menu says, and wherever it says so, a claim that the tree of parts contradicts
/// is found, and one that it bears out is not called false. A list of allergens that lacks one of those contained is found to lack
/// that one, and a full list is not.
/// </summary>
public sealed class WordsTests
{
    private static readonly string[] Nuts = ["almond", "hazelnut", "walnut", "cashew", "pecan", "brazil-nut", "pistachio", "macadamia"];

    /// <summary>Claims with the allergens that contradict each.</summary>
    private static readonly (string Words, string[] Against)[] Claims =
    [
        ("milk-free", ["milk"]), ("contains no milk", ["milk"]), ("dairy-free", ["milk"]), ("egg-free", ["egg"]), ("contains no egg", ["egg"]),
        ("nut-free", Nuts), ("contains no nuts", Nuts), ("almond-free", ["almond"]), ("gluten-free", ["wheat", "barley", "rye"]), ("celery-free", ["celery"]),
        ("fish-free", ["fish"]), ("sesame-free", ["sesame"]), ("soya-free", ["soybean"]), ("peanut-free", ["peanut"]), ("mustard-free", ["mustard"]),
        ("vegan", ["milk", "egg", "fish", "crustaceans", "molluscs"]), ("alcohol-free", []),
    ];

    private static readonly string[] OfRecipe = ["declares.claims", "declares.advisory", "name", "notes", "method", "line"];
    private static readonly string[] OfMenu = ["claims", "words", "entry name", "entry notes", "menu notes", "menu name"];

    /// <summary>Rules about claims, of a recipe and of a menu.</summary>
    private static readonly HashSet<string> About = ["SL7012", "SL7013", "SL7015", "SL7016", "SL7031", "SL9012"];

    [Fact]
    public void No_word_stands_against_the_facts() => PropertyRun.Holds(PropertyRun.Cases(400, 30_000), Claim, one =>
    {
        string[] words = one.Step!.Words.Split('|');
        var said = one.Book.Copy();
        if (!one.Step.Apply(said)) return null;
        CheckResult before = one.Book.Check(), after = said.Check();
        string path = one.Step.Path, on = words[1] == "menu" ? "said.menu.json" : path;
        if (before.Book.Recipes.FirstOrDefault(r => r.Source.Path == path) is not { } recipe
            || after.Book.Files.FirstOrDefault(f => f.Source.Path == on) is null)
            return null;
        var (claim, against) = Claims.First(c => c.Words == words[2]);
        var profile = before.Profiles.Of(recipe);
        var settings = before.Book.Settings;
        HashSet<string> holds = [.. profile.Allergens.Contained(settings)];

        // What the recipe says already is found there, and once.
        if (before.Findings.Flat().Any(f => About.Contains(f.Rule.Id) && f.Place.File.Path == path)) return null;
        var told = after.Findings.Flat().Where(f => About.Contains(f.Rule.Id) && f.Place.File.Path == on).ToList();
        var abv = profile.Get(Fact.Abv);

        // What is said on a line is said of that line.
        if (words[3] == "line")
            holds.IntersectWith(profile.Allergens.Origins.Where(o => o.Certain && o.Part.Line == recipe.Ingredients[0])
                .Select(o => o.Token));
        bool isFalse = claim == "alcohol-free" ? words[3] != "line" && abv is { IsKnown: true, Low: > 1.2 } : against.Any(holds.Contains);
        if (isFalse && !told.Exists(f => f.Level >= Level.Warning && f.Answer == Answer.Broken))
            return $"it holds {string.Join(", ", holds)} at {abv.Value:0.0} % vol, and nothing contradicts \"{claim}\" ({words[3]})";
        bool isTrue = claim is not ("alcohol-free" or "vegan")
            && profile.Unresolved is null
            && profile.Allergens.Unknown.Count == 0
            && !profile.Allergens.Origins.Any(o => against.Contains(o.Token) || (o.Token == "oats" && against.Contains("wheat")));
        return isTrue && told.Find(f => f.Answer == Answer.Broken) is { } wrong ? $"\"{claim}\" ({words[3]}) is called false: {wrong.Message}" : null;
    });

    [Fact]
    public void A_list_of_allergens_that_lacks_one_is_found_to_lack_it() => PropertyRun.Holds(PropertyRun.Cases(250, 20_000), Declare, one =>
    {
        var before = one.Book.Check();
        string path = one.Step!.Path;
        if (before.Book.Recipes.FirstOrDefault(r => r.Source.Path == path) is not { } recipe) return null;
        var allergens = before.Profiles.Of(recipe).Allergens;
        string[] all = [.. allergens.Found.Select(f => f.Token)], holds = [.. allergens.Found.Where(f => f.Presence == Presence.Contained)
            .Select(f => f.Token)];
        if (holds.Length == 0) return null;
        string lacks = holds[int.Parse(one.Step.Words.Split('|')[1], System.Globalization.CultureInfo.InvariantCulture) % holds.Length];
        if (Undeclared(all) is { Count: > 0 } surplus) return $"all that it holds is declared, and {string.Join(", ", surplus)} is missed";
        var short_ = Undeclared([.. all.Where(t => t != lacks)]);
        return short_.SequenceEqual([lacks]) ? null : $"its list lacks {lacks}, and check misses {(short_.Count == 0 ? "nothing" : string.Join(", ", short_))}";

        List<string> Undeclared(string[] list)
        {
            var book = one.Book.Copy();
            if (book[path]!["declares"] is not JsonObject declares) book[path]!["declares"] = declares = [];
            declares["allergens"] = new JsonArray([.. list.Select(t => (JsonNode)t)]);
            declares.Remove("mayContain");
            return [.. book.Check().Findings.Flat().Where(f => f.Rule.Id == "SL7001" && f.Place.File.Path == path).Select(f => f.Key)];
        }
    });

    private static PropertyStep? Declare(Random random, PropertyBook book)
    {
        string path = RecipeOf(random, book);
        int which = random.Next(12);
        return path.Length == 0 ? null : new PropertyStep($"{path}: declares all allergens but one |{which}", static _ => true) { Path = path };
    }

    /// <summary>
    /// Says something in one of the places where words stand. The words of the step tell the file, the kind of place, the claim and the
    /// place.
    /// </summary>
    private static PropertyStep? Claim(Random random, PropertyBook book)
    {
        string path = RecipeOf(random, book);
        if (path.Length == 0) return null;
        string claim = PropertySteps.Pick(random, Claims).Words;
        bool menu = path.EndsWith(".drink.json", StringComparison.Ordinal) && random.Next(3) == 0;
        string place = PropertySteps.Pick(random, menu ? OfMenu : OfRecipe);
        return new PropertyStep(
            $"{path}|{(menu ? "menu" : "recipe")}|{claim}|{place}",
            menu ? b => OnMenu(b, path, place, claim) : b => OnRecipe(b[path], place, claim))
        { Path = path };
    }

    private static string RecipeOf(Random random, PropertyBook book) =>
        PropertySteps.Pick(
            random,
            [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal)
                || p.EndsWith(".drink.json", StringComparison.Ordinal))]);

    private static bool OnRecipe(JsonObject? recipe, string place, string claim)
    {
        if (recipe is null) return false;
        switch (place)
        {
            case "name": recipe["name"] = $"{(string?)recipe["name"]} ({claim})"; return true;
            case "notes": recipe["notes"] = $"This is {claim}."; return !claim.StartsWith("contains", StringComparison.Ordinal);
            case "method" when recipe["method"] is JsonArray { Count: > 0 } steps
                && steps[^1] is JsonObject step:
                step["note"] = $"It is {claim}."; return !claim.StartsWith("contains", StringComparison.Ordinal);
            case "line" when recipe["ingredients"] is JsonArray { Count: > 0 } lines
                && lines[0] is JsonObject line:
                line["note"] = $"It is {claim}."; return !claim.StartsWith("contains", StringComparison.Ordinal);
            case "declares.claims" or "declares.advisory":
                if (recipe["declares"] is not JsonObject declares) recipe["declares"] = declares = [];
                declares[place[9..]] = new JsonArray(place == "declares.claims" ? claim.Replace(' ', '-') : $"It is {claim}.");
                return true;
            default: return false;
        }
    }

    private static bool OnMenu(PropertyBook book, string path, string place, string claim)
    {
        var entry = new JsonObject { ["drink"] = path[(path.LastIndexOf('/') + 1)..path.IndexOf('.', StringComparison.Ordinal)] };
        var menu = new JsonObject { ["name"] = place == "menu name" ? $"Our {claim} drinks" : "Tonight", ["drinks"] = new JsonArray(entry) };
        switch (place)
        {
            case "claims": entry["claims"] = new JsonArray(claim.Replace(' ', '-')); break;
            case "words": entry["words"] = $"A long drink, {claim}."; break;
            case "entry name": entry["name"] = $"Sluice, {claim}"; break;
            case "entry notes": entry["notes"] = $"This is {claim}."; break;
            case "menu notes": menu["notes"] = $"These are {claim}."; break;
        }

        book.Put("said.menu.json", menu);
        return true;
    }
}
