namespace SpecLint.Rules.Book;

[Rule("SL9002", "reference-cycle", "Preparations that are made of each other", Level.Error)]
internal sealed partial class ReferenceCycleRule : BookRule
{
    public override void Check(BookContext context)
    {
        foreach (var cycle in context.Book.Cycles)
        {
            string way = string.Join(" → ", cycle.Path.Concat([cycle.Path[0]]));
            context.Report(new(Rule)
            {
                At = new(cycle.In.At(cycle.Closing.Item.Span), RecipeContext.PathOf(cycle.Closing, "item")),
                Message = $"These preparations are made of each other: {way}. None of them can be made first.",
                Advice = "Take one of them out of the cycle, or make a separate preparation of what they share.",
            });
        }
    }
}
