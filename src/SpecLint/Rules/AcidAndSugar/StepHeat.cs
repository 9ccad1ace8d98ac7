using SpecLint.Book;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>How hot the steps of a recipe get.</summary>
internal static class StepHeat
{
    /// <summary>Water at the boil, °C.</summary>
    private const double Boil = 100;

    /// <summary>What is not warmer than a hot room, °C, is not heated.</summary>
    private const double Warm = 30;

    /// <summary>
    /// The highest temperature that the steps state, °C; negative infinity where nothing heats, NaN where a step heats and does not
    /// say how far.
    /// </summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="item">The item that has to be in it; <see langword="null"/> for any step, since what is hot may be poured on the rest.</param>
    public static double Hottest(Recipe recipe, string? item = null)
    {
        double hottest = double.NegativeInfinity;
        foreach (var step in recipe.Method)
        {
            if (item is not null && !Takes(step, item)) continue;
            var at = step.To.IsGiven ? step.To : step.At;
            bool stated = at is { IsGiven: true, Value.Dimension: Reading.Dimension.Temperature };
            if (stated && at.Value.BaseHigh > Warm) hottest = Math.Max(hottest, at.Value.BaseHigh);
            if (step.Verb.Boils) hottest = Math.Max(hottest, Boil);
            else if (!stated && (!step.Verb.IsKnown || step.Verb.Heats || step.Verb.Cooks)) return double.NaN;
        }

        return hottest;
    }

    /// <summary>Whether an item is in what a step works on: a step that names none works on all.</summary>
    public static bool Takes(Step step, string item)
    {
        if (step.Items.Count == 0) return true;
        foreach (var one in step.Items)
        {
            if (one.Value == item) return true;
        }

        return false;
    }
}
