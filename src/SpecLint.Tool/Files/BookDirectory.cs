using Microsoft.Extensions.FileSystemGlobbing.Abstractions;

namespace SpecLint.Tool;

/// <summary>
/// A folder of a book as patterns see it: hidden folders, other books and links that leave the book are not there; links
/// to folders are not followed at all, since what they lead to within the book is found anyway.
/// </summary>
internal sealed class BookDirectory : DirectoryInfoBase
{
    /// <summary>Everything but what cannot be entered is an error to the user, not a gap in the book.</summary>
    public static readonly EnumerationOptions Enumeration = new() { IgnoreInaccessible = false, AttributesToSkip = 0 };

    private readonly DirectoryInfo folder;
    private readonly List<string> otherBooks;
    private readonly Dictionary<string, FileInfo> files;
    private readonly BookDirectory? parent;
    private readonly string way;
    private readonly Lazy<string> realRoot;

    /// <summary>The root of a book.</summary>
    /// <param name="root">The folder.</param>
    /// <param name="otherBooks">Receives the folders that are books of their own.</param>
    public BookDirectory(DirectoryInfo root, List<string> otherBooks)
        : this(root, otherBooks, new Dictionary<string, FileInfo>(StringComparer.Ordinal), null, "", new Lazy<string>(() => Links.RealPath(root.FullName)))
    {
    }

    private BookDirectory(DirectoryInfo folder, List<string> otherBooks, Dictionary<string, FileInfo> files, BookDirectory? parent, string way, Lazy<string> realRoot)
    {
        this.folder = folder;
        this.otherBooks = otherBooks;
        this.files = files;
        this.parent = parent;
        this.way = way;
        this.realRoot = realRoot;
    }

    /// <summary>The files that were walked past, with what the walk has learnt of them, by their paths from the root with <c>/</c>.</summary>
    public IReadOnlyDictionary<string, FileInfo> Files => files;

    /// <inheritdoc/>
    public override string Name => folder.Name;

    /// <inheritdoc/>
    public override string FullName => folder.FullName;

    /// <inheritdoc/>
    public override DirectoryInfoBase? ParentDirectory => parent;

    /// <summary>Whether a folder is entered: not where it is hidden, a link, or full of packages.</summary>
    public static bool IsWalked(DirectoryInfo folder) =>
        folder.Name[0] != '.' && folder.Name != "node_modules" && (folder.Attributes & FileAttributes.ReparsePoint) == 0;

    /// <inheritdoc/>
    public override IEnumerable<FileSystemInfoBase> EnumerateFileSystemInfos()
    {
        foreach (var entry in folder.EnumerateFileSystemInfos("*", Enumeration))
        {
            if (entry is DirectoryInfo child)
            {
                if (!IsWalked(child)) continue;
                RefuseUnreadableName(child);
                string childWay = way + child.Name + "/";
                if (File.Exists(Path.Combine(child.FullName, BookFolder.BarFile)))
                {
                    if (!otherBooks.Contains(childWay)) otherBooks.Add(childWay);
                    continue;
                }

                yield return new BookDirectory(child, otherBooks, files, this, childWay, realRoot);
            }
            else if (entry.Name.EndsWith(".json", StringComparison.Ordinal))
            {
                RefuseUnreadableName(entry);
                if (!IsWithin((FileInfo)entry)) continue;
                files[way + entry.Name] = (FileInfo)entry;
                yield return new FileInfoWrapper((FileInfo)entry);
            }
        }
    }

    /// <inheritdoc/>
    public override DirectoryInfoBase? GetDirectory(string path) => path == ".." ? parent : null;

    /// <inheritdoc/>
    public override FileInfoBase? GetFile(string path)
    {
        var file = new FileInfo(Path.Combine(folder.FullName, path));
        return file.Exists && IsWithin(file) ? new FileInfoWrapper(file) : null;
    }

    private bool IsWithin(FileInfo file) =>
        (file.Attributes & FileAttributes.ReparsePoint) == 0 || (Links.LeadsWithin(realRoot.Value, file.FullName) && File.Exists(Links.RealPath(file.FullName)));

    /// <summary>
    /// A name that is not UTF-8 comes with replacement characters, and leads to no file: what it holds cannot be read, and leaving it
    /// out would make its findings vanish.
    /// </summary>
    private void RefuseUnreadableName(FileSystemInfo entry)
    {
        if (!entry.Name.Contains('\uFFFD', StringComparison.Ordinal) || Path.Exists(entry.FullName)) return;
        throw new UsageException($"the name of {way}{entry.Name.Replace("\uFFFD", "\\x??", StringComparison.Ordinal)} is not UTF-8, so it cannot be read; rename it.");
    }
}
