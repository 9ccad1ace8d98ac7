using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule("SL7017", "sugar-claim-false", "A claim about sugar does not hold, or may not be made", Level.Error)]
[Limit("sugar-free-claim")]
[Limit("low-sugars-claim")]
[Limit("claims-strength")]
internal sealed partial class SugarClaim : ClaimRule
{
    protected override Level UnshownLevel => Level.Warning;

    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.SugarFree or ClaimKind.LowSugar or ClaimKind.NoAddedSugar;
}
