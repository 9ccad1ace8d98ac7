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
                bool strength = value.Key == "strength";
                if (value.Value.Dimension == Dimension.PercentOfUnknownBasis)
                    Report(context, value.Key, value.Value.Span, double.NaN, strength ? "% v/v" : "% w/w", strength);
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
        bool byMass = true;
        double total = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            byMass &= part.Line.Amount is { IsGiven: true, Value.Dimension: Dimension.Mass };
            if (part.IsWeighed) total += part.Grams.Typical;
            if (IsOpen(part.Line.Share)) first ??= part.Line;
        }

        if (first is null) return;
        var edits = new List<TextEdit>();
        bool agree = byMass && total > 0;
        foreach (var part in context.Profile.Parts)
        {
            var share = part.Line.Share;
            if (part.Phase == PartPhase.Beside || !IsOpen(share)) continue;
            agree &= Math.Abs(share.Value.Value - (part.Grams.Typical / total * 100)) <= Guards.ShareRounding;
            edits.Add(context.Rewrite(share.Span, $"{Written.Number(share.Value.Value)} % w/w"));
        }

        string more = edits.Count > 1 ? $" {Say.Count(edits.Count, "share")} of the recipe are written this way." : "";
        context.Report(new(Rule)
        {
            At = context.At(first.Share.Span, RecipeContext.PathOf(first, "share")),
            Message = $"`{Written.Text(context, first.Share.Span)}` does not say whether it is by mass, by volume, or mass in volume. In "
                + $"a syrup of 50 °Brix these differ by a quarter (61.5 g in 100 mL).{more}",
            Advice = byMass ? "The lines are weighed: write `% w/w`." : "Write `% w/w`, `% w/v` or `% v/v`.",
            Corrections = [new Correction(
                agree ? CorrectionGrade.Assured : CorrectionGrade.Proposed,
                agree ? "Write `% w/w`: these shares agree with the amounts by mass." : "Write `% w/w`, if they are by mass.",
                edits)],
        });
    }

    private static void Single(FileContext context, string path, Given<Quantity> value, string basis, bool assured)
    {
        if (IsOpen(value)) Report(context, path, value.Span, value.Value.Value, basis, assured);
    }

    private static bool IsOpen(Given<Quantity> value) => value is { IsGiven: true, Value.Dimension: Dimension.PercentOfUnknownBasis };

    private static void Report(FileContext context, string path, TextSpan span, double value, string basis, bool assured)
    {
        string text = Written.Text(context, span);
        bool isPlain = text.Length > 1 && text[0] is >= '0' and <= '9' && text.EndsWith("%", StringComparison.Ordinal);
        string number = isPlain ? text.Substring(0, text.Length - 1).Trim() : Written.Number(value);
        string what = isPlain ? $"`{text}`" : $"The percentage of `{path}`";
        var grade = assured ? CorrectionGrade.Assured : CorrectionGrade.Proposed;
        context.Report(new(Rule)
        {
            At = context.At(span, path),
            Message = assured
                ? $"{what} does not say its basis; a strength is by volume at 20 °C (OIML R 22, 1975)."
                : $"{what} does not say whether it is by mass or mass in volume. In a syrup of 50 °Brix the two differ by a quarter "
                    + "(61.5 g in 100 mL).",
            Advice = assured ? "Write `% v/v`." : "Write `% w/w` for grams in 100 g, `% w/v` for grams in 100 mL.",
            Corrections = isPlain
                ? [new Correction(grade, $"Write `{number} {basis}`.", [context.Rewrite(span, $"{number} {basis}")])]
                : [],
        });
    }
}
