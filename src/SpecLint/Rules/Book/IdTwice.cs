using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9005", "id-twice", "Two files have one id", Level.Error)]
internal sealed partial class IdTwice : BookRule
{
    public override void Check(BookContext context)
    {
        foreach (var (first, second) in context.Book.DoubleIds)
        {
            context.Report(new(Rule)
            {
                At = new(second.Head, second.Source.Path),
                Message = $"The id `{second.Id}` is also that of {first.Source.Path}. Every reference resolves to that file, and this one "
                    + "is never used.",
                Advice = "Give one of the two another file name, and correct the references.",
                Evidence = [Proof.Of("other file", first.Source.Path, first.Head)],
                Related = [new RelatedPlace(first.Head, "the file that references resolve to")],
            });
        }
    }
}
