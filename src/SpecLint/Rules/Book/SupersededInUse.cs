using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9006", "superseded-in-use", "A recipe that another supersedes is still used", Level.Warning)]
internal sealed partial class SupersededInUse : BookRule
{
    public override void Check(BookContext context)
    {
        foreach (var newer in context.Book.Recipes)
        {
            if (!newer.Supersedes.IsGiven || newer.Supersedes.Value == newer.Id) continue;
            string old = newer.Supersedes.Value;
            foreach (var user in context.Book.UsersOf(old))
            {
                if (user == newer) continue;
                foreach (var line in LinkedBook.LinesOf(user))
                {
                    if (line.Item.IsGiven && line.Item.Value == old)
                        Report(context, newer, old, user, line.Item, RecipeContext.PathOf(line, "item"));
                }
            }

            foreach (var prep in context.Book.Preps)
            {
                if (prep.BatchOf.IsGiven && prep.BatchOf.Value == old) Report(context, newer, old, prep, prep.BatchOf, "batchOf");
            }

            foreach (var menu in context.Book.Menus)
            {
                foreach (var entry in menu.Drinks)
                {
                    if (entry.Drink.IsGiven && entry.Drink.Value == old)
                        Report(context, newer, old, menu, entry.Drink, $"drinks[{old}].drink");
                }
            }
        }
    }

    /// <summary>The steps that name it.</summary>
    private static IEnumerable<TextEdit> Steps(BookFile user, string old, string name)
    {
        if (user is not Recipe recipe) yield break;
        foreach (var step in recipe.Method)
        {
            foreach (var item in step.Items)
            {
                if (item.Value == old) yield return new TextEdit(user.At(item.Span), $"\"{name}\"");
            }
        }
    }

    private static void Report(BookContext context, Recipe newer, string old, BookFile user, Given<string> at, string path)
    {
        var place = user.At(at.Span);
        context.Report(new(Rule)
        {
            Place = place,
            Subject = user.Id,
            Path = path,
            Message = $"`{old}` is superseded by `{newer.Id}`{(newer.Date.IsGiven ? $" of {newer.Date.Value}" : "")}, but still named "
                + "here.",
            Advice = $"Name `{newer.Id}`, and check the balance again.",
            Evidence = [Proof.Of("superseded by", newer.Id, newer.At(newer.Supersedes.Span))],
            Related = [new RelatedPlace(newer.At(newer.Supersedes.Span), "says that it supersedes it")],
            Corrections = Correction.Propose(
                $"Name `{newer.Id}` instead of `{old}`.", [new TextEdit(place, $"\"{newer.Id}\""), .. Steps(user, old, newer.Id)]),
        });
    }
}
