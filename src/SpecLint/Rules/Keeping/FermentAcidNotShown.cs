using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule("SL5026", "ferment-acid-not-shown", "A ferment is not shown to be sour", Level.Error, Safety = true, Needs = [Fact.Ph])]
[Limit("ferment-ph", "Ph")]
[Limit("ferment-ph-vegetable", "PhInBrine")]
[Limit("ferment-ph-least", "Least")]
[Limit("ferment-days-to-acid", "Days")]
internal sealed partial class FermentAcidNotShown : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!SpecialCases.IsFerment(prep)) return;
        var state = context.Profile.Keeping!;
        var limit = FermentSalt.IsSalted(context.Profile) ? PhInBrine : Ph;
        if (prep.Measured is not { Ph.IsGiven: true } measured)
        {
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                AskedLevel = IsKeptUnsoured(context, prep, state) ? null : Level.Warning,
                At = new(prep.Family.IsGiven ? context.At(prep.Family.Span) : context.File.Head, "measured.ph"),
                Message = $"The ferment has no measured pH. It must fall to at most {Say.Number(limit.Value)} within "
                    + $"{KeepingWords.Days(Days.Value)}, since nothing else holds back unwanted growth ({limit.Source}).",
                Advice = $"Measure the pH every day until it is at most {Say.Number(limit.Value)} and write it under `measured`. "
                    + $"Discard a batch that is not there by day {Say.Number(Days.Value)}.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of(limit), Proof.Of(Days)],
            });
            return;
        }

        var ph = context.Fact(Fact.Ph);
        if (Findings.Check.AtLeast(ph, Least.Value) == Stand.Broken)
        {
            context.Report(new(Rule)
            {
                AskedLevel = Level.Warning,
                At = context.At(measured.Ph.Span, "measured.ph"),
                Message = $"The ferment is at pH {Say.Ph(ph)}, below {Say.Number(Least.Value)}: it has gone too far and is harsh on "
                    + $"the mouth and stomach ({Least.Source}).",
                Advice = "Stop it and blend it with fresh base, or discard it.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of(Fact.Ph, ph), Proof.Of(Least)],
            });
            return;
        }

        var stand = Findings.Check.AtMost(ph, limit.Value);
        if (stand == Stand.Holds) return;
        context.Report(new(Rule)
        {
            Answer = stand == Stand.Broken ? Answer.Broken : Answer.NotShown,
            AskedLevel = stand == Stand.Broken ? null : Level.Warning,
            At = context.At(measured.Ph.Span, "measured.ph"),
            Message = $"The ferment is at pH {Say.Ph(ph)}, {(stand == Stand.Broken ? "above" : "not clearly at most")} "
                + $"{Say.Number(limit.Value)}, which it must reach within {KeepingWords.Days(Days.Value)} ({limit.Source}).",
            Advice = "Let it ferment further and measure again. Discard it when the days are over; adding acid afterwards does not undo "
                + "what grew before.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, ph), Proof.Of(limit), Proof.Of(Days)],
        });
    }

    /// <summary>
    /// Food low in acid by its parts (garlic in honey) that stands warm for longer than a ferment takes to turn sour: calling it a ferment
    /// sours nothing.
    /// </summary>
    private static bool IsKeptUnsoured(RecipeContext context, Prep prep, KeepingState state) =>
        Storage.Days(prep) > Days.Value
            && StoredTooWarm.IsTooWarm(Storage.Celsius(prep, context.Settings), context.Settings)
            && !state.IsSour
            && !FermentSalt.IsSalted(context.Profile);
}
