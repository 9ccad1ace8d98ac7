using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

/// <summary>Foods that are poisonous raw and harmless cooked: whether the method cooks one.</summary>
internal static class CookedThrough
{
    private static readonly double Least = Limits.Of("raw-poison-heat").Value;

    /// <summary>Whether a step boils a line after it went in, by its verb or by the temperature that it states.</summary>
    public static bool Is(RecipeContext context, Line line) => Pot.Of(context.Recipe).Any(line, Boils);

    /// <summary>Whether a part is the plain food: what is pressed, bottled or made into syrup was heated by who made it.</summary>
    public static bool IsPlain(Part part) =>
        part.Material is not { } material
            || material.Kind is { IsFreshPlant: true } or { IsSeed: true } or { IsBotanical: true } or { IsUnspecified: true };

    private static bool Boils(Step step)
    {
        var heat = step.To.IsGiven ? step.To : step.At;
        bool stated = heat is { IsGiven: true, Value.Dimension: Dimension.Temperature };
        if (stated) return step.Verb.Heats && heat.Value.BaseHigh >= Least && WetHeat.IsPossible(step);
        return step.Verb.Boils;
    }
}
