using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7031: a recipe says that it holds none of what is in it.</summary>
internal sealed class FreeFromClaim : ClaimRule
{
    private static readonly RuleInfo Rule = new("SL7031", "free-from-claim-false", "A recipe contains something that it claims to be free from", Level.Error) { Safety = true, Needs = [Fact.Caffeine] };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Caution => AllergenWords.Caution;

    /// <inheritdoc/>
    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.Allergens or ClaimKind.Animals or ClaimKind.CaffeineFree or ClaimKind.Ingredient;
}
