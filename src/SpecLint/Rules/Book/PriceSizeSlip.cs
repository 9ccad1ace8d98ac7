using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9030", "price-size-slip", "A bottle priced at a tenth or ten times of its size", Level.Warning)]
[Limit("bottle-size-miniature", "Miniature")]
[Limit("bottle-size-cask", "Cask")]
internal sealed partial class PriceSizeSlip : PricesRule
{
    public override void Check(FileContext context, PriceList list)
    {
        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || price.For is not { IsGiven: true, Value.Dimension: Dimension.Volume } size) continue;
            double millilitres = size.Value.Base;
            if (context.Profiles.MaterialOf(price.Item.Value) is not { Kind: { IsBottled: true } kind }
                || BottleSizes.Has(millilitres, kind))
                continue;

            // Ten bottles in a case.
            if (price.Note.IsGiven
                && Packs.In(price.Note.Value) is { } pack
                && BottleSizes.Has(millilitres / pack.Count, kind))
                continue;
            double meant = millilitres > Miniature.Value && BottleSizes.Has(millilitres * 10, kind) ? millilitres * 10
                : millilitres < Cask.Value && BottleSizes.Has(millilitres / 10, kind) ? millilitres / 10
                : double.NaN;
            if (double.IsNaN(meant)) continue;
            string text = $"{Say.Number(meant)} ml";
            context.Report(new(Rule)
            {
                At = context.At(size.Span, $"prices[{price.Item.Value}].for"),
                Message = $"`{price.Item.Value}` is priced for {Say.With(millilitres, "mL")}, and bottles of it hold "
                    + $"{Say.With(meant, "mL")}: as written, its cost is "
                    + $"{(meant > millilitres ? "ten times too high" : "a tenth of what it is")} ({BottleSizes.Source}).",
                Advice = $"Write {text}, if that is the bottle.",
                Evidence = [Proof.Of("size", size.Value, context.At(size.Span))],
                Corrections = context.Write(size.Span, text),
            });
        }
    }
}
