using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2041", "energy-against-composition", "An energy that the stated composition cannot have", Level.Warning, IsCause = true)]
[Limit("amount-energy-composition", "Apart")]
internal sealed partial class EnergyOfComposition : IngredientRule
{
    private const double KilojoulesPerKilocalorie = 4.184;

    /// <summary>kcal per gram: Reg (EU) 1169/2011 Annex XIV.</summary>
    private const double OfFat = 9, OfEthanol = 7, OfCarbohydrate = 4;

    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.Values.TryGetValue("energy", out var energy) || MostOf(context, ingredient) is not { } most) return;
        if (energy.Low <= most * (1 + (Apart.Value / 100)) + 1) return;
        double read = energy.Typical / KilojoulesPerKilocalorie;
        bool isKilojoules = read <= most * (1 + (Apart.Value / 100)) + 1;
        string text = context.File.Source.TextOf(energy.Span);
        context.Report(new(Rule)
        {
            At = context.At(energy.Span, "energy"),
            Message = $"{Say.Number(energy.Typical)} kcal is more than its stated dry matter and alcohol can give, {Say.Number(most)} kcal at most "
                + "(9 kcal/g for fat, 7 for alcohol, 4 for the rest: Reg (EU) 1169/2011 Annex XIV).",
            Advice = isKilojoules ? $"If the label says {Say.Number(energy.Typical)} kJ, write that unit: it is {Say.Number(read)} kcal." : "Read the label again, for its basis too: per 100 g, per 100 ml or per serving.",
            Evidence = [Proof.Of("energy", energy.Typical, "kcal"), Proof.Of("most by composition", most, "kcal"), Proof.Of(Apart)],
            Corrections = isKilojoules && text.EndsWith("kcal\"", StringComparison.Ordinal)
                ? [new Correction(CorrectionGrade.Proposed, $"Write {Say.Number(energy.Typical)} kJ.", [new TextEdit(context.At(energy.Span), text.Substring(0, text.Length - 5) + "kJ\"")])]
                : [],
        });
    }

    /// <summary>The most energy of the basis in kcal; <see langword="null"/> where the file does not say how much dry matter and alcohol there is.</summary>
    private static double? MostOf(FileContext context, Ingredient ingredient)
    {
        var values = ingredient.Values;
        if (!values.TryGetValue("solids", out var solids) || solids.Dimension != Reading.Dimension.Mass) return null;
        var material = context.Profiles.MaterialOf(ingredient.Id);
        double strength = values.TryGetValue("strength", out var given) ? given.High : 0;
        if (strength <= 0 && (material is null || material.Of(Component.Ethanol) > 0)) return null;
        double fat = values.TryGetValue("fat", out var f) ? Math.Min(f.High, solids.High) : material is { Kind.IsJuice: true } ? 0 : solids.High;
        double nourishing = (OfFat * fat) + (OfCarbohydrate * (solids.High - fat));
        if (strength <= 0) return nourishing;

        // No mixture of water and ethanol is lighter than ethanol.
        double millilitres = ingredient.PerHundredMillilitres.Or(fallback: false) ? 100 : 100 / (material is { Density: > 0 } ? material.Density : FoodEnergyModel.EthanolGramsPerMillilitre);
        return nourishing + (OfEthanol * strength / 100 * FoodEnergyModel.EthanolGramsPerMillilitre * millilitres);
    }
}
