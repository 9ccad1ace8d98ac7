using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Linking;

/// <summary>
/// Whether the readings of a recipe are of the recipe as it stands. Those that bear a fingerprint are where it is still the same;
/// others where they are not older than the recipe, are of its revision, and did not stay as they were while the recipe changed.
/// </summary>
internal static class Readings
{
    /// <summary>Why the readings of a recipe do not count, as the end of a sentence; <see langword="null"/> where they do.</summary>
    /// <param name="recipe">A recipe with readings.</param>
    /// <param name="book">Its book.</param>
    /// <param name="earlier">The book before a change; <see langword="null"/> where none is looked at.</param>
    public static string? WhyStale(Recipe recipe, LinkedBook book, LinkedBook? earlier)
    {
        if (recipe.AsMeasured is not { } measured) return null;
        if (measured.Of.IsGiven)
            return measured.Of.Value == RecipeFingerprint.Of(recipe, book) ? null : "were taken before amounts or method changed";
        if (measured.Revision.IsGiven && recipe.Revision.IsGiven && measured.Revision.Value != recipe.Revision.Value)
            return $"are of revision {measured.Revision.Value}, and the recipe is revision {recipe.Revision.Value}";
        if (measured.On.IsGiven && recipe.Date.IsGiven && measured.On.Value < recipe.Date.Value)
            return $"are of {measured.On.Value}, and the recipe is of {recipe.Date.Value}";
        if (!measured.On.IsGiven && !measured.Revision.IsGiven && recipe.Date.IsGiven)
            return $"have neither a date nor a revision, and the recipe is of {recipe.Date.Value}";
        if (earlier?.RecipeCalled(recipe.Id) is { AsMeasured: { } before } old
            && Same(before, measured) && RecipeFingerprint.Of(old, earlier) != RecipeFingerprint.Of(recipe, book))
            return "stayed as they were while amounts or method changed";
        return null;
    }

    /// <summary>Whether the readings of a lot say that it was made by its recipe as it was before a change.</summary>
    public static bool AreOfOther(Measurement measured, Recipe recipe, LinkedBook book) => measured.Of.IsGiven
        ? measured.Of.Value != RecipeFingerprint.Of(recipe, book)
        : measured.Revision.IsGiven && recipe.Revision.IsGiven && measured.Revision.Value != recipe.Revision.Value;

    private static bool Same(Measurement a, Measurement b) =>
        Same(a.Ph, b.Ph)
            && Same(a.Brix, b.Brix)
            && Same(a.Abv, b.Abv)
            && Same(a.WaterActivity, b.WaterActivity)
            && Same(a.TitratableAcidity, b.TitratableAcidity)
        && Same(a.Mass, b.Mass) && Same(a.Volume, b.Volume) && a.On.IsGiven == b.On.IsGiven && (!a.On.IsGiven || a.On.Value.Equals(b.On.Value));

    private static bool Same(Given<Quantity> a, Given<Quantity> b) =>
        a.IsGiven == b.IsGiven && (!a.IsGiven || (Math.Abs(a.Value.Base - b.Value.Base) < 1e-9 && a.Value.Dimension == b.Value.Dimension));
}
