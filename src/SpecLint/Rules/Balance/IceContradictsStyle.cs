using SpecLint.Book;

namespace SpecLint.Rules.Balance;

[Rule("SL3023", "ice-contradicts-style", "Ice in the glass that is not the style's", Level.Note, IsConsequence = true)]
internal sealed partial class IceContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        // A blender takes crushed ice in and leaves none.
        if (drink.KnownStyle is not { Ice.IsCrushed: true } style || context.Profile.Technique == TechniqueKind.Blended) return;
        Step? glass = null;
        foreach (var step in drink.Method)
        {
            if (step.HasIce && !step.Verb.LeavesIce) glass = step;
        }

        if (glass is null || glass.Ice.Value.IsCrushed) return;
        context.Report(new(Rule)
        {
            At = context.At(glass.Ice.Span, context.PathOf(glass) + ".ice"),
            Message = $"A `{style.Id}` is served on crushed ice, but here it is `{glass.IceWritten}`. Larger ice melts more slowly, so "
                + $"the drink stays stronger and warmer (table of styles; {style.UsualInShort}).",
            Advice = "Write crushed ice, or name the right style.",
            Related = [context.See(drink.Style.Span, "the style")],
        });
    }
}
