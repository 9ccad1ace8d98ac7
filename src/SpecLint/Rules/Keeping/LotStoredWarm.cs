using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5012: a lot of food that needs cold is stored too warm.</summary>
internal sealed class LotStoredWarm : StockRule
{
    private static readonly RuleInfo Rule = new("SL5012", "lot-stored-warm", "A lot of food that needs cold is stored too warm", Level.Error)
    {
        Safety = true,
        Needs = [Fact.Ph, Fact.WaterActivity],
        Limits = ["food-code-cold-hold", "cold-hold-gb"],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context, Stock stock)
    {
        var limit = StoredTooWarm.LimitOf(context.Settings);
        foreach (var lot in stock.Lots)
        {
            if (lot.At is not { IsGiven: true, Value.Dimension: Dimension.Temperature } at || !StoredTooWarm.IsTooWarm(at.Value.BaseHigh, context.Settings)) continue;
            var prep = Lots.PrepOf(context, lot);
            bool cold = prep is not null
                ? Lots.NeedsCold(context, lot, prep) && !SpecialCases.IsFerment(prep)
                : (lot.Opened.IsGiven || lot.Made.IsGiven) && Lots.PerishableOf(context, lot) is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant or Perishable.Juice;
            if (!cold) continue;
            var state = prep is null ? null : context.Profiles.Of(prep).Keeping;
            bool soft = state is { IsStrong: true } || (state is { IsSour: true } && !Perishables.IsListed(state.What));
            context.Report(new Finding(Rule)
            {
                AskedLevel = soft || limit.LevelCap is not null || (prep is null && Lots.PerishableOf(context, lot) == Perishable.Juice) ? Level.Warning : null,
                Place = context.At(at.Span),
                Subject = context.Id,
                Path = Lots.PathOf(lot, "at"),
                Key = Lots.KeyOf(lot),
                Message = $"The lot of `{lot.Item.Value}` is stored at {KeepingWords.Degrees(at.Value.BaseHigh)}, over {KeepingWords.Degrees(limit.Value)} ({limit.Source}), and nothing measured shows that it need not be cold.",
                Advice = $"Bring it to {KeepingWords.Degrees(limit.Value)} or colder, and throw it away if nobody knows how long it has been warm.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of("storage temperature", at.Value.BaseHigh, "Cel"), Proof.Of(limit)],
                Related = prep is null ? [] : [new RelatedPlace(prep.Head, "its recipe")],
            });
        }
    }
}
