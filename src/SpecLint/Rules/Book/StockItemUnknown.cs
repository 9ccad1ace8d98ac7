using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;

namespace SpecLint.Rules.Book;

[Rule("SL9014", "stock-item-unknown", "A lot in stock is of an item that does not exist", Level.Error)]
internal sealed partial class StockItemUnknown : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.Item.IsGiven || context.Book.Resolve(lot.Item.Value) is not null) return;
        string? near = LikelyItem.Of(context.Book, lot.Item.Value) is [var likely] ? likely : null;
        context.Report(new(Rule)
        {
            At = context.At(lot.Item.Span, $"lots[{lot.Item.Value}].item"),
            Key = lot.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Message = $"A lot of `{lot.Item.Value}` is in stock, which is in no file of the book and not in the built-in catalogue. "
                + "Its contents and its life are not known.",
            Advice = near is null ? "Write its file, or name an item that exists." : $"Write `{near}` if that is meant.",
            Evidence = [Proof.Of("named", lot.Item.Value, context.At(lot.Item.Span))],
            Corrections = context.Write(lot.Item.Span, near, $"Name `{near}`."),
        });
    }
}
