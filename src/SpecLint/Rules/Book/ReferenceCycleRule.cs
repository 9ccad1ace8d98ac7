using SpecLint.Findings;

namespace SpecLint.Rules.Book;

/// <summary>SL9002: preparations that are made of each other.</summary>
internal sealed class ReferenceCycleRule : BookRule
{
    private static readonly RuleInfo Rule = new("SL9002", "reference-cycle", "Preparations that are made of each other", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(BookContext context)
    {
        foreach (var cycle in context.Book.Cycles)
        {
            string way = string.Join(" → ", cycle.Path.Concat([cycle.Path[0]]));
            context.Report(new Finding(Rule)
            {
                Place = cycle.In.At(cycle.Closing.Item.Span),
                Subject = cycle.In.Id,
                Path = RecipeContext.PathOf(cycle.Closing, "item"),
                Message = $"These preparations are made of each other: {way}. None of them can be made first.",
                Advice = "Take one of them out of the cycle, or make a separate preparation of what they share.",
            });
        }
    }
}
