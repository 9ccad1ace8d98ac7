using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

/// <summary>SL3003: an acidity outside what the style is seen at.</summary>
internal sealed class AcidityOutsideStyle : StyleBandRule
{
    private static readonly Limit ClearAcid = Limits.Of("stirred-clear-acid");

    private static readonly RuleInfo Rule = new("SL3003", "acidity-outside-style", "An acidity outside the style's range", Level.Warning)
    {
        Needs = [Fact.Acid],
        Limits = [ClearAcid.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Fact Of => Fact.Acid;

    /// <inheritdoc/>
    protected override string Noun => "acid";

    /// <inheritdoc/>
    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) => (value.Value < seen.Low && (Builds.LacksSide(context.Profile, style, Fact.Acid) || EggWhiteFlattensAcid.Speaks(context.Profile, drink)))
        || (value.Value > seen.High && context.Profile.Technique == TechniqueKind.Stirred && (Builds.First(context.Profile, Substances.IsJuice) is not null || value.Low <= ClearAcid.Value));

    /// <inheritdoc/>
    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Remedy.Amount(context, Remedy.AcidOf, Solving.AcidPerVolume, Nearest(aim, value.Value), "g of acid in 100 mL", value.Value > seen.High
            ? "Take less of what sours it, or name the right style."
            : "Sour it with a juice or an acid solution, or name the right style.");
}
