using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9036", "price-not-converted", "A price that is the amount of another currency in its note", Level.Warning)]
internal sealed partial class PriceNotConverted : PricesRule
{
    public override void Check(FileContext context, PriceList list)
    {
        string currency = context.Settings.Bar is { Costs.Currency: { IsGiven: true } own } ? own.Value.ToUpperInvariant() : "";
        if (currency.Length > 0) InAnother(context, list, currency);
        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || !price.Paid.IsGiven || !price.Note.IsGiven) continue;
            foreach (var money in Currencies.In(price.Note.Value))
            {
                bool isSame = Math.Abs(money.Amount - price.Paid.Value) <= Guards.SamePrice;
                if (!isSame || money.Amount == 0 || money.Codes.Contains(currency)) continue;
                var rate = RateOfOthers(list, price, money.Codes);

                // Where the bar names no currency, the others of the list show that it is another.
                if (currency.Length == 0 && rate is null) continue;
                Report(context, price, money, currency, rate ?? RateInNotes(list));
                break;
            }
        }
    }

    /// <summary>A list whose notes or name say that it is in another currency than the bar's, and nothing of having converted it.</summary>
    private void InAnother(FileContext context, PriceList list, string currency)
    {
        foreach (var note in list.Notes.Prepend(list.Name))
        {
            if (!note.IsGiven || Currencies.NamedIn(note.Value) is not var (codes, name)) continue;
            if (codes.Contains(currency)
                || note.Value.IndexOf(currency, StringComparison.OrdinalIgnoreCase) >= 0
                || RateInNotes(list) is not null
                || PriceWords.SaysConverted(note.Value))
                continue;
            context.Report(new(Rule)
            {
                At = context.At(note.Span, note.Span == list.Name.Span ? "name" : "notes"),
                Message = $"The list says \"{name}\", and the prices of this bar are in {currency}: every cost from it is counted in the wrong "
                    + "currency.",
                Advice = $"Convert the prices to {currency} at the rate of the day, and say so and at which rate.",
                Evidence = [Proof.Of("note", note.Value, context.At(note.Span))],
            });
            return;
        }
    }

    /// <summary>The rate at which the others of the list were converted, where they agree.</summary>
    private static decimal? RateOfOthers(PriceList list, Price price, FixedList<string> codes)
    {
        decimal? rate = null;
        foreach (var other in list.Prices)
        {
            if (other == price || !other.Paid.IsGiven || !other.Note.IsGiven) continue;
            foreach (var money in Currencies.In(other.Note.Value))
            {
                if (money.Amount == 0 || !money.Codes.Any(codes.Contains) || Math.Abs(money.Amount - other.Paid.Value) <= Guards.SamePrice) continue;
                decimal its = other.Paid.Value / money.Amount;
                if (rate is { } known && Math.Abs((its / known) - 1) > Guards.SameRate) return null;
                rate ??= its;
            }
        }

        return rate;
    }

    /// <summary>The rate that the notes of the list give ("at 1.15").</summary>
    private static decimal? RateInNotes(PriceList list)
    {
        foreach (var note in list.Notes)
        {
            if (!note.IsGiven) continue;
            var words = SpokenWords.Of(note.Value);
            for (int i = 0; i < words.Count; i++)
            {
                int said = SpokenWords.PhraseAt(words, i, static s => PriceWords.Is(PriceWord.Rate, s));
                if (said > 0 && SpokenWords.NumberAt(note.Value, words, i + said) is { Number: > 0 } found) return (decimal)found.Number;
            }
        }

        return null;
    }

    private static void Report(FileContext context, Price price, SpokenMoney money, string currency, decimal? rate)
    {
        string text = rate is { } at ? Math.Round(money.Amount * at, 2).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) : "";
        context.Report(new(Rule)
        {
            At = context.At(price.Paid.Span, $"prices[{price.Item.Value}].price"),
            Message = $"The price of `{price.Item.Value}` is the \"{money.Words}\" of its note, and the prices of this bar are "
                + $"{(currency.Length > 0 ? $"in {currency}" : "in another currency, as the others of the list show")}: it was not converted.",
            Advice = rate is null
                ? "Convert it at the rate of the day of the invoice."
                : $"Write {text}, at the rate of the list, {Say.Number((double)rate.Value, 3)}.",
            Evidence = [Proof.Of("note", price.Note.Value, context.At(price.Note.Span))],
            Corrections = rate is null ? [] : Correction.Propose($"Write {text}.", new TextEdit(context.At(price.Paid.Span), text)),
        });
    }
}
