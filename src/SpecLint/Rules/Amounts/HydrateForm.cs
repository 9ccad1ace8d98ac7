using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2024", "hydrate-form", "Citric acid whose water of crystallisation is not stated or not counted", Level.Note)]
[Limit("amount-monohydrate", "Monohydrate")]
internal sealed partial class HydrateForm : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is Ingredient ingredient) InIngredient(context, ingredient);
        else if (context is RecipeContext recipe) InLines(recipe);
    }

    private static void InIngredient(FileContext context, Ingredient ingredient)
    {
        if (ingredient.Like.IsGiven || !ingredient.Values.TryGetValue("acids.citric", out var citric)) return;
        if (!ingredient.IngredientKind.OrNone().IsAcid || citric.Typical < Guards.DryCitric || ingredient.State.Or("powder") == "liquid")
            return;
        string name = ingredient.Name.Or(""), form = ingredient.Form.Or("");
        bool mono = Has(name, "monohydrate") || Has(form, "monohydrate");
        bool dry = Has(name, "anhydrous") || Has(form, "anhydrous");
        if (mono && citric.Typical > Monohydrate.Value + Guards.MonohydrateOver)
        {
            string grams = $"{Say.Number(Monohydrate.Value, 1)} g";
            context.Report(new(Rule)
            {
                At = context.At(citric.Span, "acids.citric"),
                AskedLevel = Level.Warning,
                Message = $"The monohydrate is counted as {Say.Number(citric.Typical)} g of acid in 100 g, but holds "
                    + $"{Say.Number(Monohydrate.Value)} g: 192.12 / 210.14, the rest is water ({Monohydrate.Source}).",
                Advice = $"Write {grams} of citric acid.",
                Evidence = [Proof.Of(Monohydrate)],
                Corrections = context.Write(citric.Span, Written.IsQuoted(context, citric.Span) ? grams : null),
            });
        }
        else if (!mono && !dry)
        {
            context.Report(new(Rule)
            {
                At = new(context.File.Head, "form"),
                Message = "The file does not say whether this citric acid is anhydrous or the monohydrate. 100 g of one holds as much "
                    + $"acid as {Say.Number(100 / Monohydrate.Value * 100, 1)} g of the other ({Monohydrate.Source}).",
                Advice = "Give `form` as on the packet: `anhydrous` or `monohydrate`.",
                Evidence = [Proof.Of(Monohydrate)],
            });
        }
    }

    /// <summary>A remark that says monohydrate, at the anhydrous acid.</summary>
    private static void InLines(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Note.IsGiven || part.Item is not { IsBuiltIn: true, Id: "citric-acid" } || !Has(line.Note.Value, "monohydrate"))
                continue;
            context.Report(new(Rule)
            {
                At = context.ItemOf(line),
                AskedLevel = Level.Warning,
                Message = $"The remark says monohydrate, but `{line.Item.Value}` is counted as anhydrous: the monohydrate holds "
                    + $"{Say.Number(Monohydrate.Value)} % of acid ({Monohydrate.Source}).",
                Advice = "Name `citric-acid-monohydrate`.",
                Evidence = [Proof.Of(Monohydrate)],
                Corrections = context.Write(line.Item.Span, "citric-acid-monohydrate", "Name `citric-acid-monohydrate`."),
            });
        }
    }

    private static bool Has(string text, string word) => text.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0;
}
