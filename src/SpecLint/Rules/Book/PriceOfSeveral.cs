using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9034", "price-of-several", "A price whose note speaks of several, and whose size is that of one", Level.Warning)]
internal sealed partial class PriceOfSeveral : PricesRule
{
    public override void Check(FileContext context, PriceList list)
    {
        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || price.For is not { IsGiven: true } size || !(size.Value.Base > 0)) continue;
            var pack = price.Note.IsGiven ? Packs.In(price.Note.Value) : list.Name.IsGiven ? Packs.In(list.Name.Value) : null;
            if (pack is null || !IsOne(context, price.Item.Value, size.Value, pack)) continue;
            double all = pack.Count * (pack.Each is { } each && each.Dimension == size.Value.Dimension ? each.Base : size.Value.Base);
            string text = Rounding.Words(all, size.Value);
            context.Report(new(Rule)
            {
                At = context.At(size.Span, $"prices[{price.Item.Value}].for"),
                Message = $"The price of `{price.Item.Value}` is for \"{pack.Words}\", and its size is that of one: "
                    + $"as written, it costs {Say.Number(pack.Count)} times what it does.",
                Advice = $"Write {text}, if the price is for all. If it is the price of one, write \"each\" in the note.",
                Evidence = [Proof.Of("size", size.Value, context.At(size.Span)), Proof.Of("note", pack.Words)],
                Corrections = context.Write(size.Span, text),
            });
        }
    }

    /// <summary>Whether a size is that of one thing of a pack: the size the note gives, else one in which such bottles are sold.</summary>
    private static bool IsOne(FileContext context, string item, Quantity size, Pack pack)
    {
        if (size.Dimension == Dimension.Count) return size.Value == 1 && pack.Each is null;
        if (pack.Each is { } each) return each.Dimension == size.Dimension && Math.Abs((size.Base / each.Base) - 1) <= Guards.SameBottle;
        if (size.Dimension != Dimension.Volume || context.Profiles.MaterialOf(item) is not { Kind: { IsBottled: true } kind }) return false;

        // 1.5 L may be six bottles of 250 mL.
        return BottleSizes.Has(size.Base, kind) && !BottleSizes.IsNear(size.Base / pack.Count, kind, Guards.SameBottle);
    }
}
