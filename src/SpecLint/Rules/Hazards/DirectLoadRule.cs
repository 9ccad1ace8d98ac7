using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

/// <summary>A rule about single hazards that a line of the recipe itself brings, not one of a preparation in it.</summary>
internal abstract class DirectLoadRule : RecipeRule
{
    /// <inheritdoc/>
    public sealed override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Direct) Check(context, load);
        }
    }

    /// <summary>Checks one hazard of a line.</summary>
    protected abstract void Check(RecipeContext context, HazardLoad load);
}
