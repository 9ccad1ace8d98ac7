using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7031", "free-from-claim-false", "A recipe contains something that it claims to be free from", Level.Error,
    Safety = true, Needs = [Fact.Caffeine])]
internal sealed partial class FreeFromClaim : ClaimRule
{
    protected override string Caution => AllergenWords.Caution;

    protected override bool IsAbout(ClaimKind kind) =>
        kind is ClaimKind.Allergens or ClaimKind.Animals or ClaimKind.CaffeineFree or ClaimKind.Ingredient;
}
