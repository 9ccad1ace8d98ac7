using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1008", "missing-property", "A property that every such file needs is missing", Level.Error)]
internal sealed partial class MissingProperty : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.MissingProperty;

    protected override bool IsSpokenFor(FileContext context, ReadingProblem problem)
    {
        // The amount of a line that has it in its item is not missing: that has a finding of its own.
        if (context.File is not Recipe recipe || !problem.Path.EndsWith(".amount", StringComparison.Ordinal)) return false;
        foreach (var line in recipe.Ingredients)
        {
            if (line.Amount.IsGiven || problem.Span.Start < line.Span.Start || problem.Span.End > line.Span.End) continue;
            var text = Amounts.ItemWords.TextOf(line);
            return text.IsGiven
                && context.Book.Resolve(text.Value) is null
                && Amounts.AmountInName.Reads(context.Book, text.Value, out _, out _);
        }

        return false;
    }
}
