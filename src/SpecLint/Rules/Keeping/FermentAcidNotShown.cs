using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5026: a ferment that is not shown to have turned sour.</summary>
internal sealed class FermentAcidNotShown : PrepRule
{
    private static readonly Limit Ph = Limits.Of("ferment-ph");
    private static readonly Limit PhInBrine = Limits.Of("ferment-ph-vegetable");
    private static readonly Limit Days = Limits.Of("ferment-days-to-acid");

    private static readonly RuleInfo Rule = new("SL5026", "ferment-acid-not-shown", "A ferment is not shown to have turned sour", Level.Error)
    {
        Safety = true,
        Needs = [Fact.Ph],
        Limits = [Ph.Id, PhInBrine.Id, Days.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!SpecialCases.IsFerment(prep)) return;
        var limit = FermentSalt.IsInBrine(context.Profile) ? PhInBrine : Ph;
        if (prep.Measured is not { Ph.IsGiven: true } measured)
        {
            context.Report(new Finding(Rule)
            {
                Answer = Answer.NotShown,
                AskedLevel = Level.Warning,
                Place = prep.Family.IsGiven ? context.At(prep.Family.Span) : context.File.Head,
                Subject = context.Id,
                Path = "measured.ph",
                Message = $"The ferment has no measured pH; within {KeepingWords.Days(Days.Value)} it has to come to {Say.Number(limit.Value)} or under before anything else holds back what should not grow ({limit.Source}).",
                Advice = $"Measure the pH each day until it is {Say.Number(limit.Value)} or under, write it under `measured`, and throw away a batch that is not there by day {Say.Number(Days.Value)}.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of(limit), Proof.Of(Days)],
            });
            return;
        }

        var ph = context.Fact(Fact.Ph);
        var stand = Check(ph, limit.Value);
        if (stand == Stand.Holds) return;
        context.Report(new Finding(Rule)
        {
            Answer = stand == Stand.Broken ? Answer.Broken : Answer.NotShown,
            AskedLevel = stand == Stand.Broken ? null : Level.Warning,
            Place = context.At(measured.Ph.Span),
            Subject = context.Id,
            Path = "measured.ph",
            Message = $"The ferment is at pH {Say.Ph(ph)}, {(stand == Stand.Broken ? "over" : "not clearly at or under")} {Say.Number(limit.Value)}, which it has to reach within {KeepingWords.Days(Days.Value)} ({limit.Source}).",
            Advice = "Let it go on and measure again, or throw it away when the days are over; adding acid afterwards does not undo what grew before.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, ph), Proof.Of(limit), Proof.Of(Days)],
        });
    }

    private static Stand Check(FactValue ph, double limit) => Findings.Check.AtMost(ph, limit);
}
