using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Hazards;

[Rule("SL6017", "benzoate-with-vitamin-c", "Benzoate is kept together with vitamin C", Level.Warning, Safety = true)]
internal sealed partial class BenzoateWithVitaminC : PrepRule
{
    /// <summary>mg/kg under which a trace is no addition.</summary>
    private const double Trace = 1;

    public override void Check(RecipeContext context, Prep prep)
    {
        double mass = context.Profile.Mass;
        if (!(mass > 0)) return;
        var grams = context.Profile.Grams;
        double benzoic = grams[(int)Component.Benzoic] / mass * 1e6, ascorbic = grams[(int)Component.Ascorbic] / mass * 1e6;
        if (benzoic < Trace
            || ascorbic < Trace
            || !Storage.MayOutlast(prep, 1)
            || context.Profile.Parts.FirstOrDefault(static p => p.Material is { } m && m.Of(Component.Benzoic) > 0) is not { } from)
            return;
        context.Report(new(Rule)
        {
            At = context.ItemOf(from.Line),
            Message = $"It holds {Say.Number(benzoic, 0)} mg/kg of benzoic acid together with {Say.Number(ascorbic, 0)} mg/kg of vitamin C "
                + "and is kept. In light and warmth the two form benzene; the limit in drinking water is 5 ppb (US EPA, used by FDA for "
                + "comparison).",
            Advice = "Use sorbate instead of benzoate, or leave out the vitamin C. Until then keep it cold and dark.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of("benzoic acid", benzoic, "mg/kg"), Proof.Of("ascorbic acid", ascorbic, "mg/kg")],
        });
    }
}
