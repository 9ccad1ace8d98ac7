using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>
/// Whether a step can be as hot as it says: food with water in it does not get past the boil by much. A figure that cannot be, °F with the
/// sign of °C most likely, clears nothing.
/// </summary>
internal static class WetHeat
{
    private static readonly double Most = Limits.Of("wet-heat-most").Value;

    /// <summary>Whether a step that is to heat food states no temperature that the food cannot reach.</summary>
    public static bool IsPossible(Step step) =>
        step.Verb.HeatsDry || (step.To.IsGiven ? step.To : step.At) is not { IsGiven: true, Value.Dimension: Dimension.Temperature } heat
            || heat.Value.BaseLow <= Most;
}
