using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule("SL7012", "alcohol-claim-false", "The strength contradicts the words alcohol-free or low alcohol", Level.Error, Safety = true)]
[LimitsOf(typeof(AlcoholLimits), nameof(AlcoholLimits.All))]
internal sealed partial class AlcoholFreeClaim : ClaimRule
{
    protected override string Caution =>
        "Some guests must not have any alcohol. The words carry a duty of care, and local law decides what they mean.";

    protected override bool IsAbout(ClaimKind kind) =>
        kind is ClaimKind.AlcoholFree or ClaimKind.NonAlcoholic or ClaimKind.DeAlcoholised or ClaimKind.LowAlcohol;
}
