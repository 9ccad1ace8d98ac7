using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5009: a lot of food that needs cold with one of its two dates only; one with none has a rule of its own in the family of the book.</summary>
internal sealed class LotHalfDated : StockRule
{
    private static readonly Limit From = Limits.Of("food-code-date-mark-from");
    private static readonly Limit Thawed = Limits.Of("food-code-thaw-undated");

    private static readonly RuleInfo Rule = new("SL5009", "lot-half-dated", "A lot of food that needs cold lacks the day it was made or its use-by", Level.Note)
    {
        Safety = true,
        Needs = [Fact.Ph, Fact.WaterActivity],
        Limits = [From.Id, Thawed.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>Whether this rule speaks of a lot of a preparation.</summary>
    internal static bool Speaks(FileContext context, Lot lot, Prep prep) =>
        lot.Made.IsGiven != lot.UseBy.IsGiven && Lots.NeedsCold(context, lot) && !(lot.Made.IsGiven && Storage.Days(prep) <= SpecialCases.MarkedFromDays);

    /// <inheritdoc/>
    public override void Check(FileContext context, Stock stock)
    {
        foreach (var lot in stock.Lots)
        {
            if (Lots.PrepOf(context, lot) is not { } prep || !Speaks(context, lot, prep)) continue;
            bool frozen = lot.Frozen.Count > 0 && !lot.Made.IsGiven;
            context.Report(new Finding(Rule)
            {
                AskedLevel = Level.Note,
                Place = context.At(lot.Item.Span),
                Subject = context.Id,
                Path = Lots.PathOf(lot, lot.Made.IsGiven ? "useBy" : "made"),
                Key = Lots.KeyOf(lot),
                Message = lot.Made.IsGiven
                    ? $"The lot of `{lot.Item.Value}` has a day made but no use-by day. Beyond {Say.Number(From.Value)} h the law asks for a use-by day, or for the day made and a written procedure (Food Code 3-501.17(A), (D))."
                    : $"The lot of `{lot.Item.Value}` has a use-by day but no day made, so nobody can check the date (Food Code 3-501.17(A) only asks for the use-by day).",
                Advice = frozen
                    ? $"Freezing does not give it a new date. Use it within {Say.Number(Thawed.Value)} h of thawing or discard it. From now on, mark the day made."
                    : "Mark both the day it was made and its use-by.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of(From)],
                Related = [new RelatedPlace(prep.Head, "its recipe")],
            });
        }
    }
}
