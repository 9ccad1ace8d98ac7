using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

[Rule("SL3014", "heat-contradicts-style", "A hot style made on ice, or a cold style served hot", Level.Warning)]
[Limit("hot-drink-from", "Hot")]
internal sealed partial class HeatContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return;
        if (style.IsHot)
        {
            if (Builds.Verb(context.Profile.Technique) is not { } verb || context.Profile.TechniqueStep is not { } step || !step.Do.IsGiven) return;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
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
            context.Report(new(Rule)
            {
                At = context.At(drink.Style.Span, "style"),
                Message = $"It is heated (`{step.Written}`) with no ice, but `{style.Id}` drinks are served cold.",
                Advice = "Write `hot`, or chill it.",
                Related = [new RelatedPlace(context.At(step.Do.Span), "the step that heats it")],
                Corrections = [new Correction(CorrectionGrade.Proposed, "Name the style `hot`.", [new TextEdit(context.At(drink.Style.Span), "\"hot\"")])],
            });
            return;
        }
    }
}
