using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>What the rules about lots in stock ask alike.</summary>
internal static class Lots
{
    /// <summary>The preparation that a lot is of; <see langword="null"/> where it is none.</summary>
    public static Prep? PrepOf(FileContext context, Lot lot) =>
        lot.Item.IsGiven && context.Book.Resolve(lot.Item.Value) is { ByProduct: null, File: Prep prep } ? prep : null;

    /// <summary>The recipe of a lot as a further place of a finding; none where it is of no preparation.</summary>
    public static IReadOnlyList<RelatedPlace> RecipeIs(Prep? prep) => prep is null ? [] : [new RelatedPlace(prep.Head, "its recipe")];

    /// <summary>
    /// Whether a lot of a preparation needs cold: some part of it does, and neither its own reading nor that of the recipe
    /// shows that it need not be.
    /// </summary>
    public static bool NeedsCold(FileContext context, Lot lot) => LotLife.Of(lot, context.Profiles).NeedsCold;

    /// <summary>Why a lot of a bought ingredient needs cold once opened; none where it does not.</summary>
    public static Perishable PerishableOf(FileContext context, Lot lot)
    {
        if (!lot.Item.IsGiven || context.Book.Resolve(lot.Item.Value)?.File is not Ingredient) return Perishable.None;
        return context.Profiles.MaterialOf(lot.Item.Value) is { } material ? Perishables.Of(material) : Perishable.None;
    }

    /// <summary>JSON path of a lot: its item and lot code.</summary>
    public static string PathOf(Lot lot, string property) =>
        lot.LotCode.IsGiven ? $"lots[{lot.Item.Or("")} {lot.LotCode.Value}].{property}" : $"lots[{lot.Item.Or("")}].{property}";

    /// <summary>What tells lots of one item apart.</summary>
    public static string KeyOf(Lot lot) =>
        (lot.Made.IsGiven ? lot.Made : lot.Opened.IsGiven ? lot.Opened : lot.UseBy) is { IsGiven: true } day ? day.Value.ToString() : "";
}
