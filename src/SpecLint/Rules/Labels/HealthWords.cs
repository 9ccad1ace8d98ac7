using SpecLint.Book;

namespace SpecLint.Rules.Labels;

[Rule("SL7018", "health-words-with-alcohol", "The menu makes a health claim for a drink with alcohol", Level.Error, Needs = [Fact.Abv])]
[Limit("claims-strength")]
[Limit("claims-strength-anz")]
[Limit("alcoholic-beverage-us")]
internal sealed partial class HealthWords : MenuRule
{
    public override void Check(FileContext context, Menu menu)
    {
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
            string path = $"drinks[{entry.Drink.Value}]";
            HealthClaims.Judge(context, Rule, recipe, entry.Words, path + ".words");
            HealthClaims.Judge(context, Rule, recipe, entry.Name, path + ".name");
            foreach (var claim in entry.Claims) HealthClaims.Judge(context, Rule, recipe, claim, $"{path}.claims[{claim.Or("")}]");
            foreach (var note in entry.Notes) HealthClaims.Judge(context, Rule, recipe, note, path + ".notes", isNote: true);
        }

        // The name and notes of a menu are about all its drinks: the strongest is told.
        if (Strongest(context, menu) is not { } strongest) return;
        HealthClaims.Judge(context, Rule, strongest, menu.Name, "name");
        foreach (var note in menu.Notes) HealthClaims.Judge(context, Rule, strongest, note, "notes", isNote: true);
    }

    private static Recipe? Strongest(FileContext context, Menu menu)
    {
        Recipe? strongest = null;
        double most = -1;
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
            var abv = context.Profiles.Of(recipe).Get(Fact.Abv);
            if (!abv.IsKnown || abv.Value <= most) continue;
            (strongest, most) = (recipe, abv.Value);
        }

        return strongest;
    }
}
