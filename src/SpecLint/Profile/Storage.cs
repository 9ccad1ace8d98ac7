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

    /// <summary>Days that it is kept, the day it is made counted; NaN where not given.</summary>
    public static double Days(Prep prep) => prep.Keep is { For.IsGiven: true } keep ? Days(keep.For.Value) : double.NaN;

    /// <summary>Days that it is kept, of a range the fewest: what a label may count on; NaN where not given.</summary>
    public static double LeastDays(Prep prep) => prep.Keep is { For: { IsGiven: true, Value.Dimension: Dimension.Duration } time } ? time.Value.BaseLow / SecondsADay : double.NaN;

    /// <summary>Days of a duration, of a range the longest; NaN for anything else.</summary>
    public static double Days(Quantity duration) => duration.Dimension == Dimension.Duration ? duration.BaseHigh / SecondsADay : double.NaN;

    /// <summary>Storage temperature, °C, of a range the warmest: as given, else by the words of where it stands; NaN where nothing tells.</summary>
    public static double Celsius(Prep prep, Settings settings)
    {
        if (prep.Keep is not { } keep) return double.NaN;
        if (keep.At is { IsGiven: true, Value.Dimension: Dimension.Temperature }) return keep.At.Value.BaseHigh;
        if (!keep.In.IsGiven) return double.NaN;
        string where = keep.In.Value;
        if (Has(where, "freezer")) return settings.Bar is { Freezer.IsGiven: true } bar ? bar.Freezer.Value.BaseHigh : Freezer.Value;
        if (Has(where, "fridge") || Has(where, "refrigerator")) return settings.Bar is { Fridge.IsGiven: true } b ? b.Fridge.Value.BaseHigh : Cold.Value;
        return Has(where, "room") || Has(where, "ambient") || Has(where, "shelf") || Has(where, "counter") ? RoomCelsius : double.NaN;
    }

    /// <summary>Whether it is kept frozen cold: the clock of keeping stands still.</summary>
    public static bool IsFrozen(double celsius) => celsius <= Freezer.Value;

    /// <summary>Whether it is kept at room temperature.</summary>
    public static bool IsAtRoom(double celsius) => celsius >= Room.Value;

    /// <summary>Whether it is sealed from air.</summary>
    public static bool IsSealed(Prep prep) => prep.Keep is { } keep && keep.Sealed.Or(false);

    /// <summary>Whether a text holds a word, whatever its case.</summary>
    public static bool Has(string text, string word) => text.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0;
}
