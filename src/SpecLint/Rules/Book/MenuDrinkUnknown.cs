using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9010", "menu-drink-unknown", "A drink on the menu is not in the book", Level.Error)]
internal sealed partial class MenuDrinkUnknown : MenuEntryRule
{
    protected override void Check(FileContext context, Menu menu, MenuEntry entry)
    {
        if (!entry.Drink.IsGiven) return;
        var file = context.Book.Resolve(entry.Drink.Value)?.File;

        // A bottled batch may be sold as it is.
        if (file is Drink or Prep) return;
        string? near = context.Book.Names.Drinks.Slip(entry.Drink.Value);
        context.Report(new(Rule)
        {
            At = context.At(entry.Drink.Span, $"drinks[{entry.Drink.Value}].drink"),
            Message = file is null
                ? $"`{entry.Drink.Value}` is on the menu, but the book has no recipe for it. Its allergens and strength are not known."
                : $"`{entry.Drink.Value}` is on the menu as a drink, but is an ingredient.",
            Advice = near is null
                ? "Write its recipe, or take it off the menu."
                : $"Write `{near}` if that is meant, or write its recipe.",
            Evidence = [Proof.Of("named", entry.Drink.Value, context.At(entry.Drink.Span))],
            Corrections = context.Write(entry.Drink.Span, near, $"Name `{near}`."),
        });
    }
}
