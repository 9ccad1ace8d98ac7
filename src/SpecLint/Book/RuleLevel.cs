using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>The level that a bar sets for a rule, with what it says about it.</summary>
/// <param name="Level">The level.</param>
/// <param name="Because">The reason.</param>
/// <param name="Until">The last day on which it holds.</param>
public sealed record RuleLevel(Level Level, Given<string> Because, Given<CalendarDate> Until)
{
    /// <summary>Whether it counts on a day for a finding whose level would otherwise be another.</summary>
    /// <param name="guardsAgainstHarm">Whether the rule guards against harm.</param>
    /// <param name="otherwise">The level that the finding has without the setting.</param>
    /// <param name="on">The date of the run.</param>
    public bool Holds(bool guardsAgainstHarm, Level otherwise, CalendarDate on) => !guardsAgainstHarm || Level >= otherwise || Missing(on) is null;

    /// <summary>
    /// What keeps the level of a rule that guards against harm from being lowered, as the end of a sentence; <see langword="null"/>
    /// where nothing does.
    /// </summary>
    public string? Missing(CalendarDate on) => !Because.IsGiven || string.IsNullOrWhiteSpace(Because.Value)
        ? "gives no reason"
        : SettingAside.Missing(Until.IsGiven ? Until.Value : null, on);
}
