using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3005", "dilution-outside-style", "A dilution outside the style's range", Level.Note,
    Needs = [Fact.Dilution], IsConsequence = true)]
internal sealed partial class DilutionOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.Dilution;

    protected override string Noun => "dilution";

    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) =>
        context.Profile.Technique is TechniqueKind.NoIce or TechniqueKind.Unknown;

    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Remedy.Say(value.Value > seen.High
            ? "Chill it for a shorter time, or on larger ice, or name the right style."
            : "Chill it for longer, or measure water in, or name the right style.");
}
