using SpecLint.Binding;

namespace SpecLint.Tool;

/// <summary>
/// Walks the folder of a book: hidden folders, other books and links that leave the book are not there; links to folders are
/// not followed at all, since what they lead to within the book is found anyway.
/// </summary>
internal sealed class BookDirectory
{
    /// <summary>Everything but what cannot be entered is an error to the user, not a gap in the book.</summary>
    public static readonly EnumerationOptions Enumeration = new() { IgnoreInaccessible = false, AttributesToSkip = 0 };

    private readonly Dictionary<string, FileInfo> files = new(StringComparer.Ordinal);
    private readonly List<string> otherBooks = [];
    private readonly Lazy<string> realRoot;

    /// <summary>Walks a book.</summary>
    /// <param name="root">Its folder.</param>
    /// <param name="below">Whether to enter the folders below.</param>
    public BookDirectory(DirectoryInfo root, bool below = true)
    {
        realRoot = new Lazy<string>(() => Links.RealPath(root.FullName));
        Walk(root, "", below);
        otherBooks.Sort(StringComparer.Ordinal);
    }

    /// <summary>The JSON files in it, with what the walk has learnt of them, by their paths from the root with <c>/</c>.</summary>
    public IReadOnlyDictionary<string, FileInfo> Files => files;

    /// <summary>Folders in it that are books of their own, in order, with <c>/</c> at the end.</summary>
    public IReadOnlyList<string> OtherBooks => otherBooks;

    /// <summary>Whether a folder is entered: not where it is hidden, a link, or full of packages.</summary>
    public static bool IsWalked(DirectoryInfo folder) => BookFiles.IsEntered(folder.Name) && (folder.Attributes & FileAttributes.ReparsePoint) == 0;

    private void Walk(DirectoryInfo folder, string way, bool below)
    {
        foreach (var entry in folder.EnumerateFileSystemInfos("*", Enumeration))
        {
            if (entry is DirectoryInfo child)
            {
                if (!below || !IsWalked(child)) continue;
                RefuseUnreadableName(child, way);
                string childWay = way + child.Name + "/";
                if (File.Exists(Path.Combine(child.FullName, BookFiles.BarFile))) otherBooks.Add(childWay);
                else Walk(child, childWay, below);
            }
            else if (entry.Name.EndsWith(".json", StringComparison.Ordinal))
            {
                RefuseUnreadableName(entry, way);
                if (IsWithin((FileInfo)entry)) files[way + entry.Name] = (FileInfo)entry;
            }
        }
    }

    private bool IsWithin(FileInfo file) =>
        (file.Attributes & FileAttributes.ReparsePoint) == 0
            || (Links.LeadsWithin(realRoot.Value, file.FullName) && File.Exists(Links.RealPath(file.FullName)));

    /// <summary>
    /// A name that is not UTF-8 comes with replacement characters, and leads to no file: what it holds cannot be read, and leaving it
    /// out would make its findings vanish.
    /// </summary>
    private static void RefuseUnreadableName(FileSystemInfo entry, string way)
    {
        if (!entry.Name.Contains('\uFFFD', StringComparison.Ordinal) || Path.Exists(entry.FullName)) return;
        throw new UsageException($"the name of {way}{entry.Name.Replace("\uFFFD", "\\x??", StringComparison.Ordinal)} is not UTF-8, so "
            + $"it cannot be read; rename it.");
    }
}
