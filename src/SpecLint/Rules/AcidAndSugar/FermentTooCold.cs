using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4028", "ferment-too-cold", "A ferment of a few days in the refrigerator", Level.Note)]
[Limit("ferment-warm-from", "Warm")]
[Limit("ferment-cold-days", "Days")]
internal sealed partial class FermentTooCold : PrepRule
{
    /// <summary>Seconds of a day.</summary>
    private const double Day = 86400;

    public override void Check(RecipeContext context, Prep prep)
    {
        Step? cold = null;
        foreach (var step in prep.Method)
        {
            if (!step.Verb.Ferments) continue;
            if (!step.At.IsGiven || step.At.Value.BaseHigh >= Warm.Value || !step.For.IsGiven || step.For.Value.Base >= Days.Value * Day)
                return;
            cold = step;
        }

        if (cold is null) return;
        context.Report(new(Rule)
        {
            At = context.VerbOf(cold),
            Message = $"It ferments at {Say.With(cold.At.Value.Base, "°C")} for {Say.With(cold.For.Value.Base / Day, "d")}: below "
                + $"{Say.With(Warm.Value, "°C")} hardly anything happens in that time ({Warm.Source}).",
            Advice = "Let it ferment at room temperature until its pH is where it should be, and then chill it.",
            Evidence = [Proof.Of(Warm), Proof.Of(Days)],
        });
    }
}
