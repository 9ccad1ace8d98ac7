using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

/// <summary>SL9001: an item that is in no file of the book and not in the catalogue.</summary>
internal sealed class UnknownReference : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL9001", "unknown-reference", "An item that is in no file of the book and not in the catalogue", Level.Error)
    {
        IsCause = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Item is not null || !line.Item.IsGiven) continue;
            string id = line.Item.Value;

            // An amount in the item, or two lines in one, has a finding of its own.
            if (Amounts.AmountInName.Reads(context.Book, id, out _, out _) || Amounts.TwoRowsInOne.Reads(context.Book, id, out _, out _, out _)) continue;
            if (UnclearNames.Find(id) is { } unclear)
            {
                context.Report(Unclear(context, line, id, unclear));
                continue;
            }

            string? near = NearestName.Of(id, context.Book.Ids.Concat(BuiltInCatalogue.Ids));
            var place = context.At(line.Item.Span);
            context.Report(new Finding(Rule)
            {
                Place = place,
                Subject = context.Id,
                Path = RecipeContext.PathOf(line, "item"),
                Message = $"`{id}` is in no file of the book and not in the built-in catalogue, so nothing can be worked out for it.",
                Advice = near is null ? "Write its file, or name an item that exists." : $"Write `{near}`, if that is meant, or write a file for `{id}`.",
                Corrections = near is null
                    ? []
                    : [new Correction(CorrectionGrade.Proposed, $"Name `{near}` in place of `{id}`.", [new TextEdit(place, $"\"{near}\"")])],
            });
        }
    }

    /// <summary>A name that the trade knows and that leaves open what is meant.</summary>
    private static Finding Unclear(RecipeContext context, Line line, string id, UnclearName unclear)
    {
        var place = context.At(line.Item.Span);
        var corrections = new List<Correction>(unclear.Could.Count);
        var names = new List<string>(unclear.Could.Count);
        foreach (string could in unclear.Could)
        {
            corrections.Add(new Correction(CorrectionGrade.Proposed, $"Name `{could}` in place of `{id}`.", [new TextEdit(place, $"\"{could}\"")]));
            names.Add($"`{could}`");
        }

        return new Finding(Rule)
        {
            Place = place,
            Subject = context.Id,
            Path = RecipeContext.PathOf(line, "item"),
            Message = $"`{id}` is in no file of the book, and {unclear.Because}, so nothing can be worked out for it.",
            Advice = $"Write {Say.List(names, "or")}, or a file for your own.",
            Corrections = corrections,
        };
    }
}
