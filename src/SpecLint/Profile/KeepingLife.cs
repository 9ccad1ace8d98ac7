using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>An end of keeping: days from made (the day made is day 1), and what sets it.</summary>
/// <param name="Days">Days; infinity where nothing sets an end.</param>
/// <param name="From">Id of the part, family or limit that sets it.</param>
/// <param name="Part">The part, where it is one.</param>
internal readonly record struct KeepingEnd(double Days, string From, Part? Part)
{
    /// <summary>No end.</summary>
    public static readonly KeepingEnd None = new(double.PositiveInfinity, "", null);

    /// <summary>Whether something sets an end.</summary>
    public bool IsSet => !double.IsPositiveInfinity(Days);

    /// <summary>The earlier of two ends.</summary>
    public KeepingEnd Or(double days, string from, Part? part) => days < Days ? new KeepingEnd(days, from, part) : this;
}

/// <summary>How long a preparation keeps: by safety, and by quality. Only the first may make an error.</summary>
/// <param name="Safety">The end by safety.</param>
/// <param name="Parts">The end by the quality of its parts.</param>
/// <param name="Family">The end by the quality of its family, as the trade keeps such.</param>
internal sealed record KeepingTerms(KeepingEnd Safety, KeepingEnd Parts, KeepingEnd Family)
{
    /// <summary>The earliest end.</summary>
    public KeepingEnd Least => Safety.Or(Parts.Days, Parts.From, Parts.Part).Or(Family.Days, Family.From, Family.Part);
}

/// <summary>
/// How long a preparation keeps by the rules of keeping: no longer than any part that is in it, and no longer than the
/// date mark of food that needs time and temperature control. What the recipe itself claims is not asked. In the freezer
/// the clock of safety stands still. Sugar, acid or spirit that makes something new of its parts (a cordial, a shrub, an
/// infusion) ends the clock of their quality, never that of their safety.
/// </summary>
internal static class KeepingLife
{
    private static readonly Limit DateMark = Limits.Of("food-code-date-mark");
    private static readonly Limit Activity = Limits.Of("table-b-water-activity");
    private static readonly Limit WetShare = Limits.Of("guard-wet-share");
    private static readonly Limit BaseDays = Limits.Of("dairy-preparation-days");
    private static readonly Limit PunchStrength = Limits.Of("milk-wash-strength");

    /// <summary>Days from made; open where no rule sets an end.</summary>
    public static FactValue Of(RecipeProfile profile)
    {
        var least = profile.KeepingTerms!.Least;
        return least.IsSet ? new FactValue(least.Days, least.Days, least.Days, least.From, null) : FactValue.Open("no part of it and no rule sets an end");
    }

    /// <summary>
    /// Days that bars keep a base of dairy, egg, nut, coconut or pulse, where its recipe keeps it longer; infinity where it does not, and
    /// for anything else.
    /// </summary>
    public static double DaysOfBase(Prep prep, RecipeProfile profile, Settings settings)
    {
        var state = profile.Keeping!;
        bool isBase = state.What is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse
            && state.Verdict != KeepingVerdict.NotControlled
            && !state.IsStrong
            && !profile.IsSolid
            && !(prep.Family.OrNone().IsMilkWash && Techniques.Has(prep, static v => v.Strains || v.Clarifies));
        return isBase && Storage.Days(prep) > BaseDays.Value && !Storage.IsFrozen(Storage.Celsius(prep, settings)) ? BaseDays.Value : double.PositiveInfinity;
    }

    /// <summary>The ends of a preparation kept as its recipe says.</summary>
    public static KeepingTerms TermsOf(Prep prep, RecipeProfile profile, ProfileSet set) =>
        TermsOf(prep, profile, set, Storage.Celsius(prep, set.Book.Settings));

    /// <summary>The ends of a preparation kept at a temperature, °C; NaN where it is not known.</summary>
    public static KeepingTerms TermsOf(Prep prep, RecipeProfile profile, ProfileSet set, double celsius)
    {
        var state = profile.Keeping!;
        bool frozen = Storage.IsFrozen(celsius);
        bool cleared = state.Verdict == KeepingVerdict.NotControlled;
        var family = prep.Family.OrNone();
        bool transforms = family.Transforms;
        var safety = KeepingEnd.None;
        var parts = KeepingEnd.None;
        foreach (var part in profile.Parts)
        {
            if (part.Item is null || part.Phase is PartPhase.Beside or PartPhase.TakenOut) continue;

            // Strong spirit keeps sugar and acid from yeasts and moulds: their clock is none there.
            if (state.IsStrong && part.Material is { Kind.IsKeptBySpirit: true } material && Perishables.Of(material) == Perishable.None
                && (part.Item.File is not Prep sweet || set.TryBefore(sweet, profile)?.Keeping is not { HoldsPerishable: true })) continue;
            switch (part.Item.File)
            {
                case Prep inner when part.Item.ByProduct is null && set.TryBefore(inner, profile) is { KeepingTerms: { } terms } innerProfile:
                    bool perishes = innerProfile.Keeping is { HoldsPerishable: true } innerState
                        && innerState.Verdict != KeepingVerdict.NotControlled
                        && !cleared
                        && !state.IsDried;
                    if (perishes && terms.Safety.IsSet) safety = safety.Or(terms.Safety.Days, part.Item.Id, part);
                    else if (!transforms && terms.Safety.IsSet) parts = parts.Or(terms.Safety.Days, part.Item.Id, part);
                    if (!transforms && terms.Parts.IsSet) parts = parts.Or(terms.Parts.Days, part.Item.Id, part);
                    double stated = Storage.Days(inner);
                    if (double.IsNaN(stated)) break;
                    if (perishes) safety = safety.Or(stated, part.Item.Id, part);
                    else if (!transforms) parts = parts.Or(stated, part.Item.Id, part);
                    break;
                case Ingredient when Perishables.IsExtracted(part, profile):
                    // The life of a dry good ends when water reaches it.
                    break;
                case Ingredient when part.Material!.Ingredient!.Values.TryGetValue("life.opened", out var opened) && opened.Dimension == Dimension.Duration:
                    // How long it keeps once opened is a figure of the trade: quality. Milk, egg and nut keep their clock in any mixture.
                    bool stays = !cleared && Perishables.Of(part.Material) is (Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse);
                    if (!transforms || stays) parts = parts.Or(opened.High / 86400, part.Item.Id, part);
                    break;
            }
        }

        if (frozen)
        {
            // The clock stands still: what is left of it runs on after thawing.
            safety = KeepingEnd.None;
            parts = KeepingEnd.None;
        }
        else if (state.HoldsPerishable && !cleared && !state.IsDried)
        {
            safety = safety.Or(DateMark.Value, DateMark.Id, state.Part);
        }

        return new KeepingTerms(safety, parts, transforms && !frozen ? FamilyEnd(family, state, celsius, profile) : KeepingEnd.None);
    }

    private static KeepingEnd FamilyEnd(Family family, KeepingState state, double celsius, RecipeProfile profile)
    {
        // A syrup over the water activity of table B and one under it are kept differently.
        if (family.IsSyrup && state.WaterActivity.IsKnown && state.WaterActivity.Value < Activity.Value)
        {
            var rich = FamilyTable.Row(Storage.IsAtRoom(celsius) ? "syrup-2-1-ambient" : "syrup-2-1");
            return new KeepingEnd(rich.HighDays, family.Id, null);
        }

        if (FamilyTable.Of(family.Id) is not { } life || double.IsNaN(life.HighDays)) return KeepingEnd.None;

        // What a family keeps by its strength, it keeps only at that strength: tea in water is no infusion in spirit.
        if (!double.IsNaN(life.LeastStrength) && !(state.Abv.IsKnown && state.Abv.Value >= life.LeastStrength))
        {
            if (state.HoldsPerishable
                || !(state.IsStrong || profile.Grams[(int)Science.Component.Water] < WetShare.Value / 100 * profile.Mass))
                return new KeepingEnd(FamilyTable.Of("other")!.HighDays, family.Id, null);
            return new KeepingEnd(life.LowDays, family.Id, null);
        }

        // Months of a milk punch rest on its strength, and what the trade keeps cold lasts less in the room: both have the
        // least time. Spirit stops what grows, but no fat from turning.
        bool least = (family.IsMilkWash && state.Abv.IsKnown && state.Abv.High < PunchStrength.Value)
            || (life.KeepsCold && Storage.IsAtRoom(celsius) && (family.IsFatWash || !state.IsStrong));
        return new KeepingEnd(least ? life.LowDays : life.HighDays, family.Id, null);
    }
}
