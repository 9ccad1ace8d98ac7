using SpecLint.Book;

namespace SpecLint.Rules.Balance;

[Rule("SL3029", "dry-shake-on-ice", "A dry shake that names ice", Level.Warning)]
internal sealed partial class DryShakeOnIce : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        foreach (var step in drink.Method)
        {
            if (step is not { HasIce: true, Verb.ShakesDry: true }) continue;
            bool iced = false;
            foreach (var other in drink.Method) iced |= other != step && other is { HasIce: true, Verb: { Chills: true, Agitates: true } };
            context.Report(new(Rule)
            {
                At = context.At(step.Ice.Span, context.PathOf(step) + ".ice"),
                Message = $"`{step.Written}` is a shake without ice, and this one names "
                    + $"{(step.Ice.Value.IsKnown ? $"{step.Ice.Value.Id} ice" : "ice")} (common practice, no source)."
                    + (iced ? "" : " No other step shakes it on ice."),
                Advice = iced ? "Leave the ice out of this step." : "Shake it dry first, and add a shake on ice.",
                Corrections = context.Write(step.Ice.Span, iced ? "none" : null, "Write no ice for this step."),
            });
        }
    }
}
