using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5011", "meter-not-calibrated", "A pH that keeping rests on was read with a meter not calibrated for it", Level.Warning,
    Safety = true, Needs = [Fact.Ph])]
[Limit("guard-ph-uncalibrated", "Uncalibrated")]
internal sealed partial class MeterNotCalibrated : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Measured is not { Ph.IsGiven: true } measured
            || context.Settings.Bar is not { Meters.Count: > 0 } bar
            || !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays)
            || !context.Profile.Keeping!.HoldsPerishable)
            return;

        // A meter that nobody names may be any, calibrated or not.
        Meter? meter = null;
        if (measured.Meter.IsGiven && !bar.Meters.TryGetValue(measured.Meter.Value, out meter)) return;

        // The file keeps the last calibration only: a later one says nothing of that day. A reading without a day may be of any.
        var calibrated = meter?.Calibrated ?? default;
        if (calibrated.IsGiven && measured.On.IsGiven && calibrated.Value >= measured.On.Value) return;
        string last = calibrated.IsGiven ? $"was last calibrated on {calibrated.Value}" : "has no calibration date";
        string day = measured.On.IsGiven ? $"on {measured.On.Value}" : "on an unstated day";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(meter is null ? measured.Ph.Span : measured.Meter.Span, "measured.meter"),
            Message = meter is null
                ? "Nothing says which meter read the pH, so nothing shows that it was calibrated; uncalibrated it may be off by "
                    + $"{Say.Number(Uncalibrated.Value)} and more ({Uncalibrated.Source})."
                : $"The pH was read {day} with `{measured.Meter.Value}`, which {last}. Uncalibrated, it may be off by "
                    + $"{Say.Number(Uncalibrated.Value)} or more ({Uncalibrated.Source}).",
            Advice = meter is null
                ? "Name one of the meters of bar.json with `meter`."
                : "Calibrate with two buffers, measure again, and write the day in bar.json.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, context.Fact(Fact.Ph)), Proof.Of(Uncalibrated)],
            Related = meter is null ? [] : [new RelatedPlace(bar.At(meter.Span), "the meter")],
        });
    }
}
