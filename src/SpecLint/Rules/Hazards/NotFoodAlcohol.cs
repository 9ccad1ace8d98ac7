using SpecLint.Findings;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6022: an alcohol or solvent that is not food.</summary>
internal sealed class NotFoodAlcohol : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL6022", "not-food-alcohol", "An alcohol or solvent that is not food is in a recipe", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Id != "non-food-alcohol") continue;
            var rule = load.Hazard.Rules[0];
            context.Report(new Finding(Rule)
            {
                AskedLevel = rule.Level,
                Place = context.At(HazardWords.SpanOf(load.Part.Line)),
                Subject = context.Id,
                Path = RecipeContext.PathOf(load.Part.Line, "item"),
                Message = $"`{load.Id}` is not an alcohol for food: {load.Hazard.Harm} ({rule.Source}).",
                Advice = $"Take it out and discard what it touched; {rule.Correction}.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load)],
            });
        }
    }
}
