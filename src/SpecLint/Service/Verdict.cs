using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Service;

/// <summary>Whether something can be used or served.</summary>
public enum Readiness
{
    /// <summary>Nothing was found that stands in the way.</summary>
    Ready,

    /// <summary>If something is done or measured first.</summary>
    If,

    /// <summary>Not as it stands.</summary>
    No,
}

/// <summary>
/// What the rules that guard against harm leave of an item of the book: whether it may be made, kept and served, for how long, at
/// what temperature, and what stands in the way. It is made of the findings in force on its file and on everything that goes into
/// it, and of its life by the rules of keeping.
/// </summary>
public sealed class Verdict
{
    internal Verdict(IReadOnlyList<Finding> forbidding, IReadOnlyList<Finding> shortening, IReadOnlyList<Finding> toShow)
    {
        Forbidding = forbidding;
        Shortening = shortening;
        ToShow = toShow;
    }

    /// <summary>Errors after which no time is left: it must not be used until they are put right.</summary>
    public IReadOnlyList<Finding> Forbidding { get; }

    /// <summary>Errors of a time that is too long, where a shorter one is allowed: <see cref="Days"/> is that time or less.</summary>
    public IReadOnlyList<Finding> Shortening { get; }

    /// <summary>Findings of a lower level: what is to be shown, measured or put right first.</summary>
    public IReadOnlyList<Finding> ToShow { get; }

    /// <summary>The answer.</summary>
    public Readiness Answer => Forbidding.Count + Shortening.Count > 0 ? Readiness.No : ToShow.Count > 0 ? Readiness.If : Readiness.Ready;

    /// <summary>Whether it must not be used at all, for however short a time.</summary>
    public bool IsForbidden => Forbidding.Count > 0;

    /// <summary>
    /// Days for which it may be kept, the day made counted: the least of what its recipe states and what the rules of keeping allow;
    /// infinity where nothing sets an end, NaN where it must not be used.
    /// </summary>
    public double Days { get; internal init; } = double.PositiveInfinity;

    /// <summary>The time that an error of a time too long still allows on its own recipe; <see langword="null"/> where there is none.</summary>
    internal (double Days, string From)? AllowedDays { get; init; }

    /// <summary>What sets the days: <c>its recipe</c>, or the id of a part, family or limit.</summary>
    public string DaysFrom { get; internal init; } = "";

    /// <summary>Life by the rules of keeping alone, d; open where it must not be used or nothing sets an end.</summary>
    public FactValue Life { get; internal init; }

    /// <summary>Temperature to keep it at, °C: as its recipe states, but no warmer than what needs cold may be; NaN where not known.</summary>
    public double StorageCelsius { get; internal init; } = double.NaN;

    /// <summary>Why it must not be served as it stands: one text a finding, without a full stop.</summary>
    public IEnumerable<string> Reasons => Forbidding.Concat(Shortening).Select(Words);

    /// <summary>What is to be done first: one text a finding, without a full stop.</summary>
    public IEnumerable<string> Conditions => ToShow.Select(Words);

    /// <summary>A finding in one text, without a full stop: its rule, what it is about, what is wrong.</summary>
    public static string Words(Finding finding) => $"{finding.Subject} ({finding.Rule.Id}): {finding.Message.TrimEnd('.')}";

    /// <summary>The rules of some findings, each once, e.g. <c>SL5001 and SL5020</c>.</summary>
    public static string RulesOf(IEnumerable<Finding> findings) =>
        Say.List([.. findings.Select(f => f.Rule.Id).Distinct().OrderBy(i => i, StringComparer.Ordinal)]);
}
