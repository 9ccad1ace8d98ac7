using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule(
    "SL4008", "stand-in-differs", "A preparation whose acid differs from that of the item it stands in for", Level.Warning,
    Needs = [Fact.Acid, Fact.Ph], IsConsequence = true)]
[Limit("stands-in-titratable", "Off")]
internal sealed partial class StandInDiffers : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Target is not { StandsInFor: { IsGiven: true } standsIn } target) return;
        if (context.Profiles.MaterialOf(standsIn.Value) is not { } model
            || (model.Unknown & (Unknowns.Acid | Unknowns.Composition | Unknowns.Water)) != 0)
            return;
        var acid = context.Fact(Fact.Acid);
        if (!acid.IsKnown || context.Profile.IsSolid) return;
        double per = Solving.AcidPerVolume(model.PerGram);
        if (double.IsNaN(per) || per <= Guards.LeastModelAcid) return;

        // A target of acid that is missed says the same with more.
        if (target.Acid.IsGiven && AcidTargetMissed.Acid(context, target.Acid.Value.Dimension) is { } reckoned)
        {
            double room = target.Acid.Value.Base * Limits.Of("target-tolerance").Value / 100;
            if (Findings.Check.Within(reckoned.Value, target.Acid.Value.BaseLow - room, target.Acid.Value.BaseHigh + room) == Stand.Broken) return;
        }

        double off = per * Off.Value / 100;
        if (Findings.Check.Within(acid, per - off, per + off) != Stand.Broken) return;
        bool over = acid.Value > per;
        double factor = TargetSolve(context, prep, per);
        var edits = new List<TextEdit>();
        var words = new List<string>();
        foreach (var part in context.Profile.Parts)
        {
            if (double.IsNaN(factor)
                || factor <= Guards.LeastFactor
                || part.Phase != PartPhase.Mix
                || !part.IsWeighed
                || !Substances.IsAcid(part.Material))
                continue;
            var amount = part.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            words.Add($"{Rounding.Words(rounded, amount)} of {part.Line.Item.Or("it")}");
            edits.Add(new TextEdit(context.At(part.Line.Amount.Span), Rounding.Text(rounded, amount)));
        }

        string take = edits.Count == 0
            ? (over ? "Lower the acid." : "Raise the acid.")
            : $"Take {Say.List(words)}, which brings it to {Say.With(per, "g/100 mL")}.";
        var ph = context.Fact(Fact.Ph);
        string phs = ph.IsKnown && !double.IsNaN(model.Ph.Typical)
            ? $"; the difference in pH, {Say.Ph(ph)} and {Say.Number(model.Ph.Typical, 2)}, matters less, since sourness follows "
                + $"the titratable acid"
            : "";
        context.Report(new(Rule)
        {
            At = context.At(standsIn.Span, "target.standsInFor"),
            Message = $"It stands in for {standsIn.Value}, but titrates to {Say.Fact(Fact.Acid, acid)} instead of "
                + $"{Say.With(per, "g/100 mL")}: {Say.Number(100 * Math.Abs(acid.Value - per) / per, 0)} % {(over ? "more" : "less")}, "
                + $"and the limit for a swap is {Say.With(Off.Value, "%")} ({Off.Source}){phs}.",
            Advice = take,
            Evidence = [Proof.Of(Fact.Acid, acid), Proof.Of($"acid of {standsIn.Value}", per, "g/dL"), Proof.Of(Fact.Ph, ph), Proof.Of(Off)],
            Corrections = edits.Count == 0 ? [] : [new Correction(CorrectionGrade.Proposed, take, edits)],
        });
    }

    private static double TargetSolve(RecipeContext context, Prep prep, double per) =>
        prep.Family.OrNone() is { Ferments: true } or { IsDry: true }
            ? double.NaN
            : Solving.Factor(context.Profile, p => Substances.IsAcid(p.Material), Solving.AcidPerVolume, per);
}
