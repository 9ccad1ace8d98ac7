using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4001", "acid-target-missed", "A preparation that misses its target of acid", Level.Warning,
    Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
internal sealed partial class AcidTargetMissed : TargetRule
{
    protected override string Property => "acid";

    protected override string Noun => "acid";

    protected override Given<Quantity> TargetOf(Target target) => target.Acid;

    protected override bool IsMoved(Part part) => Substances.IsAcid(part.Material);

    protected override (double Off, Limit Limit) Tolerance(double target) => (target * Off.Value / 100, Off);

    protected override string More(RecipeContext context, Quantity target)
    {
        var (added, native) = AcidReckoning.Of(context.Profile).In(target.Dimension);
        return $"; {Say.Number(added, 2)} are added and {Say.Number(native, 2)} come from the other parts";
    }

    protected override bool IsSaidElsewhere(RecipeContext context, Prep prep, Quantity target, FactValue value) =>
        value.Value > target.Base
            ? NativeAcidForgotten.Applies(context, target)
            : DilutedAfterTarget.Applies(context, prep, target) is not null;

    protected override Came? Comes(RecipeContext context, Quantity target)
    {
        bool byMass = target.Dimension == Dimension.PercentByMass;
        if (context.Recipe.Measured is { TitratableAcidity: { IsGiven: true } given } && given.Value is var measured
            && measured.Dimension == target.Dimension)
            return new Came(new FactValue(measured.Base, measured.BaseLow, measured.BaseHigh, "measured", null), null, Unit(byMass), "%");
        if (Acid(context, target.Dimension) is not { } acid) return null;
        return new Came(acid.Value, byMass ? ByMass : PerVolume, acid.Unit, byMass ? "%" : "g/dL");
    }

    /// <summary>
    /// The acid in the target's basis. The trade counts acid by what is weighed in and by what a juice titrates to, so the
    /// value lies between the sum of the acids and what the whole titrates to, as citric acid.
    /// </summary>
    internal static (FactValue Value, string Unit)? Acid(RecipeContext context, Dimension basis)
    {
        FactValue titratable = context.Fact(Fact.Acid), analysed = context.Fact(Fact.AcidAnalysed), density = context.Fact(Fact.Density);
        bool byMass = basis == Dimension.PercentByMass;
        if (!titratable.IsKnown || !analysed.IsKnown || context.Profile.IsSolid) return null;
        if (byMass ? !(density.IsKnown && density.Value > 0) : basis != Dimension.PercentMassInVolume) return null;
        double by = byMass ? 1 / density.Value : 1;
        var (added, native) = AcidReckoning.Of(context.Profile).In(basis);
        double value = added + native;
        double low = Math.Min(titratable.Low, analysed.Low) * by, high = Math.Max(titratable.High, analysed.High) * by;
        return (new FactValue(value, Math.Min(low, value), Math.Max(high, value), "computed", null), Unit(byMass));
    }

    private static string Unit(bool byMass) => byMass ? "% w/w" : "g/100 mL";

    private static readonly Solving.Measure ByMass = static grams => 100 * Counted(grams) / Solving.MassOf(grams);

    private static readonly Solving.Measure PerVolume = static grams => 100 * Counted(grams) / Solving.VolumeOf(grams);

    /// <summary>Half way between what is weighed and what titrates: within 3 % of either for the acids of a bar.</summary>
    private static double Counted(ReadOnlySpan<double> grams) => (Solving.AcidsOf(grams) + Solving.Titratable(grams)) / 2;
}
