using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2011: an amount written into the item.</summary>
internal sealed class AmountInName : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL2011", "amount-in-item", "An amount written into the item", Level.Warning) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>
    /// Whether an unknown id starts or ends with an amount and names a known item otherwise, as <c>2-dashes-orange-bitters</c>
    /// or <c>lime-juice-25-ml</c>; <paramref name="amount"/> is the amount, <paramref name="item"/> the rest.
    /// </summary>
    internal static bool Reads(LinkedBook book, string id, out string amount, out string item)
    {
        amount = item = "";
        bool digit = false;
        foreach (char c in id) digit |= c is >= '0' and <= '9';
        if (!digit) return false;
        string[] words = id.Split('-');
        for (int front = 1; front >= 0; front--)
        {
            for (int length = 2; length >= 1 && words.Length > length; length--)
            {
                int start = front == 1 ? 0 : words.Length - length;
                string text = length == 2 ? words[start] + " " + words[start + 1] : words[start];
                if (text[0] is < '0' or > '9' || !QuantityReader.TryRead(text, Measures.Default, out _, out _)) continue;
                string rest = string.Join("-", front == 1 ? words.Skip(length) : words.Take(words.Length - length));
                if (book.Resolve(rest) is null) continue;
                amount = text;
                item = rest;
                return true;
            }
        }

        return false;
    }

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Item is not null || !line.Item.IsGiven || !Reads(context.Book, line.Item.Value, out string amount, out string item)) continue;
            var edits = new List<TextEdit> { new(context.At(line.Item.Span), $"\"{item}\"") };
            if (line.Amount.IsGiven) edits.Add(new TextEdit(context.At(line.Amount.Span), $"\"{amount}\""));
            else edits[0] = new TextEdit(context.At(line.Item.Span), $"\"{item}\", \"amount\": \"{amount}\"");
            context.Report(new Finding(Rule)
            {
                Place = context.At(line.Item.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(line, "item"),
                Message = $"The item `{line.Item.Value}` holds an amount, {amount}: an item is the id of what is used (`{item}`), and nothing is worked out for it so.",
                Advice = $"Write `{item}` as the item and `{amount}` as its amount.",
                Corrections = [new Correction(CorrectionGrade.Proposed, $"Name `{item}` and give it {amount}.", edits)],
            });
        }
    }
}
