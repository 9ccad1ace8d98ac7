using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

/// <summary>SL3005: a dilution outside what the style is seen at.</summary>
internal sealed class DilutionOutsideStyle : StyleBandRule
{
    private static readonly RuleInfo Rule = new("SL3005", "dilution-outside-style", "A dilution outside the style's range", Level.Note)
    {
        Needs = [Fact.Dilution],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Fact Of => Fact.Dilution;

    /// <inheritdoc/>
    protected override string Noun => "dilution";

    /// <inheritdoc/>
    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) => context.Profile.Technique is TechniqueKind.NoIce or TechniqueKind.Unknown;

    /// <inheritdoc/>
    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Remedy.Say(value.Value > seen.High
            ? "Chill it for a shorter time, or on larger ice, or name the right style."
            : "Chill it for longer, or measure water in, or name the right style.");
}
