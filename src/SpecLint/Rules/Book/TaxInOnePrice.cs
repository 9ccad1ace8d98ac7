using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9035", "price-with-tax", "A price with tax in it, in a list of prices without", Level.Warning)]
internal sealed partial class TaxInOnePrice : PricesRule
{
    /// <summary>Words between a tax and what says whether it is in the price.</summary>
    private const int Reach = 3;

    private const int ShortNote = 3;

    public override void Check(FileContext context, PriceList list)
    {
        bool? all = null;
        foreach (var text in (Given<string>[])[.. list.Notes, list.Name])
        {
            bool? says = text.IsGiven ? SaysTaxed(text.Value) : null;
            if (says == true && all is null) ReportList(context, text);
            all ??= says;
        }

        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || !price.Paid.IsGiven || !price.Note.IsGiven || SaysTaxed(price.Note.Value) != true) continue;
            decimal? net = RateIn(price.Note.Value) is { } rate ? Math.Round(price.Paid.Value / (1 + (rate / 100)), 2) : null;
            string text = net?.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) ?? "";
            context.Report(new(Rule)
            {
                At = context.At(price.Paid.Span, $"prices[{price.Item.Value}].price"),
                Message = $"The note says that the price of `{price.Item.Value}` is with tax, and "
                    + (all == false ? "the list says that its prices are without." : "prices are written without: beside the others it is too dear."),
                Advice = net is null ? "Write the price without tax." : $"Write {text}, the price without tax, and take the words out of the note.",
                Evidence = [Proof.Of("note", price.Note.Value, context.At(price.Note.Span))],
                Corrections = net is null ? [] : Correction.Propose($"Write {text}.", new TextEdit(context.At(price.Paid.Span), text)),
            });
        }
    }

    private static void ReportList(FileContext context, Given<string> text) => context.Report(new(Rule)
    {
        At = context.At(text.Span, "notes"),
        Key = "list",
        Message = $"The list says that its prices are with tax (\"{text.Value}\"), and prices are written without: every cost from it is too high.",
        Advice = "Write the prices without tax, as they stand in the supplier's price list for the trade.",
        Evidence = [Proof.Of("list", text.Value, context.At(text.Span))],
    });

    /// <summary>Whether a text says that tax is in the price (yes) or not in it (no); nothing where it says neither.</summary>
    private static bool? SaysTaxed(string text)
    {
        var words = SpokenWords.Of(text);
        for (int i = 0; i < words.Count; i++)
        {
            // "Netto" alone is a price; among other words it may be a weight.
            int alone = SpokenWords.PhraseAt(words, i, static s => PriceWords.Is(PriceWord.Taxed, s) || PriceWords.Is(PriceWord.Untaxed, s));
            if (alone > 1 || (alone == 1 && words.Count <= ShortNote)) return PriceWords.Is(PriceWord.Taxed, SpokenWords.Join(words, i, alone));
            if (SpokenWords.PhraseAt(words, i, static s => PriceWords.Is(PriceWord.Tax, s)) is not (> 0 and var tax)) continue;
            bool included = false;
            for (int j = Math.Max(0, i - Reach); j < Math.Min(words.Count, i + tax + Reach); j++)
            {
                if (SpokenWords.PhraseAt(words, j, static s => PriceWords.Is(PriceWord.Excluded, s)) > 0) return false;
                included |= SpokenWords.PhraseAt(words, j, static s => PriceWords.Is(PriceWord.Included, s)) > 0;
            }

            if (included) return true;
        }

        return null;
    }

    /// <summary>The percentage that a text gives.</summary>
    private static decimal? RateIn(string text)
    {
        foreach (var word in SpokenWords.Of(text))
        {
            int sign = word.End;
            while (sign < text.Length && char.IsWhiteSpace(text[sign])) sign++;
            double rate = NumberWords.OfFigures(text.Substring(word.Start, word.End - word.Start));
            if (rate is > 0 and < 100 && sign < text.Length && text[sign] == '%') return (decimal)rate;
        }

        return null;
    }
}
