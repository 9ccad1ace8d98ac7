using SpecLint.Findings;
using SpecLint.Linking;

namespace SpecLint.Rules.Amounts;

[Rule("SL2011", "amount-in-item", "An amount written into the item", Level.Warning, IsCause = true)]
internal sealed partial class AmountInName : RecipeRule
{
    /// <summary>
    /// Whether what stands for an item starts or ends with an amount and names a known item otherwise, as
    /// <c>2-dashes-orange-bitters</c> or <c>lime juice 25 ml</c>; <paramref name="amount"/> is the amount,
    /// <paramref name="item"/> the id of the rest.
    /// </summary>
    internal static bool Reads(LinkedBook book, string text, out string amount, out string item)
    {
        amount = item = "";
        if (!ItemWords.HasDigit(text)) return false;
        string[] words = ItemWords.Of(text, out bool isId);
        for (int front = 1; front >= 0; front--)
        {
            for (int length = 3; length >= 1; length--)
            {
                if (words.Length <= length) continue;
                int start = front == 1 ? 0 : words.Length - length;
                if (ItemWords.AmountOf(words, start, length, isId) is not { } read) continue;
                string rest = front == 1 ? ItemWords.Id(words, length, words.Length) : ItemWords.Id(words, 0, start);
                if (book.Resolve(rest) is null) continue;
                (amount, item) = (read, rest);
                return true;
            }
        }

        return false;
    }

    /// <summary>The items that lines name with their amount in one text.</summary>
    internal static HashSet<string> NamedBy(RecipeContext context)
    {
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not null) continue;
            var text = ItemWords.TextOf(part.Line);
            if (!text.IsGiven) continue;
            if (Reads(context.Book, text.Value, out _, out string item)) named.Add(item);
            if (!TwoRowsInOne.Reads(context.Book, text.Value, out string first, out _, out string second)) continue;
            named.Add(first);
            named.Add(second);
        }

        return named;
    }

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not null) continue;
            var line = part.Line;
            var text = ItemWords.TextOf(line);
            if (!text.IsGiven || !Reads(context.Book, text.Value, out string amount, out string item)) continue;
            TextEdit[] edits = line.Amount.IsGiven
                ? [context.Rewrite(text.Span, item), context.Rewrite(line.Amount.Span, amount)]
                : [new TextEdit(context.At(text.Span), $"\"{item}\", \"amount\": \"{amount}\"")];
            context.Report(new(Rule)
            {
                At = context.At(text.Span, RecipeContext.PathOf(line, "item")),
                Message = $"The item `{text.Value}` includes an amount, {amount}. An item is only an id (`{item}`), so nothing is "
                    + "computed for it.",
                Advice = $"Write `{item}` as the item and `{amount}` as its amount.",
                Corrections =
                [
                    new Correction(CorrectionGrade.Proposed, $"Name `{item}` and give it {amount}.", edits) { KeepsTheThing = true },
                ],
            });
        }
    }
}
