using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9013", "menu-drink-twice", "A drink is on the menu twice", Level.Warning)]
internal sealed partial class MenuDrinkTwice : MenuRule
{
    public override void Check(FileContext context, Menu menu)
    {
        for (int i = 1; i < menu.Drinks.Count; i++)
        {
            var entry = menu.Drinks[i];
            if (!entry.Drink.IsGiven) continue;
            for (int j = 0; j < i; j++)
            {
                var first = menu.Drinks[j];
                if (!first.Drink.IsGiven || first.Drink.Value != entry.Drink.Value) continue;
                context.Report(new(Rule)
                {
                    At = context.At(entry.Drink.Span, $"drinks[{entry.Drink.Value}].drink"),
                    Key = entry.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Message = $"`{entry.Drink.Value}` is number {first.Number} and number {entry.Number} of this menu, so its covers count "
                        + "twice.",
                    Advice = "Remove one of the two, or name the intended drink.",
                    Evidence = [Proof.Of("first", first.Drink.Value, context.At(first.Drink.Span))],
                    Related = [context.See(first.Drink.Span, "the first one")],
                });
                break;
            }
        }
    }
}
