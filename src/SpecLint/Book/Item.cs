namespace SpecLint.Book;

/// <summary>What a reference resolves to.</summary>
/// <param name="Id">The id under which it is known.</param>
/// <param name="File">The recipe or ingredient; of a by-product the preparation that leaves it.</param>
/// <param name="ByProduct">The by-product, if it is one.</param>
/// <param name="IsBuiltIn">Whether it is of the built-in catalogue.</param>
public sealed record Item(string Id, BookFile File, ByProduct? ByProduct, bool IsBuiltIn)
{
    /// <summary>The id by which tables of the trade know it: a bar's own packet counts as what it is like.</summary>
    internal string CountsAs => this is { IsBuiltIn: false, File: Ingredient { Like.IsGiven: true } own } ? own.Like.Value : Id;
}
