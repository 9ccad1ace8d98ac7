using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Live;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Tool.Editor;

/// <summary>A book whose files stand partly on disk and partly, unsaved, in the editor.</summary>
internal sealed class OpenBook
{
    private readonly Host host;
    private Bar? chooser;
    private CalendarDate day;
    private Verdicts? verdicts;

    private OpenBook(Host host, string root, bool isWhole, BookFolder folder)
    {
        this.host = host;
        Root = root;
        IsWhole = isWhole;
        chooser = folder.Bar;
        day = folder.SetOn ?? host.Today();
        Live = new LiveBook(folder.ToInput(day, threads: 0));
    }

    /// <summary>Full path of the root.</summary>
    public string Root { get; }

    /// <summary>Whether a bar's file makes the folder, with those below it, a book; else it is the files of one folder.</summary>
    public bool IsWhole { get; }

    /// <summary>The files as they are now, and what was found in them.</summary>
    public LiveBook Live { get; }

    /// <summary>The files linked.</summary>
    public LinkedBook Linked => Live.Book;

    /// <summary>What each recipe comes to.</summary>
    public ProfileSet Profiles => Live.Profiles;

    /// <summary>The day of the check.</summary>
    public CalendarDate Day => day;

    /// <summary>What may be kept and served, everything checked.</summary>
    public Verdicts Verdicts => verdicts ??= Verdicts.Of(Live.Result());

    /// <summary>Opens the book that a folder belongs to.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static OpenBook Of(Host host, string root, bool isWhole) => new(host, root, isWhole, Read(host, root, isWhole));

    /// <summary>Path of a file from the root, with <c>/</c>; <see langword="null"/> where it is not in the folder.</summary>
    public string? Relative(string fullPath)
    {
        string relative = Path.GetRelativePath(Root, fullPath).Replace('\\', '/');
        return relative.StartsWith("..", StringComparison.Ordinal) || Path.IsPathRooted(relative) ? null : relative;
    }

    /// <summary>Full path of a file of the book.</summary>
    public string FullPath(string relative) => Path.GetFullPath(relative, Root);

    /// <summary>The file at a full path; <see langword="null"/> where the book has none.</summary>
    public BookFile? FileAt(string fullPath) => Relative(fullPath) is { } relative ? Live.Find(relative) : null;

    /// <summary>Takes files as they are now. Those that the bar's own patterns leave out are passed over.</summary>
    public void Take(IEnumerable<FileState> states)
    {
        verdicts = null;
        var theirs = states.Where(s => s.Source is null || Live.Find(s.Path) is not null || Reads(s.Path)).ToList();
        Live.Take(theirs);
        if (theirs.Exists(s => FileKinds.Of(s.Path) == FileKind.Bar)) chooser = Linked.Settings.Bar;
    }

    /// <summary>Reads all from disk, what stands in the editor kept: a day has passed, or files changed that nobody told of.</summary>
    /// <param name="unsaved">Texts in the editor, by path from the root.</param>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public void Reread(IReadOnlyDictionary<string, byte[]> unsaved)
    {
        verdicts = null;
        var folder = Read(host, Root, IsWhole);
        chooser = folder.Bar;
        var now = folder.Files.ToDictionary(f => f.Path, StringComparer.Ordinal);
        foreach (var (path, text) in unsaved)
        {
            if (now.ContainsKey(path) || Reads(path)) now[path] = new SourceFile(path, text);
        }

        // The bar's file also says which schemas of its own the book is held against.
        var today = folder.SetOn ?? host.Today();
        byte[] before = Live.Find(BookFiles.BarFile)?.Source.Utf8.ToArray() ?? [];
        bool isOtherBar = !before.AsSpan().SequenceEqual(now.TryGetValue(BookFiles.BarFile, out var bar) ? bar.Utf8.Span : []);
        if (today != day || isOtherBar)
        {
            day = today;
            Live.Reopen(folder.ToInput(day, threads: 0) with { Files = [.. now.Values] });
            return;
        }

        Take([
            .. now.Values.Select(f => new FileState(f.Path, f)),
            .. Linked.Files.Where(f => !now.ContainsKey(f.Source.Path)).Select(f => new FileState(f.Source.Path, null))]);
    }

    /// <summary>Whether the day of the check has passed.</summary>
    public bool IsOfAnotherDay => Linked.Settings.Bar is not { AsOf.IsGiven: true } && host.Today() != day;

    /// <summary>Checks a file now, if it waits.</summary>
    /// <returns>The files whose findings may have changed.</returns>
    public IReadOnlyCollection<string> CheckNow(string relative) => Live.IsSettled ? [] : Checked(Live.CheckSome([relative], 0));

    /// <summary>Checks some of the files that wait.</summary>
    /// <returns>The files whose findings may have changed.</returns>
    public IReadOnlyCollection<string> CheckSome(int most) => Checked(Live.CheckSome([], most));

    /// <summary>Checks everything.</summary>
    /// <returns>The files whose findings may have changed.</returns>
    public IReadOnlyCollection<string> Settle() => Checked(Live.Settle());

    private IReadOnlyCollection<string> Checked(IReadOnlyCollection<string> changed)
    {
        if (changed.Count > 0) verdicts = null;
        return changed;
    }

    private bool Reads(string relative)
    {
        if (FileKinds.Of(relative) is null) return false;
        return IsWhole ? BookFiles.Choose([relative], chooser).Count > 0 : !relative.Contains('/', StringComparison.Ordinal);
    }

    private static BookFolder Read(Host host, string root, bool isWhole) =>
        isWhole ? BookFolder.Open(host, [root]) : BookFolder.OpenOneFolder(host, root);
}
