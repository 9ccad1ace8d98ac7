using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7016: a claim of no milk or no lactose with milk in the tree.</summary>
internal sealed class DairyFreeClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7016", "dairy-free-claim-false", "Milk is in a drink called dairy-free or lactose-free", Level.Warning) { Safety = true, Limits = ["lactose-free-claim"] };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Caution => AllergenWords.Caution;

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.DairyFree or ClaimKind.LactoseFree;
}
