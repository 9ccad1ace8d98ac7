namespace SpecLint.Rules.Amounts;

[Rule("SL2031", "nothing-of-it", "An amount of zero", Level.Error, IsCause = true)]
internal sealed partial class NothingOfIt : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || line.Amount.Value.High > 0) continue;
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"The amount of {Written.Item(line)} is `{Written.Text(context, line.Amount.Span)}`: none of it goes in, but "
                    + "it is in the recipe.",
                Advice = "Write the amount, or delete the line.",
            });
        }
    }
}
