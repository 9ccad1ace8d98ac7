using SpecLint.Book;

namespace SpecLint.Rules.Labels;

[Rule("SL7041", "health-claim-of-recipe", "A recipe makes a health claim for something with alcohol", Level.Error, Needs = [Fact.Abv])]
[Limit("claims-strength")]
[Limit("claims-strength-anz")]
[Limit("alcoholic-beverage-us")]
internal sealed partial class HealthClaimOfRecipe : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var recipe = context.Recipe;
        HealthClaims.Judge(context, Rule, recipe, recipe.Name, "name", isNote: recipe is Prep prep && !Sold.IsSold(context, prep));
        if (recipe.Declares is { } declares)
        {
            foreach (var claim in declares.Claims) HealthClaims.Judge(context, Rule, recipe, claim, $"declares.claims[{claim.Or("")}]");

            // They also warn: of those who are pregnant, or whose immune system is weak.
            for (int i = 0; i < declares.Advisory.Count; i++)
                HealthClaims.Judge(context, Rule, recipe, declares.Advisory[i], $"declares.advisory[{i + 1}]", isNote: true);
        }

        foreach (var note in recipe.Notes) HealthClaims.Judge(context, Rule, recipe, note, "notes", isNote: true);
    }
}
