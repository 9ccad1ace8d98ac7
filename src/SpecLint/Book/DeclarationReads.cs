namespace SpecLint.Book;

/// <summary>
/// Whether a rule looked at what a recipe declares, or at its text, in which that stands: <see cref="BookFile"/> and
/// <see cref="Recipe"/>, through which it is reached, note each look themselves. Where only the declaration of a recipe changes, the
/// other rules find what they found before.
/// </summary>
internal static class DeclarationReads
{
    [ThreadStatic]
    private static bool looked;

    /// <summary>Notes a look.</summary>
    public static void Note() => looked = true;

    /// <summary>Whether anything was looked at on this thread since this was last asked.</summary>
    public static bool Take()
    {
        bool was = looked;
        looked = false;
        return was;
    }
}
