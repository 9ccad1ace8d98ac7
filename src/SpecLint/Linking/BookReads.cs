using SpecLint.Book;
namespace SpecLint.Linking;

/// <summary>The ways in which a check looks at more of a book than the file it is about.</summary>
internal enum BookReadKind
{
    /// <summary>What an id resolves to, and what that comes to.</summary>
    Item,

    /// <summary>The recipes that use an id.</summary>
    Users,

    /// <summary>The lots that bear a code.</summary>
    Lots,

    /// <summary>What all files of a kind say, or all files where no kind is named.</summary>
    Files,

    /// <summary>The ids and names of the book.</summary>
    Names,
}

/// <summary>One look at a book.</summary>
/// <param name="Kind">The way.</param>
/// <param name="Of">The id, the code or the kind.</param>
internal readonly record struct BookRead(BookReadKind Kind, string Of);

/// <summary>
/// What a check looked at: a live book runs it again when something of that changes. <see cref="LinkedBook"/> and the profiles,
/// through which everything outside a check's own file is reached, note each look themselves, so that no rule can forget to.
/// </summary>
internal static class BookReads
{
    private static readonly string[] KindNames = [.. Enumerable.Range(0, 7).Select(k => ((FileKind)k).ToString())];

    [ThreadStatic]
    private static HashSet<BookRead>? taken;

    /// <summary>Notes a look.</summary>
    public static void Note(BookReadKind kind, string of) => taken?.Add(new BookRead(kind, of));

    /// <summary>Notes a look.</summary>
    public static void Note(BookRead look) => taken?.Add(look);

    /// <summary>Notes a look at all files of a kind, and hands on the list.</summary>
    public static IReadOnlyList<T> OfKind<T>(IReadOnlyList<T> list, FileKind kind)
    {
        taken?.Add(AllOf(kind));
        return list;
    }

    /// <summary>Notes a look at all files, and hands on the list.</summary>
    public static IReadOnlyList<T> OfAll<T>(IReadOnlyList<T> list)
    {
        taken?.Add(All);
        return list;
    }

    /// <summary>Notes a look at all ids that recipes use, which are of drinks and of preparations, and hands them on.</summary>
    public static IEnumerable<string> OfUsed(IEnumerable<string> ids)
    {
        taken?.Add(AllOf(FileKind.Drink));
        taken?.Add(AllOf(FileKind.Prep));
        return ids;
    }

    /// <summary>A look at all files of a kind.</summary>
    public static BookRead AllOf(FileKind kind) => new(BookReadKind.Files, KindNames[(int)kind]);

    /// <summary>A look at all files.</summary>
    public static BookRead All => new(BookReadKind.Files, "");

    /// <summary>Does some work on this thread and notes its looks.</summary>
    /// <param name="into">Takes the looks.</param>
    /// <param name="work">The work.</param>
    public static T Noting<T>(HashSet<BookRead> into, Func<T> work)
    {
        var before = taken;
        taken = into;
        try
        {
            return work();
        }
        finally
        {
            taken = before;
        }
    }
}
