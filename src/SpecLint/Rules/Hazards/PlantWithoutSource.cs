using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6011: flowers or foraged plants that nobody vouches for.</summary>
internal sealed class PlantWithoutSource : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL6011", "plant-without-source", "Flowers or foraged plants come without a named source", Level.Warning) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Id is not ("unlabelled-edible-flowers" or "wild-foraged-plant")) continue;

            // A bar that writes a file or a note for it has named where it comes from.
            if (load.Part.Line.Note.IsGiven || (load.Part.Item is { IsBuiltIn: false, File: Ingredient { Notes.Count: > 0 } })) continue;
            bool foraged = load.Hazard.Id == "wild-foraged-plant";
            var rule = load.Hazard.Rules[0];
            context.Report(new Finding(Rule)
            {
                Answer = Answer.NotShown,
                Place = context.At(load.Part.Line.Item.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(load.Part.Line, "item"),
                Message = foraged
                    ? $"Nothing says who identified `{load.Id}`, where and when; foraged plants have deadly look-alikes ({rule.Source})."
                    : $"Nothing says that `{load.Id}` was grown as food; florists' flowers are sprayed, and some look like poisonous ones ({rule.Source}).",
                Advice = foraged ? "Write in the line's note who identified it, the species, the place and the day, or buy it." : "Write the grower or supplier of food flowers and the species in the line's note.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load), Proof.Of("rule", rule.When)],
            });
        }
    }
}
