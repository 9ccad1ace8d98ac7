using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2025", "liquid-acid-as-pure", "A liquid acid counted as if it were all acid", Level.Warning)]
internal sealed partial class LiquidAcidAsPure : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is Ingredient ingredient) InIngredient(context, ingredient);
        else if (context is RecipeContext recipe) InLines(recipe);
    }

    private static readonly string[] Sold = ["lactic", "phosphoric", "acetic"];

    private static void InIngredient(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.IngredientKind.OrNone().IsAcid || ingredient.PerHundredMillilitres.Or(fallback: false)) return;
        double purity = ingredient.Values.TryGetValue("purity", out var given) ? given.Typical : Percent(ingredient.Name.Or(""));
        bool unknown = double.IsNaN(purity);
        if (ingredient.State.Or("") != "liquid" && (unknown || purity >= Guards.DryAcidPurity)) return;
        double most = unknown ? Guards.StrongestAcidSolution : purity * Guards.PurityRounding;
        foreach (string acid in Sold)
        {
            if (!ingredient.Values.TryGetValue("acids." + acid, out var content) || !(content.Typical > most)) continue;
            string grams = $"{Say.Number(purity)} g";
            bool writes = !unknown && Written.IsQuoted(context, content.Span);
            context.Report(new(Rule)
            {
                At = context.At(content.Span, $"acids.{acid}"),
                Message = unknown
                    ? $"A liquid is counted as {Say.Number(content.Typical)} g of {acid} acid in 100 g, but liquid {acid} acid is a "
                        + "solution, usually of 80 or 88 % (common practice, no source)."
                    : $"A solution of {Say.Number(purity)} % is counted as {Say.Number(content.Typical)} g of {acid} acid in 100 g, "
                        + "but the contents of an ingredient must allow for its purity.",
                Advice = unknown ? "Check the label, and give `purity` and the acid in 100 g." : $"Write {grams} of {acid} acid.",
                Corrections = writes ? Keeping(context, content.Span, grams, $"Write {grams}.") : [],
            });
        }
    }

    /// <summary>A remark that says liquid, 80 % or 88 %, at the powder.</summary>
    private static void InLines(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Note.IsGiven || part.Item is not { IsBuiltIn: true, Id: "lactic-acid-powder" }) continue;
            double percent = Percent(line.Note.Value);
            if (percent is not (80 or 88) && line.Note.Value.IndexOf("liquid", StringComparison.OrdinalIgnoreCase) < 0) continue;
            string id = percent == 80 ? "lactic-acid-80" : "lactic-acid-88";
            context.Report(new(Rule)
            {
                At = context.ItemOf(line),
                Message = $"The remark says a solution, but `{line.Item.Value}` is counted as powder, all of it acid: the liquid holds "
                    + "80 or 88 % (common practice, no source).",
                Advice = $"Name `{id}`, and weigh more of it for the same acid.",
                Corrections = Keeping(context, line.Item.Span, id, $"Name `{id}`."),
            });
        }
    }

    /// <summary>A correction after which the thing is the same.</summary>
    private static Correction[] Keeping(FileContext context, TextSpan span, string text, string description) =>
        [new Correction(CorrectionGrade.Proposed, description, [context.Rewrite(span, text)]) { KeepsTheThing = true }];

    /// <summary>The number before a sign for per cent; NaN where there is none.</summary>
    private static double Percent(string text)
    {
        int sign = text.IndexOf('%');
        if (sign <= 0) return double.NaN;
        int end = sign;
        while (end > 0 && text[end - 1] == ' ') end--;
        double value = 0, place = 1;
        int start = end;
        while (start > 0 && text[start - 1] is >= '0' and <= '9')
        {
            start--;
            value += (text[start] - '0') * place;
            place *= 10;
        }

        return start < end ? value : double.NaN;
    }
}
