using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>A part that can hurt, and how much of it a recipe holds through its whole tree.</summary>
/// <param name="Hazard">What it is.</param>
/// <param name="Part">The line of the recipe that brings it.</param>
/// <param name="Id">Id of the item itself.</param>
/// <param name="Grams">Its mass in the whole recipe, g; NaN where it cannot be had.</param>
/// <param name="Strained">Whether it is strained out somewhere on the way, so that only what it gave off is in the drink.</param>
/// <param name="Direct">Whether it is a line of the recipe itself.</param>
internal sealed record HazardLoad(Hazard Hazard, Part Part, string Id, double Grams, bool Strained, bool Direct)
{
    /// <summary>What is hazardous in a recipe.</summary>
    public static FixedList<HazardLoad> Of(RecipeProfile profile, ProfileSet set)
    {
        List<HazardLoad>? loads = null;
        foreach (var part in profile.Parts)
        {
            if (part.Item is null || part.Material is null) continue;
            bool strained = part.Phase == PartPhase.TakenOut;
            switch (part.Item.File)
            {
                case Ingredient when part.Material.Hazard is { } hazard:
                    (loads ??= []).Add(new HazardLoad(hazard, part, part.Item.Id, part.Grams.Typical, strained, true));
                    break;
                case Prep inner when part.Item.ByProduct is null && set.TryBefore(inner, profile) is { } innerProfile:
                    foreach (var load in innerProfile.HazardLoads)
                    {
                        double share = innerProfile.Mass > 0 ? part.Grams.Typical / innerProfile.Mass : double.NaN;
                        (loads ??= []).Add(load with { Part = part, Grams = load.Grams * share, Strained = strained || load.Strained, Direct = false });
                    }

                    break;
            }
        }

        return loads is null ? [] : FixedList.Of(loads);
    }
}
