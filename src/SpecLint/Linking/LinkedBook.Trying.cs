using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Linking;

/// <summary>A book in which one file is tried as it would be with a correction.</summary>
public sealed partial class LinkedBook
{
    private readonly FileChange tried;

    private LinkedBook(LinkedBook whole, FileChange change)
    {
        Settings = whole.Settings;
        On = whole.On;
        HouseSchemas = whole.HouseSchemas;
        FingerprintTexts = whole.FingerprintTexts;
        Measures = whole.Measures;
        tried = change;
        items = whole.items;
        users = whole.users;
        lots = whole.lots;
        files = whole.files;
        drinks = whole.drinks;
        preps = whole.preps;
        ingredients = whole.ingredients;
        menus = whole.menus;
        stocks = whole.stocks;
        priceLists = whole.priceLists;
        doubles = whole.doubles;
        orderOfUse = whole.orderOfUse;
        cycles = whole.cycles;
        batched = whole.batched;
        names = whole.names;
        resolver = whole.resolver;
        if (change.New is Recipe recipe) HoldReadings([recipe], whole.heldAgainst);
    }

    /// <summary>
    /// The book with another text of one file, for looking at that file alone: its id resolves to what it is then, lists of files still
    /// hold what it is now, and what is made of it is not worked out again. It costs the same however large the book is.
    /// </summary>
    internal LinkedBook With(FileChange change) => new(this, change);

    private Item? Find(string id)
    {
        if (!items.TryGetValue(id, out var item)) return BuiltInCatalogue.FindItem(id);
        return tried.New is { } now && item.File == tried.Old ? new Item(id, now, LeftOf(now, id), false) : item;
    }
}
