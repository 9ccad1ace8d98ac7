using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2010", "spoon-of-which-country", "A spoon of something potent, in no stated size", Level.Warning)]
[Limit("amount-potent-spoon", "Spoon")]
[Limit("amount-potent-strength", "Potent")]
internal sealed partial class SpoonOfWhichCountry : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Material is not { State: MaterialState.Liquid } material) continue;
            var amount = line.Amount.Value;
            bool table = amount.Unit.Name == "tbsp" && amount.BaseHigh > Spoon.Value;
            bool bar = amount.Unit.Name == "barspoon" && amount.Value >= Guards.SpoonsThatCount;
            if (!(table || bar) || amount.Unit.Low == amount.Unit.High || !IsPotent(material)) continue;
            string size = Say.Range(amount.Base, amount.BaseLow, amount.BaseHigh, "mL");
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                AskedLevel = table ? null : Level.Note,
                Message = table
                    ? $"A tablespoon of {Written.Item(line)} is 15 mL in most countries and 20 mL in Australia ({size} here), and the "
                        + "difference can be tasted (common practice, no source)."
                    : $"A barspoon is half a teaspoon in one school and a whole one in another: {Written.Text(context, line.Amount.Span)} "
                        + $"of {Written.Item(line)} is {size}, and the difference can be tasted (common practice, no source).",
                Advice = $"Write millilitres, or give `{amount.Unit.Name}` its size under `measures` in bar.json. Old books that say a "
                    + "spoon of absinthe or bitters may mean drops.",
                Evidence = [Written.Given(context, line)],
                Corrections = context.Write(line.Amount.Span, $"{Written.Number(amount.Base)} ml"),
            });
        }
    }

    private static bool IsPotent(Material material) =>
        material.Kind.IsDosed
        || (material.Ingredient is { } own && own.Values.TryGetValue("strength", out var strength) && strength.Typical >= Potent.Value);
}
