using Microsoft.Build.Framework;
using SpecLint.Analyzers;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Vocabulary;

namespace SpecLint.Build;

/// <summary>
/// Checks the books among a project's files and logs each finding at its place: what the plug-in of the compiler does, for
/// projects in which no C# compiler runs.
/// </summary>
public sealed class SpecLintCheck : Microsoft.Build.Utilities.Task
{
    private const int LargestFile = 4 << 20;

    /// <summary>Files; those that are no files of a book are passed over.</summary>
    [Required]
    public ITaskItem[] Files { get; set; } = [];

    /// <summary>The day to check for, as YYYY-MM-DD.</summary>
    public string On { get; set; } = "";

    /// <summary>Folder of the project: root of the files that no bar.json stands above.</summary>
    [Required]
    public string ProjectFolder { get; set; } = "";

    /// <summary>Address of the folder of rule pages.</summary>
    public string RulePages { get; set; } = "";

    /// <summary>Configuration files that may set levels; those that are not there or not global are passed over.</summary>
    public ITaskItem[] LevelFiles { get; set; } = [];

    /// <summary>Ids that are silenced.</summary>
    public string NoWarn { get; set; } = "";

    /// <summary>Ids whose warnings are errors.</summary>
    public string WarningsAsErrors { get; set; } = "";

    /// <summary>Ids whose warnings stay warnings where <see cref="TreatWarningsAsErrors"/> is set.</summary>
    public string WarningsNotAsErrors { get; set; } = "";

    /// <summary>Whether all warnings are errors.</summary>
    public bool TreatWarningsAsErrors { get; set; }

    /// <inheritdoc/>
    public override bool Execute()
    {
        var files = Files.Select(f => f.GetMetadata("FullPath")).Where(p => FileKinds.Of(p) is not null).Distinct(StringComparer.Ordinal).ToList();
        if (files.Count == 0) return true;
        if (CalendarDate.Parse(On) is not { } on)
        {
            Log.LogWarning(
                null,
                "SL0001",
                null,
                null,
                0,
                0,
                0,
                0,
                "The recipes were not checked: the property SpecLintOn is '{0}', which is no day written as YYYY-MM-DD (the package's "
                    + "props set it to the day of the build)",
                On);
            return true;
        }

        var levels = Levels();
        foreach (var book in Books.ByRoot(files, f => f, ProjectFolder)) Check(book.Key, book.Value, on, levels);
        return !Log.HasLoggedErrors;
    }

    private void Check(string root, List<string> paths, CalendarDate on, Dictionary<string, Level> levels)
    {
        var sources = new List<SourceFile>(paths.Count);
        var fullPaths = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string path in paths.OrderBy(Books.Slashed, StringComparer.Ordinal))
        {
            string inBook = Books.Slashed(path).Substring(root.Length);
            if (Read(path) is not { } bytes) continue;
            sources.Add(new SourceFile(inBook, bytes));
            fullPaths[inBook] = path;
        }

        var result = Checker.Check(new BookInput(Books.Wanted(sources), on) { Levels = levels });
        foreach (var finding in Books.Reportable(result))
        {
            // Places in the catalogue have no file that a build could show.
            if (fullPaths.TryGetValue(finding.Place.File.Path, out string? path)) Report(finding, path);
        }
    }

    private void Report(Finding finding, string path)
    {
        string id = finding.Rule.Id, page = Books.PageOf(id, RulePages);

        // The compiler prints the address of the page behind its message, and where a finding starts, but no end: so does this.
        string message = RulePages.Length == 0 ? Books.MessageOf(finding) : $"{Books.MessageOf(finding)} ({page})";
        var start = finding.Place.Start;
        var level = finding.Level;
        if (level == Level.Warning && TreatWarningsAsErrors && WarningsNotAsErrors.IndexOf(id, StringComparison.OrdinalIgnoreCase) < 0)
            level = Level.Error;

        switch (level)
        {
            case Level.Error:
                Log.LogError(null, id, null, page, path, start.Line, start.Column, 0, 0, "{0}", message);
                break;
            case Level.Warning:
                // NoWarn silences by the code, and a build gives neither a reason nor a day: harm goes out without one.
                if (finding.Rule.Safety && NoWarn.IndexOf(id, StringComparison.OrdinalIgnoreCase) >= 0)
                    Log.LogWarning(null, null, null, page, path, start.Line, start.Column, 0, 0, "{0}", $"{id}: {message}");
                else
                    Log.LogWarning(null, id, null, page, path, start.Line, start.Column, 0, 0, "{0}", message);
                break;
            case Level.Note:
                Log.LogMessage(null, id, null, path, start.Line, start.Column, 0, 0, MessageImportance.Normal, "{0}", message);
                break;
        }
    }

    private Dictionary<string, Level> Levels()
    {
        var levels = new BuildLevels();
        foreach (string path in LevelFiles.Select(f => f.GetMetadata("FullPath")).Where(File.Exists).Distinct(StringComparer.Ordinal))
        {
            string text;
            try
            {
                text = File.ReadAllText(path);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                Log.LogWarning("The levels in {0} cannot be read: {1}", path, e.Message);
                continue;
            }

            foreach (var (id, first, second) in levels.Add(path, text))
                Log.LogMessage(
                    MessageImportance.High,
                    "{0} and {1} both set the level of {2}, so neither holds: give one of them a higher global_level.",
                    first,
                    second,
                    id);
        }

        levels.Add(WarningsAsErrors, Level.Error);
        levels.Add(NoWarn, Level.None);
        return levels.ToDictionary();
    }

    private byte[]? Read(string path)
    {
        try
        {
            var file = new FileInfo(path);

            // What is too large is handed over as blanks of more than that: the reader says so, and nobody reads it.
            if (file.Length > LargestFile) return [.. Enumerable.Repeat((byte)' ', LargestFile + 1)];
            return file.Length == 0 ? [] : File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Log.LogError(null, null, null, path, 0, 0, 0, 0, "The file cannot be read: {0}", e.Message);
            return null;
        }
    }
}
