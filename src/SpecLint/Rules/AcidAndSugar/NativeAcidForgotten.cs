using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule(
    "SL4018", "native-acid-forgotten", "Acid weighed in up to the target, as if the juice had none of its own", Level.Warning,
    Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
internal sealed partial class NativeAcidForgotten : PrepRule
{
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
        if (prep.Target is not { Acid: { IsGiven: true } target } || !Applies(context, target.Value)) return;
        if (prep.Measured is { TitratableAcidity.IsGiven: true }) return;
        if (AcidTargetMissed.Acid(context, target.Value.Dimension) is not { } acid) return;

        // What is weighed in makes the target by itself and the juice brings more than the tolerance: the least acid of the juice need only be some.
        if (Findings.Check.AtMost(acid.Value, target.Value.BaseHigh) != Stand.Broken) return;
        var reckoning = AcidReckoning.Of(context.Profile);
        var (added, native) = reckoning.In(target.Value.Dimension);
        double factor = (target.Value.Base - native) / added;
        var edits = new List<TextEdit>();
        var words = new List<string>();
        Part? juice = null;
        double most = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null) continue;
            if (!Substances.IsAcid(part.Material))
            {
                double brings = part.Grams.Typical * Solving.AcidsOf(part.Material.PerGram);
                if (brings > most) (most, juice) = (brings, part);
                continue;
            }

            var amount = part.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * Math.Max(0.02, factor), amount, context.Settings);
            words.Add($"{Rounding.Words(rounded, amount)} of {part.Line.Item.Or("it")} instead of {Rounding.Words(amount.Base, amount)}");
            edits.Add(new TextEdit(context.At(part.Line.Amount.Span), Rounding.Text(rounded, amount)));
        }

        string name = juice?.Line.Item.Or("the juice")
            ?? "the juice", take = $"Take {Say.List(words)}, so that the whole comes to {Say.With(target.Value.Base, acid.Unit)}.";
        context.Report(new(Rule)
        {
            At = context.At(target.Span, "target.acid"),
            Message = $"The added acids alone make {Say.With(added, acid.Unit)}, and {name} adds {Say.With(native, acid.Unit)} of its "
                + $"own. It comes to {Say.Range(acid.Value.Value, acid.Value.Low, acid.Value.High, acid.Unit)} instead of the target "
                + $"of {Say.With(target.Value.Base, acid.Unit)}.",
            Advice = factor > 0.02 ? take : "The juice alone reaches the target: leave out the acid.",
            Evidence =
            [
                Proof.Of("acid weighed in", added, acid.Unit),
                Proof.Of("acid of the other parts", native, acid.Unit),
                Proof.Of("target.acid", target.Value, context.At(target.Span)),
                Proof.Of(Off),
            ],
            Related = juice is null ? [] : [new RelatedPlace(context.At(juice.Line.Span), "the juice with acid of its own")],
            Corrections = factor > 0.02 ? [new Correction(CorrectionGrade.Proposed, take, edits)] : [],
        });
    }
}
