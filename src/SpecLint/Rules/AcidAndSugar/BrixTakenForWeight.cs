using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4017", "brix-taken-for-weight-in-volume", "A figure of °Brix written as grams in 100 mL", Level.Warning,
    Needs = [Fact.Sugar, Fact.Brix])]
[Limit("target-tolerance", "Off")]
internal sealed partial class BrixTakenForWeight : PrepRule
{
    /// <summary>Whether the target of sugar has the number of a °Brix in it.</summary>
    internal static bool Applies(Prep prep) =>
        prep.Target is { Sugar: { IsGiven: true, Value: { Dimension: Dimension.PercentMassInVolume } sugar } }
        && sugar.Base >= Guards.LeastBrix
        && BrixOf(prep) is { IsGiven: true } brix
        && Math.Abs(brix.Value.Base - sugar.Base) <= Guards.BrixAgrees;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!Applies(prep)) return;
        var target = prep.Target!.Sugar;
        double brix = BrixOf(prep).Value.Base;
        if (SugarWater.Density(new MassFraction(brix / 100), Celsius.Reference) is not { } density) return;
        double per = brix * density.Value / 1000;
        if (Math.Abs(per - brix) <= brix * Off.Value / 100) return;
        string number = Say.Number(brix, 1);
        context.Report(new(Rule)
        {
            At = context.At(target.Span, "target.sugar"),
            Message = $"{number} °Bx is {number} g in 100 g, which is {Say.Number(per, 1)} g in 100 mL. The same figure is written "
                + "for both.",
            Advice = $"Write {number} % w/w, or {Say.Number(per, 1)} % w/v.",
            Evidence =
            [
                Proof.Of("target.sugar", target.Value, context.At(target.Span)), Proof.Of("°Brix", brix, "%"),
                Proof.Of("sugar of that °Brix", per, "g/dL", "density of sucrose solutions, as in the science of this project"),
            ],
            Corrections = context.Write(target.Span, $"{number} % w/w"),
        });
    }

    private static Given<Quantity> BrixOf(Prep prep) =>
        prep.Target is { Brix.IsGiven: true } target ? target.Brix
        : prep.Measured is { Brix.IsGiven: true } measured ? measured.Brix
        : default;
}
