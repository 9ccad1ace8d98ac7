using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4019", "diluted-after-target", "Juice or water that goes in after the acid was made up to the target", Level.Warning, Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
[Limit("diluted-after-target", "Far")]
internal sealed partial class DilutedAfterTarget : PrepRule
{
    /// <summary>The step that dilutes what had reached the target; <see langword="null"/> where there is none.</summary>
    internal static Step? Applies(RecipeContext context, Prep prep, Quantity target)
    {
        if (target.Dimension is not (Dimension.PercentByMass or Dimension.PercentMassInVolume)) return null;
        Step? acidStep = null, later = null;
        foreach (var step in prep.Method)
        {
            foreach (var item in step.Items)
            {
                if (Find(context, item.Value) is not { } part) continue;
                if (Substances.IsAcid(part.Material)) acidStep = step;
                else if ((acidStep ?? FirstMix(context, prep)) is { } acids && step.Number > acids.Number && (Substances.IsWater(part.Material) || Substances.IsJuice(part.Material))) later ??= step;
            }
        }

        if (later is null) return null;
        double added = 0, native = 0;
        var before = new double[Science.Components.Count];
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null || IsIn(later, part)) continue;
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
        if (prep.Target is not { Acid: { IsGiven: true } target } || Applies(context, prep, target.Value) is not { } step) return;
        if (AcidTargetMissed.Acid(context, target.Value.Dimension) is not { } acid) return;
        double off = target.Value.Base * Off.Value / 100, far = target.Value.Base * Far.Value / 100;

        // Before and after share what is not known of the juice: the difference between them is the dilution alone.
        if (Findings.Check.AtLeast(acid.Value, target.Value.BaseLow - off) != Stand.Broken && !(acid.Value.Value < target.Value.BaseLow - far)) return;
        double factor = Solving.Factor(context.Profile, p => Substances.IsAcid(p.Material), target.Value.Dimension == Dimension.PercentByMass ? Solving.AcidByMass : Solving.AcidPerVolume, target.Value.Base);
        var edits = new List<TextEdit>();
        var words = new List<string>();
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || !Substances.IsAcid(part.Material) || double.IsNaN(factor)) continue;
            var amount = part.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            words.Add($"{Rounding.Words(rounded, amount)} of {part.Line.Item.Or("it")}");
            edits.Add(new TextEdit(context.At(part.Line.Amount.Span), Rounding.Text(rounded, amount)));
        }

        string take = $"Weigh the acid for the whole: {Say.List(words)}.";
        context.Report(new(Rule)
        {
            At = context.At(step.Items.Count > 0 ? step.Items[0].Span : step.Span, context.PathOf(step)),
            Message = $"The acid is made up to the target of {Say.With(target.Value.Base, acid.Unit)}. Then this step dilutes it to {Say.Range(acid.Value.Value, acid.Value.Low, acid.Value.High, acid.Unit)}.",
            Advice = edits.Count == 0 ? "Weigh the acid for the whole." : take,
            Evidence = [new Evidence("acid", acid.Value.Value, acid.Value.Low, acid.Value.High, acid.Unit), Proof.Of("target.acid", target.Value, context.At(target.Span)), Proof.Of(Off)],
            Related = [new RelatedPlace(context.At(target.Span), "the target")],
            Corrections = edits.Count == 0 ? [] : [new Correction(CorrectionGrade.Proposed, take, edits)],
        });
    }

    /// <summary>The first step that mixes and names nothing: it is about all that no step names, the acid among it.</summary>
    private static Step? FirstMix(RecipeContext context, Prep prep)
    {
        foreach (var step in prep.Method)
        {
            foreach (var item in step.Items)
            {
                if (Find(context, item.Value) is { } part && Substances.IsAcid(part.Material)) return null;
            }
        }

        foreach (var step in prep.Method)
        {
            if (step.Items.Count == 0) return step;
        }

        return null;
    }

    private static Part? Find(RecipeContext context, string item)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Item.IsGiven && part.Line.Item.Value == item) return part;
        }

        return null;
    }

    private static bool IsIn(Step step, Part part)
    {
        foreach (var item in step.Items)
        {
            if (part.Line.Item.IsGiven && part.Line.Item.Value == item.Value) return true;
        }

        return false;
    }
}
