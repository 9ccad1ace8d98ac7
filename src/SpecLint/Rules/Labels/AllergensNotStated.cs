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
        List<string>? tokens = null;
        FoundAllergen? first = null;
        for (int i = 0; i < found.Count; i++)
        {
            if (found[i].Presence == Presence.Possible) continue;
            (tokens ??= []).Add(found[i].Token);
            first ??= found[i];
        }

        if (first is null)
        {
            CheckPossible(context);
            return;
        }

        string json = "[" + string.Join(", ", tokens!.Select(t => $"\"{t}\"")) + "]";
        var edit = recipe.Declares is null
            ? JsonEdits.AddProperty(recipe, "", "declares", $"{{ \"allergens\": {json} }}")
            : JsonEdits.AddProperty(recipe, "declares", "allergens", json);
        context.Report(new(Rule)
        {
            Place = recipe.Declares is { } d ? context.At(d.Span) : recipe.Head,
            Path = "declares.allergens",
            Message = $"It holds {Say.List(tokens!)} ({first.Token} {AllergenWords.Way(first.Origin)}) and declares nothing. "
                + $"{AllergenWords.Asks(first)} ({first.Category.Source}).",
            Advice = "List the allergens under `declares.allergens`. An empty list says that somebody checked.",
            Caution = AllergenWords.Caution,
            Evidence = [.. found.Where(f => f.Presence != Presence.Possible)
                .Select(f => Proof.Of(f.Token, string.Join(" > ", f.Origin.Through), context.At(f.Origin.Part.Line.Span)))],
            Related = [.. found.Where(f => f.Presence != Presence.Possible)
                .Select(f => new RelatedPlace(context.At(f.Origin.Part.Line.Span), $"brings {f.Token}"))],
            Corrections = edit is null ? [] : [new Correction(CorrectionGrade.Proposed, $"Declare {Say.List(tokens!)}.", [edit])],
        });
    }

    /// <summary>A recipe whose allergens are all "may" is not shown to hold none.</summary>
    private static void CheckPossible(RecipeContext context)
    {
        var recipe = context.Recipe;
        var possible = PossibleAllergens.Of(context, []);
        if (possible.Count == 0) return;
        string[] tokens = [.. possible.SelectMany(p => p.Found).Select(f => f.Token).Distinct()];
        string[] leaves = [.. possible.Select(p => $"`{p.Leaf}`")];
        string json = "[" + string.Join(", ", tokens.Select(t => $"\"{t}\"")) + "]";
        var edit = recipe.Declares is null
            ? JsonEdits.AddProperty(recipe, "", "declares", $"{{ \"allergens\": [], \"mayContain\": {json} }}")
            : JsonEdits.AddProperty(recipe, "declares", "allergens", recipe.Declares.MayContain.Count > 0 ? "[]" : $"[], \"mayContain\": {json}");
        var first = possible[0].Found[0];
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            Place = recipe.Declares is { } d ? context.At(d.Span) : recipe.Head,
            Path = "declares.allergens",
            Message = $"It may hold {Say.List(tokens)} with {Say.List(leaves)}, and declares nothing. {AllergenWords.Asks(first)} ({first.Category.Source}).",
            Advice = "Read the labels. List what it contains under `declares.allergens` and what it may contain under `declares.mayContain`.",
            Caution = AllergenWords.Caution,
            Evidence = [.. possible.SelectMany(p => p.Found)
                .Select(f => Proof.Of(f.Token, string.Join(" > ", f.Origin.Through), context.At(f.Origin.Part.Line.Span)))],
            Related = [.. possible.Select(p => new RelatedPlace(
                context.At(p.Found[0].Origin.Part.Line.Span), $"may contain {Say.List([.. p.Found.Select(f => f.Token)])}"))],
            Corrections = edit is null ? [] : [new Correction(CorrectionGrade.Proposed, $"Declare that it may contain {Say.List(tokens)}.", [edit])],
        });
    }
}
