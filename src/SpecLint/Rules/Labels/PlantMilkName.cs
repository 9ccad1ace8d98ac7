using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7037", "plant-milk-name", "A plant drink is called milk, cream or butter", Level.Note)]
internal sealed partial class PlantMilkName : FileRule
{
    private static readonly LabelRule Law = LabellingTable.Of("milk-name");

    public override void Check(FileContext context)
    {
        if (!Law.AppliesIn(context.Settings)) return;
        if (context.File is Recipe recipe) Look(context, recipe.Name, "name");
        if (context.File is not Menu menu) return;
        foreach (var entry in menu.Drinks)
        {
            Look(context, entry.Name, $"drinks[{entry.Drink.Or("")}].name");
            Look(context, entry.Words, $"drinks[{entry.Drink.Or("")}].words");
        }
    }

    private static void Look(FileContext context, Given<string> text, string path)
    {
        if (!text.IsGiven || WordSearch.First(text.Value, Law.Words) is not { } words) return;
        context.Report(new(Rule)
        {
            At = context.At(text.Span, path),
            Key = words,
            Message = $"\"{words}\": milk, cream and butter name what comes from animals; coconut milk and a few others are excepted "
                + $"({Law.Source}).",
            Advice = $"Call it a drink, e.g. \"{words.Replace("milk", "drink").Replace("cream", "topping").Replace("butter", "spread")}\".",
            Evidence = [Proof.Of("words", words, context.At(text.Span))],
        });
    }
}
