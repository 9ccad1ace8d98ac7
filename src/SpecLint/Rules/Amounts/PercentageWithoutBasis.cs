using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2016", "percentage-without-basis", "A percentage without its basis", Level.Warning)]
internal sealed partial class PercentageWithoutBasis : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is Ingredient ingredient)
        {
            foreach (var value in ingredient.Values)
            {
                if (value.Value.Dimension == Dimension.PercentOfUnknownBasis)
                    Report(context, value.Key, value.Value.Span, double.NaN, value.Key == "strength" ? "% v/v" : "% w/w", value.Key == "strength");
            }

            return;
        }

        if (context.File is not Recipe recipe || context is not RecipeContext inRecipe) return;
        Shares(inRecipe);
        if (recipe.Declares is { } declares) Single(context, "declares.abv", declares.Abv, "% v/v", assured: true);
        if (recipe.AsMeasured is { } measured)
        {
            Single(context, "measured.abv", measured.Abv, "% v/v", assured: true);
            Single(context, "measured.titratableAcidity", measured.TitratableAcidity, "% w/v", assured: false);
        }

        if (recipe is not Prep { Target: { } target }) return;
        Single(context, "target.abv", target.Abv, "% v/v", assured: true);
        Single(context, "target.acid", target.Acid, "% w/w", assured: false);
        Single(context, "target.sugar", target.Sugar, "% w/w", assured: false);
        Single(context, "target.salt", target.Salt, "% w/w", assured: false);
    }

    private static void Shares(RecipeContext context)
    {
        Line? first = null;
        List<TextEdit>? edits = null;
        bool byMass = true;
        double total = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            byMass &= part.Line.Amount.IsGiven && part.Line.Amount.Value.Dimension == Dimension.Mass;
            if (part.IsWeighed) total += part.Grams.Typical;
            if (!part.Line.Share.IsGiven || part.Line.Share.Value.Dimension != Dimension.PercentOfUnknownBasis) continue;
            first ??= part.Line;
        }

        if (first is null) return;
        edits = [];
        bool agree = byMass && total > 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !part.Line.Share.IsGiven || part.Line.Share.Value.Dimension != Dimension.PercentOfUnknownBasis) continue;
            agree &= Math.Abs(part.Line.Share.Value.Value - (part.Grams.Typical / total * 100)) <= Guards.ShareRounding;
            edits.Add(new TextEdit(context.At(part.Line.Share.Span), $"\"{Written.Number(part.Line.Share.Value.Value)} % w/w\""));
        }

        context.Report(new(Rule)
        {
            At = context.At(first.Share.Span, RecipeContext.PathOf(first, "share")),
            Message = $"`{Written.Text(context, first.Share.Span)}` does not say whether it is by mass, by volume, or mass in volume. In a syrup of 50 °Brix these differ by a quarter (61.5 g in 100 mL)." + (edits.Count > 1
                ? $" {Say.Count(edits.Count, "share")} of the recipe are written this way."
                : ""),
            Advice = byMass ? "The lines are weighed: write `% w/w`." : "Write `% w/w`, `% w/v` or `% v/v`.",
            Corrections = [new Correction(
                agree ? CorrectionGrade.Assured : CorrectionGrade.Proposed,
                agree ? "Write `% w/w`: these shares agree with the amounts by mass." : "Write `% w/w`, if they are by mass.",
                edits)],
        });
    }

    private static void Single(FileContext context, string path, Given<Quantity> value, string basis, bool assured)
    {
        if (value.IsGiven && value.Value.Dimension == Dimension.PercentOfUnknownBasis) Report(context, path, value.Span, value.Value.Value, basis, assured);
    }

    private static void Report(FileContext context, string path, TextSpan span, double value, string basis, bool assured)
    {
        string text = Written.Text(context, span);
        bool isPlain = text.Length > 1 && text[0] is >= '0' and <= '9' && text.EndsWith("%", StringComparison.Ordinal);
        string number = isPlain ? text.Substring(0, text.Length - 1).Trim() : Written.Number(value);
        string what = isPlain ? $"`{text}`" : $"The percentage of `{path}`";
        context.Report(new(Rule)
        {
            At = context.At(span, path),
            Message = assured
                ? $"{what} does not say its basis; a strength is by volume at 20 °C (OIML R 22, 1975)."
                : $"{what} does not say whether it is by mass or mass in volume. In a syrup of 50 °Brix the two differ by a quarter (61.5 g in 100 mL).",
            Advice = assured ? "Write `% v/v`." : "Write `% w/w` for grams in 100 g, `% w/v` for grams in 100 mL.",
            Corrections = isPlain
                ? [new Correction(
                    assured ? CorrectionGrade.Assured : CorrectionGrade.Proposed, $"Write `{number} {basis}`.",
                    [new TextEdit(context.At(span), $"\"{number} {basis}\"")])]
                : [],
        });
    }
}
