using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9022", "by-product-id-taken", "The id of a by-product belongs to something else", Level.Error)]
internal sealed partial class ByProductTaken : BookRule
{
    public override void Check(BookContext context)
    {
        foreach (var prep in context.Book.Preps)
        {
            foreach (var left in prep.ByProducts)
            {
                if (!left.Id.IsGiven || context.Book.Resolve(left.Id.Value) is not { } known) continue;
                bool own = known.ByProduct == left;
                if (own && Catalogue.BuiltInCatalogue.Find(left.Id.Value)?.Id != left.Id.Value) continue;
                var taker = known.ByProduct is { } other ? known.File.At(other.Id.Span) : known.File.Head;
                string free = $"{prep.Id}-{left.Id.Value}";
                context.Report(new(Rule)
                {
                    AskedLevel = own ? Level.Warning : null,
                    At = new(prep.At(left.Id.Span), $"byProducts[{left.Id.Value}].id"),
                    Message = own
                        ? $"`{left.Id.Value}` is also the id of a catalogue ingredient, which it hides from every recipe of the book."
                        : $"`{left.Id.Value}` is also the id of {known.File.Source.Path}. Every reference resolves to that file, not to "
                            + "this by-product.",
                    Advice = $"Give the by-product its own id, e.g. `{free}`.",
                    Evidence = [Proof.Of("taken by", own ? "the built-in catalogue" : known.File.Id)],
                    Related = own ? [] : [new RelatedPlace(taker, "has the id")],
                    Corrections = context.Book.UsersOf(left.Id.Value).Count == 0
                        ? Correction.Propose($"Call it `{free}`.", new TextEdit(prep.At(left.Id.Span), $"\"{free}\""))
                        : [],
                });
            }
        }
    }
}
