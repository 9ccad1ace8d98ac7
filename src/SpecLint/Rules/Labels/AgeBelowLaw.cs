using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7044", "age-below-law", "A menu lets guests be served below the age of the law", Level.Warning, Safety = true, Needs = [Fact.Abv])]
[Limit("claims-strength", "Alcohol")]
internal sealed partial class AgeBelowLaw : MenuRule
{
    public override void Check(FileContext context, Menu menu)
    {
        if (ServingAgeTable.In(context.Settings) is not { Count: > 0 } laws) return;
        bool ofAll = false;
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
            string path = $"drinks[{entry.Drink.Value}]";
            Look(context, laws, recipe, entry.Words, path + ".words", isOfAll: false);
            foreach (var note in entry.Notes) Look(context, laws, recipe, note, path + ".notes", isOfAll: false);

            // What is said of all drinks is told once, and a note of several ages divides them.
            ofAll = ofAll || menu.Notes.Any(n => Look(context, laws, recipe, n, "notes", isOfAll: true));
        }
    }

    private static bool Look(
        FileContext context, IReadOnlyList<ServingAge> laws, Recipe recipe, Given<string> text, string path, bool isOfAll)
    {
        if (!text.IsGiven || ServingAgeTable.AgesIn(text.Value) is not { Count: > 0 } ages) return false;
        if (isOfAll && ages.Count > 1) return false;
        int age = ages.Min();
        var profile = context.Profiles.Of(recipe);
        var abv = profile.Get(Fact.Abv);
        if (Findings.Check.AtMost(abv, Alcohol.Value) == Stand.Holds) return false;
        string? spirit = Spirit(profile);
        if (spirit is null && (!abv.IsKnown || abv.Low <= Alcohol.Value || profile.Unresolved is not null)) return false;

        // It may be served in any of the bar's places: only what none of them allows is told.
        var asked = laws.Select(l => (Law: l, Age: spirit is null ? l.Fermented : l.Spirits)).OrderBy(static l => l.Age).First();
        if (age >= asked.Age) return false;
        context.Report(new(Rule)
        {
            AskedLevel = Level.Warning,
            At = context.At(text.Span, path),
            Key = recipe.Id,
            Message = $"\"{text.Value}\" lets guests of {age} be served {recipe.Name.Or(recipe.Id)}, which holds {spirit ?? "alcohol"}. "
                + $"In {asked.Law.Place} {(spirit is null ? "it is served" : "spirits and drinks with them are served")} from "
                + $"{Say.Number(asked.Age)} ({asked.Law.Source}).",
            Advice = $"Write {Say.Number(asked.Age)}, and ask for proof of age. The local licensing law decides.",
            Caution = "Local law decides who may be served. When in doubt, do not serve.",
            Evidence =
                [Proof.Of("age", age, "a"), Proof.Of("age of the law", asked.Age, "a", asked.Law.Source), Proof.Of(Fact.Abv, abv)],
            Related = [new RelatedPlace(recipe.Head, "the drink")],
        });
        return true;
    }

    /// <summary>The first spirit or liqueur in a drink; a dash of bitters makes none of it.</summary>
    private static string? Spirit(RecipeProfile profile)
    {
        foreach (var leaf in RecipeTree.Of(profile))
        {
            var kind = leaf.Ingredient.IngredientKind.OrNone();
            if (leaf.Part.Phase == PartPhase.Beside || kind.IsBitters || !(kind.IsSpirit || kind.IsLiqueur)) continue;
            if (!leaf.Ingredient.Values.TryGetValue("strength", out var strength) || strength.Typical > Alcohol.Value)
                return $"`{leaf.Ingredient.Id}`";
        }

        return null;
    }
}
