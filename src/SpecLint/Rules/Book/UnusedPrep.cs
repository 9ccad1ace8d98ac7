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
            if (prep.ByProducts.Any(b => b.Id.IsGiven && (book.UsersOf(b.Id.Value).Count > 0 || named.Contains(b.Id.Value)))) continue;
            context.Report(new(Rule)
            {
                At = new(prep.Head, "name"),
                Message = $"No drink, preparation or menu uses {prep.Name.Or(prep.Id)}, and none of it is in stock.",
                Advice = "Exclude the file (`leaveOut` in bar.json), or say what supersedes it.",
            });
        }
    }
}
