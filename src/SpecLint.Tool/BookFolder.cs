using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool;

/// <summary>A book on disk: its root, its files, and which of them were asked for.</summary>
internal sealed class BookFolder
{
    /// <summary>A file over 4 MiB is handed over as blanks of more than that: the reader says that it is too large, and nobody reads it.</summary>
    internal static readonly Lazy<byte[]> TooLarge = new(static () =>
    {
        byte[] blanks = new byte[LargestFile + 1];
        blanks.AsSpan().Fill((byte)' ');
        return blanks;
    });

    internal const int LargestFile = 4 << 20;

    private BookFolder(
        string root, Bar? bar, IReadOnlyList<SourceFile> files, IReadOnlyList<string> otherBooks, Func<string, bool>? includes,
        string displayPrefix)
    {
        Root = root;
        Bar = bar;
        Files = files;
        OtherBooks = otherBooks;
        Includes = includes;
        DisplayPrefix = displayPrefix;
    }

    /// <summary>Full path of the root.</summary>
    public string Root { get; }

    /// <summary>The bar's own file; <see langword="null"/> where there is none.</summary>
    public Bar? Bar { get; }

    /// <summary>The day that an example book is set on; <see langword="null"/> for every other book.</summary>
    public CalendarDate? SetOn => SetOnOf(Bar);

    /// <summary>The day that the example book of a root is set on, without reading the rest of it.</summary>
    internal static CalendarDate? SetOnOf(string root) => SetOnOf(ReadBar(root));

    private static CalendarDate? SetOnOf(Bar? bar) => bar is { AsOf.IsGiven: true } ? bar.AsOf.Value : null;

    /// <summary>Whether the bar's own file is no JSON, so that its settings are not known.</summary>
    public bool BarIsUnreadable => Bar is not null && Bar.Problems.Any(p =>
        p.Kind is ReadingProblemKind.Syntax or ReadingProblemKind.Encoding or ReadingProblemKind.TooLarge or ReadingProblemKind.TooDeep);

    /// <summary>All files of the book.</summary>
    public IReadOnlyList<SourceFile> Files { get; }

    /// <summary>Folders within the root that are books of their own, and left out.</summary>
    public IReadOnlyList<string> OtherBooks { get; }

    /// <summary>Which files were asked for, by path; <see langword="null"/> for all.</summary>
    public Func<string, bool>? Includes { get; }

    /// <summary>The way from the current folder to the root, with <c>/</c> at its end.</summary>
    public string DisplayPrefix { get; }

    /// <summary>Whether a file to check was asked for and found; the bar's own file does not count.</summary>
    public bool HasFilesToCheck => Files.Any(f => FileKinds.Of(f.Path) != FileKind.Bar && (Includes is null || Includes(f.Path)));

    /// <summary>The way from the root of the repository (the nearest folder upward with <c>.git</c>) to the book, with <c>/</c> at its end.</summary>
    public string RepositoryPrefix()
    {
        for (string? folder = Root; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            string git = Path.Combine(folder, ".git");
            if (Directory.Exists(git) || File.Exists(git)) return Relative(folder, Root);
        }

        return "";
    }

    /// <summary>What to hand to the library.</summary>
    /// <param name="on">The day of the run.</param>
    /// <param name="threads">Number of threads; 0 takes one a processor.</param>
    public BookInput ToInput(CalendarDate on, int threads) => new(Files, on) { Threads = threads, HouseSchemas = HouseSchemaFiles.Load(Root, Bar) };

    /// <summary>The book with another text in the place of one of its files, or with one file more; findings are shown for that file alone.</summary>
    /// <param name="path">Path of the file from the root, with <c>/</c>.</param>
    /// <param name="text">Its bytes.</param>
    public BookFolder With(string path, byte[] text) =>
        new(
            Root,
            Bar,
            [.. Files.Where(f => f.Path != path)
                .Append(new SourceFile(path, text.Length > LargestFile ? TooLarge.Value : text))
                .OrderBy(f => f.Path, StringComparer.Ordinal)],
            OtherBooks,
            p => p == path,
            DisplayPrefix);

    /// <summary>The book, of which only a part of what was asked for is shown.</summary>
    public BookFolder Part(BookPart part)
    {
        var mine = part.FilesOf(Files.Select(f => f.Path));
        return new(Root, Bar, Files, OtherBooks, Includes is { } asked ? p => asked(p) && mine.Contains(p) : mine.Contains, DisplayPrefix);
    }

    /// <summary>Finds and reads the book that the paths lie in.</summary>
    /// <param name="host">The world.</param>
    /// <param name="paths">Folders or files; the current folder where there are none.</param>
    /// <param name="threads">Number of threads to read with.</param>
    /// <exception cref="UsageException">A path does not exist or cannot be read, or they lie in several books.</exception>
    public static BookFolder Open(Host host, IReadOnlyList<string> paths, int threads = 0)
    {
        if (paths.Count == 0) paths = ["."];
        string? root = null;
        foreach (string path in paths)
        {
            string own = RootOf(host, path);
            if (root is not null && own != root) throw new UsageException($"{paths[0]} and {path} lie in two books; check one at a time.");
            root = own;
        }

        var folder = new DirectoryInfo(root!);
        try
        {
            var bar = ReadBar(root!);
            var walked = new BookDirectory(folder);
            var found = BookFiles.Choose(walked.Files.Keys, bar);
            host.Expect(found.Count);
            var includes = Choose(host, paths, root!, found);
            var files = Read(walked, found, threads);
            return new BookFolder(root!, bar, files, walked.OtherBooks, includes, Relative(host.CurrentDirectory, root!));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the book cannot be read: {IoFault.Reason(e)}.", e);
        }
    }

    /// <summary>Full path of the root of the book that a path lies in.</summary>
    /// <exception cref="UsageException">The path does not exist, or several books lie in it.</exception>
    internal static string RootOf(Host host, string path)
    {
        string full = Path.TrimEndingDirectorySeparator(host.FullPath(path));
        bool isFolder = Directory.Exists(full);
        if (!isFolder && !File.Exists(full)) throw new UsageException($"{path} does not exist.");
        string start = isFolder ? full : Path.GetDirectoryName(full)!;
        if (RootAbove(start) is { } above) return above;

        // No book upward: perhaps one below, as when a repository's root is named.
        if (!isFolder) return start;
        var below = BooksBelow(start);
        return below.Count switch
        {
            0 => start,
            1 => below[0],
            _ =>
                throw new UsageException($"{path} holds {below.Count} books; name one of them: "
                    + $"{string.Join(", ", below.Take(5).Select(b => Relative(host.CurrentDirectory, b).TrimEnd('/')))}"
                    + $"{(below.Count > 5 ? ", …" : "")}."),
        };
    }

    /// <summary>Full path of the nearest folder, the one given or above it, with a bar's file; <see langword="null"/> where none has one.</summary>
    internal static string? RootAbove(string start)
    {
        for (string? folder = start; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, BookFiles.BarFile))) return folder;
        }

        return null;
    }

    /// <summary>
    /// The files of one folder, those of the folders below left alone: what an editor checks where no bar is. It opens files of
    /// any folder, and below it may lie a whole disk.
    /// </summary>
    /// <exception cref="UsageException">The folder cannot be read.</exception>
    internal static BookFolder OpenOneFolder(Host host, string root)
    {
        try
        {
            var walked = new BookDirectory(new DirectoryInfo(root), below: false);
            var found = BookFiles.Choose(walked.Files.Keys, null);
            return new BookFolder(root, null, Read(walked, found, threads: 0), [], null, Relative(host.CurrentDirectory, root));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the folder cannot be read: {IoFault.Reason(e)}.", e);
        }
    }

    /// <summary>Roots of the books in a folder and below, in order.</summary>
    /// <param name="start">The folder.</param>
    /// <param name="within">Whether to look for books within books too.</param>
    internal static List<string> BooksBelow(string start, bool within = false)
    {
        var books = new List<string>();
        var waiting = new Queue<string>([start]);
        while (waiting.Count > 0)
        {
            string folder = waiting.Dequeue();
            if (File.Exists(Path.Combine(folder, BookFiles.BarFile)))
            {
                books.Add(folder);
                if (!within) continue;
            }

            foreach (var child in new DirectoryInfo(folder).EnumerateDirectories("*", BookDirectory.Enumeration))
            {
                if (BookDirectory.IsWalked(child)) waiting.Enqueue(child.FullName);
            }
        }

        books.Sort(StringComparer.Ordinal);
        return books;
    }

    /// <summary>The schemas that the bar of a book names, without reading the rest of the book; <see langword="null"/> where it names none.</summary>
    /// <param name="root">Root of the book.</param>
    /// <exception cref="UsageException">The bar's file or a schema cannot be read.</exception>
    internal static IHouseSchemaCheck? HouseSchemasOf(string root) => HouseSchemaFiles.Load(root, ReadBar(root));

    /// <summary>Paths of the files of a book from its root, in order; only its bar's file is read.</summary>
    /// <exception cref="UsageException">The bar's file cannot be read.</exception>
    internal static IReadOnlyList<string> PathsOf(string root) =>
        BookFiles.Choose(new BookDirectory(new DirectoryInfo(root)).Files.Keys, ReadBar(root));

    private static Bar? ReadBar(string root)
    {
        string path = Path.Combine(root, BookFiles.BarFile);
        if (!File.Exists(path)) return null;
        if (new FileInfo(path).LinkTarget is not null && !Links.LeadsWithin(Links.RealPath(root), path))
            throw new UsageException($"{BookFiles.BarFile} is a link that leads out of the book; put the file itself into the book.");
        return BookReader.Read(ReadFile(new FileInfo(path), BookFiles.BarFile), FileKind.Bar, Measures.Default) as Bar;
    }

    /// <summary>Which of the files were asked for.</summary>
    private static Func<string, bool>? Choose(Host host, IReadOnlyList<string> paths, string root, IReadOnlyList<string> found)
    {
        var files = new HashSet<string>(StringComparer.Ordinal);
        var folders = new List<string>();
        foreach (string path in paths)
        {
            string full = Path.TrimEndingDirectorySeparator(host.FullPath(path));
            string relative = Relative(root, full).TrimEnd('/');

            // The root itself, or a folder above it.
            if (relative.Length == 0 || relative.StartsWith("..", StringComparison.Ordinal)) return null;
            if (Directory.Exists(full)) folders.Add(relative + "/");
            else if (found.Contains(relative)) files.Add(relative);
            else
                throw new UsageException($"{path} is not a file of the book: names end in .drink.json, .prep.json, .ingredient.json, "
                    + $".menu.json or .stock.json, and bar.json may leave some out.");
        }

        return path => files.Contains(path) || folders.Exists(f => path.StartsWith(f, StringComparison.Ordinal));
    }

    private static SourceFile[] Read(BookDirectory root, IReadOnlyList<string> found, int threads)
    {
        var files = new SourceFile[found.Count];
        try
        {
            Parallel.For(0, found.Count, new ParallelOptions { MaxDegreeOfParallelism = threads > 0 ? threads : Environment.ProcessorCount }, i =>
                files[i] = ReadFile(root.Files[found[i]], found[i]));
        }
        catch (AggregateException several)
        {
            // The first in the order of names, whichever thread met it first.
            var unreadable = several.Flatten().InnerExceptions.OfType<UsageException>()
                .OrderBy(e => e.Message, StringComparer.Ordinal).FirstOrDefault();
            if (unreadable is null) throw;
            throw new UsageException(unreadable.Message, several);
        }

        return files;
    }

    private static SourceFile ReadFile(FileInfo file, string path)
    {
        try
        {
            return new SourceFile(path, InputFile.Read(file, LargestFile) ?? TooLarge.Value);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{path} cannot be read: {IoFault.Reason(e)}.", e);
        }
    }

    private static string Relative(string from, string to)
    {
        string relative = Path.GetRelativePath(from, to).Replace('\\', '/');
        return relative == "." ? "" : relative + "/";
    }
}
