using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3003", "acidity-outside-style", "An acidity outside the style's range", Level.Warning, Needs = [Fact.Acid], IsConsequence = true)]
[Limit("stirred-clear-acid", "ClearAcid")]
internal sealed partial class AcidityOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.Acid;

    protected override string Noun => "acid";

    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) =>
        value.Value < seen.Low
            ? Builds.LacksSide(context.Profile, style, Fact.Acid) || EggWhiteFlattensAcid.Speaks(context.Profile, drink)
            : value.Value > seen.High && context.Profile.Technique == TechniqueKind.Stirred
                && (Builds.First(context.Profile, Substances.IsJuice) is not null || value.Low <= ClearAcid.Value);

    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Remedy.Acid(context, Nearest(aim, value.Value), value.Value > seen.High
            ? "Take less of what sours it, or name the right style."
            : "Sour it with a juice or an acid solution, or name the right style.");
}
