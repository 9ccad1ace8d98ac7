using SpecLint.Findings;

namespace SpecLint.Rules.Hazards;

[Rule("SL6022", "not-food-alcohol", "An alcohol or solvent that is not food is in a recipe", Level.Error, Safety = true)]
internal sealed partial class NotFoodAlcohol : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Id != "non-food-alcohol") continue;
            var rule = load.Hazard.Rules[0];
            context.Report(new(Rule)
            {
                AskedLevel = rule.Level,
                At = context.ItemOf(load.Part.Line),
                Message = $"`{load.Id}` is not an alcohol for food: {load.Hazard.Harm} ({rule.Source}).",
                Advice = $"Take it out and discard what it touched; {rule.Correction}.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load)],
            });
        }
    }
}
