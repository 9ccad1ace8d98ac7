using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>Words of the trade that a file may leave out, to be asked for their traits all the same.</summary>
public static class GivenWords
{
    /// <summary>The family, or one without traits where none is given.</summary>
    public static Family OrNone(this Given<Family> family) => family.Or(Family.None);

    /// <summary>The kind, or one without traits where none is given.</summary>
    public static ItemKind OrNone(this Given<ItemKind> kind) => kind.Or(ItemKind.None);
}
