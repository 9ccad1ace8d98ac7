using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

[Rule(
    "SL9024", "like-no-ingredient", "An ingredient is like something that is not an ingredient", Level.Error, Safety = true,
    IsCause = true)]
internal sealed partial class LikeNoIngredient : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.Like.IsGiven) return;
        string like = ingredient.Like.Value;
        var item = context.Book.Resolve(like);
        string? wrong = item switch
        {
            null => "is in no file of the book and not in the built-in catalogue",
            { ByProduct: not null } => "is a by-product",
            { File: Drink } => "is a drink",
            { File: Prep } => "is a preparation",
            _ when like == ingredient.Id => "is this file itself",
            _ when ComesBack(context, ingredient) => "leads back to itself",
            _ => null,
        };
        if (wrong is null) return;
        string? near = item is null
            && LikelyItem.Of(context.Book, like) is [var likely]
            && context.Book.Resolve(likely)?.File is Ingredient ? likely : null;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(ingredient.Like.Span, "like"),
            Message = $"`{like}`, which {ingredient.Name.Or(ingredient.Id)} is said to be like, {wrong}: its contents, allergens and "
                + "hazards are not known.",
            Advice = near is not null ? $"Write `{near}` if that is meant."
                : item?.File is Recipe ? $"Name `{like}` itself on the lines that use it, or name a bought ingredient here."
                : "Name an ingredient that exists, or write its contents, `allergens` and `hazard` here.",
            Caution = AllergenWords.Caution,
            Evidence = [Proof.Of("like", like, context.At(ingredient.Like.Span))],
        });
    }

    private static bool ComesBack(FileContext context, Ingredient ingredient)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var next = ingredient; next is { Like.IsGiven: true }; next = context.Book.Resolve(next.Like.Value)?.File as Ingredient)
        {
            if (!seen.Add(next.Id)) return true;
        }

        return false;
    }
}
