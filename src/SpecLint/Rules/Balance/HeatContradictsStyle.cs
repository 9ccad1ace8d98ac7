using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3014", "heat-contradicts-style", "A hot style made on ice, or a cold style served hot", Level.Warning)]
[Limit("hot-drink-from", "Hot")]
internal sealed partial class HeatContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return;
        string? chills = Builds.Verb(context.Profile.Technique);
        if (style.IsHot)
        {
            if (chills is null || context.Profile.TechniqueStep is not { Do.IsGiven: true } step) return;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
                Message = $"It is made with ice (`{chills}`), but `{style.Id}` drinks are served hot.",
                Advice = "Leave the ice out, or name the right style.",
                Related = [context.See(drink.Style.Span, "the style")],
            });
            return;
        }

        if (chills is not null) return;
        foreach (var step in drink.Method)
        {
            if (!step.Do.IsGiven || !(step.Verb.Heats || IsHot(step.To) || IsHot(step.At))) continue;
            context.Report(new(Rule)
            {
                At = context.At(drink.Style.Span, "style"),
                Message = $"It is heated (`{step.Written}`) with no ice, but `{style.Id}` drinks are served cold.",
                Advice = "Write `hot`, or chill it.",
                Related = [context.See(step.Do.Span, "the step that heats it")],
                Corrections = context.Write(drink.Style.Span, "hot", "Name the style `hot`."),
            });
            return;
        }
    }

    private static bool IsHot(Given<Quantity> at) => at.IsGiven && at.Value.Base >= Hot.Value;
}
