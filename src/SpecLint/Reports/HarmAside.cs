using System.Text.Json;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>
/// Findings of rules that guard against harm which a report does not show as findings: accepted in a file, switched off in
/// <c>bar.json</c>, or standing in a baseline. Every report says how many and until when.
/// </summary>
public sealed class HarmAside
{
    private HarmAside(int accepted, int switchedOff, int inBaseline, int lowered, CalendarDate? first, CalendarDate? last)
    {
        Accepted = accepted;
        SwitchedOff = switchedOff;
        InBaseline = inBaseline;
        Lowered = lowered;
        FirstEnd = first;
        LastEnd = last;
    }

    /// <summary>Number that files accept.</summary>
    public int Accepted { get; }

    /// <summary>Number that <c>bar.json</c> switches off.</summary>
    public int SwitchedOff { get; }

    /// <summary>Number that stand in the baseline.</summary>
    public int InBaseline { get; }

    /// <summary>Number that are shown, at a level that <c>bar.json</c> lowers.</summary>
    public int Lowered { get; }

    /// <summary>The day on which the first of them ends; <see langword="null"/> where there is none.</summary>
    public CalendarDate? FirstEnd { get; }

    /// <summary>The day on which the last of them ends; <see langword="null"/> where there is none.</summary>
    public CalendarDate? LastEnd { get; }

    /// <summary>Number of findings put aside.</summary>
    public int Count => Accepted + SwitchedOff + InBaseline;

    /// <summary>Counts what is put aside.</summary>
    /// <param name="findings">Findings in force, those that the baseline covers included or not.</param>
    /// <param name="accepted">Accepted findings.</param>
    /// <param name="baseline">How the findings stand to a baseline; <see langword="null"/> where there is none.</param>
    /// <param name="includes">Whether to count what is about a file, by its path; all where <see langword="null"/>.</param>
    public static HarmAside Of(
        IEnumerable<Finding> findings, IEnumerable<Finding> accepted, BaselineMatch? baseline = null, Func<string, bool>? includes = null)
    {
        int byFile = 0, byBar = 0, inBaseline = 0, lowered = 0;
        CalendarDate? first = null, last = null;
        foreach (var finding in accepted)
        {
            if (!Counts(finding)) continue;
            if (finding.LoweredBy is { Level: Level.None } && FileKinds.Of(finding.Suppression!.Place.File.Path) == Book.FileKind.Bar) byBar++;
            else byFile++;
            Ends(finding.Suppression?.Until);
        }

        foreach (var (finding, until) in baseline?.Held ?? [])
        {
            if (!Counts(finding)) continue;
            inBaseline++;
            Ends(until);
        }

        foreach (var finding in findings.Flat())
        {
            if (finding.LoweredBy is not null && Counts(finding)) lowered++;
        }

        return new HarmAside(byFile, byBar, inBaseline, lowered, first, last);

        bool Counts(Finding finding) => finding.Rule.Safety && (includes is null || includes(finding.Place.File.Path));

        void Ends(CalendarDate? until)
        {
            if (until is not { } day) return;
            if (first is null || day < first) first = day;
            if (last is null || day > last) last = day;
        }
    }

    /// <summary>What is put aside in several parts of a book, together.</summary>
    internal static HarmAside Together(IReadOnlyCollection<HarmAside> parts)
    {
        var ends = parts.SelectMany(p => new[] { p.FirstEnd, p.LastEnd }).OfType<CalendarDate>().OrderBy(d => d).ToList();
        return new HarmAside(
            parts.Sum(p => p.Accepted),
            parts.Sum(p => p.SwitchedOff),
            parts.Sum(p => p.InBaseline),
            parts.Sum(p => p.Lowered),
            ends.Count == 0 ? null : ends[0],
            ends.Count == 0 ? null : ends[ends.Count - 1]);
    }

    /// <summary>Reads the counts that <see cref="Write"/> wrote.</summary>
    /// <exception cref="FormatException">It is something else.</exception>
    internal static HarmAside Read(JsonElement written)
    {
        return new HarmAside(Count("accepted"), Count("switchedOff"), Count("inBaseline"), Count("lowered"), Day("firstEnd"), Day("lastEnd"));

        int Count(string name) =>
            written.TryGetProperty(name, out var value) && value.TryGetInt32(out int count)
                ? count
                : throw new FormatException($"it has no count {name}");

        CalendarDate? Day(string name) => written.TryGetProperty(name, out var value) ? CalendarDate.Parse(value.GetString() ?? "") : null;
    }

    /// <summary>One or two sentences for people; empty where nothing is put aside or lowered.</summary>
    public string Sentence
    {
        get
        {
            string until = FirstEnd is null ? ""
                : FirstEnd.Equals(LastEnd) ? $", until {FirstEnd}"
                : $", the first until {FirstEnd}, the last until {LastEnd}";
            var how = new List<string>();
            if (Accepted > 0) how.Add($"{Accepted} accepted in files");
            if (SwitchedOff > 0) how.Add($"{SwitchedOff} switched off in bar.json");
            if (InBaseline > 0) how.Add($"{InBaseline} in the baseline");
            string aside = Count == 0 ? ""
                : $"{ReportWords.Count(Count, "harm finding is", "harm findings are")} put aside ({string.Join(", ", how)}){until}.";
            string below = Lowered == 0 ? ""
                : $"{ReportWords.Count(Lowered, "harm finding has", "harm findings have")} a level that bar.json lowers.";
            return aside.Length > 0 && below.Length > 0 ? aside + " " + below : aside + below;
        }
    }

    /// <summary>Writes the counts as an object.</summary>
    internal void Write(Utf8JsonWriter json, string name)
    {
        json.WriteStartObject(name);
        json.WriteNumber("count", Count);
        json.WriteNumber("accepted", Accepted);
        json.WriteNumber("switchedOff", SwitchedOff);
        json.WriteNumber("inBaseline", InBaseline);
        json.WriteNumber("lowered", Lowered);
        if (FirstEnd is { } first) json.WriteString("firstEnd", first.ToString());
        if (LastEnd is { } last) json.WriteString("lastEnd", last.ToString());
        json.WriteGiven("text", Sentence);
        json.WriteEndObject();
    }
}
