using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6022", "not-food", "An alcohol, a solvent, a caustic or a medicine that is not food is in a recipe", Level.Error, Safety = true)]
internal sealed partial class NotFood : DirectLoadRule
{
    protected override void Check(RecipeContext context, HazardLoad load)
    {
        if (!load.Hazard.IsNotFood) return;
        var rule = load.Hazard.Rules[0];
        context.Report(new(Rule)
        {
            AskedLevel = rule.Level,
            At = context.ItemOf(load.Part.Line),
            Message = $"`{load.Id}` is not food: {load.Hazard.Harm} ({rule.Source}).",
            Advice = $"Take it out and discard what it touched; {rule.Correction}.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load)],
        });
    }
}
