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
internal sealed partial class LotStoredWarm : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        var limit = StoredTooWarm.LimitOf(context.Settings);
        var at = lot.At;
        bool written = at is { IsGiven: true, Value.Dimension: Dimension.Temperature };
        if (written && !StoredTooWarm.IsTooWarm(at.Value.BaseHigh, context.Settings)) return;
        var prep = Lots.PrepOf(context, lot);
        bool cold = prep is not null
            ? Lots.NeedsCold(context, lot) && !SpecialCases.IsFerment(prep)
            : LotLife.Of(lot, context.Profiles) is { NeedsCold: true } life && (lot.Opened.IsGiven || lot.Made.IsGiven || life.IsFresh);
        if (!cold) return;

        // Food that needs cold and whose temperature nobody has written down is not shown to be cold.
        var state = prep is null ? null : context.Profiles.Of(prep).Keeping;
        bool soft = state is { IsStrong: true }
            || (state is { IsSour: true } && !Perishables.IsListed(state.What))
            || (prep is null && Lots.PerishableOf(context, lot) == Perishable.Juice);
        string most = KeepingWords.Degrees(limit.Value);
        context.Report(new(Rule)
        {
            Answer = written ? Answer.Broken : Answer.NotShown,
            AskedLevel = soft || !written ? Level.Warning : null,
            At = context.At(written ? at.Span : lot.Item.Span, Lots.PathOf(lot, "at")),
            Key = Lots.KeyOf(lot),
            Message = written
                ? $"The lot of `{lot.Item.Value}` is stored at {KeepingWords.Degrees(at.Value.BaseHigh)}, above {most} "
                    + $"({limit.Source}), and no measurement shows that it does not need cold."
                : $"The lot of `{lot.Item.Value}` has no temperature. It must be at {most} or colder ({limit.Source}).",
            Advice = written
                ? $"Bring it to {most} or colder. Discard it if nobody knows how long it has been warm."
                : "Measure the temperature where it stands and write it in `at`.",
            Caution = KeepingWords.Caution,
            Evidence = written ? [Proof.Of("storage temperature", at.Value.BaseHigh, "Cel"), Proof.Of(limit)] : [Proof.Of(limit)],
            Related = Lots.RecipeIs(prep),
        });
    }
}
