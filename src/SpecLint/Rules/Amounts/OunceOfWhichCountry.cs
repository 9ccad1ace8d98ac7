using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>One finding a book.</summary>
[Rule("SL2009", "ounce-of-which-country", "Ounces in a book that does not say how large an ounce is", Level.Note)]
internal sealed partial class OunceOfWhichCountry : BookRule
{
    public override void Check(BookContext context)
    {
        // In a bar of the United States an ounce is the US fluid ounce.
        var settings = context.Settings;
        if (settings.JurisdictionIsStated && settings.Jurisdictions.Count == 1 && settings.Jurisdictions[0] == "US") return;
        Line? first = null;
        Recipe? where = null;
        int recipes = 0;
        foreach (var recipe in context.Book.Recipes)
        {
            if (FirstOunce(recipe) is not { } line) continue;
            if (first is null) (first, where) = (line, recipe);
            recipes++;
        }

        if (first is null || where is null) return;
        var unit = first.Amount.Value.Unit;
        context.Report(new(Rule)
        {
            Place = where.At(first.Amount.Span),
            Path = RecipeContext.PathOf(first, "amount"),
            Message = $"{Say.Count(recipes, "recipe")} of the book {(recipes == 1 ? "is" : "are")} written in ounces, and bar.json "
                + "does not give its size. An ounce is 28.41 mL in Britain, 29.57 mL in the United States and 30 mL on many jiggers "
                + $"(the figures here use {Say.Range(unit.Factor, unit.Low, unit.High, "mL")}).",
            Advice = "Give `oz` its size under `measures` in bar.json, for example `\"oz\": \"30 ml\"`.",
            Evidence = [Proof.Of("recipes", recipes, "")],
            Corrections = InBar(context),
        });
    }

    /// <summary>The first amount in plain ounces. A bar's own ounce has one size; the built-in one has a range.</summary>
    private static Line? FirstOunce(Recipe recipe)
    {
        foreach (var line in recipe.Ingredients)
        {
            if (line.Amount is { IsGiven: true, Value.Unit: var unit } && Written.IsPlainOunce(unit) && unit.Low != unit.High) return line;
        }

        return null;
    }

    private static IReadOnlyList<Correction> InBar(BookContext context)
    {
        if (context.Settings.Bar is not { Tree: { } tree } bar || !tree.Root.Exists) return [];
        bool has = tree.Root.TryGetProperty("measures"u8, out var measures);
        if (has ? measures.Kind != JsonKind.Object : !bar.Name.IsGiven) return [];
        int at = has ? measures.Span.Start + 1 : bar.Name.Span.End;
        string text = !has ? ",\n  \"measures\": { \"oz\": \"30 ml\" }"
            : measures.FirstChild.Exists ? " \"oz\": \"30 ml\","
            : " \"oz\": \"30 ml\" ";
        return Correction.Propose("Let an ounce be 30 ml in this bar.", new TextEdit(bar.At(new TextSpan(at, 0)), text));
    }
}
