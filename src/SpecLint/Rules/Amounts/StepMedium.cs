using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

/// <summary>What a step acts on: something wet, which boils, or dry goods, sugar or fat alone, which get hotter.</summary>
internal static class StepMedium
{
    private static readonly double WaterLeast = Catalogue.Limits.Of("plausible-wet-water").Value / 100;

    private static readonly string[] SugarBrowned =
        ["caramel", "toffee", "butterscotch", "burnt sugar", "burnt-sugar", "praline", "brittle"];

    /// <summary>
    /// Whether a step acts on what is dry: none of the items that it names, or else of the recipe, is a liquid with water in
    /// it; or sugar is browned in it, by the words of the recipe, once its water is gone.
    /// </summary>
    /// <param name="context">The recipe.</param>
    /// <param name="step">The step.</param>
    /// <param name="reaches">
    /// Whether it is asked for what the food itself gets to, not for an oven: fruit and other watery solids boil too, unless fat fries them.
    /// </param>
    public static bool IsDry(RecipeContext context, Step step, bool reaches = false)
    {
        if (reaches && IsWateryMass(context, step)) return false;
        if (Browns(context.Recipe.Name) || Browns(step.Until) || Browns(step.Note)) return true;
        bool known = false;
        if (step.Items.Count > 0)
        {
            foreach (var item in step.Items)
            {
                if (context.Profiles.MaterialOf(item.Value) is not { } material) continue;
                known = true;
                if (IsWet(material)) return false;
            }

            return known;
        }

        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { } material || part.Phase == PartPhase.Beside) continue;
            known = true;
            if (IsWet(material)) return false;
        }

        return known;
    }

    /// <summary>Whether what a step works on is, by its mass, as watery as a liquid that boils, and no fat is in it.</summary>
    private static bool IsWateryMass(RecipeContext context, Step step)
    {
        double water = 0, all = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside
                || (step.Items.Count > 0 && !Pot.Of(context.Recipe).IsInTheVessel(step.Number - 1, part.Line, context.Profile)))
                continue;
            if (!part.IsWeighed || part.Material is not { Kind.IsFat: false } material) return false;
            all += part.Grams.Typical;
            water += part.Grams.Typical * material.Of(Component.Water);
        }

        return all > 0 && water >= WaterLeast * all && !Browns(context.Recipe.Name) && !Browns(step.Until) && !Browns(step.Note);
    }

    private static bool IsWet(Material material) =>
        material.State == MaterialState.Liquid
            && ((material.Unknown & (Unknowns.Water | Unknowns.Composition)) != 0 || material.Of(Component.Water) >= WaterLeast);

    private static bool Browns(Given<string> text)
    {
        if (!text.IsGiven) return false;
        foreach (string word in SugarBrowned)
        {
            if (text.Value.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0) return true;
        }

        return false;
    }
}
