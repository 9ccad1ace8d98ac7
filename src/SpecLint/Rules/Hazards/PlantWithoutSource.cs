using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6011", "plant-without-source", "Flowers or foraged plants come without a named source", Level.Warning, Safety = true)]
internal sealed partial class PlantWithoutSource : RecipeRule
{
    private const string Flowers = "unlabelled-edible-flowers";

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { } material || part.Item?.File is not Ingredient file) continue;
            var hazard = material.Hazard;
            bool foraged = hazard?.Id == "wild-foraged-plant";
            bool flower = hazard?.Id == Flowers
                || (material.Kind is { IsFreshPlant: true, IsPerishableBrew: true }
                    && hazard is null or { Asks: null, IsPoison: false }
                    && material.Perishable != Perishable.None);

            // A bar that writes a file or a note for it has named where it comes from.
            if ((!foraged && !flower) || part.Line.Note.IsGiven || (!part.Item.IsBuiltIn && file.Notes.Count > 0)) continue;
            var rule = HazardTable.Find(foraged ? hazard!.Id : Flowers)!.Rules[0];
            string id = part.Item.Id;
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                At = context.ItemOf(part.Line),
                Message = foraged
                    ? $"Nothing says who identified `{id}`, where and when. Foraged plants have deadly look-alikes ({rule.Source})."
                    : $"Nothing says that `{id}` was grown as food. Florists' flowers are sprayed, and some look like poisonous ones "
                        + $"({rule.Source}).",
                Advice = foraged
                    ? "Write in the line's note who identified it, the species, the place and the day, or buy it."
                    : "Write the grower or supplier of food flowers and the species in the line's note.",
                Caution = HazardWords.Caution,
                Evidence = [Proof.Of("plant", id, context.At(part.Line.Item.Span)), Proof.Of("rule", rule.When)],
            });
        }
    }
}
