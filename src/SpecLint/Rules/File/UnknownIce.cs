using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1030", "unknown-ice", "An ice that the table does not know", Level.Note)]
internal sealed partial class UnknownIce : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Ice.IsGiven || step.Ice.Value.IsKnown) continue;
            string? near = NearestName.Of(step.IceWritten, Ice.Words);
            context.Report(new(Rule)
            {
                At = context.At(step.Ice.Span, context.PathOf(step) + ".ice"),
                Message = $"The ice `{step.IceWritten}` is not in the table, so the melt is computed as for cubes.",
                Advice = near is null
                    ? "Write cubed, cracked, crushed, pebble, block, sphere, spear or none."
                    : $"Write `{near}` if that is meant.",
                Corrections = context.Write(step.Ice.Span, near, $"Write `{near}`."),
            });
        }
    }
}
