using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9028", "price-of-unknown-item", "A price of an item that neither the book nor the catalogue has", Level.Note)]
internal sealed partial class PriceOfUnknownItem : PricesRule
{
    public override void Check(FileContext context, PriceList list)
    {
        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || context.Book.Resolve(price.Item.Value) is not null) continue;
            context.Report(new(Rule)
            {
                At = context.At(price.Item.Span, $"prices[{price.Item.Value}]"),
                Message = $"No recipe can use the price of `{price.Item.Value}`: neither the book nor the catalogue has that id.",
                Advice = "Correct the id, or add the ingredient: speclint find shows what there is.",
                Evidence = [Proof.Of("item", price.Item.Value, context.At(price.Item.Span))],
            });
        }
    }
}
