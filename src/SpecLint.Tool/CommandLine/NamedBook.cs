using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Vocabulary;

namespace SpecLint.Tool;

/// <summary>
/// The book that a command line means, and which of its files: a folder of the book will do for every verb, a file leads to its
/// book, and an id goes with <c>--book</c> or the current folder.
/// </summary>
internal sealed class NamedBook
{
    private readonly string? named;
    private readonly string? file;

    private NamedBook(
        BookFolder folder, string? named, string? file, bool isFolder) =>
            (Folder, this.named, this.file, IsFolder) = (folder, named, file, isFolder);

    /// <summary>The book.</summary>
    public BookFolder Folder { get; }

    /// <summary>Whether a folder was named.</summary>
    public bool IsFolder { get; }

    /// <summary>Opens it.</summary>
    /// <param name="host">The world.</param>
    /// <param name="named">A folder, a file or an id; <see langword="null"/> where none is named.</param>
    /// <param name="book">What <c>--book</c> names.</param>
    /// <param name="threads">Number of threads to read with.</param>
    /// <exception cref="UsageException">The book cannot be found or read.</exception>
    public static NamedBook Open(Host host, string? named, string? book, int threads = 0)
    {
        var (isFile, isFolder) = KindOf(host, named, book);
        string[] paths = isFile || isFolder ? [named!] : book is null ? [] : [book];
        return In(BookFolder.Open(host, paths, threads), host, named, book);
    }

    /// <summary>A name in a book that is open.</summary>
    /// <param name="folder">The book.</param>
    /// <param name="host">The world.</param>
    /// <param name="named">A folder, a file or an id; <see langword="null"/> where none is named.</param>
    /// <param name="book">What <c>--book</c> names.</param>
    public static NamedBook In(BookFolder folder, Host host, string? named, string? book)
    {
        var (isFile, isFolder) = KindOf(host, named, book);
        return new NamedBook(folder, named, isFile ? Path.GetRelativePath(folder.Root, host.FullPath(named!)).Replace('\\', '/') : null, isFolder);
    }

    /// <summary>
    /// Whether a name is that of a file or a folder. Beside <c>--book</c> a bare
    /// word is an id, whatever lies in the current folder.
    /// </summary>
    private static (bool IsFile, bool IsFolder) KindOf(Host host, string? named, string? book)
    {
        if (named is not { Length: > 0 }) return (false, false);
        string full = host.FullPath(named);
        bool isFile = File.Exists(full);
        return (isFile, !isFile && Directory.Exists(full) && (book is null || named.AsSpan().IndexOfAny('/', '\\') >= 0));
    }

    /// <summary>The recipe that is named.</summary>
    /// <exception cref="UsageException">There is none, or a folder was named.</exception>
    public Recipe RecipeOf(LinkedBook book, string verb)
    {
        if (IsFolder) throw new UsageException($"{named} is a folder; name a recipe of it: speclint {verb} RECIPE --book {named}.");
        return RecipeIn(book)
            ?? throw new UsageException($"{named} is not a drink or preparation of the "
                + $"book.{Near(book.Drinks.Select(d => d.Id).Concat(book.Preps.Select(p => p.Id)))}");
    }

    /// <summary>The recipe that is named; <see langword="null"/> where there is none.</summary>
    public Recipe? RecipeIn(LinkedBook book) =>
        (file is not null ? OneOf(book.Files) : named is not null && book.Resolve(named) is { ByProduct: null } item ? item.File : null) as Recipe;

    /// <summary>The menu that is named; of a folder its only one.</summary>
    /// <exception cref="UsageException">There is none, or there are several.</exception>
    public Menu MenuOf(LinkedBook book)
    {
        var there = book.Menus.Select(static m => m.Id).Order(StringComparer.Ordinal).ToList();
        if (there.Count == 0) throw new UsageException("the book has no menu, whose file's name ends in .menu.json.");
        string list = $"{(there.Count == 1 ? "its menu is" : "its menus are")} {Say.List(there)}";
        if (IsFolder)
            return there.Count == 1
                ? book.Menus[0]
                : throw new UsageException($"{named} is a folder with several menus: {list}. Name one, with --book {named}.");
        var found = file is not null ? OneOf(book.Menus) : book.Menus.FirstOrDefault(m => m.Id == named);
        return found ?? throw new UsageException($"{named} is not a menu of the book; {list}.");
    }

    private T? OneOf<T>(IEnumerable<T> files)
        where T : BookFile => files.FirstOrDefault(f => f.Source.Path == file);

    private string Near(IEnumerable<string> ids) => Suggestion.For(named ?? "", ids);
}
