using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4017", "brix-taken-for-weight-in-volume", "A figure of °Brix written as grams in 100 mL", Level.Warning, Needs = [Fact.Sugar, Fact.Brix])]
[Limit("target-tolerance", "Off")]
internal sealed partial class BrixTakenForWeight : PrepRule
{
    /// <summary>Whether the target of sugar has the number of a °Brix in it.</summary>
    internal static bool Applies(Prep prep) =>
        prep.Target is { Sugar.IsGiven: true } target && target.Sugar.Value.Dimension == Dimension.PercentMassInVolume && target.Sugar.Value.Base >= Guards.LeastBrix
        && BrixOf(prep) is { } brix && Math.Abs(brix - target.Sugar.Value.Base) <= Guards.BrixAgrees;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!Applies(prep)) return;
        var target = prep.Target!.Sugar;
        double brix = BrixOf(prep)!.Value;
        if (Science.SugarWater.Density(new Science.MassFraction(brix / 100), Science.Celsius.Reference) is not { } density) return;
        double per = brix * density.Value / 1000;
        if (Math.Abs(per - brix) <= brix * Off.Value / 100) return;
        context.Report(new(Rule)
        {
            At = context.At(target.Span, "target.sugar"),
            Message = $"{Say.Number(brix, 1)} °Bx is {Say.Number(brix, 1)} g in 100 g, which is {Say.Number(per, 1)} g in 100 mL. The same figure is written for both.",
            Advice = $"Write {Say.Number(brix, 1)} % w/w, or {Say.Number(per, 1)} % w/v.",
            Evidence = [Proof.Of("target.sugar", target.Value, context.At(target.Span)), Proof.Of("°Brix", brix, "%"), Proof.Of("sugar of that °Brix", per, "g/dL", "density of sucrose solutions, as in the science of this project")],
            Corrections = [new Correction(CorrectionGrade.Proposed, $"Write {Say.Number(brix, 1)} % w/w.", [new TextEdit(context.At(target.Span), $"\"{Say.Number(brix, 1)} % w/w\"")])],
        });
    }

    private static double? BrixOf(Prep prep)
    {
        if (prep.Target is { Brix.IsGiven: true } target) return target.Brix.Value.Base;
        if (prep.Measured is { Brix.IsGiven: true } measured) return measured.Brix.Value.Base;
        return null;
    }
}
