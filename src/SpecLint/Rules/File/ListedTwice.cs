using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.File;

/// <summary>SL1019: one item on two lines.</summary>
internal sealed class ListedTwice : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL1019", "listed-twice", "One item on two lines", Level.Note);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        var lines = context.Recipe.Ingredients;
        for (int i = 1; i < lines.Count; i++)
        {
            var line = lines[i];
            if (!line.Item.IsGiven || line.Note.IsGiven || line.Role != LineRole.Part) continue;
            for (int j = 0; j < i; j++)
            {
                var first = lines[j];
                if (!first.Item.IsGiven || first.Item.Value != line.Item.Value || first.Role != line.Role || first.Note.IsGiven) continue;
                context.Report(new Finding(Rule)
                {
                    Place = context.At(line.Item.Span),
                    Subject = context.Id,
                    Path = RecipeContext.PathOf(line, "item"),
                    Key = line.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Message = $"`{line.Item.Value}` stands on line {first.Number} and again on line {line.Number}, and both are counted: {Say(context, first)} and {Say(context, line)}.",
                    Advice = "Make one line of them, or say in `note` why it goes in twice.",
                    Related = [new RelatedPlace(context.At(first.Item.Span), "the first line")],
                });
                break;
            }
        }
    }

    private static string Say(RecipeContext context, Line line) => line.Amount.IsGiven ? Amounts.Written.Text(context, line.Amount.Span) : "no amount";
}
