using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9004", "one-name-for-two", "Two formulas have one name", Level.Error)]
internal sealed partial class SameNameTwice : BookRule
{
    public override void Check(BookContext context)
    {
        Check(context, context.Book.Preps);
        Check(context, context.Book.Drinks);
    }

    private static void Check(BookContext context, IReadOnlyList<Recipe> recipes)
    {
        var byName = new Dictionary<string, Recipe>(StringComparer.Ordinal);
        foreach (var recipe in recipes)
        {
            if (!recipe.Name.IsGiven) continue;
            string name = BuiltInCatalogue.Slug(recipe.Name.Value);
            if (name.Length == 0) continue;
            if (!byName.TryGetValue(name, out var first))
            {
                byName.Add(name, recipe);
                continue;
            }

            // The same id is a finding of its own, the same formula too.
            if (first.Id == recipe.Id || Formula.Replaces(first, recipe)) continue;
            if (first is Prep a && recipe is Prep b && Formula.KeyOf(a) == Formula.KeyOf(b) && Formula.IsSame(context.Profiles.Of(a), context.Profiles.Of(b))) continue;
            context.Report(new(Rule)
            {
                Place = recipe.Head,
                Path = "name",
                Message = $"\"{recipe.Name.Value}\" is the name of `{recipe.Id}` and of `{first.Id}`, which are not the same. Somebody sent for it may come back with either.",
                Advice = "Add the difference to the names, such as a strength or a year, or say that one supersedes the other.",
                Evidence = [Proof.Of("same name", first.Id, first.Head)],
                Related = [new RelatedPlace(first.Head, "the same name")],
            });
        }
    }
}
