using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7017: a claim about sugar that the composition belies or the strength bars.</summary>
internal sealed class SugarClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7017", "sugar-claim-false", "A claim about sugar does not hold, or may not be made", Level.Warning) { Limits = ["sugar-free-claim", "low-sugars-claim", "claims-strength"] };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.SugarFree or ClaimKind.LowSugar or ClaimKind.NoAddedSugar;
}
