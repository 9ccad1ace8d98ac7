using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7002", "allergens-not-stated", "The recipe contains allergens but has no list of them", Level.Warning, Safety = true)]
internal sealed partial class AllergensNotStated : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var recipe = context.Recipe;
        if (AllergenWords.Declared(recipe).IsGiven) return;
        var found = context.Profile.Allergens.Found;
        List<FoundAllergen>? certain = null;
        for (int i = 0; i < found.Count; i++)
        {
            if (found[i].Presence != Presence.Possible) (certain ??= []).Add(found[i]);
        }

        if (certain is null)
        {
            CheckPossible(context);
            return;
        }

        var first = certain[0];
        string[] tokens = [.. certain.Select(static f => f.Token)];
        context.Report(new(Rule)
        {
            Place = recipe.Declares is { } d ? context.At(d.Span) : recipe.Head,
            Path = "declares.allergens",
            Message = $"It holds {Say.List(tokens)} ({first.Token} {AllergenWords.Way(first.Origin)}) and declares nothing. "
                + $"{AllergenWords.Asks(first)} ({first.Category.Source}).",
            Advice = "List the allergens under `declares.allergens`. An empty list says that somebody checked.",
            Caution = AllergenWords.Caution,
            Evidence = [.. certain.Select(f => AllergenWords.ComesIn(context, f.Origin, f.Token))],
            Related = [.. certain.Select(f => context.See(f.Origin.Part.Line.Span, $"brings {f.Token}"))],
            Corrections = Correction.Propose($"Declare {Say.List(tokens)}.", Declares.Edit(recipe, "allergens", Declares.List(tokens))),
        });
    }

    /// <summary>A recipe whose allergens are all "may" is not shown to hold none.</summary>
    private static void CheckPossible(RecipeContext context)
    {
        var recipe = context.Recipe;
        var possible = PossibleAllergens.Of(context, []);
        if (possible.Count == 0) return;
        string[] tokens = [.. possible.SelectMany(static p => p.Found).Select(static f => f.Token).Distinct()];
        string list = recipe.Declares is { MayContain.Count: > 0 } ? "[]" : $"[], \"mayContain\": {Declares.List(tokens)}";
        var first = possible[0].Found[0];
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            Place = recipe.Declares is { } d ? context.At(d.Span) : recipe.Head,
            Path = "declares.allergens",
            Message = $"It may hold {Say.List(tokens)} with {Say.List([.. possible.Select(static p => $"`{p.Leaf}`")])}, and declares "
                + $"nothing. {AllergenWords.Asks(first)} ({first.Category.Source}).",
            Advice = "Read the labels. List what it contains under `declares.allergens` and what it may contain under "
                + "`declares.mayContain`.",
            Caution = AllergenWords.Caution,
            Evidence = [.. possible.SelectMany(static p => p.Found).Select(f => AllergenWords.ComesIn(context, f.Origin, f.Token))],
            Related =
            [
                .. possible.Select(p => context.See(
                    p.Found[0].Origin.Part.Line.Span, $"may contain {Say.List([.. p.Found.Select(static f => f.Token)])}")),
            ],
            Corrections = Correction.Propose($"Declare that it may contain {Say.List(tokens)}.", Declares.Edit(recipe, "allergens", list)),
        });
    }
}
