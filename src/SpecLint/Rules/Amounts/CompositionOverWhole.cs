using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2028", "composition-over-the-whole", "An ingredient whose parts weigh more than the whole", Level.Error, IsCause = true)]
[Limit("amount-composition-over", "Over")]
internal sealed partial class CompositionOverWhole : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        // Only what the file itself says: what it inherits was weighed with another strength or sugar.
        var values = ingredient.Values;
        double parts = 0, low = 0;
        var (most, mostPath) = (default(SourcedValue), "water");
        foreach (var pair in values)
        {
            if (!Composition.IsContent(pair.Key) || pair.Value.Dimension != Dimension.Mass) continue;
            parts += pair.Value.Typical;
            low += pair.Value.Low;
            if (pair.Value.Typical > (most?.Typical ?? 0)) (most, mostPath) = (pair.Value, pair.Key);
        }

        if (values.TryGetValue("water", out var given)) most ??= given;
        bool perVolume = ingredient.PerHundredMillilitres.Or(fallback: false);
        double density = values.TryGetValue("density", out var d) ? d.Typical : context.Profiles.MaterialOf(ingredient.Id)?.Density ?? 1;
        if (double.IsNaN(density)) density = 1;
        double basis = perVolume ? 100 * density : 100, millilitres = perVolume ? 100 : 100 / density;
        double ethanol = values.TryGetValue("strength", out var strength) ? Composition.Ethanol(strength.Typical, millilitres) : 0;
        double water = given?.Low ?? 0, solids = values.TryGetValue("solids", out var s) ? s.Low : 0;
        double sum = Math.Max(low, solids) + water + ethanol;
        if (most is null || sum <= basis + Over.Value) return;
        context.Report(new(Rule)
        {
            At = context.At(most.Span, mostPath),
            Message = $"Water, dry matter and ethanol of this ingredient come to {Say.With(sum, "g")} in "
                + $"{(perVolume ? $"100 mL ({Say.With(basis, "g")})" : "100 g")}, more than the whole ({Say.With(Over.Value, "g")} is "
                + $"allowed for rounding and analysis; {Over.Source}).",
            Advice = perVolume
                ? "Check the basis of the label: per 100 g or per 100 ml."
                : "Check the basis of the label (`per` says 100 g or 100 ml) and at the decimal points.",
            Evidence = Composition.Proofs(Math.Max(parts, solids), water, ethanol, Over),
        });
    }
}
