using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5009", "lot-half-dated", "A lot of food that needs cold lacks the day it was made or its use-by", Level.Warning, Safety = true,
    Needs = [Fact.Ph, Fact.WaterActivity])]
[Limit("food-code-date-mark-from", "From")]
[Limit("food-code-thaw-undated", "Thawed")]
internal sealed partial class LotHalfDated : LotRule
{
    /// <summary>Whether this rule speaks of a lot of a preparation.</summary>
    internal static bool Speaks(FileContext context, Lot lot, Prep prep) =>
        lot.Made.IsGiven != lot.UseBy.IsGiven
            && Lots.NeedsCold(context, lot)
            && !(lot.Made.IsGiven && Storage.Days(prep) <= SpecialCases.MarkedFromDays);

    protected override void Check(FileContext context, Lot lot)
    {
        if (Lots.PrepOf(context, lot) is not { } prep || !Speaks(context, lot, prep)) return;
        bool frozen = lot.Frozen.Count > 0 && !lot.Made.IsGiven;
        context.Report(new(Rule)
        {
            Answer = lot.Made.IsGiven ? Answer.Broken : Answer.NotShown,
            AskedLevel = lot.Made.IsGiven ? Level.Note : null,
            At = context.At(lot.Item.Span, Lots.PathOf(lot, lot.Made.IsGiven ? "useBy" : "made")),
            Key = Lots.KeyOf(lot),
            Message = lot.Made.IsGiven
                ? $"The lot of `{lot.Item.Value}` has a day made but no use-by day. Beyond {Say.Number(From.Value)} h the law asks for "
                    + "a use-by day, or for the day made and a written procedure (Food Code 3-501.17(A), (D))."
                : $"The lot of `{lot.Item.Value}` has a use-by day but no day made, so nobody can check the date (Food Code "
                    + "3-501.17(A) only asks for the use-by day).",
            Advice = frozen
                ? $"Freezing does not give it a new date. Use it within {Say.Number(Thawed.Value)} h of thawing or discard it. From "
                    + "now on, mark the day made."
                : "Mark both the day it was made and its use-by.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(From)],
            Related = Lots.RecipeIs(prep),
        });
    }
}
