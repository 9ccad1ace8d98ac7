using SpecLint.Findings;

namespace SpecLint.Rules.Book;

/// <summary>SL9009: an ingredient file that nothing uses.</summary>
internal sealed class UnusedIngredient : BookRule
{
    private static readonly RuleInfo Rule = new("SL9009", "ingredient-unused", "Nothing uses the ingredient's file", Level.Note);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(BookContext context)
    {
        var book = context.Book;
        if (book.Menus.Count == 0) return;
        var named = Uses.OutsideRecipes(book);
        foreach (var ingredient in book.Ingredients)
        {
            if (named.Contains(ingredient.Id) || book.UsersOf(ingredient.Id).Count > 0) continue;
            context.Report(new Finding(Rule)
            {
                Place = ingredient.Head,
                Subject = ingredient.Id,
                Path = "name",
                Message = $"No recipe uses {ingredient.Name.Or(ingredient.Id)}, and none of it is in stock.",
                Advice = "Exclude the file (`leaveOut` in bar.json), or find the recipe that should name it.",
            });
        }
    }
}
