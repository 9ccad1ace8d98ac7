using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>The price of an item.</summary>
/// <param name="Paid">What is paid, in the currency of the bar.</param>
/// <param name="Size">The size that is bought for it.</param>
/// <param name="Yield">The share that can be used, a percentage; <see langword="null"/> where the house gives none.</param>
/// <param name="On">Day of the price; <see langword="null"/> where none is given.</param>
/// <param name="From">The supplier; empty where none is given.</param>
/// <param name="Source">The price as written.</param>
/// <param name="List">Its list.</param>
public sealed record PriceEntry(decimal Paid, Quantity Size, Quantity? Yield, CalendarDate? On, string From, Price Source, PriceList List);

/// <summary>The prices of a book: of each item the latest one.</summary>
public sealed class PriceBook
{
    private readonly Dictionary<string, PriceEntry> byItem = new(StringComparer.Ordinal);

    internal PriceBook(LinkedBook book)
    {
        foreach (var list in book.PriceLists)
        {
            foreach (var price in list.Prices)
            {
                if (!price.Item.IsGiven || !price.Paid.IsGiven || !price.For.IsGiven || !(price.For.Value.Base > 0)) continue;
                CalendarDate? on = list.DayOf(price) is { IsGiven: true } day ? day.Value : null;
                string from = price.From.IsGiven ? price.From.Value : list.From.Or("");
                var entry = new PriceEntry(price.Paid.Value, price.For.Value, price.Yield.IsGiven ? price.Yield.Value : null, on, from, price, list);

                // One without a day is older than any; of two of one day the first written counts.
                if (!byItem.TryGetValue(price.Item.Value, out var known) || (on is { } d && (known.On is not { } k || d.CompareTo(k) > 0)))
                    byItem[price.Item.Value] = entry;
            }
        }
    }

    /// <summary>Whether there is none.</summary>
    public bool IsEmpty => byItem.Count == 0;

    /// <summary>All prices in force, by item.</summary>
    public IEnumerable<KeyValuePair<string, PriceEntry>> All => byItem.OrderBy(p => p.Key, StringComparer.Ordinal);

    /// <summary>The price of an item; <see langword="null"/> where there is none.</summary>
    public PriceEntry? Find(string item) => byItem.TryGetValue(item, out var price) ? price : null;
}
