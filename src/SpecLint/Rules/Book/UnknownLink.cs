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
            Report(
                context, prep.BatchOf, "batchOf", context.Book.Names.Drinks,
                "is not a drink of the book, so there is nothing to compare the batch with");
        if (prep.Target is { StandsInFor.IsGiven: true } target && context.Book.Resolve(target.StandsInFor.Value) is null)
            Report(
                context, target.StandsInFor, "target.standsInFor", context.Book.Names.Ids,
                "is in no file of the book and not in the built-in catalogue, so there is nothing to compare its acid with");
    }

    private static void Report(RecipeContext context, Given<string> at, string path, NameIndex candidates, string what)
    {
        string? near = candidates.Slip(at.Value);
        context.Report(new(Rule)
        {
            At = context.At(at.Span, path),
            Message = $"`{at.Value}` {what}.",
            Advice = near is null ? "Name one that exists." : $"Write `{near}` if that is meant.",
            Evidence = [Proof.Of("named", at.Value, context.At(at.Span))],
            Corrections = context.Write(at.Span, near, $"Name `{near}`."),
        });
    }
}
