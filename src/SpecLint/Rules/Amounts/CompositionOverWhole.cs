using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2028", "composition-over-the-whole", "An ingredient whose parts weigh more than the whole", Level.Error, IsCause = true)]
[Limit("amount-composition-over", "Over")]
internal sealed partial class CompositionOverWhole : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        // Only what the file itself says: what it inherits was weighed with another strength or sugar.
        var values = ingredient.Values;
        double parts = 0, low = 0, largest = 0;
        SourcedValue? most = null;
        string? mostPath = null;
        foreach (var pair in values)
        {
            string path = pair.Key;
            bool content = path.StartsWith("sugars.", StringComparison.Ordinal)
                || path.StartsWith("acids.", StringComparison.Ordinal)
                || path.StartsWith("polyols.", StringComparison.Ordinal)
                || path is "salt" or "protein" or "fat" or "fibre" or "carbonDioxide";
            if (!content || pair.Value.Dimension != Dimension.Mass) continue;
            parts += pair.Value.Typical;
            low += pair.Value.Low;
            if (pair.Value.Typical <= largest) continue;
            largest = pair.Value.Typical;
            most = pair.Value;
            mostPath = path;
        }

        bool perVolume = ingredient.PerHundredMillilitres.Or(fallback: false);
        double density = values.TryGetValue("density", out var given) ? given.Typical : context.Profiles.MaterialOf(ingredient.Id)?.Density ?? double.NaN;
        if (double.IsNaN(density)) density = 1;
        double basis = perVolume ? 100 * density : 100;
        double ethanol = values.TryGetValue("strength", out var strength) ? strength.Typical / 100 * FoodEnergyModel.EthanolGramsPerMillilitre * (perVolume ? 100 : 100 / density) : 0;
        double water = values.TryGetValue("water", out var w) ? w.Low : 0;
        double solids = values.TryGetValue("solids", out var s) ? s.Low : 0;
        double dry = Math.Max(low, solids);
        double sum = dry + water + ethanol;
        if (most is null && values.TryGetValue("water", out var alone))
        {
            most = alone;
            mostPath = "water";
        }

        if (most is null || sum <= basis + Over.Value) return;
        context.Report(new(Rule)
        {
            At = context.At(most.Span, mostPath!),
            Message = $"Water, dry matter and ethanol of this ingredient come to {Say.With(sum, "g")} in "
                + $"{(perVolume ? $"100 mL ({Say.With(basis, "g")})" : "100 g")}, more than the whole ({Say.With(Over.Value, "g")} is "
                + $"allowed for rounding and analysis; {Over.Source}).",
            Advice = perVolume
                ? "Check the basis of the label: per 100 g or per 100 ml."
                : "Check the basis of the label (`per` says 100 g or 100 ml) and at the decimal points.",
            Evidence = [Proof.Of("dry matter", Math.Max(parts, solids), "g"), Proof.Of("water", water, "g"), Proof.Of("ethanol", ethanol, "g"), Proof.Of(Over)],
        });
    }
}
