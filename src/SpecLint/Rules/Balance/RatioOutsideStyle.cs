using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3004", "ratio-outside-style", "A ratio of sugar to acid outside the style's range", Level.Warning,
    Needs = [Fact.SugarAcidRatio, Fact.Sugar, Fact.Acid], IsConsequence = true)]
internal sealed partial class RatioOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.SugarAcidRatio;

    protected override string Noun => "ratio of sugar to acid";

    /// <summary>Where sugar or acid alone lies outside, that is what is wrong.</summary>
    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) =>
        Builds.IsOut(context, style, Fact.Sugar) || Builds.IsOut(context, style, Fact.Acid);

    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        value.Value > seen.High
            ? Remedy.Amount(
                context, Remedy.SugarOf, Ratio, Nearest(aim, value.Value), "of sugar to one of acid",
                "Use less of what sweetens it or more of what sours it.")
            : Remedy.Amount(
                context, Remedy.AcidOf, Ratio, Nearest(aim, value.Value), "of sugar to one of acid",
                "Use less of what sours it or more of what sweetens it.");

    private static readonly Solving.Measure Ratio = static grams => Solving.SugarOf(grams) / Solving.Titratable(grams);
}
