using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>Reads how a preparation is kept off its file.</summary>
internal static class Storage
{
    private const double SecondsADay = 86400;

    private static readonly Limit Freezer = Limits.Of("freezer-temperature");
    private static readonly Limit Cold = Limits.Of("food-code-cold-hold");
    private static readonly Limit Room = Limits.Of("room-temperature");

    /// <summary>Temperature of a room where a file says no more than that; common practice, no source.</summary>
    private const double RoomCelsius = 20;

    private static readonly string[] Air = ["air", "none", "no"];

    /// <summary>Days that it is kept, the day it is made counted; NaN where not given.</summary>
    public static double Days(Prep prep) => prep.Keep is { For.IsGiven: true } keep ? Days(keep.For.Value) : double.NaN;

    /// <summary>Days that it is kept, of a range the fewest: what a label may count on; NaN where not given.</summary>
    public static double LeastDays(Prep prep) =>
        prep.Keep is { For: { IsGiven: true, Value.Dimension: Dimension.Duration } time } ? time.Value.BaseLow / SecondsADay : double.NaN;

    /// <summary>Days of a duration, of a range the longest; NaN for anything else.</summary>
    public static double Days(Quantity duration) => duration.Dimension == Dimension.Duration ? duration.BaseHigh / SecondsADay : double.NaN;

    /// <summary>Storage temperature, °C, of a range the warmest: as given, else by the words of where it stands; NaN where nothing tells.</summary>
    public static double Celsius(Prep prep, Settings settings)
    {
        if (prep.Keep is not { } keep) return double.NaN;
        if (keep.At is { IsGiven: true, Value.Dimension: Dimension.Temperature }) return keep.At.Value.BaseHigh;
        if (!keep.In.IsGiven) return double.NaN;
        var where = keep.In.Value;
        if (where.IsInFreezer) return settings.Bar is { Freezer.IsGiven: true } bar ? bar.Freezer.Value.BaseHigh : Freezer.Value;
        if (where.IsInFridge) return settings.Bar is { Fridge.IsGiven: true } b ? b.Fridge.Value.BaseHigh : Cold.Value;
        return where.IsAtRoom ? RoomCelsius : double.NaN;
    }

    /// <summary>The temperature of a freezer, °C.</summary>
    public static double FreezerCelsius => Freezer.Value;

    /// <summary>Whether it is kept frozen cold: the clock of keeping stands still.</summary>
    public static bool IsFrozen(double celsius) => celsius <= Freezer.Value;

    /// <summary>Whether it may be kept for longer than some days: a time that is not written may be longer.</summary>
    public static bool MayOutlast(Prep prep, double days) => !(Days(prep) <= days);

    /// <summary>Whether it may be kept at room temperature: a temperature that is not written may be that.</summary>
    public static bool MayBeAtRoom(double celsius) => !(celsius < Room.Value);

    /// <summary>Whether it is kept at room temperature.</summary>
    public static bool IsAtRoom(double celsius) => celsius >= Room.Value;

    /// <summary>
    /// Whether it is sealed from air: as the file says, else by the words of what it is kept in. A swing-top bottle or a keg is
    /// shut; a loose cap or an airlock is not. A plain bottle or jar tells nothing.
    /// </summary>
    public static bool IsSealed(Prep prep)
    {
        if (prep.Keep is not { } keep) return false;
        return keep.Sealed.IsGiven ? keep.Sealed.Value : keep.Vessel.IsClosed;
    }

    /// <summary>Whether nothing tells if it is sealed, and it stands in something that can be.</summary>
    public static bool MayBeSealed(Prep prep) =>
        prep.Keep is not { } keep || (!keep.Sealed.IsGiven && !keep.Vessel.IsVented);

    /// <summary>
    /// Whether it is packed with less oxygen than air holds (Food Code 1-201.10): a vacuum or sous-vide bag, a sealed bag, a can
    /// or canning jar, a keg or bottle under gas.
    /// </summary>
    public static bool IsReducedOxygen(Prep prep)
    {
        if (prep.Keep is not { } keep) return false;
        if (keep.Gas.IsGiven && !Phrases.HasAny(keep.Gas.Value, Air)) return true;
        return keep.Vessel.HoldsNoAir || (keep.Vessel.HoldsNoAirIfClosed && IsSealed(prep));
    }

    /// <summary>Where the file says, or lets guess, that it is sealed.</summary>
    public static Reading.TextSpan SealedSpan(Prep prep)
    {
        var keep = prep.Keep!;
        return keep.Sealed.IsGiven ? keep.Sealed.Span : keep.In.IsGiven ? keep.In.Span : keep.Span;
    }

    /// <summary>JSON path of the same.</summary>
    public static string SealedPath(Prep prep) => prep.Keep is { Sealed.IsGiven: false } ? "keep.in" : "keep.sealed";

    /// <summary>Whether a text holds a word, whatever its case.</summary>
    public static bool Has(string text, string word) => Phrases.Holds(text, word);
}
