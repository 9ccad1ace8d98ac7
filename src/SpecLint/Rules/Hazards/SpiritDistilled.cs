using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Hazards;

[Rule("SL6024", "spirit-distilled", "Spirit is distilled on the premises", Level.Warning, Safety = true)]
internal sealed partial class SpiritDistilled : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var pot = Pot.Of(context.Recipe);
        for (int i = 0; i < context.Recipe.Method.Count; i++)
        {
            var step = context.Recipe.Method[i];
            if (!step.Verb.Distils || !HoldsSpirit(context, pot, i)) continue;
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                At = context.VerbOf(step),
                Message = "The step distils something that holds alcohol. Distilling spirit needs a licence in most countries, even "
                    + "with a rotary evaporator (26 USC 5601; HMRC and Revenue distiller's licence, from memory). The first fraction "
                    + "concentrates the most volatile and harmful compounds.",
                Advice = "Distil spirit only under a licence and accept this finding with its number. Otherwise distil water-based liquids "
                    + "only.",
                Caution = HazardWords.StaffCaution,
                Evidence = [Proof.Of("verb", step.Do.Value.Id)],
            });
            return;
        }
    }

    /// <summary>Whether a step works on what holds alcohol; what nothing is known of may be spirit.</summary>
    private static bool HoldsSpirit(RecipeContext context, Pot pot, int step) => context.Profile.Parts.Any(part =>
        part.Phase != PartPhase.Beside
            && pot.WorksOn(step, part.Line)
            && (part.Material is not { } material || material.Of(Component.Ethanol) > 0 || (material.Unknown & Unknowns.Strength) != 0));
}
