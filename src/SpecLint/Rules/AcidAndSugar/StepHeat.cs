using SpecLint.Book;
using SpecLint.Reading;

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
    /// <param name="item">
    /// The item that has to be in it; <see langword="null"/> for any step, since what is hot may be poured on the rest.
    /// </param>
    public static double Hottest(Recipe recipe, string? item = null)
    {
        double hottest = double.NegativeInfinity;
        foreach (var step in recipe.Method)
        {
            if (item is not null && !Takes(step, item)) continue;
            var at = step.To.IsGiven ? step.To : step.At;
            bool stated = at is { IsGiven: true, Value.Dimension: Dimension.Temperature };
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

    /// <summary>How hot it is at a step: by the step itself, else by the last one before it that says so.</summary>
    public static (double Celsius, TextSpan Span)? At(Prep prep, int entry)
    {
        for (int i = entry; i >= 0; i--)
        {
            var step = prep.Method[i];
            if (i < entry && step.Verb.HeatsDry) continue;
            var heat = step.At.IsGiven ? step.At : step.To;
            if (heat is { IsGiven: true, Value.Dimension: Dimension.Temperature }) return (heat.Value.BaseLow, heat.Span);

            // What is rested or cooled in between is cooler, and nothing says how much.
            if (step.Verb.Cools || (i < entry && step.Verb.Keeps) || step.Verb.Freezes) return null;
        }

        return null;
    }
}
