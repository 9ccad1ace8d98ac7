using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule(
    "SL4009", "juice-extension-acid", "An extended juice weaker or stronger in acid than the citrus it extends", Level.Warning,
    Needs = [Fact.Acid, Fact.AcidAnalysed, Fact.Density], IsConsequence = true)]
[Limit("acid-juice-extension-low", "Low")]
[Limit("acid-juice-extension-high", "High")]
internal sealed partial class JuiceExtensionAcid : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsJuiceExtension || prep.Target is { Acid.IsGiven: true } or { StandsInFor.IsGiven: true }) return;
        if (AcidTargetMissed.Acid(context, Reading.Dimension.PercentByMass) is not { } acid) return;
        if (Findings.Check.Within(acid.Value, Low.Value, High.Value) != Stand.Broken) return;
        bool over = acid.Value.Value > High.Value;
        double aim = (Low.Value + High.Value) / 2;
        double factor = Solving.Factor(context.Profile, p => Substances.IsAcid(p.Material), Solving.AcidByMass, aim);
        double water = Solving.Factor(context.Profile, p => Substances.IsWater(p.Material), Solving.AcidByMass, aim);
        var corrections = new List<Correction>();
        Offer(factor, Substances.IsAcid, "the acid");
        Offer(water, Substances.IsWater, "the water");
        var (added, native) = AcidReckoning.Of(context.Profile).In(Reading.Dimension.PercentByMass);
        var place = FirstAcid(context) is { } line ? context.At(line.Amount.IsGiven ? line.Amount.Span : line.Span) : context.At(prep.IngredientsSpan);
        context.Report(new(Rule)
        {
            Place = place,
            Path = "ingredients",
            Message = $"The acid comes to {Say.Range(acid.Value.Value, acid.Value.Low, acid.Value.High, "% w/w")} "
                + $"({Say.Number(added, 1)} added, {Say.Number(native, 1)} from juice), {(over ? "above" : "below")} the "
                + $"{Say.Number(Low.Value, 1)}–{Say.With(High.Value, "% w/w")} at which an extended juice can replace lime or "
                + $"lemon ({Low.Source}).",
            Advice = corrections.Count > 0 ? corrections[0].Description : over ? "Use less acid or more water." : "Use more acid or less water.",
            Evidence = [new Evidence("acid", acid.Value.Value, acid.Value.Low, acid.Value.High, "%"), Proof.Of(Low), Proof.Of(High)],
            Corrections = corrections,
        });

        void Offer(double by, Func<Material?, bool> which, string noun)
        {
            if (double.IsNaN(by) || by <= Guards.LeastFactor) return;
            var edits = new List<TextEdit>();
            var words = new List<string>();
            foreach (var part in context.Profile.Parts)
            {
                if (part.Phase != PartPhase.Mix || !part.IsWeighed || !which(part.Material)) continue;
                var amount = part.Line.Amount.Value;
                double rounded = Rounding.ToStep(amount.Base * by, amount, context.Settings);
                words.Add($"{Rounding.Words(rounded, amount)} of {part.Line.Item.Or("it")}");
                edits.Add(new TextEdit(context.At(part.Line.Amount.Span), Rounding.Text(rounded, amount)));
            }

            if (edits.Count > 0)
                corrections.Add(new Correction(
                    CorrectionGrade.Proposed, $"Solve for {noun}: {Say.List(words)} gives {Say.Number(aim, 1)} % w/w.", edits));
        }
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
