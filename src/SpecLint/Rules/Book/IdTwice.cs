using SpecLint.Findings;

namespace SpecLint.Rules.Book;

/// <summary>SL9005: one id in two files.</summary>
internal sealed class IdTwice : BookRule
{
    private static readonly RuleInfo Rule = new("SL9005", "id-twice", "Two files have one id", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(BookContext context)
    {
        foreach (var (first, second) in context.Book.DoubleIds)
        {
            context.Report(new Finding(Rule)
            {
                Place = second.Head,
                Subject = second.Id,
                Path = second.Source.Path,
                Message = $"The id `{second.Id}` is also that of {first.Source.Path}. Every reference resolves to that file, and this one is never used.",
                Advice = "Give one of the two another file name, and correct the references.",
                Evidence = [Proof.Of("other file", first.Source.Path, first.Head)],
                Related = [new RelatedPlace(first.Head, "the file that references resolve to")],
            });
        }
    }
}
