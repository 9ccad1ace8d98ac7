using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3024", "dry-shake-for-nothing", "A dry shake with nothing in it that foams", Level.Note)]
internal sealed partial class DryShakeForNothing : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        // What is not known may foam.
        if (context.Profile.Parts.Any(static p => p.Item is null) || RecipeTree.Of(context.Profile).Any(static l => Foams(l.Ingredient)))
            return;
        foreach (var step in drink.Method)
        {
            if (!step.IsDryShake) continue;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
                Message = "It is shaken without ice, and nothing in it foams: no egg, aquafaba, dairy or foaming agent (common "
                    + "practice, no source).",
                Advice = "Leave the step out: it only warms the drink. Or add what is meant to foam.",
                Evidence = [Proof.Of("step", step.Written)],
            });
            return;
        }
    }

    /// <summary>Whether it holds a foam, or carries one as milk, plant milk and gums do.</summary>
    private static bool Foams(Ingredient ingredient) =>
        ingredient.IngredientKind.OrNone() is { Foams: true } or { IsEgg: true } or { IsDairy: true } or { IsPlantMilk: true }
            or { IsGum: true } or { HoldsAir: true };
}
