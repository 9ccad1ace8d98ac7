using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6001", "toxic-plant", "A poisonous plant is in or on a drink", Level.Error, Safety = true)]
internal sealed partial class ToxicPlant : DirectLoadRule
{
    protected override void Check(RecipeContext context, HazardLoad load)
    {
        if (!load.Hazard.IsPoison || load.Hazard.Rules.FirstOrDefault(static r => r.Control == "never") is not { } rule) return;
        context.Report(new(Rule)
        {
            AskedLevel = rule.Level,
            At = context.ItemOf(load.Part.Line),
            Message = $"`{load.Id}` is {NameFor(load)}poisonous{HazardWords.HarmOf(load.Hazard)} and does not belong in or on a drink, "
                + $"in any amount ({rule.Source}).",
            Advice = $"Take it out and discard what it touched; {rule.Correction}.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load), Proof.Of("rule", rule.About)],
        });
    }

    /// <summary>What it is, where its id does not say so itself.</summary>
    private static string NameFor(HazardLoad load) => load.Id == load.Hazard.Id ? "" : $"{load.Hazard.Name}, ";
}
