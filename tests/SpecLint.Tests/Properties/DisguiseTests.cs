using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Disguise: an alias, an own file that is <c>like</c> an item, one or two layers of preparations that hold it alone, a by-product,
/// a line in the garnish, the rim or a note instead of the mix never hide an allergen, or a hazard of the rules of hazards. A line
/// in two halves changes no harm finding at all.
/// </summary>
public sealed class DisguiseTests
{
    [Fact]
    public void No_disguise_hides_an_allergen_or_a_hazard() => PropertyRun.Holds(PropertyRun.Cases(2000), Disguises.Any, one =>
    {
        var hidden = one.Book.Copy();
        if (!one.Step!.Apply(hidden)) return null;
        CheckResult open = one.Book.Check(), dressed = hidden.Check();

        // What stands in a note only is in no line and so in no list: that it is not is the finding.
        if (one.Step.Touches is ["note", _] && dressed.Findings.Flat().Any(f => f.Rule.Id is "SL7034" or "SL6021" && f.Place.File.Path == one.Step.Path && f.Path.Contains("note", StringComparison.Ordinal))) return null;
        foreach (var recipe in open.Book.Recipes)
        {
            if (dressed.Book.Recipes.FirstOrDefault(r => r.Source.Path == recipe.Source.Path) is not { } same) continue;
            var had = AllergensOf(open, recipe);
            var has = AllergensOf(dressed, same);
            if (had.Except(has).FirstOrDefault() is { } lost) return $"{recipe.Id} holds {lost}, and in disguise it does not";
        }

        // A note takes a part out of every figure; what is asked of it is that part's own hazard.
        HarmOf before = new(open, one.Step.Touches is ["note", var id] ? f => f.Path.Contains(id, StringComparison.Ordinal) || f.Message.Contains($"`{id}`", StringComparison.Ordinal) : null), after = new(dressed);
        foreach (string rule in before.All.Select(f => f.Of.Rule).Distinct().Order(StringComparer.Ordinal))
        {
            if (IsElsewhere(rule, one.Step.Touches)) continue;
            if ((rule[2] == '6' || one.Step.Touches is ["split"]) && after.HighestOf(rule) < before.HighestOf(rule)) return $"{rule} had {before.HighestOf(rule)} and in disguise has {after.HighestOf(rule)}";
        }

        return null;
    });

    /// <summary>
    /// Whether a rule does not speak of a thing there, and why. What is added up in the liquid of a drink (thujone SL6004, quinine SL6006, benzoate
    /// SL6017, additives SL6018, sulphite SL6019, caffeine SL6020) has no garnish in it; a spirit on the glass is in no pot that is
    /// heated or lit (SL6015, SL6016); a whole bean beside the drink, without an amount, is not drunk (SL6003). A garnish of a plant
    /// or a poison counts, and so does a dose by weight. Caffeine with alcohol (SL6020) and sulphite on fresh fruit (SL6025) are about
    /// two parts together, of which a note holds one. Two weighings err otherwise than one: a reading at the very end of the range of its
    /// amounts (SL5004) may come into it.
    /// </summary>
    private static bool IsElsewhere(string rule, IReadOnlyList<string> touches) => touches switch
    {
        ["beside"] => rule is "SL6003" or "SL6004" or "SL6006" or "SL6015" or "SL6016" or "SL6017" or "SL6018" or "SL6019" or "SL6020",
        ["note", _] => rule is "SL6020" or "SL6025",
        ["split"] => rule is "SL5004",
        _ => false,
    };

    private static HashSet<string> AllergensOf(CheckResult result, Recipe recipe)
    {
        var allergens = result.Profiles.Of(recipe).Allergens;
        return [.. allergens.Contained(result.Book.Settings), .. allergens.Possible(result.Book.Settings)];
    }
}
