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
        CheckBottles(context);
    }

    /// <summary>Two files for one bottle: one name, or the name of the one among the other names of the other.</summary>
    private static void CheckBottles(BookContext context)
    {
        var byName = new Dictionary<string, Ingredient>(StringComparer.Ordinal);
        foreach (var own in context.Book.Ingredients)
        {
            if (own.Name.IsGiven && BuiltInCatalogue.Slug(own.Name.Value) is { Length: > 0 } name && !byName.ContainsKey(name))
                byName.Add(name, own);
        }

        foreach (var own in context.Book.Ingredients)
        {
            foreach (var called in own.Aliases.Prepend(own.Name))
            {
                if (!called.IsGiven || !byName.TryGetValue(BuiltInCatalogue.Slug(called.Value), out var other) || other.Id == own.Id)
                    continue;
                context.Report(new(Rule)
                {
                    AskedLevel = Level.Warning,
                    At = new(own.At(called.Span), "name"),
                    Message = $"\"{called.Value}\" is what `{own.Id}` and `{other.Id}` are both called: two files for one bottle drift "
                        + "apart.",
                    Advice = "Keep one of the two, and name it wherever the other is used.",
                    Evidence = [Proof.Of("same name", other.Id, other.Head)],
                    Related = [new RelatedPlace(other.Head, "the other file")],
                });
                break;
            }
        }
    }

    /// <summary>Whether two recipes have one name.</summary>
    public static bool IsSame(Recipe a, Recipe b) =>
        a.Name.IsGiven && b.Name.IsGiven && BuiltInCatalogue.Slug(a.Name.Value) == BuiltInCatalogue.Slug(b.Name.Value);

    private static void Check(BookContext context, IReadOnlyList<Recipe> recipes)
    {
        var byName = new Dictionary<string, Recipe>(StringComparer.Ordinal);
        foreach (var recipe in recipes)
        {
            if (!recipe.Name.IsGiven || BuiltInCatalogue.Slug(recipe.Name.Value) is not { Length: > 0 } name) continue;
            if (!byName.TryGetValue(name, out var first))
            {
                byName.Add(name, recipe);
                continue;
            }

            // The same id is a finding of its own.
            if (first.Id == recipe.Id || Formula.Replaces(first, recipe)) continue;
            bool copy = first is Prep a
                && recipe is Prep b
                && Formula.KeyOf(a) == Formula.KeyOf(b)
                && Formula.IsSame(context.Profiles.Of(a), context.Profiles.Of(b));
            context.Report(new(Rule)
            {
                AskedLevel = copy ? Level.Warning : null,
                At = new(recipe.Head, "name"),
                Message = copy
                    ? $"`{recipe.Id}` and `{first.Id}` are two files of one name and one formula, made and dated twice. A correction of "
                        + "one leaves the other as it is."
                    : $"\"{recipe.Name.Value}\" is the name of `{recipe.Id}` and of `{first.Id}`, which are not the same. Somebody sent "
                        + "for it may come back with either.",
                Advice = copy
                    ? "Keep one of the two, and name it wherever the other is used."
                    : "Add the difference to the names, such as a strength or a year, or say that one supersedes the other.",
                Corrections = copy ? SameThingTwice.Rename(context, recipe.Id, first.Id) : [],
                Evidence = [Proof.Of("same name", first.Id, first.Head)],
                Related = [new RelatedPlace(first.Head, "the same name")],
            });
        }
    }
}
