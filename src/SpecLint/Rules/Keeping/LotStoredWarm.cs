using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5012", "lot-stored-warm", "A lot of food that needs cold is stored too warm", Level.Error, Safety = true,
    Needs = [Fact.Ph, Fact.WaterActivity])]
[Limit("food-code-cold-hold")]
[Limit("cold-hold-gb")]
internal sealed partial class LotStoredWarm : StockRule
{
    public override void Check(FileContext context, Stock stock)
    {
        var limit = StoredTooWarm.LimitOf(context.Settings);
        foreach (var lot in stock.Lots)
        {
            var at = lot.At;
            bool written = at is { IsGiven: true, Value.Dimension: Dimension.Temperature };
            if (written && !StoredTooWarm.IsTooWarm(at.Value.BaseHigh, context.Settings)) continue;
            var prep = Lots.PrepOf(context, lot);
            bool cold = prep is not null
                ? Lots.NeedsCold(context, lot) && !SpecialCases.IsFerment(prep)
                : LotLife.Of(lot, context.Profiles) is { NeedsCold: true } life && (lot.Opened.IsGiven || lot.Made.IsGiven || life.IsFresh);
            if (!cold) continue;
            if (!written)
            {
                NotWritten(context, lot, limit, prep);
                continue;
            }

            var state = prep is null ? null : context.Profiles.Of(prep).Keeping;
            bool soft = state is { IsStrong: true } || (state is { IsSour: true } && !Perishables.IsListed(state.What));
            context.Report(new(Rule)
            {
                AskedLevel = soft || (prep is null && Lots.PerishableOf(context, lot) == Perishable.Juice) ? Level.Warning : null,
                At = context.At(at.Span, Lots.PathOf(lot, "at")),
                Key = Lots.KeyOf(lot),
                Message = $"The lot of `{lot.Item.Value}` is stored at {KeepingWords.Degrees(at.Value.BaseHigh)}, above "
                    + $"{KeepingWords.Degrees(limit.Value)} ({limit.Source}), and no measurement shows that it does not need cold.",
                Advice = $"Bring it to {KeepingWords.Degrees(limit.Value)} or colder. Discard it if nobody knows how long it has been "
                    + "warm.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of("storage temperature", at.Value.BaseHigh, "Cel"), Proof.Of(limit)],
                Related = prep is null ? [] : [new RelatedPlace(prep.Head, "its recipe")],
            });
        }
    }

    /// <summary>Food that needs cold and whose temperature nobody has written down is not shown to be cold.</summary>
    private static void NotWritten(FileContext context, Lot lot, Limit limit, Prep? prep) => context.Report(new(Rule)
    {
        Answer = Answer.NotShown,
        AskedLevel = Level.Warning,
        At = context.At(lot.Item.Span, Lots.PathOf(lot, "at")),
        Key = Lots.KeyOf(lot),
        Message = $"The lot of `{lot.Item.Value}` has no temperature. It must be at {KeepingWords.Degrees(limit.Value)} or colder "
            + $"({limit.Source}).",
        Advice = "Measure the temperature where it stands and write it in `at`.",
        Caution = KeepingWords.Caution,
        Evidence = [Proof.Of(limit)],
        Related = prep is null ? [] : [new RelatedPlace(prep.Head, "its recipe")],
    });
}
