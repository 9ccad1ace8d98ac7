using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1010", "unreadable-value", "A value that cannot be read", Level.Error, IsCause = true)]
internal sealed partial class UnreadableValue : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.UnreadableValue;

    protected override bool IsSpokenFor(FileContext context, ReadingProblem problem)
    {
        // An amount in the item, or two lines in one, has a finding of its own.
        if (context.File is not Recipe recipe || !problem.Path.EndsWith(".item", StringComparison.Ordinal)) return false;
        foreach (var line in recipe.Ingredients)
        {
            if (line.ItemText.IsGiven && line.ItemText.Span.Equals(problem.Span)) return IsAmountAndItem(context, line.ItemText.Value);
        }

        return false;
    }

    private static bool IsAmountAndItem(FileContext context, string text) =>
        Amounts.AmountInName.Reads(context.Book, text, out _, out _) || Amounts.TwoRowsInOne.Reads(context.Book, text, out _, out _, out _);
}
