using SpecLint.Findings;

namespace SpecLint.Tests.Properties;

/// <summary>
/// The open harm findings of a checked book, by what they are about: those of a rule that guards against harm that bear a
/// caution. One without is about taste (how long a juice keeps its freshness), whatever its rule.
/// </summary>
internal sealed class HarmOf
{
    private readonly Dictionary<(string Subject, string Rule), Level> found = [];
    private readonly HashSet<(string Subject, string Rule, string Path)> errors = [];
    private readonly HashSet<(string Subject, string Rule, string Path, Answer Answer)> asked = [];
    private readonly HashSet<string> stocks;

    /// <summary>The harm findings of a checked book.</summary>
    /// <param name="result">The checked book.</param>
    /// <param name="only">Which to take; all where it is not given.</param>
    public HarmOf(CheckResult result, Func<Finding, bool>? only = null)
    {
        stocks = [.. result.Book.Stocks.Select(s => s.Id)];
        foreach (var finding in result.Findings.Flat())
        {
            if (finding.Level == Level.Error) errors.Add((finding.Subject, finding.Rule.Id, finding.Path));
            if (!finding.Rule.Safety || finding.Caution is null || finding.Level < Level.Warning || only?.Invoke(finding) == false) continue;
            var key = (finding.Subject, finding.Rule.Id);
            asked.Add((finding.Subject, finding.Rule.Id, finding.Path, finding.Answer));
            found[key] = found.TryGetValue(key, out var known) && known > finding.Level ? known : finding.Level;
        }
    }

    /// <summary>Rules and levels by subject.</summary>
    public IEnumerable<((string Subject, string Rule) Of, Level Level)> All => found.Select(f => (f.Key, f.Value));

    /// <summary>The highest level among the findings of some rules, wherever they stand; none where there is no such finding.</summary>
    public Level HighestOf(string rule) => found.Where(f => f.Key.Rule == rule).Select(f => f.Value).DefaultIfEmpty(Level.None).Max();

    /// <summary>The highest level on a subject.</summary>
    public Level HighestOn(string subject) => found.Where(f => f.Key.Subject == subject).Select(f => f.Value).DefaultIfEmpty(Level.None).Max();

    /// <summary>Whether a rule speaks of a subject.</summary>
    public bool Has(string subject, string rule) => found.ContainsKey((subject, rule));

    /// <summary>
    /// Whether a subject has a harm finding, or an error of any kind, that another check of it had not: of another rule, or of the
    /// same about another property (what is missing now), or one that was broken and is now not shown. A stock file is also told of on the
    /// recipe that its lots are of.
    /// </summary>
    public bool HasNewOn(string subject, HarmOf before) =>
        asked.Any(f => (f.Subject == subject || stocks.Contains(subject)) && !before.asked.Contains(f))
            || errors.Any(e => e.Subject == subject && !before.errors.Contains(e));

    /// <summary>Whether there is an error, of whatever subject, that another check had not.</summary>
    public bool HasNewError(HarmOf before) => errors.Any(e => !before.errors.Contains(e));

    /// <summary>The first finding that went without another in its place, in words; <see langword="null"/> where there is none.</summary>
    /// <param name="before">Before.</param>
    /// <param name="after">After.</param>
    /// <param name="orAnother">Whether another finding of the same level on the subject is enough, though it stood there before.</param>
    /// <param name="isThere">Whether a subject is still in the book; <see langword="null"/> where all are.</param>
    /// <param name="goes">Whether a finding on a subject of a rule may go.</param>
    public static string? Lost(HarmOf before, HarmOf after, Func<string, bool>? isThere = null, bool orAnother = false, Func<string, string, bool>? goes = null)
    {
        foreach (var ((subject, rule), level) in before.All.OrderBy(f => f.Of))
        {
            if (isThere?.Invoke(subject) == false || goes?.Invoke(subject, rule) == true || (orAnother && after.HighestOn(subject) >= level)) continue;
            if (!after.Has(subject, rule) && !after.HasNewOn(subject, before)) return $"{level} {rule} of {subject} is gone, and nothing stands in its place";
        }

        return null;
    }

    /// <summary>The first rule whose level on a subject fell, in words; <see langword="null"/> where there is none.</summary>
    public static string? LoweredByRule(HarmOf before, HarmOf after)
    {
        foreach (var (of, level) in before.All.OrderBy(f => f.Of))
        {
            if (after.found.TryGetValue(of, out var now) && now < level) return $"{of.Rule} of {of.Subject} had {level} and now has {now}";
        }

        return null;
    }

    /// <summary>The first subject whose highest level fell, in words; <see langword="null"/> where there is none.</summary>
    public static string? Lowered(HarmOf before, HarmOf after)
    {
        foreach (string subject in before.All.Select(f => f.Of.Subject).Distinct().Order(StringComparer.Ordinal))
        {
            Level was = before.HighestOn(subject), now = after.HighestOn(subject);
            if (now < was)
                return $"{subject} had {was} ({string.Join(", ", before.All.Where(f => f.Of.Subject == subject && f.Level == was).Select(f => f.Of.Rule))}) and now has {now}";
        }

        return null;
    }
}
