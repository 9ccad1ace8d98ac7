using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3002", "sweetness-outside-style", "A sweetness outside the style's range", Level.Warning,
    Needs = [Fact.Sugar], IsConsequence = true)]
internal sealed partial class SweetnessOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.Sugar;

    protected override string Noun => "sugar";

    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) =>
        value.Value < seen.Low && Builds.LacksSide(context.Profile, style, Fact.Sugar);

    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Remedy.Sugar(context, Nearest(aim, value.Value), value.Value > seen.High
            ? "Take less of what sweetens it, or name the right style."
            : "Sweeten it, or name the right style.");
}
