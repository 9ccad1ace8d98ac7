using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

/// <summary>SL3014: a hot style made on ice, or a cold one that is heated.</summary>
internal sealed class HeatContradictsStyle : DrinkRule
{
    private static readonly Limit Hot = Limits.Of("hot-drink-from");

    private static readonly RuleInfo Rule = new("SL3014", "heat-contradicts-style", "A hot style made on ice, or a cold style served hot", Level.Warning)
    {
        Limits = [Hot.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return;
        if (style.IsHot)
        {
            if (Builds.Verb(context.Profile.Technique) is not { } verb || context.Profile.TechniqueStep is not { } step || !step.Do.IsGiven) return;
            context.Report(new Finding(Rule)
            {
                Place = context.At(step.Do.Span),
                Subject = context.Id,
                Path = context.PathOf(step),
                Message = $"It is made with ice (`{verb}`), but `{style.Id}` drinks are served hot.",
                Advice = "Leave the ice out, or name the right style.",
                Related = [new RelatedPlace(context.At(drink.Style.Span), "the style")],
            });
            return;
        }

        if (Builds.Verb(context.Profile.Technique) is not null) return;
        foreach (var step in drink.Method)
        {
            bool heats = (step.To.IsGiven && step.To.Value.Base >= Hot.Value) || (step.At.IsGiven && step.At.Value.Base >= Hot.Value)
                || step.Verb.Heats;
            if (!heats || !step.Do.IsGiven) continue;
            context.Report(new Finding(Rule)
            {
                Place = context.At(drink.Style.Span),
                Subject = context.Id,
                Path = "style",
                Message = $"It is heated (`{step.Written}`) with no ice, but `{style.Id}` drinks are served cold.",
                Advice = "Write `hot`, or chill it.",
                Related = [new RelatedPlace(context.At(step.Do.Span), "the step that heats it")],
                Corrections = [new Correction(CorrectionGrade.Proposed, "Name the style `hot`.", [new TextEdit(context.At(drink.Style.Span), "\"hot\"")])],
            });
            return;
        }
    }
}
