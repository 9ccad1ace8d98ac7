using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>
/// What has gone into a recipe by each of its steps. A line goes in at the first step that names it; a line that no step names
/// goes in with the first step that works on all that is there (one that names nothing), and where there is none, after the
/// last. What a step does, it does to what is in by then and named by it, or to everything in where it names nothing: heat
/// before a part goes in has not touched that part.
/// </summary>
internal readonly struct Pot
{
    private readonly FixedList<Step> steps;

    private Pot(FixedList<Step> steps) => this.steps = steps;

    /// <summary>The pot of a recipe.</summary>
    public static Pot Of(Recipe recipe) => new(recipe.Method);

    /// <summary>Number of the step, from 0, with which a line goes in; the number of steps where it goes in after all.</summary>
    public int Entry(Line line)
    {
        int general = -1;
        for (int i = 0; i < steps.Count; i++)
        {
            if (Names(steps[i], line)) return i;
            if (general < 0 && steps[i].Items.Count == 0 && (!steps[i].Verb.Keeps || steps[i].Verb.Dries) && !steps[i].Verb.Strains) general = i;
        }

        return general < 0 ? (steps.Count == 0 ? 0 : steps.Count) : general;
    }

    /// <summary>Whether a step works on a line: it is in by then, and the step names it or names nothing.</summary>
    public bool WorksOn(int step, Line line) => step >= Entry(line) && (steps[step].Items.Count == 0 || Names(steps[step], line));

    /// <summary>
    /// Whether a line is in the vessel at a step. A step that names only what is put into the liquid (leaves to macerate, spices to warm in
    /// spirit) is done in all the liquid that is there by then.
    /// </summary>
    /// <param name="step">Number of the step, from 0.</param>
    /// <param name="line">The line.</param>
    /// <param name="profile">The profile of the recipe.</param>
    public bool IsInTheVessel(int step, Line line, RecipeProfile profile)
    {
        if (step < Entry(line)) return false;
        if (steps[step].Items.Count == 0 || Names(steps[step], line)) return true;
        if (steps[step].Verb is { Extracts: false, Heats: false } || steps[step].Verb.HeatsDry) return false;
        foreach (var part in profile.Parts)
        {
            if (Names(steps[step], part.Line) && part.Material?.State != MaterialState.Solid && part.Material?.State != MaterialState.Powder) return false;
        }

        return true;
    }

    /// <summary>Whether some step of a kind works on a line.</summary>
    public bool Any(Line line, Func<Step, bool> isSuch)
    {
        int entry = Entry(line);
        for (int i = entry; i < steps.Count; i++)
        {
            if ((steps[i].Items.Count == 0 || Names(steps[i], line)) && isSuch(steps[i])) return true;
        }

        return false;
    }

    /// <summary>Number of the last step that puts a line in that no earlier step worked on; -1 where all are in from the start.</summary>
    public int LastEntry(RecipeProfile profile)
    {
        int last = -1;
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Beside) last = Math.Max(last, Entry(part.Line));
        }

        return last;
    }

    private static bool Names(Step step, Line line)
    {
        if (!line.Item.IsGiven) return false;
        foreach (var item in step.Items)
        {
            if (item.IsGiven && item.Value == line.Item.Value) return true;
        }

        return false;
    }
}
