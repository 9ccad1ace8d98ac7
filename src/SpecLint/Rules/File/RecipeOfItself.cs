using SpecLint.Book;

namespace SpecLint.Rules.File;

[Rule("SL1027", "made-of-itself", "A recipe that lists itself", Level.Error, IsCause = true)]
internal sealed partial class RecipeOfItself : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        // A preparation in its own list is a circle, which family 9 reports; a drink in its own list is met here.
        if (context.Recipe is not Drink) return;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Item.IsGiven && part.Line.Item.Value == context.Id && part.Item?.File == context.File)
            {
                context.Report(new(Rule)
                {
                    At = context.ItemOf(part.Line),
                    Message = $"The drink lists itself, `{context.Id}`, among its ingredients.",
                    Advice = "Name the intended item. A batch of the drink has its own file.",
                });
            }
        }
    }
}
