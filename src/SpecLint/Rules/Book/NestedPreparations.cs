using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Book;

[Rule(
    "SL9025", "nested-preparations", "Preparations stand one in another too deep to be followed", Level.Error, IsCause = true,
    LeavesHarmUnknown = true)]
internal sealed partial class NestedPreparations : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!context.Profiles.IsTooDeep(prep)) return;
        context.Report(new(Rule)
        {
            Place = prep.Head,
            Message = $"It is made through more than {ProfileSet.DeepestNesting} preparations, one in another: what goes into it, its "
                + "allergens and hazards too, is not followed that far down.",
            Advice = "Make it of fewer stages, or write the lower ones as one preparation.",
        });
    }
}
