using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5010: an ingredient open, or squeezed or cut, for longer than it keeps.</summary>
internal sealed class OpenedTooLong : StockRule
{
    private static readonly Limit Mark = Limits.Of("food-code-date-mark");

    private static readonly string[] Exempt = ["yogurt", "yoghurt", "sour-cream", "sour cream", "buttermilk", "creme-fraiche", "crème fraîche", "kefir", "parmesan", "cheddar", "gouda", "gruyere", "gruyère", "pecorino", "manchego", "blue-cheese", "blue cheese"];

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
            // What the bar squeezes or cuts itself has a day made: its life begins there.
            var from = lot.Opened.IsGiven ? lot.Opened : lot.Made;
            if (!from.IsGiven || !lot.Item.IsGiven || from.Value > context.On) continue;

            // Past its day is a finding of its own.
            if (lot.UseBy.IsGiven && lot.UseBy.Value < context.On) continue;
            if (context.Profiles.MaterialOf(lot.Item.Value)?.Ingredient is not { } ingredient) continue;
            int open = context.On.DaysSince(from.Value) + 1 - Lots.FrozenDays(lot, context.On);
            var what = Lots.PerishableOf(context, lot);
            bool controlled = !IsExempt(ingredient) && what is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant && open > Mark.Value;
            double life = ingredient.Values.TryGetValue("life.opened", out var opened) ? opened.High / 86400 : double.NaN;

            // A life under a day still gives the day it is opened.
            bool past = open > Math.Max(1, Math.Ceiling(life));
            if (!controlled && !past) continue;
            double days = controlled ? Mark.Value : life;
            string source = controlled ? Mark.Source : opened!.Source ?? "the ingredient's file";
            context.Report(new Finding(Rule)
            {
                AskedLevel = controlled ? (KeptPastDateMark.IsYardstick(context.Settings, open) ? Level.Warning : Level.Error) : what == Perishable.None ? Level.Note : null,
                Place = context.At(from.Span),
                Subject = context.Id,
                Path = Lots.PathOf(lot, lot.Opened.IsGiven ? "opened" : "made"),
                Key = Lots.KeyOf(lot),
                Message = lot.Opened.IsGiven
                    ? $"`{lot.Item.Value}` has been open since {from.Value}, {Say.Count(open, "day")} with that day; opened it keeps {KeepingWords.Days(days)} ({source})."
                    : $"`{lot.Item.Value}` was made on {from.Value}, {Say.Count(open, "day")} with that day; made fresh it keeps {KeepingWords.Days(days)} ({source}).",
                Advice = what == Perishable.None ? "Taste it against a fresh bottle, and open a new one if it has faded." : lot.Opened.IsGiven ? "Throw it away and open a new one; the maker's label goes before this figure." : "Throw it away and make it fresh.",
                Caution = what == Perishable.None ? null : KeepingWords.Caution,
                Evidence = [Proof.Of("days open", open, "d"), Proof.Of("life once opened", days, "d", source)],
            });
        }
    }

    /// <summary>Cultured milk, and cheese that is hard or semi-soft, bear no mark on opening (Food Code 3-501.17(G)); cream cheese, ricotta and mozzarella do.</summary>
    private static bool IsExempt(Ingredient ingredient) =>
        Phrases.HasAny(ingredient.Id, Exempt) || (ingredient.Name.IsGiven && Phrases.HasAny(ingredient.Name.Value, Exempt));
}
