using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

/// <summary>SL3002: a sweetness outside what the style is seen at.</summary>
internal sealed class SweetnessOutsideStyle : StyleBandRule
{
    private static readonly RuleInfo Rule = new("SL3002", "sweetness-outside-style", "A sweetness outside the style's range", Level.Warning)
    {
        Needs = [Fact.Sugar],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Fact Of => Fact.Sugar;

    /// <inheritdoc/>
    protected override string Noun => "sugar";

    /// <inheritdoc/>
    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) => value.Value < seen.Low && Builds.LacksSide(context.Profile, style, Fact.Sugar);

    /// <inheritdoc/>
    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Remedy.Amount(context, Remedy.SugarOf, Solving.SugarPerVolume, Nearest(aim, value.Value), "g of sugar in 100 mL", value.Value > seen.High
            ? "Take less of what sweetens it, or name the right style."
            : "Sweeten it, or name the right style.");
}
