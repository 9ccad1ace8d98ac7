namespace SpecLint.Rules.Book;

[Rule("SL9009", "ingredient-unused", "Nothing uses the ingredient's file", Level.Note)]
internal sealed partial class UnusedIngredient : BookRule
{
    public override void Check(BookContext context)
    {
        var book = context.Book;
        if (book.Menus.Count == 0) return;
        var named = Uses.OutsideRecipes(book);
        foreach (var ingredient in book.Ingredients)
        {
            if (named.Contains(ingredient.Id) || book.UsersOf(ingredient.Id).Count > 0) continue;
            context.Report(new(Rule)
            {
                At = new(ingredient.Head, "name"),
                Message = $"No recipe uses {ingredient.Name.Or(ingredient.Id)}, and none of it is in stock.",
                Advice = "Exclude the file (`leaveOut` in bar.json), or find the recipe that should name it.",
            });
        }
    }
}
