using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2029", "density-against-composition", "A density that disagrees with the stated composition", Level.Warning)]
[Limit("amount-density-composition", "Apart")]
[Limit("density-liquid-least", "Least")]
[Limit("density-liquid-most", "Most")]
internal sealed partial class DensityAgainstComposition : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        // It is told apart only where the file gives both: the density, and the sugar or the strength that make it.
        if (!ingredient.Values.TryGetValue("density", out var density) || Impossible(context, ingredient, density)) return;
        bool any = false;
        foreach (string path in ingredient.Values.Keys)
        {
            any |= path is "strength" or "solids" or "water"
                || path.StartsWith("sugars.", StringComparison.Ordinal)
                || path.StartsWith("acids.", StringComparison.Ordinal);
        }

        if (!any || context.Profiles.MaterialOf(ingredient.Id) is not { State: MaterialState.Liquid } material) return;
        if ((material.Unknown & ~Unknowns.Caffeine) != Unknowns.None || material.Of(Component.Fat) > Guards.FatBendsDensity) return;
        if (Mixture.Density(material.PerGram, Celsius.Reference) is not { GramsPerMillilitre: var value }) return;
        double nearest = density.Low <= value && value <= density.High ? value
            : Math.Abs(density.Low - value) < Math.Abs(density.High - value) ? density.Low
            : density.High;
        if (Math.Abs(nearest - value) <= value * Apart.Value / 100) return;
        string? text = Written.IsQuoted(context, density.Span) ? $"{Say.Number(value)} g/ml" : null;
        context.Report(new(Rule)
        {
            At = context.At(density.Span, "density"),
            Message = $"The density is given as {Say.Number(density.Typical)} g/mL, but the composition in the file comes to "
                + $"{Say.Number(value)} g/mL at 20 °C (differences up to {Say.Number(Apart.Value)} % are ignored; {Apart.Source}).",
            Advice = "Weigh 100 mL at 20 °C. One of the two is wrong, and density converts millilitres to grams.",
            Evidence = [Proof.Of("density of the composition", value, "g/mL"), Proof.Of(Apart)],
            Corrections = context.Write(density.Span, text, $"Write {text}, the density of the composition."),
        });
    }

    /// <summary>What pours is neither lighter than ethanol nor heavier than the heaviest acid of a bar.</summary>
    private static bool Impossible(FileContext context, Ingredient ingredient, SourcedValue density)
    {
        bool over = density.Low > Most.Value;
        if (!over && density.High >= Least.Value) return false;
        if (context.Profiles.MaterialOf(ingredient.Id) is not { State: MaterialState.Liquid }) return false;
        var limit = over ? Most : Least;
        double tenth = over ? density.Typical / 10 : density.Typical * 10;
        context.Report(new(Rule)
        {
            At = context.At(density.Span, "density"),
            Message = $"No liquid of a bar has {Say.Number(density.Typical)} g/mL, {(over ? "above" : "below")} "
                + $"{Say.Number(limit.Value)} g/mL ({limit.Source}).",
            Advice = tenth >= Least.Value && tenth <= Most.Value
                ? $"Write {Say.Number(tenth, 3)} g/ml if the decimal point is wrong. Density converts millilitres to grams."
                : "Weigh 100 mL at 20 °C. Density converts millilitres to grams.",
            Evidence = [Proof.Of("density", density.Typical, "g/mL"), Proof.Of(limit)],
        });
        return true;
    }
}
