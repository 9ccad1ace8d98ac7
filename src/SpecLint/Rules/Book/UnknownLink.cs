using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9007", "unknown-link", "The item it is a batch of, or stands in for, does not exist", Level.Error)]
internal sealed partial class UnknownLink : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.BatchOf.IsGiven && context.Book.Resolve(prep.BatchOf.Value)?.File is not Drink)
            Report(context, prep.BatchOf, "batchOf", "is not a drink of the book, so there is nothing to compare the batch with", context.Book.Names.Drinks);
        if (prep.Target is { StandsInFor.IsGiven: true } target && context.Book.Resolve(target.StandsInFor.Value) is null)
            Report(
                context,
                target.StandsInFor,
                "target.standsInFor",
                "is in no file of the book and not in the built-in catalogue, so there is nothing to compare its acid with",
                context.Book.Names.Ids);
    }

    private static void Report(RecipeContext context, Given<string> at, string path, string what, NameIndex candidates)
    {
        string? near = candidates.Slip(at.Value);
        var place = context.At(at.Span);
        context.Report(new(Rule)
        {
            At = new(place, path),
            Message = $"`{at.Value}` {what}.",
            Advice = near is null ? "Name one that exists." : $"Write `{near}` if that is meant.",
            Evidence = [Proof.Of("named", at.Value, place)],
            Corrections = near is null ? [] : [new Correction(CorrectionGrade.Proposed, $"Name `{near}`.", [new TextEdit(place, $"\"{near}\"")])],
        });
    }
}
