using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2012", "two-lines-in-one", "Two ingredients on one line", Level.Error, IsCause = true)]
internal sealed partial class TwoRowsInOne : RecipeRule
{
    /// <summary>
    /// Whether what stands for an item is two items with an amount between them, as <c>gin-15-ml-lime-juice</c> or <c>gin 15 ml lime
    /// juice</c>.
    /// </summary>
    internal static bool Reads(LinkedBook book, string text, out string first, out string amount, out string second)
    {
        first = amount = second = "";
        if (!ItemWords.HasDigit(text)) return false;
        string[] words = ItemWords.Of(text, out bool isId);
        for (int at = 1; at < words.Length - 1; at++)
        {
            for (int length = 3; length >= 1; length--)
            {
                if (at + length >= words.Length || ItemWords.AmountOf(words, at, length, isId) is not { } read) continue;
                string before = ItemWords.Id(words, 0, at), behind = ItemWords.Id(words, at + length, words.Length);
                if (book.Resolve(before) is null || book.Resolve(behind) is null) continue;
                (first, amount, second) = (before, read, behind);
                return true;
            }
        }

        return false;
    }

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Item is null)
            {
                var text = ItemWords.TextOf(line);
                if (text.IsGiven && Reads(context.Book, text.Value, out string first, out string amount, out string second))
                    Report(
                        context, line, context.At(text.Span, RecipeContext.PathOf(line, "item")), first, (amount, second),
                        $"The item `{text.Value}` is two items with an amount between them");
                continue;
            }

            if (line.Note.IsGiven) InNote(context, line);
        }
    }

    /// <summary>A remark that brings in an ingredient which no line has.</summary>
    private static void InNote(RecipeContext context, Line line)
    {
        string note = line.Note.Value;
        if (!AmountsInText.Next(note, 0, out var spoken) || AmountsInText.PartNamed(context.Profile, note, spoken.End) is not null) return;
        if (AmountsInText.ItemNamed(context.Book, note, spoken.End) is not { } item || item.Id == line.Item.Value) return;

        // "or 20 ml lemon juice" names a stand-in, not a second ingredient.
        if (spoken.Start > 0 && !StartsWithPlus(note, spoken.Start)) return;
        string amount = note.Substring(spoken.Start, spoken.End - spoken.Start);
        Report(
            context, line, context.At(line.Note.Span, RecipeContext.PathOf(line, "note")), "", (amount, item.Id),
            $"The remark at {Written.Item(line)} adds {amount} of `{item.Id}`, which is on no line");
    }

    private static bool StartsWithPlus(string note, int start)
    {
        string before = note.Substring(0, start).TrimEnd();
        return before.EndsWith("+", StringComparison.Ordinal)
            || before.EndsWith("and", StringComparison.OrdinalIgnoreCase)
            || before.EndsWith("plus", StringComparison.OrdinalIgnoreCase);
    }

    private static void Report(RecipeContext context, Line line, Spot at, string first, (string Amount, string Item) missing, string words)
    {
        var (amount, second) = missing;
        var edits = new List<TextEdit>();
        if (first.Length > 0) edits.Add(new TextEdit(at.Place, $"\"{first}\""));
        string more = $",\n    {{ \"item\": \"{second}\", \"amount\": \"{amount}\" }}";
        edits.Add(new TextEdit(context.At(new TextSpan(line.Span.End, 0)), more));
        context.Report(new(Rule)
        {
            At = at,
            Message = $"{words}. Two lines have run into one, and {amount} of `{second}` is missing from every figure.",
            Advice = $"Give `{second}` a line of its own.",
            Corrections =
            [
                new Correction(CorrectionGrade.Proposed, $"Add a line for `{second}`, {amount}.", edits) { KeepsTheThing = true },
            ],
        });
    }
}
