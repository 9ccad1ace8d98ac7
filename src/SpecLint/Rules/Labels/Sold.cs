using SpecLint.Book;

namespace SpecLint.Rules.Labels;

/// <summary>Whether a guest meets a preparation by its name: the law on names is about what is sold.</summary>
internal static class Sold
{
    /// <summary>Whether it is bottled in portions, stands on a menu, or a menu's words name it.</summary>
    public static bool IsSold(BookContext context, Prep prep)
    {
        if (prep.PortionCount.IsGiven || prep.PortionSize.IsGiven || IsOnMenu(context, prep)) return true;
        foreach (var menu in context.Book.Menus)
        {
            foreach (var entry in menu.Drinks)
            {
                if (entry.Words.IsGiven && prep.Name.IsGiven && WordSearch.Has(entry.Words.Value, prep.Name.Value)) return true;
            }
        }

        return false;
    }

    /// <summary>Whether a menu has it among its drinks.</summary>
    public static bool IsOnMenu(BookContext context, Prep prep)
    {
        foreach (var menu in context.Book.Menus)
        {
            foreach (var entry in menu.Drinks)
            {
                if (entry.Drink.IsGiven && entry.Drink.Value == prep.Id) return true;
            }
        }

        return false;
    }
}
