using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9029", "lot-code-twice", "Two different lots have the same code", Level.Warning)]
internal sealed partial class LotCodeTwice : BookRule
{
    public override void Check(BookContext context)
    {
        var first = new Dictionary<string, (Stock Stock, Lot Lot)>(StringComparer.OrdinalIgnoreCase);
        foreach (var stock in context.Book.Stocks)
        {
            foreach (var lot in stock.Lots)
            {
                if (!lot.LotCode.IsGiven || !lot.Item.IsGiven || lot.LotCode.Value.Trim() is not { Length: > 0 } code) continue;
                if (!first.TryGetValue(code, out var other))
                {
                    first.Add(code, (stock, lot));
                    continue;
                }

                // The same lot may be counted again, in another place or on another day.
                bool sameItem = other.Lot.Item.Value == lot.Item.Value;
                if (sameItem && (!lot.Made.IsGiven || !other.Lot.Made.IsGiven || lot.Made.Value == other.Lot.Made.Value)) continue;
                string both = sameItem
                    ? $"the `{lot.Item.Value}` made on {lot.Made.Value} and of that made on {other.Lot.Made.Value}"
                    : $"a lot of `{lot.Item.Value}` and of a lot of `{other.Lot.Item.Value}`";
                context.Report(new(Rule)
                {
                    At = new(stock.At(lot.LotCode.Span), $"lots[{lot.Item.Value} {code}].lot"),
                    Key = code,
                    Message = $"`{code}` is the code of {both}: a recall cannot tell them apart (common practice, no source).",
                    Advice = "Give one of the two another code, on its label too.",
                    Related = [new RelatedPlace(other.Stock.At(other.Lot.LotCode.Span), "the other lot")],
                });
            }
        }
    }
}
