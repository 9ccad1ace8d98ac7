using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7012: a claim about alcohol that the strength belies.</summary>
internal sealed class AlcoholFreeClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7012", "alcohol-claim-false", "The strength contradicts the words alcohol-free or low alcohol", Level.Error) { Safety = true, Limits = AlcoholLimits.All };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Caution => "Some guests must not have any alcohol. The words carry a duty of care, and local law decides what they mean.";

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.AlcoholFree or ClaimKind.NonAlcoholic or ClaimKind.DeAlcoholised or ClaimKind.LowAlcohol;
}
