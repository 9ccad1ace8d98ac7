using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7013: a vegan claim with something of an animal in the tree.</summary>
internal sealed class VeganClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7013", "vegan-claim-false", "An animal product is in a drink called vegan", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Level UnshownLevel => Level.Warning;

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.Vegan;
}
