using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>
/// What it takes to set a finding of a rule that guards against harm aside, alike for a level in <c>bar.json</c>, an acceptance
/// and a baseline: a reason, and a last day that is not over and lies at most a year ahead.
/// </summary>
public static class SettingAside
{
    /// <summary>The last day that may be named on a day: the same day of the next year.</summary>
    public static CalendarDate LatestEnd(CalendarDate on) => on.NextYear();

    /// <summary>What is wrong with a last day, as the end of a sentence; <see langword="null"/> where nothing is.</summary>
    public static string? Missing(CalendarDate? until, CalendarDate on) => until switch
    {
        null => "names no last day",
        { } day when day < on => $"ended on {day}",
        { } day when day > LatestEnd(on) => $"runs until {day}, more than a year ahead",
        _ => null,
    };
}
