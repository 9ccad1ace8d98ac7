using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4008", "stand-in-differs", "A preparation whose acid differs from that of the item it stands in for", Level.Warning,
    Needs = [Fact.Acid, Fact.Ph], IsConsequence = true)]
[Limit("stands-in-titratable", "Off")]
internal sealed partial class StandInDiffers : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Target is not { StandsInFor: { IsGiven: true } standsIn } target
            || context.Profiles.MaterialOf(standsIn.Value) is not { } model
            || (model.Unknown & (Unknowns.Acid | Unknowns.Composition | Unknowns.Water)) != 0)
            return;
        var acid = context.Fact(Fact.Acid);
        double per = Solving.AcidPerVolume(model.PerGram);
        if (!acid.IsKnown || context.Profile.IsSolid || double.IsNaN(per) || per <= Guards.LeastModelAcid) return;

        // A target of acid that is missed says the same with more.
        if (target.Acid is { IsGiven: true, Value: var given } && AcidTargetMissed.Acid(context, given.Dimension) is { } reckoned)
        {
            double room = given.Base * Limits.Of("target-tolerance").Value / 100;
            if (Findings.Check.Within(reckoned.Value, given.BaseLow - room, given.BaseHigh + room) == Stand.Broken) return;
        }

        double off = per * Off.Value / 100;
        if (Findings.Check.Within(acid, per - off, per + off) != Stand.Broken) return;
        bool over = acid.Value > per;
        var solved = NewAmounts.OfAcids(context, Solve(context, prep, per));
        string take = solved.Edits.Count == 0
            ? (over ? "Lower the acid." : "Raise the acid.")
            : $"Take {solved.Words}, which brings it to {Say.With(per, "g/100 mL")}.";
        var ph = context.Fact(Fact.Ph);
        string phs = ph.IsKnown && !double.IsNaN(model.Ph.Typical)
            ? $"; the difference in pH, {Say.Ph(ph)} and {Say.Number(model.Ph.Typical, 2)}, matters less, since sourness follows "
                + "the titratable acid"
            : "";
        context.Report(new(Rule)
        {
            At = context.At(standsIn.Span, "target.standsInFor"),
            Message = $"It stands in for {standsIn.Value}, but titrates to {Say.Fact(Fact.Acid, acid)} instead of "
                + $"{Say.With(per, "g/100 mL")}: {Say.Number(100 * Math.Abs(acid.Value - per) / per, 0)} % {(over ? "more" : "less")}, "
                + $"and the limit for a swap is {Say.With(Off.Value, "%")} ({Off.Source}){phs}.",
            Advice = take,
            Evidence =
            [
                Proof.Of(Fact.Acid, acid), Proof.Of($"acid of {standsIn.Value}", per, "g/dL"), Proof.Of(Fact.Ph, ph), Proof.Of(Off),
            ],
            Corrections = Correction.Propose(take, solved.Edits),
        });
    }

    /// <summary>What the acids are multiplied by; NaN where nothing says so, or hardly any would be left.</summary>
    private static double Solve(RecipeContext context, Prep prep, double per)
    {
        if (prep.Family.OrNone() is { Ferments: true } or { IsDry: true }) return double.NaN;
        double factor = Solving.Factor(context.Profile, static p => Substances.IsAcid(p.Material), Solving.AcidPerVolume, per);
        return factor > Guards.LeastFactor ? factor : double.NaN;
    }
}
