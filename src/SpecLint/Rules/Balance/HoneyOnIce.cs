using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3032", "honey-on-ice", "Honey that meets the ice before anything thins it", Level.Note)]
[Limit("honey-thick-water", "Thick")]
internal sealed partial class HoneyOnIce : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.TechniqueStep is not { } iced || !iced.Verb.Chills) return;
        var pot = Pot.Of(drink);
        foreach (var part in context.Profile.Parts)
        {
            if (part is not { Phase: PartPhase.Mix, Line.Role: LineRole.Part, Material: { Kind.IsHoney: true } honey }) continue;
            double water = 100 * honey.Of(Science.Component.Water);
            if (!(water < Thick.Value) || Thinned(drink, pot, part, iced)) continue;
            context.Report(new(Rule)
            {
                At = context.ItemOf(part.Line),
                Message = $"`{part.Line.Item.Or("honey")}` goes onto the ice undiluted at the step to {iced.Written}: cold, it stiffens "
                    + "and stays in the tin (common practice, no source).",
                Advice = "Stir it into the spirit before the ice, or use a honey syrup.",
                Evidence = [Proof.Of("water", water, "g/100 g"), Proof.Of(Thick)],
                Related = [context.See(iced.Do.Span, "the step")],
            });
            return;
        }
    }

    /// <summary>Whether a step before the ice works it into something, or something hot goes in with it.</summary>
    private static bool Thinned(Drink drink, Pot pot, Part part, Step iced)
    {
        for (int i = 0; i < drink.Method.Count; i++)
        {
            var step = drink.Method[i];
            if (!step.Verb.IsKnown || step.Verb.Heats) return true;
            if (step.Number >= iced.Number) break;
            if (pot.WorksOn(i, part.Line) && step.Verb.Works && !step.Verb.Adds && !step.Verb.Builds && !step.HasIce) return true;
        }

        return false;
    }
}
