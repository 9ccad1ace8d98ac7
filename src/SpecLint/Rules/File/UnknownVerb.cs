using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1015", "unknown-verb", "A step with an unknown verb", Level.Note)]
internal sealed partial class UnknownVerb : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Do.IsGiven || step.Verb.IsKnown) continue;
            string? near = NearestName.Of(step.Written, Verb.Words);
            context.Report(new(Rule)
            {
                At = context.At(step.Do.Span, context.PathOf(step) + ".do"),
                Message = $"The verb `{step.Written}` is not in the table, so dilution, straining, heating and so on are computed without "
                    + "this step.",
                Advice = near is null
                    ? "Use a verb such as shake, stir, strain, heat, steep or bottle, and put the rest in `note`."
                    : $"Write `{near}` if that is meant.",
                Corrections = context.Write(step.Do.Span, near, $"Write `{near}`."),
            });
        }
    }
}
