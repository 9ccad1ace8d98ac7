using SpecLint.Linking;

namespace SpecLint.Rules.Book;

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
