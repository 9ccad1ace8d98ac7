using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2042", "composition-short", "Water and dry matter of an ingredient that do not make up the whole", Level.Error, IsCause = true)]
[Limit("amount-composition-short", "Short")]
internal sealed partial class CompositionShort : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        // Only where the file gives both: one of them alone leaves the other open.
        var values = ingredient.Values;
        if (!values.TryGetValue("water", out var water) || !values.TryGetValue("solids", out var solids)) return;
        if (water.Dimension != Dimension.Mass || solids.Dimension != Dimension.Mass) return;
        var material = context.Profiles.MaterialOf(ingredient.Id);
        bool perVolume = ingredient.PerHundredMillilitres.Or(fallback: false);
        double density = values.TryGetValue("density", out var given) ? given.Low : material?.Density ?? double.NaN, ethanol = 0;
        if (perVolume && !(density > 0)) return;
        double whole = perVolume ? 100 * density : 100;
        double millilitres = perVolume ? 100 : 100 / (density > 0 ? density : FoodEnergyModel.EthanolGramsPerMillilitre);
        if (values.TryGetValue("strength", out var strength)) ethanol = Composition.Ethanol(strength.High, millilitres);
        else if (ingredient.Like.IsGiven || material is not { Kind.IsSpirit: false, Kind.IsLiqueur: false }) return;
        double sum = water.High + solids.High + ethanol, dry = whole - ethanol - water.Typical;
        if (sum >= whole - Short.Value) return;
        context.Report(new(Rule)
        {
            At = context.At(solids.Span, "solids"),
            Message = $"Water, dry matter and ethanol come to {Say.With(sum, "g")} of {Say.With(whole, "g")}: {Say.With(whole - sum, "g")} "
                + $"is missing (up to {Say.With(Short.Value, "g")} is allowed for rounding and analysis; {Short.Source}).",
            Advice = $"Read both again: with {Say.With(water.Typical, "g")} of water the dry matter is {Say.With(dry, "g")}.",
            Evidence = Composition.Proofs(solids.Typical, water.Typical, ethanol, Short),
        });
    }
}
