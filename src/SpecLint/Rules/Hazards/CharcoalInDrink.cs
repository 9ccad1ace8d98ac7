using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6010", "charcoal-in-drink", "Activated charcoal in a drink binds the medicines of guests", Level.Error, Safety = true)]
internal sealed partial class CharcoalInDrink : DirectLoadRule
{
    protected override void Check(RecipeContext context, HazardLoad load)
    {
        // Charcoal that is filtered out again has coloured nothing and binds nothing in the glass.
        if (load.Hazard.Id != "activated-charcoal" || load.Part.Phase == PartPhase.TakenOut) return;
        if (HazardWords.Strictest(context, load.Hazard, static (c, rule) => rule.AppliesIn(c.Settings)) is not { } found) return;
        string law = found.Control == "prohibited" ? $", and is not allowed in food{HazardWords.Where(found)}" : "";
        context.Report(new(Rule)
        {
            AskedLevel = found.Level,
            At = context.ItemOf(load.Part.Line),
            Message = $"`{load.Id}` binds medicines that a guest has taken, including the contraceptive pill{law} ({found.Source}).",
            Advice = $"Take it out: {found.Correction}.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load)],
        });
    }
}
