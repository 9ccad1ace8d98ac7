using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>
/// How long a preparation keeps by the rules of keeping: no longer than any part that is in it, and no longer than the
/// date mark of food that needs time and temperature control. What the recipe itself claims is not asked.
/// </summary>
internal static class KeepingLife
{
    private const double SecondsADay = 86400;

    private static readonly Limit DateMark = Limits.Of("food-code-date-mark");

    /// <summary>Days from made; open where no rule sets an end.</summary>
    public static FactValue Of(Prep prep, RecipeProfile profile, ProfileSet set)
    {
        double least = double.PositiveInfinity;
        string from = "";

        void Take(double days, string id)
        {
            if (days >= least) return;
            least = days;
            from = id;
        }

        bool controlled = false;
        foreach (var part in profile.Parts)
        {
            if (part.Phase is PartPhase.Beside || part.Item is null) continue;
            switch (part.Item.File)
            {
                case Prep inner when part.Item.ByProduct is null && set.TryBefore(inner, profile) is { } innerProfile:
                    var innerLife = innerProfile.Get(Fact.Life);
                    if (innerLife.IsKnown) Take(innerLife.Value, part.Item.Id);
                    if (inner.Keep is { For.IsGiven: true } keep) Take(keep.For.Value.Base / SecondsADay, part.Item.Id);
                    break;
                case Ingredient:
                    var ingredient = part.Material!.Ingredient!;
                    bool cold = ingredient.KeepsCold.Or(false);
                    if (part.Phase == PartPhase.Mix && cold && ingredient.Values.TryGetValue("life.opened", out var opened)) Take(opened.High / SecondsADay, part.Item.Id);
                    controlled |= cold;
                    break;
            }
        }

        if (controlled) Take(DateMark.Value, DateMark.Id);
        return double.IsPositiveInfinity(least) ? FactValue.Open("no part of it and no rule sets an end") : new FactValue(least, least, least, from, null);
    }
}
