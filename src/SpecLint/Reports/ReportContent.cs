using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>What a report of a check shows: all of a result, or the part of it that is about some of the files.</summary>
public sealed class ReportContent
{
    private readonly HashSet<SourceFile> sources;
    private readonly Dictionary<string, BookFile> byPath = new(StringComparer.Ordinal);

    private ReportContent(
        CheckResult result, IReadOnlyList<Finding> findings, IReadOnlyList<Finding> accepted, HarmAside aside, int files, int recipes)
    {
        Result = result;
        Findings = findings;
        Accepted = accepted;
        Aside = aside;
        Files = files;
        Recipes = recipes;
        sources = [.. result.Book.Files.Select(f => f.Source)];
        foreach (var file in result.Book.Files) byPath[file.Source.Path] = file;
        foreach (var finding in findings)
        {
            Count(finding);
            foreach (var folded in finding.Folded) Count(folded);
            Folded += finding.Folded.Count;
        }

        void Count(Finding finding)
        {
            switch (finding.Level)
            {
                case Level.Error: Errors++; break;
                case Level.Warning: Warnings++; break;
                case Level.Note: Notes++; break;
            }
        }
    }

    /// <summary>The result of the check.</summary>
    public CheckResult Result { get; }

    /// <summary>Findings to show, in total order.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Accepted findings, in total order.</summary>
    public IReadOnlyList<Finding> Accepted { get; }

    /// <summary>Number of files looked at.</summary>
    public int Files { get; }

    /// <summary>Number of recipes among them: drinks and preparations.</summary>
    public int Recipes { get; }

    /// <summary>Number of errors, those that stand beneath their cause included.</summary>
    public int Errors { get; private set; }

    /// <summary>Number of warnings, those that stand beneath their cause included.</summary>
    public int Warnings { get; private set; }

    /// <summary>Number of notes, those that stand beneath their cause included.</summary>
    public int Notes { get; private set; }

    /// <summary>Number of findings that stand beneath their cause.</summary>
    public int Folded { get; }

    /// <summary>Findings of rules that guard against harm which are put aside.</summary>
    public HarmAside Aside { get; }

    /// <summary>Number of accepted findings of rules that guard against harm, those that <c>bar.json</c> switches off included.</summary>
    public int AcceptedSafety => Aside.Accepted + Aside.SwitchedOff;

    /// <summary>Whether findings that were there before the change that is looked at are left out.</summary>
    public bool IsPart { get; init; }

    /// <summary>What to say where no finding is shown: "nothing found" only where nothing is put aside or left out either.</summary>
    public string NothingFound => IsPart || Aside.InBaseline > 0 ? "nothing new found" : Aside.Count > 0 ? "no other finding" : "nothing found";

    /// <summary>Sentences that the summary of a text ends with: what is not shown, and why.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>The highest level among the findings, those that stand beneath their cause included.</summary>
    public Level Highest => Errors > 0 ? Level.Error : Warnings > 0 ? Level.Warning : Notes > 0 ? Level.Note : Level.None;

    /// <summary>What to show of a result.</summary>
    /// <param name="result">The result.</param>
    /// <param name="includes">Whether to show what is about a file, by its path; all where <see langword="null"/>.</param>
    /// <param name="remarks">Sentences for the summary.</param>
    /// <param name="baseline">How the findings stand to a baseline; <see langword="null"/> where there is none.</param>
    /// <param name="isPart">Whether findings that were there before the change that is looked at are left out.</param>
    public static ReportContent Of(
        CheckResult result, Func<string, bool>? includes = null, IReadOnlyList<string>? remarks = null,
        Changes.BaselineMatch? baseline = null, bool isPart = false)
    {
        var files = result.Book.Files;
        var aside = HarmAside.Of(result.Findings, result.Accepted, baseline, includes);
        if (includes is null)
            return new ReportContent(
                result, result.Findings, result.Accepted, aside, files.Count, files.Count(f => f is Recipe))
            {
                Remarks = remarks ?? [],
                IsPart = isPart,
            };
        return new ReportContent(
            result,
            [.. result.Findings.Where(f => includes(f.Place.File.Path))],
            [.. result.Accepted.Where(f => includes(f.Place.File.Path))],
            aside,
            files.Count(f => includes(f.Source.Path)),
            files.Count(f => f is Recipe && includes(f.Source.Path)))
        { Remarks = remarks ?? [], IsPart = isPart, Shows = includes };
    }

    /// <summary>Whether a place is in a file of the book; else it is in the built-in catalogue.</summary>
    public bool IsInBook(Place place) => sources.Contains(place.File);

    private Func<string, bool>? Shows { get; init; }

    /// <summary>Whether what is about a file is shown.</summary>
    internal bool Includes(BookFile file) => Shows is null || Shows(file.Source.Path);

    /// <summary>The file of a path; <see langword="null"/> where the book has none.</summary>
    internal BookFile? FileAt(string path) => byPath.TryGetValue(path, out var file) ? file : null;
}
