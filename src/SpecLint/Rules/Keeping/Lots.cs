using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

/// <summary>What the rules about lots in stock ask alike.</summary>
internal static class Lots
{
    /// <summary>The preparation that a lot is of; <see langword="null"/> where it is none.</summary>
    public static Prep? PrepOf(FileContext context, Lot lot) =>
        lot.Item.IsGiven && context.Book.Resolve(lot.Item.Value) is { ByProduct: null, File: Prep prep } ? prep : null;

    /// <summary>
    /// Whether a lot of a preparation needs cold: some part of it does, and neither its own reading nor that of the recipe
    /// shows that it need not be.
    /// </summary>
    public static bool NeedsCold(FileContext context, Lot lot, Prep prep)
    {
        var profile = context.Profiles.Of(prep);
        var state = profile.Keeping!;
        if (!state.HoldsPerishable || state.IsDried) return false;
        if (lot.Measured is not { } measured || !(measured.Ph.IsGiven || measured.WaterActivity.IsGiven)) return state.Verdict != KeepingVerdict.NotControlled;
        var ph = measured.Ph.IsGiven ? Read(measured.Ph.Value, Meters.PhHalfWidth(measured, context.Book)) : state.Ph;
        var activity = measured.WaterActivity.IsGiven ? Read(measured.WaterActivity.Value, Meters.WaterActivityHalfWidth) : state.WaterActivity;
        return KeepingVerdicts.Of(state.Table, ph, activity, Perishables.IsListed(state.What)).Verdict != KeepingVerdict.NotControlled;
    }

    /// <summary>Why a lot of a bought ingredient needs cold once opened; none where it does not.</summary>
    public static Perishable PerishableOf(FileContext context, Lot lot)
    {
        if (!lot.Item.IsGiven || context.Book.Resolve(lot.Item.Value)?.File is not Ingredient) return Perishable.None;
        return context.Profiles.MaterialOf(lot.Item.Value) is { } material ? Perishables.Of(material) : Perishable.None;
    }

    /// <summary>Days of a lot's life that it spent frozen up to a day: the clock stands still for them.</summary>
    public static int FrozenDays(Lot lot, CalendarDate until)
    {
        int days = 0;
        foreach (var time in lot.Frozen)
        {
            var to = time.To ?? until;
            if (to > until) to = until;
            if (to > time.From) days += to.DaysSince(time.From);
        }

        return days;
    }

    /// <summary>JSON path of a lot: its item and lot code.</summary>
    public static string PathOf(Lot lot, string property) =>
        lot.LotCode.IsGiven ? $"lots[{lot.Item.Or("")} {lot.LotCode.Value}].{property}" : $"lots[{lot.Item.Or("")}].{property}";

    /// <summary>What tells lots of one item apart.</summary>
    public static string KeyOf(Lot lot) =>
        lot.Made.IsGiven ? lot.Made.Value.ToString() : lot.Opened.IsGiven ? lot.Opened.Value.ToString() : lot.UseBy.IsGiven ? lot.UseBy.Value.ToString() : "";

    private static FactValue Read(Quantity quantity, double half) => new(quantity.Value, quantity.Low - half, quantity.High + half, "measured", null);
}
