using SpecLint.Book;

namespace SpecLint.Rules;

/// <summary>A rule about single drinks of a menu.</summary>
internal abstract class MenuEntryRule : MenuRule
{
    /// <inheritdoc/>
    public sealed override void Check(FileContext context, Menu menu)
    {
        foreach (var entry in menu.Drinks) Check(context, menu, entry);
    }

    /// <summary>Checks one drink of a menu.</summary>
    protected abstract void Check(FileContext context, Menu menu, MenuEntry entry);
}
