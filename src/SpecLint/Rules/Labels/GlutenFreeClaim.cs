using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7015: a gluten-free claim with a cereal that holds gluten in the tree.</summary>
internal sealed class GlutenFreeClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7015", "gluten-free-claim-false", "A cereal with gluten is in a drink called gluten-free", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Caution => AllergenWords.Caution;

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.GlutenFree;
}
