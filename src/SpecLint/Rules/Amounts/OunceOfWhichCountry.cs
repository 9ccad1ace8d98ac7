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
            bool any = false;
            foreach (var line in recipe.Ingredients)
            {
                // A bar's own ounce has one size; the built-in one has a range.
                if (!line.Amount.IsGiven
                    || !Written.IsPlainOunce(line.Amount.Value.Unit)
                    || line.Amount.Value.Unit.Low == line.Amount.Value.Unit.High)
                    continue;
                any = true;
                if (first is not null) break;
                first = line;
                where = recipe;
            }

            if (any) recipes++;
        }

        if (first is null || where is null) return;
        var unit = first.Amount.Value.Unit;
        context.Report(new(Rule)
        {
            Place = where.At(first.Amount.Span),
            Path = RecipeContext.PathOf(first, "amount"),
            Message = $"{Say.Count(recipes, "recipe")} of the book {(recipes == 1 ? "is" : "are")} written in ounces, and bar.json "
                + $"does not give its size. An ounce is 28.41 mL in Britain, 29.57 mL in the United States and 30 mL on many jiggers "
                + $"(the figures here use {Say.Range(unit.Factor, unit.Low, unit.High, "mL")}).",
            Advice = "Give `oz` its size under `measures` in bar.json, for example `\"oz\": \"30 ml\"`.",
            Evidence = [Proof.Of("recipes", recipes, "")],
            Corrections = InBar(context),
        });
    }

    private static IReadOnlyList<Correction> InBar(BookContext context)
    {
        if (context.Settings.Bar is not { Tree: { } tree } bar || !tree.Root.Exists) return [];
        bool has = tree.Root.TryGetProperty("measures"u8, out var measures);
        if (has && measures.Kind != JsonKind.Object) return [];
        if (!has && !bar.Name.IsGiven) return [];
        int at = has ? measures.Span.Start + 1 : bar.Name.Span.End;
        bool empty = has && !measures.FirstChild.Exists;
        string text = has ? empty ? " \"oz\": \"30 ml\" " : " \"oz\": \"30 ml\"," : ",\n  \"measures\": { \"oz\": \"30 ml\" }";
        return [new Correction(CorrectionGrade.Proposed, "Let an ounce be 30 ml in this bar.", [new TextEdit(bar.At(new TextSpan(at, 0)), text)])];
    }
}
