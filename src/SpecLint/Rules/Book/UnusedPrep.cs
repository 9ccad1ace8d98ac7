using SpecLint.Linking;

namespace SpecLint.Rules.Book;

[Rule("SL9008", "preparation-unused", "Nothing uses the preparation", Level.Note)]
internal sealed partial class UnusedPrep : BookRule
{
    public override void Check(BookContext context)
    {
        var book = context.Book;

        // A book without a menu is a drawer of recipes: nothing there has to be in use.
        if (book.Menus.Count == 0) return;
        var named = Uses.OutsideRecipes(book);
        foreach (var prep in book.Preps)
        {
            if (prep.BatchOf.IsGiven || named.Contains(prep.Id) || book.UsersOf(prep.Id).Count > 0) continue;
            bool used = false;
            foreach (var left in prep.ByProducts) used |= left.Id.IsGiven && (book.UsersOf(left.Id.Value).Count > 0 || named.Contains(left.Id.Value));
            if (used) continue;
            context.Report(new(Rule)
            {
                At = new(prep.Head, "name"),
                Message = $"No drink, preparation or menu uses {prep.Name.Or(prep.Id)}, and none of it is in stock.",
                Advice = "Exclude the file (`leaveOut` in bar.json), or say what supersedes it.",
            });
        }
    }
}

/// <summary>What menus, stock and later states name.</summary>
internal static class Uses
{
    /// <summary>Ids that are in use otherwise than by a line of a recipe, and those that another file supersedes.</summary>
    public static HashSet<string> OutsideRecipes(LinkedBook book)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var menu in book.Menus)
        {
            foreach (var entry in menu.Drinks)
            {
                if (entry.Drink.IsGiven) ids.Add(entry.Drink.Value);
            }
        }

        foreach (var stock in book.Stocks)
        {
            foreach (var lot in stock.Lots)
            {
                if (lot.Item.IsGiven) ids.Add(lot.Item.Value);
            }
        }

        foreach (var recipe in book.Recipes)
        {
            if (recipe.Supersedes.IsGiven) ids.Add(recipe.Supersedes.Value);
        }

        foreach (var ingredient in book.Ingredients)
        {
            if (ingredient.Like.IsGiven) ids.Add(ingredient.Like.Value);
        }

        return ids;
    }
}
