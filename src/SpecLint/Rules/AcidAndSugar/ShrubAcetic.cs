using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4020", "shrub-acetic-strength", "A shrub with too little or too much acetic acid", Level.Warning, Needs = [Fact.Acid], IsConsequence = true)]
[Limit("shrub-acetic-low", "Low")]
[Limit("shrub-acetic-high", "High")]
internal sealed partial class ShrubAcetic : PrepRule
{
    private static readonly Solving.Measure Acetic = static grams => 100 * grams[(int)Component.Acetic] / Solving.VolumeOf(grams);

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsShrub || context.Profile.IsSolid || !context.Fact(Fact.Acid).IsKnown) return;
        double acetic = Acetic(context.Profile.Grams);
        if (double.IsNaN(acetic)) return;

        // The fruit may hold back part of its juice: the range follows the acid's.
        var acid = context.Fact(Fact.Acid);
        double low = acetic * acid.Low / acid.Value, high = acetic * acid.High / acid.Value;
        bool under = high < Low.Value, over = low > High.Value;
        if (!under && !over) return;
        Part? vinegar = null;
        double most = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null || !part.Line.Amount.IsGiven) continue;
            double brings = part.Grams.Typical * part.Material.Of(Component.Acetic);
            if (brings > most) (most, vinegar) = (brings, part);
        }

        var limit = under ? Low : High;
        var edits = new List<TextEdit>();
        string take = under ? "Take more vinegar, or a stronger one." : "Take less vinegar, or a weaker one.";
        if (vinegar is not null
            && Solving.Factor(
                context.Profile, p => ReferenceEquals(p, vinegar), Acetic, under ? Low.Value * 1.5 : High.Value * 0.75) is var factor
            && !double.IsNaN(factor))
        {
            var amount = vinegar.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            take = $"Take {Rounding.Words(rounded, amount)} of {vinegar.Line.Item.Or("vinegar")} instead of {Rounding.Words(amount.Base, amount)}.";
            edits.Add(new TextEdit(context.At(vinegar.Line.Amount.Span), Rounding.Text(rounded, amount)));
        }

        context.Report(new(Rule)
        {
            Place = vinegar is null ? context.At(prep.IngredientsSpan) : context.At(vinegar.Line.Amount.Span),
            Path = "ingredients",
            Message = $"It holds {Say.Range(acetic, low, high, "g/100 mL")} of acetic acid, "
                + $"{(under ? "below the minimum" : "above the maximum")} of {Say.With(limit.Value, "g/100 mL")} for a "
                + $"shrub ({limit.Source}).",
            Advice = take,
            Evidence = [new Evidence("acetic acid", acetic, low, high, "g/dL"), Proof.Of(limit)],
            Corrections = edits.Count == 0 ? [] : [new Correction(CorrectionGrade.Proposed, take, edits)],
        });
    }
}
