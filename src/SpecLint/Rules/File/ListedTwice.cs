using SpecLint.Book;

namespace SpecLint.Rules.File;

[Rule("SL1019", "listed-twice", "One item on two lines", Level.Note)]
internal sealed partial class ListedTwice : RecipeRule
{
    private const int FewLines = 16;

    public override void Check(RecipeContext context)
    {
        var lines = context.Recipe.Ingredients;
        if (lines.Count <= FewLines && !HoldsTwo(lines)) return;
        var known = new Dictionary<string, Line>(StringComparer.Ordinal);
        foreach (var line in lines)
        {
            if (!line.Item.IsGiven || line.Note.IsGiven || line.Role != LineRole.Part) continue;
            if (!known.TryGetValue(line.Item.Value, out var first))
            {
                known.Add(line.Item.Value, line);
                continue;
            }

            context.Report(new(Rule)
            {
                At = context.ItemOf(line),
                Key = line.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                Message = $"`{line.Item.Value}` is on line {first.Number} and again on line {line.Number}, and both are counted: "
                    + $"{Say(context, first)} and {Say(context, line)}.",
                Advice = "Merge them into one line, or say in `note` why it goes in twice.",
                Related = [context.See(first.Item.Span, "the first line")],
            });
        }
    }

    /// <summary>
    /// Whether an item is on two lines, by comparing each two: for the few lines of a drink, without anything to look it up in.
    /// </summary>
    private static bool HoldsTwo(FixedList<Line> lines)
    {
        for (int i = 1; i < lines.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (lines[i].Item.IsGiven && lines[j].Item.IsGiven && lines[i].Item.Value == lines[j].Item.Value) return true;
            }
        }

        return false;
    }

    private static string Say(RecipeContext context, Line line) =>
        line.Amount.IsGiven ? Amounts.Written.Text(context, line.Amount.Span) : "no amount";
}
