using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

/// <summary>What the stated parts of an ingredient come to.</summary>
internal static class Composition
{
    /// <summary>kcal per gram: Reg (EU) 1169/2011 Annex XIV.</summary>
    private const double OfFat = 9, OfEthanol = 7, OfCarbohydrate = 4;

    /// <summary>g of ethanol in so many millilitres of a strength, % vol.</summary>
    public static double Ethanol(double strength, double millilitres) =>
        strength / 100 * FoodEnergyModel.EthanolGramsPerMillilitre * millilitres;

    /// <summary>The parts, in g, and the limit that they are held against.</summary>
    public static Evidence[] Proofs(double dry, double water, double ethanol, Limit limit) =>
        [Proof.Of("dry matter", dry, "g"), Proof.Of("water", water, "g"), Proof.Of("ethanol", ethanol, "g"), Proof.Of(limit)];

    /// <summary>Whether a value of an ingredient is how much it holds of something dry.</summary>
    public static bool IsContent(string path) =>
        path.StartsWith("sugars.", StringComparison.Ordinal)
        || path.StartsWith("acids.", StringComparison.Ordinal)
        || path.StartsWith("polyols.", StringComparison.Ordinal)
        || path is "salt" or "protein" or "fat" or "fibre" or "carbonDioxide";

    /// <summary>
    /// The most energy of the basis in kcal; <see langword="null"/> where the file does not say how much dry matter and alcohol there is.
    /// </summary>
    public static double? MostEnergy(FileContext context, Ingredient ingredient)
    {
        var values = ingredient.Values;
        if (!values.TryGetValue("solids", out var solids) || solids.Dimension != Dimension.Mass) return null;
        var material = context.Profiles.MaterialOf(ingredient.Id);
        double strength = values.TryGetValue("strength", out var given) ? given.High : 0;
        if (strength <= 0 && (material is null || material.Of(Component.Ethanol) > 0)) return null;
        double fat = values.TryGetValue("fat", out var f) ? Math.Min(f.High, solids.High)
            : material is { Kind.IsJuice: true } ? 0
            : solids.High;
        double nourishing = (OfFat * fat) + (OfCarbohydrate * (solids.High - fat));
        if (strength <= 0) return nourishing;

        // No mixture of water and ethanol is lighter than ethanol.
        double density = material is { Density: > 0 } ? material.Density : FoodEnergyModel.EthanolGramsPerMillilitre;
        double millilitres = ingredient.PerHundredMillilitres.Or(fallback: false) ? 100 : 100 / density;
        return nourishing + (OfEthanol * strength / 100 * FoodEnergyModel.EthanolGramsPerMillilitre * millilitres);
    }
}
