using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Balance;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4020", "shrub-acetic-strength", "A shrub with too little or too much acetic acid", Level.Warning,
    Needs = [Fact.Acid], IsConsequence = true)]
[Limit("shrub-acetic-low", "Low")]
[Limit("shrub-acetic-high", "High")]
internal sealed partial class ShrubAcetic : PrepRule
{
    private static readonly Solving.Measure Acetic = static grams => 100 * grams[(int)Component.Acetic] / Solving.VolumeOf(grams);

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsShrub || context.Profile.IsSolid || context.Fact(Fact.Acid) is not { IsKnown: true } acid) return;
        double acetic = Acetic(context.Profile.Grams);
        if (double.IsNaN(acetic)) return;

        // The fruit may hold back part of its juice: the range follows the acid's.
        double low = acetic * acid.Low / acid.Value, high = acetic * acid.High / acid.Value;
        bool under = high < Low.Value, over = low > High.Value;
        if (!under && !over) return;
        var limit = under ? Low : High;
        string take = under ? "Take more vinegar, or a stronger one." : "Take less vinegar, or a weaker one.";
        string? words = null;
        var vinegar = Remedy.Chief(context.Profile, static m => m.Of(Component.Acetic));
        double aim = under ? Low.Value * 1.5 : High.Value * 0.75;
        if (vinegar is not null
            && Solving.Factor(context.Profile, p => ReferenceEquals(p, vinegar), Acetic, aim) is var factor && !double.IsNaN(factor))
        {
            var amount = vinegar.Line.Amount.Value;
            words = Rounding.Words(Rounding.ToStep(amount.Base * factor, amount, context.Settings), amount);
            take = $"Take {words} of {vinegar.Line.Item.Or("vinegar")} instead of {Rounding.Words(amount.Base, amount)}.";
        }

        var span = vinegar is null ? prep.IngredientsSpan : vinegar.Line.Amount.Span;
        context.Report(new(Rule)
        {
            At = context.At(span, "ingredients"),
            Message = $"It holds {Say.Range(acetic, low, high, "g/100 mL")} of acetic acid, "
                + $"{(under ? "below the minimum" : "above the maximum")} of {Say.With(limit.Value, "g/100 mL")} for a "
                + $"shrub ({limit.Source}).",
            Advice = take,
            Evidence = [new Evidence("acetic acid", acetic, low, high, "g/dL"), Proof.Of(limit)],
            Corrections = context.Write(span, words, take),
        });
    }
}
