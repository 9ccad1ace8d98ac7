using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2031: an amount of nothing.</summary>
internal sealed class NothingOfIt : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL2031", "nothing-of-it", "An amount of zero", Level.Error) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || line.Amount.Value.High > 0) continue;
            context.Report(new Finding(Rule)
            {
                Place = context.At(line.Amount.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(line, "amount"),
                Message = $"The amount of {Written.Item(line)} is `{Written.Text(context, line.Amount.Span)}`: none of it goes in, but it is in the recipe.",
                Advice = "Write the amount, or delete the line.",
            });
        }
    }
}
