using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7014: a vegetarian claim with something of a killed animal in the tree.</summary>
internal sealed class VegetarianClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7014", "vegetarian-claim-false", "A product of a killed animal is in a drink called vegetarian", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Level UnshownLevel => Level.Warning;

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.Vegetarian;
}
