using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4009", "juice-extension-acid", "An extended juice weaker or stronger in acid than the citrus it extends", Level.Warning,
    Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("acid-juice-extension-low", "Low")]
[Limit("acid-juice-extension-high", "High")]
internal sealed partial class JuiceExtensionAcid : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsJuiceExtension || prep.Target is { Acid.IsGiven: true } or { StandsInFor.IsGiven: true }) return;
        if (AcidTargetMissed.Acid(context, Reading.Dimension.PercentByMass) is not var (acid, unit)) return;
        if (Findings.Check.Within(acid, Low.Value, High.Value) != Stand.Broken) return;
        bool over = acid.Value > High.Value;
        var (added, native) = AcidReckoning.Of(context.Profile).In(Reading.Dimension.PercentByMass);
        var line = FirstAcid(context);
        Correction[] corrections = [.. Solved(context, Substances.IsAcid, "the acid"), .. Solved(context, Substances.IsWater, "the water")];
        context.Report(new(Rule)
        {
            Place = context.At(line is null ? prep.IngredientsSpan : line.Amount.IsGiven ? line.Amount.Span : line.Span),
            Path = "ingredients",
            Message = $"The acid comes to {Say.Range(acid.Value, acid.Low, acid.High, unit)} "
                + $"({Say.Number(added, 1)} added, {Say.Number(native, 1)} from juice), {(over ? "above" : "below")} the "
                + $"{Say.Number(Low.Value, 1)}–{Say.With(High.Value, unit)} at which an extended juice can replace lime or "
                + $"lemon ({Low.Source}).",
            Advice = corrections.Length > 0 ? corrections[0].Description
                : over ? "Use less acid or more water."
                : "Use more acid or less water.",
            Evidence = [new Evidence("acid", acid.Value, acid.Low, acid.High, "%"), Proof.Of(Low), Proof.Of(High)],
            Corrections = corrections,
        });
    }

    /// <summary>Amounts of what a test names that bring the acid to the middle.</summary>
    private static IReadOnlyList<Correction> Solved(RecipeContext context, Func<Material?, bool> which, string noun)
    {
        double aim = (Low.Value + High.Value) / 2;
        double factor = Solving.Factor(context.Profile, p => which(p.Material), Solving.AcidByMass, aim);
        if (!(factor > Guards.LeastFactor)) return [];
        var solved = NewAmounts.Of(context, factor, p => p.Phase == PartPhase.Mix && which(p.Material));
        return Correction.Propose($"Solve for {noun}: {solved.Words} gives {Say.Number(aim, 1)} % w/w.", solved.Edits);
    }

    private static Line? FirstAcid(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (Substances.IsAcid(part.Material)) return part.Line;
        }

        return null;
    }
}
