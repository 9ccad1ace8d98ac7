using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5010: a bought ingredient open for longer than it keeps.</summary>
internal sealed class OpenedTooLong : StockRule
{
    private static readonly Limit Mark = Limits.Of("food-code-date-mark");

    private static readonly RuleInfo Rule = new("SL5010", "opened-too-long", "A bought ingredient has been open for longer than it keeps", Level.Warning)
    {
        Safety = true,
        Limits = [Mark.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context, Stock stock)
    {
        foreach (var lot in stock.Lots)
        {
            if (!lot.Opened.IsGiven || !lot.Item.IsGiven || lot.Opened.Value > context.On) continue;

            // Past its day is a finding of its own.
            if (lot.UseBy.IsGiven && lot.UseBy.Value < context.On) continue;
            if (context.Profiles.MaterialOf(lot.Item.Value)?.Ingredient is not { } ingredient) continue;
            int open = context.On.DaysSince(lot.Opened.Value) + 1 - Lots.FrozenDays(lot, context.On);
            var what = Lots.PerishableOf(context, lot);
            bool controlled = what is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant && open > Mark.Value;
            double life = ingredient.Values.TryGetValue("life.opened", out var opened) ? opened.High / 86400 : double.NaN;

            // A life under a day still gives the day it is opened.
            bool past = open > Math.Max(1, Math.Ceiling(life));
            if (!controlled && !past) continue;
            double days = controlled ? Mark.Value : life;
            string source = controlled ? Mark.Source : opened!.Source ?? "the ingredient's file";
            context.Report(new Finding(Rule)
            {
                AskedLevel = controlled ? Level.Error : what == Perishable.None ? Level.Note : null,
                Place = context.At(lot.Opened.Span),
                Subject = context.Id,
                Path = Lots.PathOf(lot, "opened"),
                Key = Lots.KeyOf(lot),
                Message = $"`{lot.Item.Value}` has been open since {lot.Opened.Value}, {Say.Count(open, "day")} with that day; opened it keeps {KeepingWords.Days(days)} ({source}).",
                Advice = what == Perishable.None ? "Taste it against a fresh bottle, and open a new one if it has faded." : "Throw it away and open a new one; the maker's label goes before this figure.",
                Caution = what == Perishable.None ? null : KeepingWords.Caution,
                Evidence = [Proof.Of("days open", open, "d"), Proof.Of("life once opened", days, "d", source)],
            });
        }
    }
}
