using SpecLint.Book;

namespace SpecLint.Rules;

/// <summary>A rule about single lots in stock.</summary>
internal abstract class LotRule : StockRule
{
    /// <inheritdoc/>
    public sealed override void Check(FileContext context, Stock stock)
    {
        foreach (var lot in stock.Lots) Check(context, lot);
    }

    /// <summary>Checks one lot.</summary>
    protected abstract void Check(FileContext context, Lot lot);
}
