using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Rules.Balance;

[Rule("SL3028", "egg-not-shaken", "Egg in a drink that is only stirred", Level.Warning, IsConsequence = true)]
[Limit("egg-white-foam", "Least")]
internal sealed partial class EggNotShaken : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.Technique is not (TechniqueKind.Stirred or TechniqueKind.Thrown)) return;
        if (context.Profile.TechniqueStep is not { Do.IsGiven: true } step) return;
        if (Builds.First(context.Profile, static m => m is { Kind.IsEgg: true }) is not { } egg) return;
        if (Builds.Grams(context.Profile, static m => m is { Kind.IsEgg: true }) / drink.ServesOrOne < Least.Value) return;
        foreach (var other in drink.Method)
        {
            if (other.Verb.Aerates) return;
        }

        context.Report(new(Rule)
        {
            At = context.VerbOf(step),
            Message = $"It holds `{egg.Line.Item.Or("egg")}` and is only {step.Verb.Past}: egg that is not shaken, whipped or blended "
                + "gives no foam and stays in threads (common practice, no source).",
            Advice = "Shake it, first without ice and then on ice.",
            Related = [context.See(egg.Line.Span, "the egg")],
            Corrections = context.Write(step.Do.Span, "shake", "Shake it."),
        });
    }
}
