using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5011", "meter-not-calibrated", "A pH that keeping rests on was read with a meter not calibrated for it", Level.Warning,
    Safety = true, Needs = [Fact.Ph])]
[Limit("ph-report-step", "Step")]
[Limit("guard-ph-uncalibrated", "Uncalibrated")]
internal sealed partial class MeterNotCalibrated : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Measured is not { Ph.IsGiven: true } measured || context.Settings.Bar is not { Meters.Count: > 0 } bar) return;
        if (!measured.Meter.IsGiven)
        {
            Unnamed(context, prep, measured);
            return;
        }

        if (!bar.Meters.TryGetValue(measured.Meter.Value, out var meter)) return;

        // The file keeps the last calibration only: a later one says nothing of that day.
        // A reading without a day may be of any.
        if (meter.Calibrated.IsGiven && measured.On.IsGiven && meter.Calibrated.Value >= measured.On.Value) return;
        if (!Storage.MayOutlast(prep, SpecialCases.MarkedFromDays) || !context.Profile.Keeping!.HoldsPerishable) return;
        string last = meter.Calibrated.IsGiven ? $"was last calibrated on {meter.Calibrated.Value}" : "has no calibration date";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(measured.Meter.Span, "measured.meter"),
            Message = $"The pH was read {(measured.On.IsGiven ? $"on {measured.On.Value}" : "on an unstated day")} with "
                + $"`{measured.Meter.Value}`, which {last}. Uncalibrated, it may be off by {Say.Number(Uncalibrated.Value)} or more "
                + $"({Uncalibrated.Source}).",
            Advice = "Calibrate with two buffers, measure again, and write the day in bar.json.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, context.Fact(Fact.Ph)), Proof.Of(Uncalibrated)],
            Related = [new RelatedPlace(bar.At(meter.Span), "the meter")],
        });
    }

    /// <summary>A meter that nobody names may be any, calibrated or not.</summary>
    private static void Unnamed(RecipeContext context, Prep prep, Measurement measured)
    {
        if (!Storage.MayOutlast(prep, SpecialCases.MarkedFromDays) || !context.Profile.Keeping!.HoldsPerishable) return;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(measured.Ph.Span, "measured.meter"),
            Message = "Nothing says which meter read the pH, so nothing shows that it was calibrated; uncalibrated it may be off by "
                + $"{Say.Number(Uncalibrated.Value)} and more ({Uncalibrated.Source}).",
            Advice = "Name one of the meters of bar.json with `meter`.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, context.Fact(Fact.Ph)), Proof.Of(Uncalibrated)],
        });
    }
}
