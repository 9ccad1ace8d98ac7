using System.Text.Json.Nodes;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

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
        if (one.Step.Touches is ["note", _]
            && dressed.Findings.Flat()
                .Any(f => f.Rule.Id is "SL7034" or "SL6021"
                    && f.Place.File.Path == one.Step.Path
                    && f.Path.Contains("note", StringComparison.Ordinal)))
            return null;
        foreach (var recipe in open.Book.Recipes)
        {
            if (dressed.Book.Recipes.FirstOrDefault(r => r.Source.Path == recipe.Source.Path) is not { } same) continue;
            var had = AllergensOf(open, recipe);
            var has = AllergensOf(dressed, same);
            if (had.Except(has).FirstOrDefault() is { } lost) return $"{recipe.Id} holds {lost}, and in disguise it does not";
        }

        // A note takes a part out of every figure; what is asked of it is that part's own hazard.
        HarmOf before = new(
            open,
            one.Step.Touches is ["note", var id]
                ? f => f.Path.Contains(id, StringComparison.Ordinal) || f.Message.Contains($"`{id}`", StringComparison.Ordinal)
                : null), after = new(dressed);
        foreach (string rule in before.All.Select(f => f.Of.Rule).Distinct().Order(StringComparer.Ordinal))
        {
            if (IsElsewhere(rule, one.Step.Touches)) continue;
            if ((rule[2] == '6' || one.Step.Touches is ["split"]) && after.HighestOf(rule) < before.HighestOf(rule))
                return $"{rule} had {before.HighestOf(rule)} and in disguise has {after.HighestOf(rule)}";
        }

        return null;
    });

    /// <summary>
    /// One line or two, its name or an alias, the catalogue's file or a copy of it, the thing itself or a preparation that holds it
    /// alone: every figure of the recipe is the same, and none is known better than before.
    /// </summary>
    [Fact]
    public void No_disguise_changes_a_figure() => PropertyRun.Holds(PropertyRun.Cases(1500), Disguises.OfFigures, one =>
    {
        // A reading is of the recipe as it was measured, and a step names its items by the names that they have.
        var known = one.Book.Copy();
        foreach (string path in known.Paths) known[path]!.Remove("measured");
        if (known[one.Step!.Path]?["method"] is JsonArray steps && steps.Any(s => s?["items"] is not null)) return null;
        var hidden = known.Copy();
        if (!one.Step.Apply(hidden)) return null;
        CheckResult open = known.Check(), dressed = hidden.Check();
        if (open.Book.Recipes.FirstOrDefault(r => r.Source.Path == one.Step.Path) is not { } recipe
            || dressed.Book.Recipes.FirstOrDefault(r => r.Source.Path == one.Step.Path) is not { } same)
            return null;

        // Of one thing in two lines, one of which is now another's, each is measured by itself.
        RecipeProfile before = open.Profiles.Of(recipe), after = dressed.Profiles.Of(same);
        if (before.Parts.GroupBy(p => p.Material).Any(g => g.Count() > 1)) return null;

        // What is strained out, or lies beside the drink, is something else once it is mixed into a preparation.
        if (one.Step.Touches is ["wrap"]
            && before.Parts.Any(static p => p.Phase != PartPhase.Mix
                || p.Material is not { State: MaterialState.Liquid, Kind.IsFat: false }))
            return null;
        foreach (var fact in Enum.GetValues<Fact>())
        {
            FactValue was = before.Get(fact), now = after.Get(fact);

            // A layer says by itself how long it is kept.
            if (one.Step.Touches is ["wrap"] && fact == Fact.Life) continue;

            // What a bar says of its own is believed less than the catalogue: it may keep shorter, never longer.
            if (fact == Fact.Life && was.IsKnown && now.IsKnown && now.Value <= was.Value) continue;
            if (fact == Fact.Life && !was.IsKnown) continue;
            if (was.IsKnown != now.IsKnown) return $"{fact} was {Of(was)} and is {Of(now)}";
            if (!was.IsKnown) continue;
            double error = (1e-6 * Math.Max(1, Math.Abs(was.Value))) + (0.01 * (was.High - was.Low));
            if (Math.Abs(was.Value - now.Value) > error) return $"{fact} was {Of(was)} and is {Of(now)}";

            // Each half is weighed to the same half gram, so a small amount is known less well. Where a figure bends, the most probable
            // way to its end then is another one, and ends elsewhere.
            if (fact is Fact.WaterActivity or Fact.Ph or Fact.FreezingPoint) error += 0.1 * (was.High - was.Low);
            if (one.Step.Touches is ["split"] or ["wrap"] && (now.Low > was.Low + error || now.High < was.High - error))
                return $"{fact} was {Of(was)} and is known better: {Of(now)}";
        }

        if (before.Keeping?.What > after.Keeping?.What) return $"it held {before.Keeping?.What} and holds {after.Keeping?.What}";
        if (after.Keeping?.Verdict == KeepingVerdict.NotControlled && before.Keeping?.Verdict != KeepingVerdict.NotControlled)
            return $"its verdict was {before.Keeping?.Verdict} and is {after.Keeping?.Verdict}";
        return null;

        static string Of(FactValue value) =>
            value.IsKnown ? $"{value.Value:0.######} ({value.Low:0.######} to {value.High:0.######})" : $"open ({value.OpenBecause})";
    });

    /// <summary>
    /// Whether a rule does not speak of a thing there, and why. What is added up in the liquid of a drink (thujone SL6004, quinine SL6006, benzoate
    /// SL6017, additives SL6018, sulphite SL6019, caffeine SL6020) has no garnish in it; a spirit on the glass is in no pot that is
    /// heated or lit (SL6015, SL6016), nor does acid on the rim stand in the metal of the glass (SL6012); a whole bean beside the drink,
    /// without an amount, is not drunk (SL6003). A garnish of a plant or a poison counts, and so does a dose by weight. Caffeine with alcohol (SL6020) and sulphite on fresh fruit (SL6025) are about
    /// two parts together, of which a note holds one. Two weighings err otherwise than one: a reading at the very end of the range of its
    /// amounts (SL5004) may come into it.
    /// </summary>
    private static bool IsElsewhere(string rule, IReadOnlyList<string> touches) => touches switch
    {
        ["beside"] => rule is "SL6003" or "SL6004" or "SL6006" or "SL6012" or "SL6015" or "SL6016" or "SL6017" or "SL6018" or "SL6019" or "SL6020",
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
