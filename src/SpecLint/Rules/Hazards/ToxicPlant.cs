using SpecLint.Findings;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6001: a poisonous plant in or on a drink.</summary>
internal sealed class ToxicPlant : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL6001", "toxic-plant", "A poisonous plant is in or on a drink", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Kind != "toxic plant") continue;
            foreach (var rule in load.Hazard.Rules)
            {
                if (rule.Control != "never") continue;
                string harm = load.Hazard.Harm.Length == 0 ? "" : $" ({load.Hazard.Harm})";
                context.Report(new Finding(Rule)
                {
                    AskedLevel = rule.Level,
                    Place = context.At(load.Part.Line.Item.Span),
                    Subject = context.Id,
                    Path = RecipeContext.PathOf(load.Part.Line, "item"),
                    Message = $"`{load.Id}` is poisonous{harm} and is no garnish and no ingredient, in any amount ({rule.Source}).",
                    Advice = $"Take it out and throw away what it touched; {rule.Correction}.",
                    Caution = HazardWords.Caution,
                    Evidence = [HazardWords.Of(context, load), Proof.Of("rule", rule.About)],
                });
                break;
            }
        }
    }
}
