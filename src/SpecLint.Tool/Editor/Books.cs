using SpecLint.Book;
using SpecLint.Live;
using SpecLint.Reading;

namespace SpecLint.Tool.Editor;

/// <summary>The books of the editor's documents, each opened when one of its files is.</summary>
internal sealed class Books(Host host)
{
    private readonly Dictionary<string, OpenBook> open = new(StringComparer.Ordinal);
    private readonly Dictionary<string, OpenDocument> documents = new(StringComparer.Ordinal);

    /// <summary>All open books.</summary>
    public IReadOnlyCollection<OpenBook> All => open.Values;

    /// <summary>How the editor writes addresses.</summary>
    public Addresses Addresses { get; } = new();

    /// <summary>The open document at a full path; <see langword="null"/> where none is.</summary>
    public OpenDocument? DocumentAt(string path) => documents.TryGetValue(path, out var document) ? document : null;

    /// <summary>Opens a document, and its book with it.</summary>
    /// <exception cref="UsageException">The book cannot be read.</exception>
    public void Open(string address, int version, string text)
    {
        if (Addresses.PathOf(address) is not { } path) return;
        Addresses.Keep(path, address);
        var document = new OpenDocument(path, version, text);
        documents[path] = document;
        Put(document);
    }

    /// <summary>Takes a changed document.</summary>
    public void Put(OpenDocument document)
    {
        if (BookOf(document.Path, openIt: true) is not { } book) return;
        book.Take([new FileState(book.Relative(document.Path)!, new SourceFile(book.Relative(document.Path)!, document.Utf8))]);
    }

    /// <summary>Closes a document: what is on disk counts again.</summary>
    public void Close(string address)
    {
        if (Addresses.PathOf(address) is { } path && documents.Remove(path)) FromDisk([path]);
    }

    /// <summary>Takes files that changed on disk; those that are open in the editor are as they are there.</summary>
    /// <exception cref="UsageException">A book cannot be read.</exception>
    public void FromDisk(IEnumerable<string> paths)
    {
        foreach (var ofBook in paths.Where(p => !documents.ContainsKey(p)).GroupBy(p => BookOf(p, openIt: false)))
        {
            if (ofBook.Key is not { } book) continue;
            var states = ofBook.Select(p => (Path: p, Relative: book.Relative(p)!)).Where(p => FileKinds.Of(p.Relative) is not null).ToList();

            // The bar says which files are read.
            if (states.Exists(s => FileKinds.Of(s.Relative) == FileKind.Bar)) Reread(book);
            else book.Take(states.Select(s => new FileState(s.Relative, Read(s.Path, s.Relative))));
        }
    }

    /// <summary>Reads a book from disk again.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public void Reread(OpenBook book)
    {
        var unsaved = documents.Values.Where(d => BookOf(d.Path, openIt: false) == book)
            .ToDictionary(d => book.Relative(d.Path)!, d => d.Utf8, StringComparer.Ordinal);
        book.Reread(unsaved);
    }

    /// <summary>Opens the book that a folder is in, where a bar's file says that it is one.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public OpenBook? OpenFolder(string folder) =>
        Directory.Exists(folder) && BookFolder.RootAbove(folder) is { } root ? Opened(root, isWhole: true) : null;

    /// <summary>The open books in a folder.</summary>
    public IEnumerable<OpenBook> Below(string folder) => open.Values.Where(b => IsWithin(b.Root, folder));

    /// <summary>Whether a path is a folder or lies in it.</summary>
    public static bool IsWithin(string path, string folder)
    {
        string relative = Path.GetRelativePath(folder, path);
        return relative == "."
            || !(relative == ".."
                || relative.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal)
                || Path.IsPathRooted(relative));
    }

    /// <summary>Lets go of a book of which no document is open.</summary>
    /// <returns>Whether it is gone.</returns>
    public bool LetGo(OpenBook book) => !documents.Values.Any(d => BookOf(d.Path, openIt: false) == book) && open.Remove(book.Root);

    /// <summary>The open book that a file is in.</summary>
    public OpenBook? BookAt(string path) => BookOf(path, openIt: false);

    private OpenBook? BookOf(string path, bool openIt)
    {
        if (FileKinds.Of(Path.GetFileName(path)) is null) return null;
        string? folder = Path.GetDirectoryName(path);
        while (folder is not null && !Directory.Exists(folder)) folder = Path.GetDirectoryName(folder);
        if (folder is null) return null;
        string? root = BookFolder.RootAbove(folder);
        return openIt || open.ContainsKey(root ?? folder) ? Opened(root ?? folder, root is not null) : null;
    }

    private OpenBook Opened(string root, bool isWhole)
    {
        // A folder that gets a bar's file becomes a book, and the other way round.
        if (open.TryGetValue(root, out var known) && known.IsWhole == isWhole) return known;
        var book = OpenBook.Of(host, root, isWhole);
        open[root] = book;
        book.Take(documents.Values
            .Where(d => BookFolder.RootAbove(Path.GetDirectoryName(d.Path)!) is { } above ? above == root : Path.GetDirectoryName(d.Path) == root)
            .Select(d => new FileState(book.Relative(d.Path)!, new SourceFile(book.Relative(d.Path)!, d.Utf8))));
        return book;
    }

    private static SourceFile? Read(string path, string relative)
    {
        try
        {
            return File.Exists(path)
                ? new SourceFile(relative, InputFile.Read(new FileInfo(path), BookFolder.LargestFile) ?? BookFolder.TooLarge.Value)
                : null;
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // It is gone between being told of and being read, or nobody may read it.
            return null;
        }
    }
}
