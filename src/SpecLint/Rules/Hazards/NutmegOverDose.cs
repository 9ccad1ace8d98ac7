using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6007", "nutmeg-over-dose", "A drink holds more nutmeg than a garnish", Level.Error, Safety = true)]
[Limit("nutmeg-serve", "Most")]
[Limit("nutmeg-toxic-serve", "Toxic")]
internal sealed partial class NutmegOverDose : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double grams = 0;
        HazardLoad? most = null;
        bool strained = false;
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Hazard.Id != "nutmeg" || double.IsNaN(load.Grams)) continue;
            grams += load.Grams;
            strained |= load.Strained;
            if (most is null || load.Grams > most.Grams) most = load;
        }

        grams /= drink.ServesOrOne;
        if (most is null || grams < Most.Value) return;
        context.Report(new(Rule)
        {
            Answer = strained ? Answer.NotShown : Answer.Broken,
            AskedLevel = strained || grams < Toxic.Value ? Level.Warning : null,
            At = context.AmountOf(most.Part.Line),
            Message = $"A drink holds {Say.With(grams, "g")} of nutmeg or mace from {HazardWords.NameOf(most)}. A garnish is 0.1 to "
                + $"0.2 g, more than {Say.Number(Most.Value)} g in a drink is not usual, and 5 g of the ground nut is a reported toxic "
                + $"dose ({Most.Source}).",
            Advice = "Grate it over the drink, 0.1 to 0.2 g, and never serve an infusion of whole nuts by the glass.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, most), Proof.Of("nutmeg a drink", grams, "g"), Proof.Of(Most)],
        });
    }
}
