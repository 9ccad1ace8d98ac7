using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6009: essential oil neat on a drink, or too much of it.</summary>
internal sealed class EssentialOilTooStrong : DrinkRule
{
    private static readonly Limit Most = Limits.Of("essential-oil-dose");

    private static readonly RuleInfo Rule = new("SL6009", "essential-oil-too-strong", "Essential oil goes neat on a drink, or too much of it", Level.Warning)
    {
        Safety = true,
        Needs = [Fact.ServedVolume],
        Limits = [Most.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Hazard.Id is not ("essential-oils" or "wintergreen-oil")) continue;
            bool neat = load.Direct && load.Part.Phase is PartPhase.Beside or PartPhase.Top;
            var volume = context.Fact(Fact.ServedVolume);
            double density = context.Profiles.MaterialOf(load.Id)?.Density ?? double.NaN;
            double perLitre = volume.IsKnown && volume.Value > 0 ? load.Grams / density / HazardWords.Serves(drink) / volume.Value * 1000 : double.NaN;
            if (!neat && !(perLitre > Most.Value)) continue;
            string dose = double.IsNaN(perLitre) ? "" : $" and comes to {Say.Number(perLitre)} mL/L";
            context.Report(new Finding(Rule)
            {
                Place = context.At(load.Part.Line.Amount.IsGiven ? load.Part.Line.Amount.Span : load.Part.Line.Item.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(load.Part.Line, "amount"),
                Message = $"{HazardWords.NameOf(load)} {(neat ? "goes neat on the drink" : "is in the drink")}{dose}; {Say.Number(Most.Value)} mL a litre of the finished drink, emulsified, is the most ({Most.Source}), and neat oil burns the mouth.",
                Advice = "Use food-grade oil, dilute it to 1 to 5 % in strong spirit first, and dose that.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load), Proof.Of(Most)],
            });
        }
    }
}
