using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2025", "liquid-acid-as-pure", "A liquid acid counted as if it were all acid", Level.Warning)]
internal sealed partial class LiquidAcidAsPure : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is Ingredient ingredient) InIngredient(context, ingredient);
        else if (context is RecipeContext recipe) InLines(recipe);
    }

    private static void InIngredient(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.IngredientKind.OrNone().IsAcid || ingredient.PerHundredMillilitres.Or(fallback: false)) return;
        foreach (string acid in Sold)
        {
            if (!ingredient.Values.TryGetValue("acids." + acid, out var content)) continue;
            double purity = ingredient.Values.TryGetValue("purity", out var given) ? given.Typical : Percent(ingredient.Name.Or(""));
            bool liquid = ingredient.State.Or("") == "liquid" || !double.IsNaN(purity) && purity < Guards.DryAcidPurity;
            if (!liquid) continue;
            bool tooMuch = double.IsNaN(purity) ? content.Typical > Guards.StrongestAcidSolution : content.Typical > purity * Guards.PurityRounding;
            if (!tooMuch) continue;
            string text = context.File.Source.TextOf(content.Span);
            bool quoted = text.StartsWith("\"", StringComparison.Ordinal) && !double.IsNaN(purity);
            context.Report(new(Rule)
            {
                At = context.At(content.Span, $"acids.{acid}"),
                Message = double.IsNaN(purity)
                    ? $"A liquid is counted as {Say.Number(content.Typical)} g of {acid} acid in 100 g, but liquid {acid} acid is a "
                        + $"solution, usually of 80 or 88 % (common practice, no source)."
                    : $"A solution of {Say.Number(purity)} % is counted as {Say.Number(content.Typical)} g of {acid} acid in 100 g, "
                        + $"but the contents of an ingredient must allow for its purity.",
                Advice = double.IsNaN(purity) ? "Check the label, and give `purity` and the acid in 100 g." : $"Write {Say.Number(purity)} g of {acid} acid.",
                Corrections = quoted
                    ? [new Correction(
                        CorrectionGrade.Proposed, $"Write {Say.Number(purity)} g.",
                        [new TextEdit(context.At(content.Span), $"\"{Say.Number(purity)} g\"")]) { KeepsTheThing = true }]
                    : [],
            });
        }
    }

    private static readonly string[] Sold = ["lactic", "phosphoric", "acetic"];

    /// <summary>A remark that says liquid, 80 % or 88 %, at the powder.</summary>
    private static void InLines(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Note.IsGiven || part.Item is not { IsBuiltIn: true, Id: "lactic-acid-powder" }) continue;
            double percent = Percent(line.Note.Value);
            bool liquid = line.Note.Value.IndexOf("liquid", StringComparison.OrdinalIgnoreCase) >= 0;
            if (!liquid && percent is not (80 or 88)) continue;
            string id = percent == 80 ? "lactic-acid-80" : "lactic-acid-88";
            context.Report(new(Rule)
            {
                At = context.ItemOf(line),
                Message = $"The remark says a solution, but `{line.Item.Value}` is counted as powder, all of it acid: the liquid holds "
                    + $"80 or 88 % (common practice, no source).",
                Advice = $"Name `{id}`, and weigh more of it for the same acid.",
                Corrections = [new Correction(
                    CorrectionGrade.Proposed, $"Name `{id}`.", [new TextEdit(context.At(line.Item.Span), $"\"{id}\"")]) { KeepsTheThing = true }],
            });
        }
    }

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
