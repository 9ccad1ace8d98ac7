using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule("SL6021", "poison-named", "A name, note, step or menu names a poisonous plant or fungus", Level.Error, Safety = true)]
internal sealed partial class PoisonNamed : FileRule
{
    public override void Check(FileContext context)
    {
        switch (context.File)
        {
            case Recipe recipe: CheckRecipe((RecipeContext)context, recipe); break;
            case Ingredient ingredient: CheckIngredient(context, ingredient); break;
            case Menu menu: CheckMenu(context, menu); break;
        }
    }

    private static void CheckRecipe(RecipeContext context, Recipe recipe)
    {
        var profile = context.Profile;
        foreach (var text in context.Texts)
        {
            if (!context.NamesHazard
                || HazardNames.InProse(text.Text.Value, static h => h.IsDeadly) is not { } named
                || IsOnALine(profile, named.Hazard))
                continue;
            Report(context, text.Text, text.PathIn(context), named.Hazard, named.In(text.Text.Value), null, "The text names");
            return;
        }

        // A drink may be called after a poison and hold none of it: that is told to guests, not served to them.
        if (recipe.Name.IsGiven
            && HazardNames.InProse(recipe.Name.Value, static h => h.IsDeadly) is { } inName
            && !IsOnALine(profile, inName.Hazard))
            Report(
                context, recipe.Name, "name", inName.Hazard, inName.In(recipe.Name.Value), recipe is Drink ? Level.Warning : null,
                recipe is Drink ? "The drink is named after" : "The preparation is named after");
    }

    private static void CheckIngredient(FileContext context, Ingredient ingredient)
    {
        if (Tells(context, ingredient.Name, "name")) return;
        foreach (var alias in ingredient.Aliases)
        {
            if (Tells(context, alias, "aliases")) return;
        }

        if (HazardNames.InName(ingredient.Id, static h => h.IsPoison) is { } byId)
            Report(context, ingredient.Name, "name", byId.Hazard, byId.In(ingredient.Id), null, "The ingredient's file names");
    }

    private static bool Tells(FileContext context, Given<string> text, string path)
    {
        if (!text.IsGiven || HazardNames.InName(text.Value, static h => h.IsPoison) is not { } named) return false;
        Report(context, text, path, named.Hazard, named.In(text.Value), null, "The ingredient's file names");
        return true;
    }

    private static void CheckMenu(FileContext context, Menu menu)
    {
        foreach (var entry in menu.Drinks)
        {
            string path = $"drinks[{entry.Drink.Or("")}]";
            if (entry.Words.IsGiven && HazardNames.InProse(entry.Words.Value, static h => h.IsDeadly) is { } inWords)
                Report(context, entry.Words, path + ".words", inWords.Hazard, inWords.In(entry.Words.Value), null, "The menu offers");
            else if (entry.Name.IsGiven && HazardNames.InProse(entry.Name.Value, static h => h.IsDeadly) is { } inName)
                Report(
                    context, entry.Name, path + ".name", inName.Hazard, inName.In(entry.Name.Value), Level.Warning,
                    "The menu names a drink after");
        }
    }

    private static bool IsOnALine(RecipeProfile profile, Hazard hazard) => profile.HazardLoads.Any(l => l.Hazard.Id == hazard.Id);

    private static void Report(FileContext context, Given<string> text, string path, Hazard hazard, string name, Level? level, string how)
    {
        var rule = hazard.Rules[0];
        context.Report(new(Rule)
        {
            AskedLevel = level is { } asked && asked < rule.Level ? asked : rule.Level,
            At = new(text.IsGiven ? context.At(text.Span) : context.File.Head, path),
            Key = hazard.Id,
            Message = $"{how} \"{name}\": {hazard.Name} is poisonous{HazardWords.HarmOf(hazard)} and does not belong in or on a drink, in "
                + $"any amount ({rule.Source}).",
            Advice = $"If it is used, take it out and discard what it touched; {rule.Correction}. If it is not used, say so in the "
                + $"text (\"no {name}\") or choose another word.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of("named", name, text.IsGiven ? context.At(text.Span) : null), Proof.Of("hazard", hazard.Id)],
        });
    }
}
