using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4014", "juice-soured-beyond-lime", "A juice soured far beyond lime", Level.Note, Needs = [Fact.Acid], IsConsequence = true)]
[Limit("over-lime-acid", "Most")]
[Limit("acid-lime", "Lime")]
internal sealed partial class OverSouredJuice : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        // Where a target says what is meant, the rules of targets speak.
        if (!prep.Family.OrNone().IsSouredJuice || prep.Target is { Acid.IsGiven: true } or { StandsInFor.IsGiven: true }) return;
        var acid = context.Fact(Fact.Acid);
        if (context.Profile.IsSolid || Findings.Check.AtMost(acid, Most.Value) != Stand.Broken) return;
        Part? chief = null;
        foreach (var part in context.Profile.Parts)
        {
            if (!Substances.IsAcid(part.Material) || !part.IsWeighed) continue;
            if (chief is null || part.Grams.Typical > chief.Grams.Typical) chief = part;
        }

        if (chief is null || !chief.Line.Amount.IsGiven) return;
        double factor = Solving.Factor(context.Profile, static p => Substances.IsAcid(p.Material), Solving.AcidPerVolume, Lime.Value);
        var solved = NewAmounts.Of(context, factor < Guards.LeastFactor ? double.NaN : factor, static p => Substances.IsAcid(p.Material));
        string take = solved.Edits.Count == 0
            ? "Take less acid."
            : $"For lime strength take {solved.Words}. If this is intended, write the target.";
        context.Report(new(Rule)
        {
            At = context.AmountOf(chief.Line),
            Message = $"It titrates to {Say.Fact(Fact.Acid, acid)}, far beyond the {Say.With(Lime.Value, "g/100 mL")} of lime "
                + $"({Lime.Source}), and no target says that this is intended.",
            Advice = take,
            Evidence = [Proof.Of(Fact.Acid, acid), Proof.Of(Most), Proof.Of(Lime)],
            Corrections = Correction.Propose(take, solved.Edits),
        });
    }
}
