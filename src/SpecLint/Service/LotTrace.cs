using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Service;

/// <summary>A lot that a bad lot reaches.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Stock">The file that it stands in.</param>
/// <param name="Item">Id of what it is a lot of.</param>
/// <param name="Since">The day from which the bad lot may be in it: the day it was made; <see langword="null"/> where not given.</param>
/// <param name="Certain">Whether <c>madeFrom</c> says so; else it was made of such an item, on or
/// after that day, and does not say of which lot.</param>
/// <param name="Through">The way from the bad lot to it: codes, or ids where a lot has none.</param>
internal sealed record TracedLot(Lot Lot, Stock Stock, string Item, CalendarDate? Since, bool Certain, IReadOnlyList<string> Through);

/// <summary>A recipe that a bad lot reaches.</summary>
/// <param name="Recipe">The preparation or drink.</param>
/// <param name="Since">The first day on which it may have been made with it; <see langword="null"/> where not known.</param>
/// <param name="Through">Id of the item of the reached lots that goes into it.</param>
internal sealed record TracedRecipe(Recipe Recipe, CalendarDate? Since, string Through);

/// <summary>
/// The way of a lot: which lots were made from it, certainly or perhaps, and which preparations and drinks take from them, since
/// when. Whatever does not say which lots it was made from may hold it.
/// </summary>
internal sealed class LotTrace
{
    private LotTrace(Stock stock, Lot lot, string item)
    {
        Stock = stock;
        Lot = lot;
        Item = item;
    }

    /// <summary>The lot that is followed.</summary>
    public Lot Lot { get; }

    /// <summary>The file that it stands in.</summary>
    public Stock Stock { get; }

    /// <summary>Id of what it is a lot of.</summary>
    public string Item { get; }

    /// <summary>The day made or opened; <see langword="null"/> where not given.</summary>
    public CalendarDate? Since => DayOf(Lot);

    /// <summary>Lots that it reaches, those certain first, then by their day and name.</summary>
    public IReadOnlyList<TracedLot> Lots { get; private set; } = [];

    /// <summary>Preparations that take from it or from a lot that it reaches, by id.</summary>
    public IReadOnlyList<TracedRecipe> Preps { get; private set; } = [];

    /// <summary>Drinks, by id.</summary>
    public IReadOnlyList<TracedRecipe> Drinks { get; private set; } = [];

    /// <summary>Follows a lot.</summary>
    public static LotTrace Of(LinkedBook book, Stock stock, Lot lot)
    {
        var trace = new LotTrace(stock, lot, IdOf(book, lot));
        trace.Follow(book);
        return trace;
    }

    /// <summary>What people call a lot: its code, else the id of its item and its day.</summary>
    public static string NameOf(Lot lot) =>
        lot.LotCode.IsGiven ? lot.LotCode.Value
        : DayOf(lot) is { } day ? $"{lot.Item.Or("?")} of {day}"
        : lot.Item.Or("?");

    private static CalendarDate? DayOf(Lot lot) => lot.Made.IsGiven ? lot.Made.Value : lot.Opened.IsGiven ? lot.Opened.Value : null;

    private static string IdOf(LinkedBook book, Lot lot) => lot.Item.IsGiven ? book.Resolve(lot.Item.Value)?.Id ?? lot.Item.Value : "";

    private void Follow(LinkedBook book)
    {
        var reached = new Dictionary<Lot, TracedLot>();
        var waiting = new Queue<TracedLot>([new TracedLot(Lot, Stock, Item, Since, true, [NameOf(Lot)])]);
        while (waiting.Count > 0)
        {
            var bad = waiting.Dequeue();
            foreach (var stock in book.Stocks)
            {
                foreach (var lot in stock.Lots)
                {
                    if (lot == Lot || lot == bad.Lot) continue;
                    bool? holds = Holds(book, lot, bad);
                    if (holds is not { } certain) continue;
                    certain &= bad.Certain;
                    if (reached.TryGetValue(lot, out var known) && (known.Certain || !certain)) continue;
                    var traced = new TracedLot(lot, stock, IdOf(book, lot), DayOf(lot), certain, [.. bad.Through, NameOf(lot)]);
                    reached[lot] = traced;
                    waiting.Enqueue(traced);
                }
            }
        }

        Lots = [.. reached.Values
            .OrderByDescending(l => l.Certain)
            .ThenBy(l => l.Since?.DayNumber ?? 0)
            .ThenBy(l => NameOf(l.Lot), StringComparer.Ordinal)];
        Reach(book);
    }

    /// <summary>Whether a lot holds a bad one: true where it names it, false where it may; <see langword="null"/> where it does not.</summary>
    private static bool? Holds(LinkedBook book, Lot lot, TracedLot bad)
    {
        if (bad.Lot.LotCode.IsGiven && lot.MadeFrom.Any(c => c.IsGiven && c.Value == bad.Lot.LotCode.Value)) return true;
        if (!lot.Item.IsGiven || book.Resolve(lot.Item.Value)?.File is not Recipe recipe || !Uses(book, recipe, bad.Item)) return null;

        // It says which lot of that item went in, and it was another.
        if (lot.MadeFrom.Any(c => c.IsGiven && book.LotsCalled(c.Value).Any(l => IdOf(book, l.Lot) == bad.Item))) return null;
        return DayOf(lot) is { } made && DayOf(bad.Lot) is { } from && made < from ? null : false;
    }

    private static bool Uses(LinkedBook book, Recipe recipe, string item)
    {
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Item.IsGiven && (book.Resolve(line.Item.Value)?.Id ?? line.Item.Value) == item) return true;
        }

        return false;
    }

    /// <summary>Recipes that take from the items of the lots, through preparations that are in no stock file too.</summary>
    private void Reach(LinkedBook book)
    {
        var since = new Dictionary<string, CalendarDate?>(StringComparer.Ordinal) { [Item] = Since };
        foreach (var lot in Lots)
        {
            if (!since.TryGetValue(lot.Item, out var known) || Earlier(lot.Since, known)) since[lot.Item] = lot.Since;
        }

        var preps = new SortedDictionary<string, TracedRecipe>(StringComparer.Ordinal);
        var drinks = new SortedDictionary<string, TracedRecipe>(StringComparer.Ordinal);
        var waiting = new Queue<string>(since.Keys.OrderBy(i => i, StringComparer.Ordinal));
        while (waiting.Count > 0)
        {
            string item = waiting.Dequeue();
            foreach (var recipe in book.Recipes)
            {
                var into = recipe is Drink ? drinks : preps;
                if (into.ContainsKey(recipe.Id) || !Uses(book, recipe, item)) continue;
                into.Add(recipe.Id, new TracedRecipe(recipe, since[item], item));
                if (recipe is not Prep prep) continue;
                foreach (string id in prep.ByProducts.Where(p => p.Id.IsGiven).Select(p => p.Id.Value).Prepend(prep.Id))
                {
                    if (since.ContainsKey(id)) continue;
                    since[id] = since[item];
                    waiting.Enqueue(id);
                }
            }
        }

        Preps = [.. preps.Values];
        Drinks = [.. drinks.Values];
    }

    private static bool Earlier(CalendarDate? day, CalendarDate? than) => than is { } other && (day is not { } one || one < other);
}
