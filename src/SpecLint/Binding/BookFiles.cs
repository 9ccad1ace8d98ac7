using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <summary>
/// Which files of a folder are a book's. The command, the build and a program on this library choose alike: hidden folders,
/// <c>node_modules</c> and folders with a <c>bar.json</c> of their own are left out, and the bar's <c>files</c> and
/// <c>leaveOut</c> narrow the rest. The library opens no file: it is given their paths, and asks for the bytes it wants.
/// </summary>
public static class BookFiles
{
    /// <summary>Name of the file that marks the root of a book.</summary>
    public const string BarFile = "bar.json";

    /// <summary>Patterns of the files that are read where the bar names none.</summary>
    public static IReadOnlyList<string> DefaultPatterns { get; } =
        ["**/*.drink.json", "**/*.prep.json", "**/*.ingredient.json", "**/*.menu.json", "**/*.stock.json", "**/*.prices.json"];

    /// <summary>Patterns of the folders that are always left out.</summary>
    public static IReadOnlyList<string> AlwaysLeftOut { get; } = ["**/.*/", "**/node_modules/"];

    /// <summary>Reads the files of a book.</summary>
    /// <param name="listing">Paths of all files in the folder and below, from its root, with <c>/</c> or <c>\</c>, in any order.</param>
    /// <param name="read">Gives the bytes of a file by its path, with <c>/</c>; it is called for the files of the book alone.</param>
    /// <returns>The files, by path.</returns>
    public static IReadOnlyList<SourceFile> Read(IEnumerable<string> listing, Func<string, byte[]> read)
    {
        string[] paths = [.. listing.Select(Slashed)];
        var bar = paths.Contains(BarFile) ? BookReader.Read(new SourceFile(BarFile, read(BarFile)), FileKind.Bar, Measures.Default) as Bar : null;
        return [.. Choose(paths, bar).Select(p => new SourceFile(p, read(p)))];
    }

    /// <summary>Chooses the files of a book.</summary>
    /// <param name="listing">Paths of all files in the folder and below, from its root, with <c>/</c> or <c>\</c>, in any order.</param>
    /// <param name="bar">The bar's own file; <see langword="null"/> where there is none.</param>
    /// <returns>Their paths, with <c>/</c>, in order.</returns>
    public static IReadOnlyList<string> Choose(IEnumerable<string> listing, Bar? bar)
    {
        var paths = listing.Select(Slashed).Where(static p => FileKinds.Of(p) is not null).Distinct(StringComparer.Ordinal).ToList();
        var others = new HashSet<string>(
            paths.Where(static p => p.EndsWith("/" + BarFile, StringComparison.Ordinal)).Select(FolderOf),
            StringComparer.Ordinal);
        // Where the bar names no patterns, the endings by which files have kinds are those of the default ones.
        PathPattern[]? wanted = bar is { Files.Count: > 0 } ? [.. bar.Files.Select(static f => new PathPattern(f.Value))] : null;
        PathPattern[] unwanted = [.. (bar?.LeaveOut ?? []).Select(static p => new PathPattern(p.Value))];
        var chosen = paths.FindAll(p => IsReached(p, others)
            && (p == BarFile || (wanted is null ? FileKinds.Of(p) != FileKind.Bar : Array.Exists(wanted, w => w.Matches(p))))
            && !Array.Exists(unwanted, u => u.MatchesOrHolds(p)));
        chosen.Sort(StringComparer.Ordinal);
        return chosen;
    }

    /// <summary>Whether the folder of a name is entered: not where it is hidden, or full of packages.</summary>
    /// <param name="folder">Its name alone.</param>
    public static bool IsEntered(string folder) => IsEntered(folder.AsSpan());

    private static bool IsEntered(ReadOnlySpan<char> folder) =>
        folder.Length > 0 && folder[0] != '.' && !folder.SequenceEqual("node_modules".AsSpan());

    private static bool IsReached(string path, HashSet<string> others)
    {
        int start = 0;
        for (int slash = path.IndexOf('/'); slash >= 0; slash = path.IndexOf('/', start))
        {
            if (!IsEntered(path.AsSpan(start, slash - start)) || (others.Count > 0 && others.Contains(path.Substring(0, slash)))) return false;
            start = slash + 1;
        }

        return true;
    }

    private static string FolderOf(string path) => path.Substring(0, path.LastIndexOf('/'));

    private static string Slashed(string path) => path.IndexOf('\\') < 0 ? path : path.Replace('\\', '/');
}
