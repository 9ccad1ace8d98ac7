using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4019", "diluted-after-target", "Juice or water that goes in after the acid was made up to the target", Level.Warning,
    Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
[Limit("diluted-after-target", "Far")]
internal sealed partial class DilutedAfterTarget : PrepRule
{
    /// <summary>The step that dilutes what had reached the target; <see langword="null"/> where there is none.</summary>
    internal static Step? Applies(RecipeContext context, Prep prep, Quantity target)
    {
        if (target.Dimension is not (Dimension.PercentByMass or Dimension.PercentMassInVolume)) return null;
        if (Dilutes(context, prep) is not { } later) return null;
        double added = 0, native = 0;
        var before = new double[Science.Components.Count];
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null) continue;
            if (part.Line.Item.IsGiven && StepHeat.Takes(later, part.Line.Item.Value)) continue;
            for (int c = 0; c < before.Length; c++) before[c] += part.Grams.Typical * part.Material.PerGram[c];
            if (Substances.IsAcid(part.Material)) added += part.Grams.Typical * Solving.AcidsOf(part.Material.PerGram);
            else native += part.Grams.Typical * Math.Max(0, Solving.Titratable(part.Material.PerGram));
        }

        double of = target.Dimension == Dimension.PercentByMass ? Solving.MassOf(before) : Solving.VolumeOf(before);
        double then = 100 * (added + native) / of;
        return Math.Abs(then - target.Base) <= target.Base * Far.Value / 100 ? later : null;
    }

    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Target is not { Acid: { IsGiven: true, Value: var target } given }) return;
        if (Applies(context, prep, target) is not { } step) return;
        if (AcidTargetMissed.Acid(context, target.Dimension) is not var (acid, unit)) return;
        double off = target.Base * Off.Value / 100, far = target.Base * Far.Value / 100;

        // Before and after share what is not known of the juice: the difference between them is the dilution alone.
        if (Findings.Check.AtLeast(acid, target.BaseLow - off) != Stand.Broken && !(acid.Value < target.BaseLow - far)) return;
        var measure = target.Dimension == Dimension.PercentByMass ? Solving.AcidByMass : Solving.AcidPerVolume;
        double factor = Solving.Factor(context.Profile, static p => Substances.IsAcid(p.Material), measure, target.Base);
        var solved = NewAmounts.OfAcids(context, factor);
        string take = "Weigh the acid for the whole" + (solved.Edits.Count == 0 ? "." : $": {solved.Words}.");
        context.Report(new(Rule)
        {
            At = context.At(step.Items.Count > 0 ? step.Items[0].Span : step.Span, context.PathOf(step)),
            Message = $"The acid is made up to the target of {Say.With(target.Base, unit)}. Then this step dilutes it to "
                + $"{Say.Range(acid.Value, acid.Low, acid.High, unit)}.",
            Advice = take,
            Evidence =
            [
                new Evidence("acid", acid.Value, acid.Low, acid.High, unit),
                Proof.Of("target.acid", target, context.At(given.Span)), Proof.Of(Off),
            ],
            Related = [context.See(given.Span, "the target")],
            Corrections = Correction.Propose(take, solved.Edits),
        });
    }

    /// <summary>The first step with water or juice behind the one that the acid goes in with.</summary>
    private static Step? Dilutes(RecipeContext context, Prep prep)
    {
        Step? acidStep = null, later = null;
        foreach (var step in prep.Method)
        {
            foreach (var item in step.Items)
            {
                if (Find(context, item.Value) is not { } part) continue;
                if (Substances.IsAcid(part.Material)) acidStep = step;
                else if (later is null && (Substances.IsWater(part.Material) || Substances.IsJuice(part.Material))
                    && (acidStep ?? FirstMix(context, prep)) is { } acids && step.Number > acids.Number)
                    later = step;
            }
        }

        return later;
    }

    /// <summary>The first step that mixes and names nothing: it is about all that no step names, the acid among it.</summary>
    private static Step? FirstMix(RecipeContext context, Prep prep)
    {
        Step? first = null;
        foreach (var step in prep.Method)
        {
            if (step.Items.Count == 0) first ??= step;
            foreach (var item in step.Items)
            {
                if (Find(context, item.Value) is { } part && Substances.IsAcid(part.Material)) return null;
            }
        }

        return first;
    }

    private static Part? Find(RecipeContext context, string item)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Item.IsGiven && part.Line.Item.Value == item) return part;
        }

        return null;
    }
}
