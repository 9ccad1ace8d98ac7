using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4018", "native-acid-forgotten", "Acid weighed in up to the target, as if the juice had none of its own", Level.Warning,
    Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
internal sealed partial class NativeAcidForgotten : PrepRule
{
    /// <summary>Least share of the acid that is left of it.</summary>
    private const double LeastLeft = 0.02;

    /// <summary>Whether the acids weighed in make the target by themselves.</summary>
    internal static bool Applies(RecipeContext context, Quantity target)
    {
        if (target.Dimension is not (Dimension.PercentByMass or Dimension.PercentMassInVolume)) return false;
        var (added, native) = AcidReckoning.Of(context.Profile).In(target.Dimension);
        double off = target.Base * Off.Value / 100;
        return native > off && Math.Abs(added - target.Base) <= off;
    }

    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Target is not { Acid: { IsGiven: true, Value: var target } given } || !Applies(context, target)) return;
        if (prep.Measured is { TitratableAcidity.IsGiven: true }) return;
        if (AcidTargetMissed.Acid(context, target.Dimension) is not var (acid, unit)) return;

        // What is weighed in makes the target by itself and the juice brings more than the tolerance: the least acid of the juice need
        // only be some.
        if (Findings.Check.AtMost(acid, target.BaseHigh) != Stand.Broken) return;
        var (added, native) = AcidReckoning.Of(context.Profile).In(target.Dimension);
        double factor = (target.Base - native) / added;
        var solved = NewAmounts.OfAcids(context, Math.Max(LeastLeft, factor), saysOld: true);
        var juice = Juice(context.Profile);
        string take = $"Take {solved.Words}, so that the whole comes to {Say.With(target.Base, unit)}.";
        context.Report(new(Rule)
        {
            At = context.At(given.Span, "target.acid"),
            Message = $"The added acids alone make {Say.With(added, unit)}, and {juice?.Line.Item.Or("the juice") ?? "the juice"} adds "
                + $"{Say.With(native, unit)} of its own. It comes to {Say.Range(acid.Value, acid.Low, acid.High, unit)} instead of the "
                + $"target of {Say.With(target.Base, unit)}.",
            Advice = factor > LeastLeft ? take : "The juice alone reaches the target: leave out the acid.",
            Evidence =
            [
                Proof.Of("acid weighed in", added, unit), Proof.Of("acid of the other parts", native, unit),
                Proof.Of("target.acid", target, context.At(given.Span)), Proof.Of(Off),
            ],
            Related = juice is null ? [] : [context.See(juice.Line.Span, "the juice with acid of its own")],
            Corrections = factor > LeastLeft ? Correction.Propose(take, solved.Edits) : [],
        });
    }

    /// <summary>The part that brings the most acid of its own.</summary>
    private static Part? Juice(RecipeProfile profile)
    {
        Part? juice = null;
        double most = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null || Substances.IsAcid(part.Material)) continue;
            double brings = part.Grams.Typical * Solving.AcidsOf(part.Material.PerGram);
            if (brings > most) (most, juice) = (brings, part);
        }

        return juice;
    }
}
