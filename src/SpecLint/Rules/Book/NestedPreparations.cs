using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Book;

/// <summary>SL9025: a preparation that is made through more preparations, one in another, than are followed.</summary>
internal sealed class NestedPreparations : PrepRule
{
    private static readonly RuleInfo Rule = new("SL9025", "nested-preparations", "Preparations stand one in another too deep to be followed", Level.Error)
    {
        IsCause = true,
        LeavesHarmUnknown = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!context.Profiles.IsTooDeep(prep)) return;
        context.Report(new Finding(Rule)
        {
            Place = prep.Head,
            Subject = context.Id,
            Message = $"It is made through more than {ProfileSet.DeepestNesting} preparations, one in another: what goes into it, its allergens and hazards too, is not followed that far down.",
            Advice = "Make it of fewer stages, or write the lower ones as one preparation.",
        });
    }
}
