using System.Text.Json;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>A finding that was there when the baseline was written, and why it may stay.</summary>
/// <param name="Fingerprint">Its fingerprint.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Level">The level then.</param>
/// <param name="Subject">Id of the recipe or file.</param>
/// <param name="File">Path of the file, relative to the root of the book.</param>
/// <param name="Message">What it said then.</param>
/// <param name="Because">The reason.</param>
/// <param name="Until">The last day on which it may stay; rules that guard against harm ask for one.</param>
public sealed record BaselineEntry(
    string Fingerprint, string Rule, Level Level, string Subject, string File, string Message, string Because, CalendarDate? Until)
{
    /// <summary>
    /// Whether the entry covers its finding on a day: it has a reason, has not ended, and has an end within a year where the rule guards
    /// against harm.
    /// </summary>
    public bool Covers(Finding finding, CalendarDate day) =>
        !string.IsNullOrWhiteSpace(Because)
            && (finding.Rule.Safety ? SettingAside.Missing(Until, day) is null : Until is not { } until || until >= day);
}

/// <summary>How the findings of a check stand to a baseline.</summary>
public sealed class BaselineMatch
{
    private readonly HashSet<string> known;

    internal BaselineMatch(
        HashSet<string> known, IReadOnlyList<Finding> added, IReadOnlyList<(Finding Finding, CalendarDate? Until)> held,
        IReadOnlyList<BaselineEntry> absent, IReadOnlyList<BaselineEntry> ended)
    {
        this.known = known;
        New = added;
        Held = held;
        Unchanged = [.. held.Select(h => h.Finding)];
        Absent = absent;
        Ended = ended;
    }

    /// <summary>Findings that no entry covers, those beneath a cause included.</summary>
    public IReadOnlyList<Finding> New { get; }

    /// <summary>Findings that an entry covers, those beneath a cause included.</summary>
    public IReadOnlyList<Finding> Unchanged { get; }

    /// <summary>The same with the last day of the entry.</summary>
    public IReadOnlyList<(Finding Finding, CalendarDate? Until)> Held { get; }

    /// <summary>Entries whose finding is there no more: a refresh takes them out.</summary>
    public IReadOnlyList<BaselineEntry> Absent { get; }

    /// <summary>Entries whose finding is there and which do not count: they have ended, or lack a reason or an end date.</summary>
    public IReadOnlyList<BaselineEntry> Ended { get; }

    /// <summary>Number of the unchanged findings that are of rules that guard against harm.</summary>
    public int UnchangedSafety => Unchanged.Count(f => f.Rule.Safety);

    /// <summary>Whether no entry covers a finding.</summary>
    public bool IsNew(Finding finding) => !known.Contains(finding.Fingerprint);

    private static string Stand(int count) => count == 1 ? "1 finding stands" : $"{count} findings stand";

    /// <summary>One sentence for a summary; empty where nothing is held back.</summary>
    public string Remark => Unchanged.Count == 0
        ? ""
        : UnchangedSafety == 0
            ? $"{Stand(Unchanged.Count)} in the baseline."
            : $"{Stand(Unchanged.Count)} in the baseline, {UnchangedSafety} of them of rules that guard against harm.";
}

/// <summary>The findings that a book starts with: only others fail a check. A refresh takes out, and takes in only with a reason.</summary>
public sealed class Baseline
{
    /// <summary>Version of the format.</summary>
    internal const int Version = 1;

    /// <summary>A baseline of entries.</summary>
    public Baseline(IEnumerable<BaselineEntry> entries) =>
        Entries = [.. entries.OrderBy(e => e.File, StringComparer.Ordinal)
            .ThenBy(e => e.Rule, StringComparer.Ordinal)
            .ThenBy(e => e.Fingerprint, StringComparer.Ordinal)];

    /// <summary>The entries, by file, rule and fingerprint.</summary>
    public IReadOnlyList<BaselineEntry> Entries { get; }

    /// <summary>Holds a check against the baseline.</summary>
    public BaselineMatch Match(CheckResult result)
    {
        var day = result.Book.On;
        var entries = new Dictionary<string, BaselineEntry>(StringComparer.Ordinal);
        foreach (var entry in Entries) entries[entry.Fingerprint] = entry;
        var added = new List<Finding>();
        var unchanged = new List<(Finding, CalendarDate?)>();
        var there = new HashSet<string>(StringComparer.Ordinal);
        var holding = new HashSet<string>(StringComparer.Ordinal);
        foreach (var finding in result.Findings.Flat())
        {
            there.Add(finding.Fingerprint);
            bool covered = entries.TryGetValue(finding.Fingerprint, out var entry) && entry.Covers(finding, day);
            if (covered) holding.Add(finding.Fingerprint);
            if (covered) unchanged.Add((finding, entry!.Until));
            else added.Add(finding);
        }

        foreach (var finding in result.Accepted)
        {
            if (entries.TryGetValue(finding.Fingerprint, out var entry) && entry.Covers(finding, day)) holding.Add(finding.Fingerprint);
        }

        return new BaselineMatch(
            holding,
            added,
            unchanged,
            [.. Entries.Where(e => !there.Contains(e.Fingerprint))],
            [.. Entries.Where(e => there.Contains(e.Fingerprint) && !holding.Contains(e.Fingerprint))]);
    }

    /// <summary>The baseline without the entries whose finding is there no more.</summary>
    public Baseline WithoutAbsent(BaselineMatch match)
    {
        var absent = new HashSet<BaselineEntry>(match.Absent);
        return new Baseline(Entries.Where(e => !absent.Contains(e)));
    }

    /// <summary>The baseline with the new findings of a check taken in; entries that have ended are written anew.</summary>
    /// <param name="findings">The findings to take in.</param>
    /// <param name="because">The reason.</param>
    /// <param name="until">The last day on which they may stay.</param>
    /// <param name="on">The date of the run.</param>
    /// <param name="refused">Findings of rules that guard against harm, which are not taken in without an end date within a year.</param>
    public Baseline With(IEnumerable<Finding> findings, string because, CalendarDate? until, CalendarDate on, out IReadOnlyList<Finding> refused)
    {
        var entries = new Dictionary<string, BaselineEntry>(StringComparer.Ordinal);
        foreach (var entry in Entries) entries[entry.Fingerprint] = entry;
        var left = new List<Finding>();
        foreach (var finding in findings)
        {
            if (finding.Rule.Safety && SettingAside.Missing(until, on) is not null)
            {
                left.Add(finding);
                continue;
            }

            entries[finding.Fingerprint] = new BaselineEntry(
                finding.Fingerprint, finding.Rule.Id, finding.Level, finding.Subject, finding.Place.File.Path, finding.Message, because,
                until);
        }

        refused = left;
        return new Baseline(entries.Values);
    }

    /// <summary>Reads a baseline.</summary>
    /// <exception cref="FormatException">The text is no baseline; the message says why in half a sentence.</exception>
    public static Baseline Read(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            using var document = JsonDocument.Parse(
                utf8, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object
                || !root.TryGetProperty("version", out var version) || version.ValueKind != JsonValueKind.Number)
            {
                throw new FormatException("it has no version");
            }

            if (!version.TryGetInt32(out int number) || number != Version)
                throw new FormatException($"its version is {version.GetRawText()}, and this tool reads {Version}");
            if (TextOf(root, "fingerprints") != Findings.Fingerprints.Name)
                throw new FormatException($"its fingerprints are not {Findings.Fingerprints.Name}");
            if (!root.TryGetProperty("findings", out var findings) || findings.ValueKind != JsonValueKind.Array)
                throw new FormatException("it has no list of findings");
            var entries = new List<BaselineEntry>();
            foreach (var item in findings.EnumerateArray())
            {
                if (item.ValueKind != JsonValueKind.Object
                    || TextOf(item, "fingerprint") is not { Length: > 0 } fingerprint
                    || TextOf(item, "rule") is not { } rule)
                    throw new FormatException($"finding {entries.Count + 1} of it has no fingerprint or no rule");
                CalendarDate? until = null;
                if (TextOf(item, "until") is { } day)
                    until = CalendarDate.Parse(day)
                        ?? throw new FormatException($"the day until which finding {entries.Count + 1} may stay is not "
                            + $"written as YYYY-MM-DD");
                Settings.TryLevel(TextOf(item, "level") ?? "", out var level);
                entries.Add(new BaselineEntry(
                    fingerprint, rule, level, TextOf(item, "subject") ?? "", TextOf(item, "file") ?? "", TextOf(item, "message") ?? "",
                    TextOf(item, "because") ?? "", until));
            }

            return new Baseline(entries);
        }
        catch (JsonException e)
        {
            throw new FormatException($"it is no JSON (line {(e.LineNumber ?? 0) + 1})", e);
        }
    }

    private static string? TextOf(JsonElement item, string name)
    {
        if (!item.TryGetProperty(name, out var value) || value.ValueKind != JsonValueKind.String) return null;
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException e)
        {
            throw new FormatException($"a text of it ({name}) is no Unicode", e);
        }
    }
}
