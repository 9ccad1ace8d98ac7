using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;

namespace SpecLint.Profile;

/// <summary>How exactly a measurement is known, as half widths of about 95 %.</summary>
internal static class Meters
{
    private static readonly Limit CalibratedPh = Limits.Of("tolerance-ph-meter-calibrated");
    private static readonly Limit OtherPh = Limits.Of("tolerance-ph-meter");
    private static readonly Limit Brix = Limits.Of("tolerance-brix-meter");
    private static readonly Limit Abv = Limits.Of("tolerance-abv-meter");
    private static readonly Limit Activity = Limits.Of("tolerance-water-activity-meter");

    /// <summary>Half width of a strength, % vol.</summary>
    public static double AbvHalfWidth => Abv.Value;

    /// <summary>Half width of a water activity.</summary>
    public static double WaterActivityHalfWidth => Activity.Value;

    /// <summary>Half width of a pH: the meter's own where the bar states it, else by whether it was calibrated that day.</summary>
    public static double PhHalfWidth(Measurement measured, LinkedBook book)
    {
        var meter = MeterOf(measured, book);
        if (meter is null) return OtherPh.Value;
        bool fresh = meter.Calibrated.IsGiven && measured.On.IsGiven && meter.Calibrated.Value == measured.On.Value;
        return meter.Ph.IsGiven ? meter.Ph.Value : fresh ? CalibratedPh.Value : OtherPh.Value;
    }

    /// <summary>Half width of a °Brix.</summary>
    public static double BrixHalfWidth(Measurement measured, LinkedBook book) =>
        MeterOf(measured, book) is { Brix.IsGiven: true } meter ? meter.Brix.Value : Brix.Value;

    private static Meter? MeterOf(Measurement measured, LinkedBook book) =>
        measured.Meter.IsGiven && book.Settings.Bar is { } bar && bar.Meters.TryGetValue(measured.Meter.Value, out var meter) ? meter : null;
}
