using SpecLint.Book;

namespace SpecLint.Rules.Service;

/// <summary>How hot the steps of a method are.</summary>
internal static class Heat
{
    /// <summary>Whether a step is done at a temperature, or brings to one, that is at least so high.</summary>
    public static bool Reaches(Step step, double celsius) =>
        (step.To.IsGiven && step.To.Value.Base >= celsius) || (step.At.IsGiven && step.At.Value.Base >= celsius);
}
